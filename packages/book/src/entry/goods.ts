/** Bodies of entries about goods: what came on the farm, where it went, what was moved, packed, handed over, counted and held. */
import type { IsoWeek } from '@leywright/measures';
import type { Span } from '../farm/land.ts';

export const goodsKinds = [
  'seed',
  'plants',
  'media',
  'compost',
  'mineral',
  'barrier',
  'mulch',
  'straw',
  'hired-machine',
  'packing',
  'produce',
  'other',
] as const;
export type GoodsKind = (typeof goodsKinds)[number];

export const goodsUnits = ['kg', 'l', 'm3', 'piece'] as const;
export type GoodsUnit = (typeof goodsUnits)[number];

export const goodsStatuses = ['organic', 'in-conversion', 'not-organic', 'unknown'] as const;
export type GoodsStatus = (typeof goodsStatuses)[number];

/** `stated`: the maker says on paper that nothing of animals is in it; `not`: something is. */
export const animalFreeAnswers = ['stated', 'not', 'unknown'] as const;
export type AnimalFree = (typeof animalFreeAnswers)[number];

/** Ways by which produce leaves other than in a box. */
export const outKinds = ['graded-out', 'sale', 'own-use', 'gift', 'seed', 'compost', 'loss'] as const;
export type OutKind = (typeof outKinds)[number];

export const heldKinds = ['lot', 'bin', 'batch', 'plot'] as const;
export type HeldKind = (typeof heldKinds)[number];

/** Kilos taken from a lot (the id of its harvest entry), a bin, or a batch of bought produce. */
export interface Taken {
  readonly lot: string;
  readonly kg: number;
}

export type GoodsBody =
  | {
      readonly kind: 'goods-in';
      readonly batch: string;
      readonly what: GoodsKind;
      readonly crop: string | null;
      readonly name: string;
      readonly supplier: string | null;
      readonly amount: number | null;
      readonly unit: GoodsUnit;
      readonly status: GoodsStatus;
      readonly animalFree: AnimalFree;
      readonly composition: string | null;
      /** Invoice, label, certificate: words that find the paper. */
      readonly paper: string | null;
    }
  | {
      readonly kind: 'goods-used';
      readonly batch: string;
      readonly plot: string;
      readonly span: Span | null;
      readonly amount: number | null;
    }
  | { readonly kind: 'binned'; readonly bin: string; readonly store: string | null; readonly from: readonly Taken[] }
  | {
      readonly kind: 'let-go';
      readonly how: OutKind;
      readonly from: readonly Taken[];
      readonly recipient: string | null;
      readonly why: string | null;
    }
  | {
      readonly kind: 'packed';
      readonly run: string;
      readonly week: IsoWeek;
      readonly size: string | null;
      readonly boxes: number;
      readonly items: readonly (Taken & { readonly crop: string })[];
    }
  | {
      readonly kind: 'handed-over';
      readonly run: string;
      readonly round: string | null;
      readonly drop: string;
      readonly boxes: number;
    }
  | { readonly kind: 'bin-weighed'; readonly bin: string; readonly kg: number }
  | {
      readonly kind: 'held';
      readonly what: HeldKind;
      readonly named: string;
      readonly isReleased: boolean;
      readonly why: string;
    };

export type GoodsBodyKind = GoodsBody['kind'];

export const goodsBodyKinds = [
  'goods-in',
  'goods-used',
  'binned',
  'let-go',
  'packed',
  'handed-over',
  'bin-weighed',
  'held',
] as const satisfies readonly GoodsBodyKind[];

/** Whether a body is about goods; such records change nothing on the ground. */
export function isGoodsBody(body: { readonly kind: string }): body is GoodsBody {
  return (goodsBodyKinds as readonly string[]).includes(body.kind);
}
