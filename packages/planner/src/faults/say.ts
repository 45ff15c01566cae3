/** Short ways to write a finding, and the mends that findings of the ground offer. */
import type { Finding, FindingCode, FindingFigure, Gravity, Mend, Place } from '../plan/finding.ts';

export const groundMendCodes = [
  'move-to-year',
  'move-to-plot',
  'give-reason',
  'end-earlier',
  'start-later',
  'mark-undersown',
  'move-to-free-ground',
  'correct-plot-or-dates',
  'sow-alone',
  'name-host',
  'undersow-between',
  'move-to-tunnel',
  'sow-between',
  'sow-by',
  'take-hardier-cover',
  'sow-cover-by',
  'undersow-crop',
  'give-course',
  'take-out-of-rotation',
  'write-status',
  'turn-in-earlier',
  'plant-after-summer',
  'net-crop',
  'lengthen-ley',
  'undersow-more',
  'look-at-stands',
  'record-weather',
] as const;
export type GroundMendCode = (typeof groundMendCodes)[number];

export function mend(code: GroundMendCode, figures: Readonly<Record<string, FindingFigure>> = {}): Mend {
  return { code, figures };
}

export interface FindingPieces {
  readonly gravity: Gravity;
  readonly place: Place;
  readonly figures: Readonly<Record<string, FindingFigure>>;
  readonly mend: readonly Mend[];
  readonly reason?: string | null;
  readonly why?: string | null;
}

export function finding(
  code: FindingCode,
  { gravity, place, figures, mend: mends, reason = null, why = null }: FindingPieces,
): Finding {
  return { code, gravity, place, figures, mend: mends, reason, why };
}
