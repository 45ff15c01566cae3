/**
 * Two stands on the same ground at the same time.
 *
 * Rule    Ground may be shared by a stand and what is undersown in it, and by two stands undersown in the same host: nothing else. The finding says on how
 *         much ground, from when to when, and how many days; two records that overlap are worth a look, for one of them is wrong.
 */

import type { Plot } from '@leywright/book';
import { dayAt } from '@leywright/measures';
import type { GroundStand } from '../ground/ground-stand.ts';
import { leastShare, overlapShare } from '../ground/history.ts';
import type { GroundSetting } from '../ground/stage.ts';
import type { Finding } from '../plan/finding.ts';
import { finding, mend } from './say.ts';

export interface OverlapSetting {
  readonly plot: Plot;
  readonly netM2: number;
  readonly setting: GroundSetting;
}

export interface Overlap {
  readonly earlier: GroundStand;
  readonly later: GroundStand;
  /** Share of the plot that both stand on. */
  readonly share: number;
}

/** Stands are in order of their first day, so each is held against those before it that still stand. */
export function overlapsOf(stands: readonly GroundStand[]): readonly Overlap[] {
  const found: Overlap[] = [];
  let standing: GroundStand[] = [];
  for (const later of stands) {
    standing = standing.filter((earlier) => earlier.toDay > later.fromDay);
    for (const earlier of standing) {
      const share = overlapShare(earlier.stand.span, later.stand.span);
      if (share > leastShare && !mayShare(earlier, later)) found.push({ earlier, later, share });
    }
    standing.push(later);
  }
  return found;
}

export function overlapFindings(stands: readonly GroundStand[], at: OverlapSetting): readonly Finding[] {
  return overlapsOf(stands)
    .filter(({ earlier }) => earlier.toDay > at.setting.days.fromDay)
    .map(({ earlier, later, share }) => overlap(earlier, later, { ...at, share }));
}

function mayShare(a: GroundStand, b: GroundStand): boolean {
  if (a.stand.undersownIn === b.stand.id || b.stand.undersownIn === a.stand.id) return true;
  return a.stand.undersownIn !== null && a.stand.undersownIn === b.stand.undersownIn;
}

function overlap(
  earlier: GroundStand,
  later: GroundStand,
  { plot, netM2, share, setting }: OverlapSetting & { readonly share: number },
): Finding {
  const to = Math.min(earlier.toDay, later.toDay);
  const areBothRecorded = earlier.stand.state === 'recorded' && later.stand.state === 'recorded';
  const stand = later.stand.id;
  const other = earlier.stand.id;
  return finding('stands-overlap', {
    gravity: areBothRecorded || to <= setting.todayDay ? 'look' : 'put-right',
    place: { plot: plot.id, stand, from: later.stand.from, to: dayAt(to) },
    figures: {
      plot: plot.id,
      stand,
      other,
      areaM2: netM2 * share,
      share,
      days: to - later.fromDay,
      from: later.stand.from,
      to: dayAt(to),
    },
    mend: [
      ...(earlier.fromDay < later.fromDay ? [mend('end-earlier', { stand: other, on: later.stand.from })] : []),
      ...(later.toDay > to ? [mend('start-later', { stand, on: dayAt(to) })] : []),
      ...(later.stand.kind === 'crop'
        ? [mend('move-to-free-ground', { stand, plot: plot.id })]
        : [mend('mark-undersown', { stand, host: other })]),
    ],
    reason: later.stand.reason ?? earlier.stand.reason,
  });
}
