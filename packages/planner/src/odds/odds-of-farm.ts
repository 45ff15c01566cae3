/** The odds of a farm's own plan for the year in focus. */
import type { Farm } from '@leywright/book';
import { farmGround } from '../ground/farm-findings.ts';
import { groundStages, makeGroundMemos } from '../ground/ground-stages.ts';
import { makeContentKeys } from '../memo/content-key.ts';
import type { PlanWish } from '../plan/plan.ts';
import { supplyInput } from '../plan/planner.ts';
import { horizonOf } from '../season/horizon.ts';
import { type SupplyRun, supplyRun } from '../supply/supply-run.ts';
import type { BoxOdds } from './box-odds.ts';
import { type OddsWish, oddsOfSeason, usualOdds } from './count-odds.ts';
import { seasonOfRun } from './season-of-run.ts';

/** Null for a farm that promises nothing by the week. */
export function farmOdds(farm: Farm, wish: PlanWish, odds: OddsWish = usualOdds): BoxOdds | null {
  if (farm.promise === null || farm.promise.slots.length === 0) return null;
  return oddsOfSeason(seasonOfRun(runOfFarm(farm, wish)), odds);
}

/** The supply of a farm worked out afresh. */
export function runOfFarm(farm: Farm, wish: PlanWish): SupplyRun {
  const { year, horizon } = horizonOf(wish);
  const stages = groundStages(farm, { today: wish.today, year, horizon }, makeGroundMemos(makeContentKeys()));
  return supplyRun(supplyInput(farm, stages, farmGround(stages).ground));
}
