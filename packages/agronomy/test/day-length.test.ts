import { dayLength } from '@leywright/agronomy';
import { describe, expect, test } from 'vitest';

describe('day length', () => {
  test('with the sun’s upper edge and refraction is longer by a tenth to three tenths of an hour than without, from the equator to 55°', () => {
    for (const lat of [-55, -45, -20, 0, 20, 45, 52, 55]) {
      for (let day = 1; day <= 365; day += 7) {
        const difference =
          dayLength.dayLengthH(lat, day) - dayLength.dayLengthH(lat, day, dayLength.dawnDepthDeg.centreOfSun);
        expect(difference, `${lat}° on day ${day}`).toBeGreaterThan(0.11);
        expect(difference, `${lat}° on day ${day}`).toBeLessThan(0.3);
      }
    }
  });

  test('keeps within half an hour of FAO-56’s, whose declination runs a day or two behind round the equinoxes', () => {
    for (const lat of [-55, -20, 0, 20, 52, 55]) {
      for (let day = 1; day <= 365; day += 7)
        expect(Math.abs(dayLength.dayLengthH(lat, day) - dayLength.dayLengthFaoH(lat, day))).toBeLessThan(0.5);
    }
  });

  test('at any latitude on any day it lies within 0 and 24 hours', () => {
    for (let lat = -90; lat <= 90; lat += 5)
      for (let day = 1; day <= 366; day += 3) {
        const hours = dayLength.dayLengthH(lat, day);
        expect(hours).toBeGreaterThanOrEqual(0);
        expect(hours).toBeLessThanOrEqual(24);
      }
  });

  test('at 52° the day is under ten hours from the end of October to the middle of February; nearer the equator never', () => {
    const span = dayLength.shortDaySpan(52);
    expect(span?.firstDayOfYear).toBeGreaterThanOrEqual(296); // 23 October
    expect(span?.firstDayOfYear).toBeLessThanOrEqual(305); // 1 November
    expect(span?.lastDayOfYear).toBeGreaterThanOrEqual(40);
    expect(span?.lastDayOfYear).toBeLessThanOrEqual(50);
    expect(dayLength.shortDaySpan(20)).toBeNull();
  });

  test('south of the equator the short days are those of June', () => {
    const span = dayLength.shortDaySpan(-43.5);
    expect(span?.firstDayOfYear).toBeGreaterThan(110);
    expect(span?.lastDayOfYear).toBeLessThan(250);
    expect(dayLength.dayLengthH(-43.5, 172)).toBeLessThan(10);
  });
});
