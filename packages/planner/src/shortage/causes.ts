/**
 * Why a place in the box goes empty, so that one fault is one finding: the nearest cause is told, and what follows from it is not told again.
 *
 * In this order: no yield is known; nothing of it is on the ground; there is too little ground; it could lie in a store and there is none; the store
 * ran out; else it is a matter of time: nothing is ready in those weeks.
 */
import type { CropNeed } from '../plan/supply.ts';
import { yieldSaid } from '../promise/known.ts';
import type { Missing } from '../promise/week-asks.ts';
import { keepsSomewhere } from '../store/keeping.ts';
import type { CropFlow } from '../supply/fill.ts';
import type { SupplyRun } from '../supply/supply-run.ts';

export type Cause =
  | 'no-yield-known'
  | 'crop-not-on-ground'
  | 'ground-too-small'
  | 'no-store-for-crop'
  | 'store-runs-out'
  | 'box-short';

export interface Lack extends Missing {
  readonly cause: Cause;
}

/** A few square metres either way are not a fault. */
export const enoughShare = 0.995;

/** Everything missing from the year's boxes, and later from what the year grows, with its cause. */
export function lacksOf(run: SupplyRun): readonly Lack[] {
  const { year } = run.input;
  const counted = run.asked.missing.filter(
    (lack) =>
      lack.week >= run.fromWeek && lack.boxesShare >= 0.005 && (lack.week < run.toWeek || lack.harvestYear === year),
  );
  return counted.map((lack) => ({ ...lack, cause: causeOf(run, lack) }));
}

function causeOf(run: SupplyRun, lack: Missing): Cause {
  const flow = run.typ.flows.get(lack.crop.id);
  if (flow === undefined) return 'box-short';
  const isOurs = lack.harvestYear >= run.input.year;
  if (yieldSaid(lack.crop) === null) return 'no-yield-known';
  const lots = flow.lots.filter((lot) => lot.lot.harvestYear === lack.harvestYear);
  if (lots.length === 0) return isOurs ? 'crop-not-on-ground' : 'box-short';
  const need = run.needs.find((one) => one.crop === lack.crop.id && one.harvestYear === lack.harvestYear);
  if (isOurs && need !== undefined && isTooSmall(need) && lots.some((lot) => lot.lot.recordedKg === null))
    return 'ground-too-small';
  if (flow.keeping === null && isAfterField(flow, lack) && keepsSomewhere(lack.crop, weeksAfterField(flow, lack)))
    return 'no-store-for-crop';
  const stock = flow.stocks.find((one) => one.harvestYear === lack.harvestYear);
  const everFull = stock?.asks.some((ask) => ask.gaveKg > 0 && ask.missingShare === 0 && ask.week < lack.week) ?? false;
  return everFull ? 'store-runs-out' : 'box-short';
}

export function isTooSmall(need: CropNeed): boolean {
  return need.needM2 !== null && need.plannedM2 < need.needM2 * enoughShare;
}

function lastFieldWeek(flow: CropFlow, lack: Missing): number {
  const ends = flow.lots
    .filter((lot) => lot.lot.harvestYear === lack.harvestYear)
    .map(({ lot }) => Math.min(lot.lastWeek, lot.readyWeek + lot.readyShare.length + lot.standingWeeks));
  return Math.max(...ends);
}

function isAfterField(flow: CropFlow, lack: Missing): boolean {
  return weeksAfterField(flow, lack) > 0;
}

function weeksAfterField(flow: CropFlow, lack: Missing): number {
  return lack.week - lastFieldWeek(flow, lack);
}
