/** Numbered beds of a plot, counted from its left edge, and the stretch they lie on. */
import type { Plot, Span } from '@leywright/book';

/** The stretch of beds `first` to `last`, counted from 1; null when the plot's beds are not counted or do not reach so far. */
export function spanOfBeds(plot: Pick<Plot, 'bedCount'>, first: number, last: number): Span | null {
  const count = plot.bedCount;
  if (count === null || first < 1 || last < first || last > count) return null;
  return { fromShare: (first - 1) / count, toShare: last / count };
}

/** Beds of a plot that a stretch lies on for the greater part; null when beds are not counted or none is meant. */
export function bedsOfSpan(plot: Pick<Plot, 'bedCount'>, span: Span): { readonly firstBed: number; readonly lastBed: number } | null {
  const count = plot.bedCount;
  if (count === null) return null;
  const firstBed = Math.round(span.fromShare * count) + 1;
  const lastBed = Math.round(span.toShare * count);
  return lastBed < firstBed ? null : { firstBed, lastBed };
}
