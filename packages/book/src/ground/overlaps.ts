/** Plots that are drawn over one another. */
import type { Plot } from '../farm/land.ts';
import type { ProblemList } from '../folder/problem.ts';
import { mapFile } from './ground-map.ts';
import { ringAreaM2, sharedM2 } from './rings.ts';

/** A hand-drawn boundary shared by two plots overlaps by a strip of some such width; that is no mistake. */
const shrugM2 = 10;
/** From this share of the smaller plot on, one of the two is in the wrong place. */
const stopsShare = 0.02;

/** Tells every pair of plots of the same days whose outlines share ground. */
export function tellOverlaps(plots: readonly Plot[], problems: ProblemList): void {
  const mapped = plots.flatMap((plot) =>
    plot.ring === null ? [] : [{ plot, ring: plot.ring, areaM2: ringAreaM2(plot.ring) }],
  );
  mapped.forEach((a, at) => {
    for (const b of mapped.slice(at + 1)) {
      if (!sameDays(a.plot, b.plot)) continue;
      const overlapM2 = sharedM2(a.ring, b.ring);
      if (overlapM2 <= shrugM2) continue;
      const share = overlapM2 / Math.min(a.areaM2, b.areaM2);
      problems.add(
        'plots-overlap',
        { file: mapFile, line: null, column: a.plot.id },
        {
          gravity: share > stopsShare ? 'stops' : 'look',
          found: b.plot.id,
          figures: { overlapM2: Math.round(overlapM2), plot: a.plot.id, other: b.plot.id },
        },
      );
    }
  });
}

function sameDays(a: Plot, b: Plot): boolean {
  return (a.to === null || b.from === null || a.to > b.from) && (b.to === null || a.from === null || b.to > a.from);
}
