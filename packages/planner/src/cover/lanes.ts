/**
 * A plot cut into lanes: stretches on which the same stands lie from side to side, so that cover can be multiplied day by day.
 *
 * Cover of what stands over and under one another: 1 - product(1 - c). A plot's cover weighs its lanes by width.
 */
import type { Span } from '@leywright/book';
import type { GroundStand } from '../ground/ground-stand.ts';
import { leastShare } from '../ground/history.ts';
import type { StandCover } from './stand-cover.ts';

export interface CoveredStand {
  readonly one: GroundStand;
  readonly cover: StandCover;
}

export interface Lane {
  readonly span: Span;
  /** Share of the lane's ground left open each day of the plan. */
  readonly openShare: Float64Array;
  /** Stands on the lane in order of their first day. */
  readonly stands: readonly GroundStand[];
}

export interface DaySpan {
  readonly fromDay: number;
  readonly toDay: number;
}

export function lanesOf(stands: readonly CoveredStand[], days: DaySpan): readonly Lane[] {
  const borders = new Set([0, 1]);
  for (const { one } of stands) borders.add(clamp(one.stand.span.fromShare)).add(clamp(one.stand.span.toShare));
  const sorted = [...borders].sort((a, b) => a - b);
  const lanes: Lane[] = [];
  for (let at = 1; at < sorted.length; at++) {
    const span = { fromShare: sorted[at - 1] ?? 0, toShare: sorted[at] ?? 1 };
    if (span.toShare - span.fromShare > leastShare) lanes.push(laneOf(span, stands, days));
  }
  return lanes;
}

function laneOf(span: Span, stands: readonly CoveredStand[], days: DaySpan): Lane {
  const openShare = new Float64Array(days.toDay - days.fromDay).fill(1);
  const middle = (span.fromShare + span.toShare) / 2;
  const here: GroundStand[] = [];
  for (const { one, cover } of stands) {
    if (one.stand.span.fromShare > middle || one.stand.span.toShare < middle) continue;
    here.push(one);
    const offset = cover.firstDay - days.fromDay;
    for (let at = 0; at < cover.dayShare.length; at++)
      openShare[offset + at] = (openShare[offset + at] ?? 1) * (1 - (cover.dayShare[at] ?? 0));
  }
  return { span, openShare, stands: here };
}

function clamp(share: number): number {
  return Math.min(1, Math.max(0, share));
}

/** Share of the plot under cover by week: the mean of its days, lanes weighed by width. */
export function weeklyPlotCover(lanes: readonly Lane[], weeks: number): readonly number[] {
  const coverShare = new Array<number>(weeks).fill(0);
  for (const { span, openShare } of lanes) {
    const width = span.toShare - span.fromShare;
    for (let week = 0; week < weeks; week++) {
      let open = 0;
      for (let day = 7 * week; day < 7 * week + 7; day++) open += openShare[day] ?? 1;
      coverShare[week] = (coverShare[week] ?? 0) + width * (1 - open / 7);
    }
  }
  return coverShare;
}
