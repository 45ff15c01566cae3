/** The whole plan of a farm, made afresh or with what an earlier plan already worked out. */
import type { Farm } from '@leywright/book';
import { bookFindings } from '../faults/book-findings.ts';
import { findingsInOrder } from '../faults/in-order.ts';
import { type FarmGround, farmGround } from '../ground/farm-findings.ts';
import { type GroundMemos, type GroundStages, groundStages, makeGroundMemos } from '../ground/ground-stages.ts';
import { makeContentKeys } from '../memo/content-key.ts';
import { type Memo, makeMemo } from '../memo/memo.ts';
import { horizonOf } from '../season/horizon.ts';
import { headlineFigures } from './headline.ts';
import type { SupplyInput } from './inputs.ts';
import type { Plan, PlanWish } from './plan.ts';
import { type SupplyStage, supplyStage } from './supply-stage.ts';

/** Keeps what earlier plans worked out; gives the same plan as `planFarm`, bit for bit. */
export interface Planner {
  readonly plan: (farm: Farm, wish: PlanWish) => Plan;
}

interface Memos {
  readonly ground: GroundMemos;
  readonly farms: Memo<FarmGround>;
  readonly supplies: Memo<SupplyStage>;
}

export function makePlanner(): Planner {
  const memos: Memos = {
    ground: makeGroundMemos(makeContentKeys()),
    farms: makeMemo(8),
    supplies: makeMemo(8),
  };
  return { plan: (farm, wish) => planWith(farm, wish, memos) };
}

/** The plan of a farm for a day and a year, worked out from nothing. */
export function planFarm(farm: Farm, wish: PlanWish): Plan {
  return makePlanner().plan(farm, wish);
}

function planWith(farm: Farm, wish: PlanWish, memos: Memos): Plan {
  const { year, horizon } = horizonOf(wish);
  const stages = groundStages(farm, { today: wish.today, year, horizon }, memos.ground);
  const { ground, findings } = memos.farms.get(farmKey(farm, stages, memos), () => farmGround(stages));
  const input = supplyInput(farm, stages, ground);
  const supplied = memos.supplies.get(supplyKey(farm, stages, memos), () => supplyStage(input));
  const all = findingsInOrder([...findings, ...supplied.findings, ...bookFindings(wish.book ?? [])], farm);
  return {
    farm: { id: farm.about.id, name: farm.about.name, sample: farm.about.sample },
    today: wish.today,
    year,
    horizon,
    agreed: agreedOf(farm),
    climate: stages.setting.climate.used,
    ground,
    nitrogen: stages.plots.flatMap((plot) => plot.nitrogen),
    fertility: stages.plots.map((plot) => plot.fertility),
    supply: supplied.supply,
    work: supplied.work,
    findings: all,
    headline: headlineFigures(farm, all, supplied.supply),
  };
}

export function supplyInput(farm: Farm, { setting }: GroundStages, ground: SupplyInput['ground']): SupplyInput {
  return {
    farm,
    ground,
    today: setting.today,
    year: setting.year,
    horizon: setting.horizon,
    climate: setting.climate,
    crops: setting.crops,
  };
}

function agreedOf({ rotation }: Farm): Plan['agreed'] {
  return rotation === null ? { state: 'none', on: null } : { state: rotation.state, on: rotation.agreedOn };
}

/** Plots with their order and rings, and stands that lie on no plot: what the farm's own findings read beyond the plots' stages. */
function farmKey(farm: Farm, stages: GroundStages, { ground: { keys } }: Memos): string {
  const known = new Set(farm.plots.map((plot) => plot.id as string));
  const strays = farm.stands.filter((stand) => !known.has(stand.plot));
  return [stages.key, keys.of(farm.plots), keys.of(farm.marks), keys.of(strays)].join('|');
}

/** Supply, store and work read the ground and all tables of the farm that the ground does not. */
function supplyKey(farm: Farm, stages: GroundStages, memos: Memos): string {
  const { keys } = memos.ground;
  const {
    promise,
    prices,
    stores,
    storeLosses,
    people,
    absences,
    ownJobs,
    harvests,
    weighings,
    jobsDone,
    features,
    aliases,
    about,
  } = farm;
  const tables = [
    promise,
    prices,
    stores,
    storeLosses,
    people,
    absences,
    ownJobs,
    harvests,
    weighings,
    jobsDone,
    features,
    aliases,
    about,
  ].map((table) => keys.of(table));
  const yields = farm.stands.filter((stand) => stand.yieldTHa !== null).map((stand) => `${stand.id}:${stand.yieldTHa}`);
  return [farmKey(farm, stages, memos), ...tables, yields.join(',')].join('|');
}
