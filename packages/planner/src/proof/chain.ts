/**
 * The way of the goods through the farm, as its records tell it: lots, bins, packing runs, drops, and every flow of kilos between them.
 *
 * Holds   what is taken out of a mixed bin comes from all that lies in it, by share; no source is ever picked. What is taken beyond what was there has the
 *         source "not known", and is a missing link. Kilos are neither made nor lost between flows.
 */
import type { GoodsBody, GoodsStatus } from '@leywright/book';
import type { Day, IsoWeek } from '@leywright/measures';

/** Kilos of one lot; `lot` null = the records do not say where these came from. */
export interface Source {
  readonly lot: string | null;
  readonly kg: number;
}

export interface Lot {
  /** The harvest entry's id, or the batch's name for produce that was bought. */
  readonly id: string;
  /** "2026-018": year and number, in the order the book received them. */
  readonly label: string;
  readonly kind: 'harvest' | 'bought';
  readonly crop: string;
  readonly on: Day;
  readonly plot: string | null;
  readonly stand: string | null;
  readonly status: GoodsStatus;
  /** As lifted or delivered; null = nobody weighed it. */
  readonly grossKg: number | null;
  /** Counted in heads or bunches and turned into kilos by the crop's usual mass. */
  readonly isEstimated: boolean;
  readonly gradedOutKg: number;
  /** Cut for the boxes of its week; what of it no packing names is told apart from what lies in store. */
  readonly isForBox: boolean;
  readonly entry: string;
}

export const flowKinds = [
  'harvested',
  'bought',
  'boxes',
  'graded-out',
  'sale',
  'own-use',
  'gift',
  'seed',
  'compost',
  'loss',
  'counted-off',
] as const;
export type FlowKind = (typeof flowKinds)[number];

/** Kilos in (harvested, bought) or out. `counted-off`: what a count found missing; negative where there was more than the records say, also when more was taken than was there. */
export interface Flow {
  readonly kind: FlowKind;
  readonly on: Day;
  readonly crop: string;
  readonly kg: number;
  readonly sources: readonly Source[];
  readonly entry: string;
  readonly recipient: string | null;
  /** The packing run, for boxes. */
  readonly run: string | null;
}

export interface Run {
  readonly id: string;
  readonly on: Day;
  readonly week: IsoWeek;
  readonly size: string | null;
  readonly boxes: number;
  readonly items: readonly { readonly crop: string; readonly kg: number; readonly sources: readonly Source[] }[];
  readonly entries: readonly string[];
}

export interface Handing {
  readonly run: string;
  readonly on: Day;
  readonly round: string | null;
  readonly drop: string;
  readonly boxes: number;
  readonly entry: string;
}

export interface Bin {
  readonly id: string;
  readonly store: string | null;
  /** Everything that ever went in, and what lies there now. */
  readonly everKg: ReadonlyMap<string, number>;
  readonly nowKg: ReadonlyMap<string, number>;
}

export type Batch = Extract<GoodsBody, { kind: 'goods-in' }> & { readonly on: Day; readonly entry: string };

export interface Use {
  readonly batch: string;
  readonly plot: string;
  readonly on: Day;
  readonly amount: Batch['amount'];
  readonly entry: string;
}

export interface Sowing {
  readonly stand: string | null;
  readonly plot: string;
  readonly what: string;
  readonly on: Day;
  readonly variety: string | null;
  readonly seedLot: string | null;
  readonly entry: string;
}

export interface Touch {
  readonly plot: string;
  readonly on: Day;
  readonly kind: string;
  readonly what: string;
  readonly by: string;
  readonly entry: string;
}

export interface Hold {
  readonly what: string;
  readonly named: string;
  readonly from: Day;
  readonly to: Day | null;
  readonly why: string;
  readonly entry: string;
}

export const linkFaultCodes = [
  'harvest-without-plot',
  'harvest-without-stand',
  'harvest-not-weighed',
  'sowing-not-recorded',
  'seed-lot-not-recorded',
  'source-not-known',
  'batch-not-known',
  'run-not-recorded',
  'run-not-handed-over',
  'more-handed-over-than-packed',
  'statuses-mixed',
  'held-and-packed',
  'harvest-twice',
  'not-organic-packed',
] as const;
export type LinkFaultCode = (typeof linkFaultCodes)[number];

/** A link that is missing or wrong, with the entries it was seen on. */
export interface LinkFault {
  readonly code: LinkFaultCode;
  readonly on: Day;
  readonly named: string;
  readonly kg: number | null;
  readonly entries: readonly string[];
}

export interface GoodsChain {
  readonly lots: ReadonlyMap<string, Lot>;
  readonly leftKg: ReadonlyMap<string, number>;
  readonly bins: ReadonlyMap<string, Bin>;
  readonly runs: ReadonlyMap<string, Run>;
  readonly handings: readonly Handing[];
  readonly flows: readonly Flow[];
  readonly batches: ReadonlyMap<string, Batch>;
  readonly uses: readonly Use[];
  readonly sowings: readonly Sowing[];
  readonly touches: readonly Touch[];
  readonly holds: readonly Hold[];
  readonly faults: readonly LinkFault[];
}
