/** One working out of a farm's supply: lots, boxes filled at typical, low and high yields, and what each season was asked for. */

import type { BoxPromise } from '@leywright/book';
import { dayNumber } from '@leywright/measures';
import type { SupplyInput } from '../plan/inputs.ts';
import type { CropNeed } from '../plan/supply.ts';
import { cropNeeds } from '../promise/crop-need.ts';
import { type Asked, askedOfCrops } from '../promise/week-asks.ts';
import { type Filled, fillBoxes } from './fill.ts';
import { type Lot, lotsOf } from './lot.ts';
import { axisAround, type WeekAxis } from './week-axis.ts';

export interface SupplyRun {
  readonly input: SupplyInput;
  readonly promise: BoxPromise;
  readonly axis: WeekAxis;
  readonly lots: readonly Lot[];
  readonly typ: Filled;
  readonly low: Filled;
  readonly high: Filled;
  readonly asked: Asked;
  readonly needs: readonly CropNeed[];
  /** First week of the year in focus on the axis, and the first after it. */
  readonly fromWeek: number;
  readonly toWeek: number;
  /** What a place on the axis is less than the plan's own week. */
  readonly planOffsetWeeks: number;
}

const noPromise: BoxPromise = {
  sizes: [],
  itemsPerBox: null,
  packWeekday: 4,
  from: null,
  to: null,
  closedWeeks: [],
  closedEveryYear: [],
  movedPackDays: [],
  slots: [],
  needs: [],
  boxWeeksPerYear: null,
};

/** A farm without a promise still has lots, and what goes into its stores. */
export function supplyRun(input: SupplyInput): SupplyRun {
  const promise = input.farm.promise ?? noPromise;
  const axis = axisAround(input.year);
  const lots = lotsOf(input, axis);
  const filled = (bounds: 'low' | 'typ' | 'high') => fillBoxes({ input, promise, axis, lots, bounds });
  const typ = filled('typ');
  const asked = askedOfCrops(typ);
  const years = Array.from({ length: axis.weeks }, (_, week) => Number(axis.nameOf(week).slice(0, 4)));
  return {
    input,
    promise,
    axis,
    lots,
    typ,
    low: filled('low'),
    high: filled('high'),
    asked,
    needs: cropNeeds(input, typ, asked, input.year),
    fromWeek: years.indexOf(input.year),
    toWeek: years.lastIndexOf(input.year) + 1,
    planOffsetWeeks: (axis.firstDay - firstDayOf(input)) / 7,
  };
}

function firstDayOf(input: SupplyInput): number {
  return dayNumber(input.horizon.firstMonday);
}
