/** Everything between the promise and the ground that is to be put right, each fault once. */
import type { Finding } from '../plan/finding.ts';
import type { Supply } from '../plan/supply.ts';
import type { SupplyRun } from '../supply/supply-run.ts';
import { boxFindings } from './box-findings.ts';
import { lacksOf } from './causes.ts';
import { groundSupplyFindings } from './ground-findings.ts';
import { reachFindings } from './reach-findings.ts';
import { storeFindings } from './store-findings.ts';
import { yieldFindings } from './yield-findings.ts';

export function supplyFindings(run: SupplyRun, supply: Supply | null): readonly Finding[] {
  if (supply === null) return yieldFindings(run);
  const lacks = lacksOf(run);
  const ground = groundSupplyFindings(run, lacks);
  return [
    ...boxFindings(run, lacks),
    ...ground,
    ...storeFindings(run, lacks),
    ...yieldFindings(run),
    ...reachFindings(run, supply.reach, ground),
  ];
}
