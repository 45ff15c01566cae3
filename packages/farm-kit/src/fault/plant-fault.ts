/** One fault for each code a finding can have, planted in the clean farm at a place that a seed chooses. */
import type { Farm } from '@leywright/book';
import { type FindingCode, findingCodes } from '@leywright/planner';
import { chanceFrom } from '../make/chance.ts';
import { bookFaults } from './book-faults.ts';
import { groundFaults } from './ground-faults.ts';
import type { Planted, Planter } from './planted.ts';
import { promiseFaults } from './promise-faults.ts';

/** A code without a planter does not compile. */
const planters: Readonly<Record<FindingCode, Planter>> = { ...groundFaults, ...promiseFaults, ...bookFaults };

export const faultCodes: readonly FindingCode[] = findingCodes;

/** The farm with that fault in, and the place where it is to be found. */
export function plantFault(code: FindingCode, farm: Farm, seed: number): Planted {
  return planters[code](farm, chanceFrom(seed));
}
