/** Supply and work with their findings, from the ground and the farm's promise. */
import { supplyFindings } from '../shortage/supply-findings.ts';
import { supplyOf } from '../supply/plan-supply.ts';
import { supplyRun } from '../supply/supply-run.ts';
import { workOf } from '../work/plan-work.ts';
import { workFindings } from '../work/work-findings.ts';
import type { Finding } from './finding.ts';
import type { SupplyInput } from './inputs.ts';
import type { Supply } from './supply.ts';
import type { Work } from './work.ts';

export interface SupplyStage {
  readonly supply: Supply | null;
  readonly work: Work;
  readonly findings: readonly Finding[];
}

/** Worked out in one run, so that what is cut, boxed and worked at are the same kilos. */
export function supplyStage(input: SupplyInput): SupplyStage {
  const run = supplyRun(input);
  const supply = input.farm.promise === null ? null : supplyOf(run);
  const work = workOf(run);
  return { supply, work, findings: [...supplyFindings(run, supply), ...workFindings(work, input.today)] };
}
