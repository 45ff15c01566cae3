/** From the promise to ground, harvest, store and boxes, for the year in focus. */
import { dayAt } from '@leywright/measures';
import type { SupplyInput } from '../plan/inputs.ts';
import type { StandHarvest, Supply } from '../plan/supply.ts';
import { householdsOf } from '../promise/demand.ts';
import { reachOf } from '../reach/reach.ts';
import { storeRuns } from '../store/store-run.ts';
import { boxYear } from './box-year.ts';
import { hungryGap } from './hungry-gap.ts';
import type { StandingLot } from './standing.ts';
import { type SupplyRun, supplyRun } from './supply-run.ts';

/** Null for a farm that has promised nothing. */
export function planSupply(input: SupplyInput): Supply | null {
  return input.farm.promise === null ? null : supplyOf(supplyRun(input));
}

export function supplyOf(run: SupplyRun): Supply {
  const boxes = boxYear(run);
  return {
    year: run.input.year,
    boxWeeks: boxWeeksOf(run, boxes),
    households: householdsOf(run.promise),
    needs: run.needs,
    harvests: harvestsOf(run),
    stores: storeRuns(run.typ, run.asked, { from: run.fromWeek, to: run.toWeek }),
    boxes,
    hungryGap: hungryGap(boxes, run.input.farm.about.place.latDeg),
    reach: reachOf(run),
  };
}

/** As stated by a farm that gives only their number, else counted. */
function boxWeeksOf({ promise }: SupplyRun, boxes: Supply['boxes']): number {
  return promise.slots.length === 0 && promise.boxWeeksPerYear !== null
    ? promise.boxWeeksPerYear
    : boxes.filter((box) => box.closed === null).length;
}

/** Harvests that reach into the year in focus. */
function harvestsOf(run: SupplyRun): readonly StandHarvest[] {
  const first = run.axis.dayOf(run.fromWeek);
  const end = run.axis.dayOf(run.toWeek);
  const lots = [...run.typ.flows.values()].flatMap((flow) => flow.lots);
  return lots
    .filter(({ lot }) => lot.areaM2 > 0 && lot.window.readyFromDay < end && lot.window.standsUntil > first)
    .map((lot) => standHarvest(run, lot));
}

function standHarvest(run: SupplyRun, standing: StandingLot): StandHarvest {
  const { lot } = standing;
  const weeks = [...standing.cut.keys()];
  const fromWeek = weeks.length === 0 ? lot.readyWeek : Math.min(...weeks);
  const length = weeks.length === 0 ? 0 : Math.max(...weeks) - fromWeek + 1;
  const to =
    weeks.length === 0
      ? lot.window.standsUntil - 1
      : Math.min(run.axis.dayOf(fromWeek + length) - 1, Math.max(lot.window.standsUntil - 1, lot.window.readyFromDay));
  return {
    stand: lot.stand,
    crop: lot.crop.id,
    plot: lot.plot,
    from: dayAt(lot.window.readyFromDay),
    to: dayAt(Math.max(to, lot.window.readyFromDay)),
    kg: lot.kg,
    recordedKg: lot.recordedKg,
    basis: lot.basis,
    fromWeek: fromWeek + run.planOffsetWeeks,
    weekKg: Array.from({ length }, (_, at) => standing.cut.get(fromWeek + at) ?? 0),
    uncutKg: standing.uncutKg,
    uncutWhy: standing.uncutWhy,
  };
}
