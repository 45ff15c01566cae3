/** Derivations of figures between the promise and the ground, by the first word of their id. */
import type { SupplyInput } from '../plan/inputs.ts';
import type { Why } from '../plan/why.ts';
import { type SupplyRun, supplyRun } from '../supply/supply-run.ts';
import { whyArea } from './why-area.ts';
import { whyBox } from './why-box.ts';
import { whyHours } from './why-hours.ts';
import { whyReach } from './why-reach.ts';
import { whySeed } from './why-seed.ts';
import { whyStore } from './why-store.ts';

export const supplyWhyTitles = ['area', 'seed', 'store', 'box', 'hours', 'reach'] as const;
export type SupplyWhyTitle = (typeof supplyWhyTitles)[number];

export const supplyDoubts = [
  'yield-of-the-table',
  'yield-is-an-average',
  'grading-inside-yield',
  'store-loss-recalled',
  'store-loss-own',
  'store-not-weighed',
  'seedbed-of-the-year',
  'emergence-of-the-table',
  'yields-all-low-or-all-high',
  'hours-of-the-table',
  'hours-all-low-or-all-high',
  'hours-leave-out',
  'hours-not-reckoned',
  'hours-as-given',
  'yields-as-planned',
] as const;
export type SupplyDoubt = (typeof supplyDoubts)[number];

type Deriver = (rest: readonly string[], runOf: (year: number | null) => SupplyRun) => Why | null;

const supplyWhys: Readonly<Record<SupplyWhyTitle, Deriver>> = {
  area: ([crop, year], runOf) => (crop === undefined ? null : whyArea(crop, runOf(yearIn(year)))),
  seed: ([crop, year], runOf) => (crop === undefined ? null : whySeed(crop, runOf(yearIn(year)))),
  store: ([crop, week], runOf) => (crop === undefined || week === undefined ? null : whyStore(crop, week, runOf(null))),
  box: ([week], runOf) => (week === undefined ? null : whyBox(week, runOf(yearIn(week)))),
  hours: ([week], runOf) => (week === undefined ? null : whyHours(week, runOf(yearIn(week)))),
  reach: ([year], runOf) => whyReach(runOf(yearIn(year))),
};

export function isSupplyFigure(family: string): family is SupplyWhyTitle {
  return Object.hasOwn(supplyWhys, family);
}

/** The derivation of one figure of promise, store, boxes, work or reach; null when there is no such figure. */
export function whySupply(input: SupplyInput, figureId: string): Why | null {
  const [family = '', ...rest] = figureId.split('/');
  if (!isSupplyFigure(family)) return null;
  const { fromYear, toYear } = input.horizon;
  const asked = rest.map(yearIn).find((year) => year !== null);
  if (asked !== undefined && (asked < fromYear || asked > toYear)) return null;
  return supplyWhys[family](rest, (year) => supplyRun(year === null ? input : { ...input, year }));
}

/** The year of a year or of a week. */
function yearIn(text: string | undefined): number | null {
  return text !== undefined && /^\d{4}(-w\d{2})?$/.test(text) ? Number(text.slice(0, 4)) : null;
}
