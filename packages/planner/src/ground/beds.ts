/** Numbered beds of a plot, counted from its left edge, and the stretch they lie on. */
import type { Plot, Span } from '@leywright/book';

/** The stretch of numbered beds, counted from 1, both ends included; null when the plot's beds are not counted or do not reach so far. */
export function spanOfBeds(
  plot: Pick<Plot, 'bedCount'>,
  beds: { readonly firstBed: number; readonly lastBed: number },
): Span | null {
  const count = plot.bedCount;
  const { firstBed, lastBed } = beds;
  if (count === null || firstBed < 1 || lastBed < firstBed || lastBed > count) return null;
  return { fromShare: (firstBed - 1) / count, toShare: lastBed / count };
}

/** Beds of a plot that a stretch lies on for the greater part; null when beds are not counted or none is meant. */
export function bedsOfSpan(
  plot: Pick<Plot, 'bedCount'>,
  span: Span,
): { readonly firstBed: number; readonly lastBed: number } | null {
  const count = plot.bedCount;
  if (count === null) return null;
  const firstBed = Math.round(span.fromShare * count) + 1;
  const lastBed = Math.round(span.toShare * count);
  return lastBed < firstBed ? null : { firstBed, lastBed };
}
