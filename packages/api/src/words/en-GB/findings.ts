import type { FindingCode } from '@leywright/planner';
import type { FindingWords } from '../word-kinds.ts';
import { bookFindingWords } from './findings-book.ts';
import { groundFindingWords } from './findings-ground.ts';
import { promiseFindingWords } from './findings-promise.ts';

/** British English for every code of a finding. Figures come from the finding and from its place. */
export const findingWords: Readonly<Record<FindingCode, FindingWords>> = {
  ...groundFindingWords,
  ...promiseFindingWords,
  ...bookFindingWords,
};
