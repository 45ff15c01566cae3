/** What a person says they did or saw, as the page hands it to the worker. */
import type { SeenKind } from '@leywright/book';

export const didVerbs = ['lifted', 'weeded', 'watered', 'mowed', 'covered', 'cleared', 'other'] as const;
export type DidVerb = (typeof didVerbs)[number];

export type RecordWish =
  /** A planned job, or the pieces of one, is done. Kilos where something was lifted. */
  | { readonly kind: 'jobs'; readonly jobs: readonly string[]; readonly kg: number | null }
  | {
      readonly kind: 'did';
      readonly verb: DidVerb;
      readonly plot: string | null;
      readonly crop: string | null;
      readonly kg: number | null;
      readonly hours: number | null;
      readonly words: string | null;
    }
  | {
      readonly kind: 'saw';
      readonly seen: SeenKind;
      readonly plot: string | null;
      readonly crop: string | null;
      readonly what: string;
      readonly count: number | null;
      readonly of: number | null;
      readonly words: string | null;
    };

/** A record as it can be shown: its sentence, when, and whether it is here alone. */
export interface ToldRecord {
  /** Ids of its entries; a job and what was lifted are recorded together. */
  readonly entries: readonly string[];
  readonly sentence: string;
  readonly doneOn: string;
  readonly doneAt: string | null;
  /** Not yet sent. */
  readonly waits: boolean;
  readonly plot: string | null;
  /** What it says it was, for a correction; null where only striking out makes sense. */
  readonly kg: number | null;
  /** How it was corrected: the reason; null when it was not. */
  readonly corrected: string | null;
  readonly struckOut: boolean;
}

export type Correction =
  | { readonly kind: 'strike-out'; readonly reason: string }
  | { readonly kind: 'kg'; readonly kg: number; readonly reason: string };
