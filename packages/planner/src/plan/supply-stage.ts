/** Supply and work with their findings, from the ground and the farm's promise. */

import { planSupply } from '../supply/plan-supply.ts';
import type { Finding } from './finding.ts';
import type { SupplyInput } from './inputs.ts';
import type { Supply } from './supply.ts';
import type { Work } from './work.ts';

export interface SupplyStage {
  readonly supply: Supply | null;
  readonly work: Work;
  readonly findings: readonly Finding[];
}

export function supplyStage(input: SupplyInput): SupplyStage {
  return { supply: planSupply(input), work: { year: input.year, jobs: [], weeks: [], yearH: 0 }, findings: [] };
}
