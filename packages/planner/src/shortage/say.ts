/** Mends that findings of promise, stores, yields and hands offer, and short ways to write those findings. */
import type { Finding, FindingCode, FindingFigure, Gravity, Mend, Place } from '../plan/finding.ts';

export const supplyMendCodes = [
  'grow-more',
  'name-crop-with-plenty',
  'name-another-crop',
  'promise-fewer-items',
  'fill-more-places',
  'plan-stand',
  'more-ground',
  'more-ground-on-plot',
  'fewer-households',
  'store-more',
  'end-place-earlier',
  'smaller-portion',
  'give-store-room',
  'store-less',
  'name-store',
  'look-at-unit',
  'keep-own-yield',
  'give-yield',
  'base-on-crop',
  'ground-for-course',
  'find-hours',
  'find-hands',
  'move-what-can-wait',
  'write-hours',
] as const;
export type SupplyMendCode = (typeof supplyMendCodes)[number];

export type Figures = Readonly<Record<string, FindingFigure>>;

export function mend(code: SupplyMendCode, figures: Figures = {}): Mend {
  return { code, figures };
}

export interface Pieces {
  readonly gravity: Gravity;
  readonly place: Place;
  readonly figures: Figures;
  readonly mend: readonly Mend[];
  readonly why?: string | null;
}

export function supplyFinding(code: FindingCode, pieces: Pieces): Finding {
  return {
    code,
    gravity: pieces.gravity,
    place: pieces.place,
    figures: pieces.figures,
    mend: pieces.mend,
    reason: null,
    why: pieces.why ?? null,
  };
}

/** One decimal: findings say things in a box and hours, not how they were reckoned. */
export function tenth(value: number): number {
  return Math.round(value * 10) / 10;
}
