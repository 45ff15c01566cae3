/**
 * An entry of the book: made once, never changed. Its envelope says who, when done, when entered, when received; its body says
 * what. Corrections are new entries that name the old one (`amends`).
 */
import type { Day, DeviceId, EntryId, FarmId, PersonId } from '@leywright/measures';
import type { OrganismMark, Span } from '../farm/land.ts';
import type { SaleUnit } from '../farm/promise.ts';
import type { StandEnd, StandKind } from '../farm/stand.ts';
import type { GoodsBody } from './goods.ts';

/** Tables of the farm that a `set` entry writes a row of; `rotation`, `promise` and `about` have one row each. */
export const subjects = [
  'about',
  'fields',
  'plots',
  'parts',
  'features',
  'stands',
  'rotation',
  'rests',
  'promise',
  'crops',
  'prices',
  'stores',
  'storeLosses',
  'people',
  'absences',
  'ownJobs',
  'seedLots',
  'seedOffers',
  'seedAuthorisations',
  'soilSamples',
  'weather',
  'marks',
  'aliases',
] as const;
export type Subject = (typeof subjects)[number];

/** What may be seen in the field. */
export const seenKinds = [
  'pest',
  'disease',
  'weed',
  'natural-enemy',
  'soil',
  'bird',
  'worm',
  'water',
  'damage',
] as const;
export type SeenKind = (typeof seenKinds)[number];

export type EntryBody =
  /** Describes the farm: the row `key` of `subject` is `value` from now on; null takes the row away. */
  | { readonly kind: 'set'; readonly subject: Subject; readonly key: string; readonly value: unknown }
  | {
      readonly kind: 'sowing';
      readonly stand: string | null;
      readonly plot: string;
      readonly span: Span;
      readonly what: string;
      readonly standKind: StandKind;
      readonly variety: string | null;
      readonly seedLot: string | null;
      readonly seedKg: number | null;
      readonly undersownIn: string | null;
      readonly expectedTo: Day | null;
    }
  | {
      readonly kind: 'planting';
      readonly stand: string | null;
      readonly plot: string;
      readonly span: Span;
      readonly what: string;
      readonly variety: string | null;
      readonly plants: number | null;
      readonly expectedTo: Day | null;
    }
  | {
      readonly kind: 'harvest';
      readonly stand: string | null;
      readonly plot: string | null;
      readonly crop: string;
      readonly grossKg: number | null;
      readonly count: number | null;
      readonly unit: SaleUnit;
      readonly gradedOutShare: number | null;
      readonly into: 'box' | 'store' | 'sale' | 'own-use' | 'compost';
      readonly store: string | null;
    }
  | { readonly kind: 'stand-ended'; readonly stand: string; readonly by: StandEnd; readonly why: string | null }
  | { readonly kind: 'establishment'; readonly stand: string; readonly establishedShare: number }
  | { readonly kind: 'weighing'; readonly crop: string; readonly store: string | null; readonly kg: number }
  | { readonly kind: 'job-done'; readonly job: string; readonly share: number; readonly hours: number | null }
  | { readonly kind: 'organism-found'; readonly mark: OrganismMark }
  | {
      readonly kind: 'observation';
      readonly plot: string | null;
      readonly what: string;
      readonly count: number | null;
      readonly of: number | null;
      readonly words: string | null;
      /** What sort of thing was seen; entries of before it was asked do not say. */
      readonly seen?: SeenKind;
      /** The crop it was seen in. */
      readonly crop?: string;
    }
  | GoodsBody
  | { readonly kind: 'rotation-agreed'; readonly reasons: Readonly<Record<string, string>> }
  /** Strikes the amended entry out; a replacement is any other kind with `amends`. */
  | { readonly kind: 'struck-out' }
  /** Takes the body of the named entry away for good; its digest stays. */
  | { readonly kind: 'withdrawn'; readonly entry: string };

export type EntryKind = EntryBody['kind'];

export interface Entry {
  readonly v: 1;
  readonly id: EntryId;
  readonly farm: FarmId;
  readonly doneOn: Day;
  /** Local time of day HH:MM, when known. */
  readonly doneAt: string | null;
  /** UTC instant, ISO 8601, by the device's own clock. */
  readonly enteredAt: string;
  readonly by: PersonId;
  readonly device: DeviceId;
  readonly deviceSeq: number;
  readonly body: EntryBody | null;
  readonly amends: EntryId | null;
  readonly reason: string | null;
}

/** What the book adds on receipt. */
export interface Received {
  readonly receivedAt: string;
  readonly seq: number;
  readonly salt: string;
  readonly bodyDigest: string;
  readonly hash: string;
}

export interface ReceivedEntry extends Entry, Received {}
