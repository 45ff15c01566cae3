/** What a part of the pack is, and what all parts look at. */
import type { Farm, ReceivedEntry } from '@leywright/book';
import type { Day } from '@leywright/measures';
import type { GoodsChain, Plan } from '@leywright/planner';

export interface PackPart {
  readonly number: number;
  readonly title: string;
  /** What the part says in a sentence, before its table. */
  readonly sentence: string;
  readonly columns: readonly PackColumn[];
  readonly rows: readonly (readonly string[])[];
}

export interface PackColumn {
  readonly head: string;
  /** Share of the page's width. */
  readonly widthShare: number;
  readonly isNumber?: boolean;
}

export interface Pack {
  readonly farm: string;
  readonly sample: boolean;
  readonly year: number;
  readonly knownOn: Day;
  readonly parts: readonly PackPart[];
}

export interface PackAsk {
  readonly farm: Farm;
  readonly entries: readonly ReceivedEntry[];
  readonly plan: Plan;
  readonly year: number;
  readonly knownOn: Day;
  /** Traces the inspector chose, as `run/…` or `lot/…`; left out, two are taken from the year. */
  readonly traces?: readonly string[];
}

/** What all parts look at. */
export interface PackView extends PackAsk {
  readonly known: readonly ReceivedEntry[];
  readonly chain: GoodsChain;
  readonly from: Day;
  readonly to: Day;
  readonly cropName: (id: string) => string;
  readonly plotName: (id: string | null) => string;
}

export const notRecorded = 'not recorded';

/** A part before it has its number. */
export type PartOf = (view: PackView) => Omit<PackPart, 'number'>;

export function kilos(kg: number | null): string {
  return kg === null ? notRecorded : (Math.round(kg * 10) / 10).toLocaleString('en-GB');
}
