import { evapotranspiration, radiation, vapourPressure } from '@leywright/agronomy';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { expectPrinted } from './expect-printed.ts';

const { referenceEvapotranspiration } = evapotranspiration;
const uccle = { latDeg: 50.8, elevationM: 100 };

describe('reference evapotranspiration', () => {
  test('of Uccle on 6 July agrees with FAO-56 example 18 (3.9 mm; possible sunshine 16.1 h)', () => {
    const day = referenceEvapotranspiration(
      {
        dayOfYear: 187,
        tMaxC: 21.5,
        tMinC: 12.3,
        rhMaxPct: 84,
        rhMinPct: 63,
        windMS: 10 / 3.6,
        windHeightM: 10,
        sunH: 9.25,
      },
      uccle,
    );
    expectPrinted(day.etoMm, '3.9');
    expectPrinted(day.possibleSunH, '16.1');
    expectPrinted(day.solarMjM2, '22.1'); // printed 22.07
    expectPrinted(day.vapourKpa, '1.41'); // printed 1.409
    expect(day).toMatchObject({ humidityRung: 'rh-max-and-min', radiationRung: 'sunshine', windRung: 'measured' });
  });

  test.each([
    [{ vapourKpa: 1.2, dewPointC: 5 }, 'vapour-pressure'],
    [{ dewPointC: 9, rhMaxPct: 90, rhMinPct: 50 }, 'dew-point'],
    [{ rhMaxPct: 90, rhMinPct: 50 }, 'rh-max-and-min'],
    [{ rhMaxPct: 90, rhMeanPct: 70 }, 'rh-max'],
    [{ rhMeanPct: 70 }, 'rh-mean'],
    [{}, 'night-minimum'],
  ])('takes the best of what is known of humidity: %o → %s', (known, rung) => {
    expect(referenceEvapotranspiration({ dayOfYear: 180, tMaxC: 20, tMinC: 10, ...known }, uccle).humidityRung).toBe(
      rung,
    );
  });

  test('guessed radiation is never brighter than a clear sky, and brighter on a coast than inland at the same range', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 366 }),
        fc.double({ min: -10, max: 25, noNaN: true }),
        fc.double({ min: 0, max: 25, noNaN: true }),
        (dayOfYear, tMinC, range) => {
          const day = { dayOfYear, tMinC, tMaxC: tMinC + range };
          const [inland, coast] = [
            referenceEvapotranspiration(day, uccle),
            referenceEvapotranspiration(day, { ...uccle, coast: true }),
          ];
          expect(inland.solarMjM2).toBeLessThanOrEqual(inland.clearSkyMjM2);
          expect(coast.solarMjM2).toBeGreaterThanOrEqual(inland.solarMjM2);
          expect(inland.etoMm).toBeGreaterThanOrEqual(0);
        },
      ),
    );
  });

  test('a drier or windier day never asks for less, nor a brighter one in the growing months', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 366 }),
        fc.double({ min: 0.4, max: 0.9, noNaN: true }),
        fc.double({ min: 0, max: 0.1, noNaN: true }),
        (dayOfYear, share, more) => {
          const at = (vapourKpa: number, sun: number, windMS = 2) =>
            referenceEvapotranspiration(
              {
                dayOfYear,
                tMaxC: 22,
                tMinC: 12,
                windMS,
                vapourKpa,
                sunH: sun * radiation.sunHoursPossible(uccle.latDeg, dayOfYear),
              },
              uccle,
            ).etoMm;
          // Drier air also lets more warmth out to the sky, but at these temperatures its thirst counts for more.
          expect(at(share, share)).toBeGreaterThanOrEqual(at(share + more, share) - 1e-9);
          expect(at(share, share, 2 + 10 * more)).toBeGreaterThanOrEqual(at(share, share) - 1e-9);
          // In winter a clear sky loses more by night than its low sun brings: there a bright day may ask for less.
          if (dayOfYear > 90 && dayOfYear < 270)
            expect(at(share, share + more)).toBeGreaterThanOrEqual(at(share, share) - 1e-9);
        },
      ),
    );
  });

  test('at the poles in the dark of winter it is a number, and nothing is lost to a sun that is not there', () => {
    const night = referenceEvapotranspiration(
      { dayOfYear: 1, tMaxC: -10, tMinC: -20, sunH: 0 },
      { latDeg: 80, elevationM: 0 },
    );
    expect(night.raMjM2).toBe(0);
    expect(Number.isFinite(night.etoMm)).toBe(true);
    expect(radiation.solarFromSunshineMjM2(0, 0, 0)).toBe(0);
  });

  test('humid air holds what its dew point says: 100 % when they meet', () => {
    expect(vapourPressure.relativeHumidityPct(10, 10)).toBe(100);
    expect(vapourPressure.relativeHumidityPct(10, 12)).toBe(100);
    expect(vapourPressure.relativeHumidityPct(20, 10)).toBeCloseTo(52.5, 0);
  });
});
