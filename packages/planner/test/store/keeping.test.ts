import type { Farm } from '@leywright/book';
import { boxPromise, boxSize, farmWith, plot, slot, stand, storePlace } from '@leywright/farm-kit';
import { asId, type CropId } from '@leywright/measures';
import { describe, expect, test } from 'vitest';
import { planSupply } from '../../src/supply/plan-supply.ts';
import { inputOf } from '../supply/inputs.ts';

const carrots = 'carrot-maincrop';

/** Far more carrots than are promised, lifted in October 2027; none sown in 2028. */
function carrotFarm(lossShareWeek: number | null): Farm {
  return farmWith({
    plots: [plot('A', { grossM2: 4000 })],
    stands: [stand('a', carrots, ['2027-05-20', '2027-10-20'])],
    stores: [storePlace('cold', 'cold', [carrots])],
    storeLosses: lossShareWeek === null ? [] : [{ crop: asId<CropId>(carrots), from: null, lossShareWeek }],
    promise: boxPromise({ sizes: [boxSize('box', 20)], slots: [slot([carrots], { portions: { box: 0.5 } })] }),
  });
}

const weeksWithCarrots = (farm: Farm, year: number) =>
  (planSupply(inputOf(farm, '2027-06-01', year))?.boxes ?? [])
    .filter((box) => box.items.some((item) => item.crop === carrots && item.boxesShare > 0.99))
    .map((box) => box.week);

describe('how long a lot lies', () => {
  test('carrots lifted in October under a farm’s own losses fill boxes into the next summer, and none a year after', () => {
    const weeks = weeksWithCarrots(carrotFarm(0.006), 2028);
    expect(weeks).toContain('2028-w25');
    expect(weeks.filter((week) => week > '2028-w42')).toEqual([]);
  });

  test('without own losses the table’s life ends them: 28 weeks in a cold store, the middle of 24 and 32 (storage.csv, common practice)', () => {
    const weeks = weeksWithCarrots(carrotFarm(null), 2028);
    expect(weeks).toContain('2028-w14');
    expect(weeks.filter((week) => week > '2028-w20')).toEqual([]);
  });
});
