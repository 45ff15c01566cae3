/** Findings are data: what is wrong or worth knowing, where, with its figures and at least one mend. Words live in api. */
export const findingCodes = [
  // land and ground
  'stands-overlap',
  'stand-outside-plot',
  'undersown-without-host',
  'undersow-out-of-window',
  'tunnel-crop-outside',
  'sown-out-of-season',
  'cover-sown-too-late',
  'bare-in-leaching-season',
  'plot-without-course',
  'status-unknown',
  // rests
  'family-back-too-soon',
  'organism-back-too-soon',
  'wait-after-cover-too-short',
  'host-too-near',
  // promise, supply, store
  'box-short',
  'crop-not-on-ground',
  'ground-too-small',
  'store-runs-out',
  'store-over-full',
  'no-store-for-crop',
  'yield-implausible',
  'no-yield-known',
  'households-over-reach',
  // soil
  'nitrogen-drawn-down',
  'nitrogen-undecided',
  // work
  'hours-over-hands',
  'hands-unknown',
  // book
  'rival-amendments',
  'amendments-in-a-ring',
  'original-not-received',
  'one-id-two-entries',
  'records-not-received',
  'device-number-twice',
  'device-clock-wrong',
  'record-without-stand',
  'record-without-plot',
  'stand-end-assumed',
  'no-rotation-to-agree',
  'harvest-perhaps-twice',
  'climate-assumed',
] as const;
export type FindingCode = (typeof findingCodes)[number];

/** `put-right` counts in "3 to put right" everywhere; `look` is worth a look; `note` only says what was assumed. */
export const gravities = ['put-right', 'look', 'note'] as const;
export type Gravity = (typeof gravities)[number];

export interface Place {
  readonly plot?: string;
  readonly stand?: string;
  readonly crop?: string;
  readonly year?: number;
  /** ISO week, 2027-w23. */
  readonly week?: string;
  readonly store?: string;
  readonly entry?: string;
  readonly from?: string;
  readonly to?: string;
}

export type FindingFigure = string | number | null;

export interface Mend {
  readonly code: string;
  readonly figures: Readonly<Record<string, FindingFigure>>;
}

export interface Finding {
  readonly code: FindingCode;
  readonly gravity: Gravity;
  readonly place: Place;
  readonly figures: Readonly<Record<string, FindingFigure>>;
  readonly mend: readonly Mend[];
  /** Reason the grower gave for living with it; it is still counted and shown. */
  readonly reason: string | null;
  /** Figure to open with `why`, when there is one. */
  readonly why: string | null;
}
