import { soilAccount } from '@leywright/agronomy';

const soilTemperature = soilAccount.temperature;

import { describe, expect, test } from 'vitest';

const rothamstedAirC = [3.1, 3.4, 5.3, 7.7, 11.1, 14.0, 16.0, 15.7, 13.5, 9.8, 5.9, 4.0];

describe('warmth of the soil', () => {
  test('Rothamsted’s air is a wave about 9.12 °C, 6.56 °C either way, warmest on 25 July', () => {
    const wave = soilTemperature.waveOfMonths(rothamstedAirC);
    expect(wave.meanC).toBeCloseTo(9.125, 9);
    expect(wave.amplitudeC).toBeCloseTo(6.56, 2);
    expect(Math.round(wave.warmestDayOfYear)).toBe(206);
  });

  test('the deeper, the smaller and the later the wave', () => {
    const wave = soilTemperature.waveOfMonths(rothamstedAirC);
    const warmest = [0, 0.5, 1, 2].map((depthM) => {
      const year = Array.from({ length: 365 }, (_, day) => soilTemperature.waveTemperatureC(wave, depthM, day));
      return { peakC: Math.max(...year), day: year.indexOf(Math.max(...year)) };
    });
    warmest.slice(1).forEach((deeper, at) => {
      expect(deeper.peakC).toBeLessThan(warmest[at]?.peakC ?? 0);
      expect(deeper.day).toBeGreaterThan(warmest[at]?.day ?? 0);
    });
  });

  test('bare ground is warmer than covered in summer and colder in winter', () => {
    const step = (airC: number, coverShare: number) =>
      soilTemperature.stepSoilTemperatureC(airC, { airC, yearMeanC: 9, coverShare });
    expect(step(20, 0)).toBeGreaterThan(step(20, 1));
    expect(step(1, 0)).toBeLessThan(step(1, 1));
    expect(step(20, 1)).toBe(20);
  });

  test('the default factors are those the Rothamsted checks ran with', () => {
    expect([soilTemperature.bareGroundFactor, soilTemperature.dailyLagFactor]).toEqual([0.12, 0.25]);
  });
});
