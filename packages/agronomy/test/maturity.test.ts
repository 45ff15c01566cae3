import { climate, dailyNormals, maturity, reference, thermal, weather } from '@leywright/agronomy';
import { addDays, asDay, daysBetween } from '@leywright/measures';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';

/** Mean temperature of central England 1991-2020 by month, recalled, on which the derived sums of the crops table were made (reference/README.md). */
const centralEnglandC = [4.7, 5.0, 6.7, 9.0, 11.9, 14.7, 16.8, 16.5, 14.1, 10.8, 7.4, 5.0];
const station = { ...climate.climateNear(52.5, -1.5).station, tMaxC: centralEnglandC, tMinC: centralEnglandC };
const series = weather.weatherFor(
  { from: asDay('2027-01-01'), to: asDay('2029-12-31') },
  [],
  dailyNormals.dailyNormals(station),
);
const sumsFor = (cropId: string) => {
  const needed = maturity.maturitySum(cropId);
  return needed === null ? null : thermal.thermalSums(series, { baseC: needed.baseC });
};

describe('maturity', () => {
  test('of maincrop carrots sown on 10 May comes after their middle days, at the temperatures the sums were made with', () => {
    const crop = reference.crops.get('carrot-maincrop');
    if (crop?.sowOutFrom == null || crop.sowOutTo == null) throw new Error('carrots have a sowing window');
    const middle = addDays(
      asDay(`2027-${crop.sowOutFrom}`),
      Math.round(daysBetween(asDay(`2027-${crop.sowOutFrom}`), asDay(`2027-${crop.sowOutTo}`)) / 2),
    );
    const ready = maturity.maturityOf('carrot-maincrop', middle, sumsFor('carrot-maincrop'));
    expect(ready.by).toBe('thermal-time');
    // The table rounds sums to 10 °C d, which is a day in autumn; months were straight lines there and a smooth curve here.
    expect(Math.abs(daysBetween(middle, ready.ready) - (crop.dtmLowDays + crop.dtmHighDays) / 2)).toBeLessThanOrEqual(
      4,
    );
  });

  test('planted later is never ready earlier, and nothing is ready before it is planted', () => {
    fc.assert(
      fc.property(fc.constantFrom(...reference.crops.keys()), fc.nat(240), fc.nat(60), (cropId, from, later) => {
        const started = addDays(asDay('2027-03-01'), from);
        const [first, second] = [
          maturity.maturityOf(cropId, started, sumsFor(cropId)),
          maturity.maturityOf(cropId, addDays(started, later), sumsFor(cropId)),
        ];
        expect(first.ready > started).toBe(true);
        expect(first.standsUntil >= first.ready).toBe(true);
        // Crops that are picked by the calendar jump to the next year's window when the year turns.
        if (first.by !== 'window' && second.by === first.by) expect(second.ready >= first.ready).toBe(true);
      }),
    );
  });

  test('of purple sprouting planted in July is its window of the next spring', () => {
    const ready = maturity.maturityOf('broccoli-purple-sprouting', asDay('2027-07-05'), null);
    expect(ready).toMatchObject({ by: 'window' });
    expect(ready.ready.slice(0, 4)).toBe('2028');
  });

  test('goes by days where the weather of the span ends before the sum is reached', () => {
    const crop = reference.crops.get('cabbage-autumn');
    const late = maturity.maturityOf('cabbage-autumn', asDay('2029-12-01'), sumsFor('cabbage-autumn'));
    expect(late.by).toBe('days');
    expect(daysBetween(asDay('2029-12-01'), late.ready)).toBe(
      Math.round(((crop?.dtmLowDays ?? 0) + (crop?.dtmHighDays ?? 0)) / 2),
    );
  });
});
