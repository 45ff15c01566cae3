/** The stages before supply, run for a farm that a test wrote. */
import type { Farm } from '@leywright/book';
import { asDay } from '@leywright/measures';
import { farmGround } from '../../src/ground/farm-findings.ts';
import { groundStages, makeGroundMemos } from '../../src/ground/ground-stages.ts';
import { makeContentKeys } from '../../src/memo/content-key.ts';
import type { SupplyInput } from '../../src/plan/inputs.ts';
import { supplyInput } from '../../src/plan/planner.ts';
import { horizonOf } from '../../src/season/horizon.ts';

export function inputOf(farm: Farm, today: string, year: number): SupplyInput {
  const wish = horizonOf({ today: asDay(today), year });
  const stages = groundStages(farm, { today: asDay(today), ...wish }, makeGroundMemos(makeContentKeys()));
  return supplyInput(farm, stages, farmGround(stages).ground);
}
