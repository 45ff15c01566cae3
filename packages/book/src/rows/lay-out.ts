/** Bare shares of a plot, laid from left to right. */
import type { Span } from '../farm/land.ts';

/** Shares are typed with few digits: three thirds as 0.33, 0.33 and 0.34, or 0.333 three times, are a whole. */
const slack = 1e-9;

/** The leftmost free stretch of that width beside the busy ones; null when there is no room. */
export function freeStretch(width: number, busy: readonly Span[]): Span | null {
  let fromShare = 0;
  for (const span of [...busy].sort((a, b) => a.fromShare - b.fromShare)) {
    if (span.fromShare >= fromShare + width - slack) break;
    fromShare = Math.max(fromShare, span.toShare);
  }
  const toShare = fromShare + width;
  if (toShare > 1 + slack) return null;
  return { fromShare, toShare: toShare > 1 - slack ? 1 : toShare };
}
