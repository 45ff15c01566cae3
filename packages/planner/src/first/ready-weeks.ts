/** In which weeks of a full year each crop of a first farm is there to be packed, from the field or a store, and how much of it: as the planner says. */
import type { BoxPromise, Farm } from '@leywright/book';
import { asDay, asId, asMonthDay, type CropId, type Day } from '@leywright/measures';
import { planFarm } from '../plan/planner.ts';
import type { Supply } from '../plan/supply.ts';

export interface Ready {
  /** ISO week numbers, 1 to 52. */
  readonly weeks: ReadonlySet<number>;
  /** What one year's harvest brings into boxes on the smallest plot, after grading, store and packing. */
  readonly packedKg: number;
}

/** So little that no store runs down: what is asked is when there is anything at all. */
const trialPortionKg = 0.0001;
/** Seldom does a whole harvest find its box: some is eaten by the weeks in store, some is never called for. */
const boxedShare = 0.8;

export function readyWeeks(farm: Farm, crops: readonly string[], firstYear: number): ReadonlyMap<string, Ready> {
  const year = firstYear + 1;
  const { supply } = planFarm({ ...farm, promise: trialPromise(crops) }, { today: firstDayOf(firstYear), year });
  if (supply === null) throw new Error('A farm with a promise has a supply.');
  const smallest = smallestShare(farm);
  return new Map(
    crops.map((crop) => [crop, { weeks: weeksOf(supply, crop), packedKg: packedKg(supply, crop, year) * smallest }]),
  );
}

function firstDayOf(year: number): Day {
  return asDay(`${year}-01-01`);
}

function trialPromise(crops: readonly string[]): BoxPromise {
  const window = { kind: 'yearly', from: asMonthDay('01-01'), to: asMonthDay('12-31') } as const;
  return {
    sizes: [{ id: 'box', name: 'Box', households: 1 }],
    itemsPerBox: null,
    packWeekday: 4,
    from: null,
    to: null,
    closedWeeks: [],
    closedEveryYear: [],
    movedPackDays: [],
    slots: crops.map((crop) => ({
      id: crop,
      crops: [asId<CropId>(crop)],
      window,
      everyWeeks: 1,
      unit: 'kg',
      portions: { box: trialPortionKg },
    })),
    needs: [],
    boxWeeksPerYear: null,
  };
}

const wholeShare = 0.99;

function weeksOf(supply: Supply, crop: string): ReadonlySet<number> {
  const full = supply.boxes.filter((box) =>
    box.items.some((item) => item.crop === crop && item.boxesShare >= wholeShare),
  );
  return new Set(full.map((box) => Number(box.week.slice(6))).filter((week) => week <= 52));
}

function packedKg(supply: Supply, crop: string, year: number): number {
  const need = supply.needs.find((one) => one.crop === crop);
  const liftedKg = supply.harvests
    .filter((one) => one.crop === crop && one.from.startsWith(String(year)))
    .reduce((sum, one) => sum + one.kg.typ, 0);
  return liftedKg * (need?.keepShare ?? 1) * boxedShare;
}

/** Each year the crop stands on another plot; what the smallest brings can be promised every year. */
function smallestShare(farm: Farm): number {
  const areas = farm.plots.map((plot) => plot.grossM2);
  return Math.min(...areas) / Math.max(...areas);
}
