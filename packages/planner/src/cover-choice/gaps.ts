/**
 * Gaps between stands, lane by lane, from today on: ground that carries nothing although something stood before.
 *
 * Rule    A gap is three weeks or more without a stand between two stands of a plot's lane, or after the last one up to the end of the winter that follows it.
 *         Lanes side by side with the same gap are one.
 */
import type { Span } from '@leywright/book';
import type { Lane } from '../cover/lanes.ts';
import type { Winter } from '../cover/seasons.ts';
import type { GroundStand } from '../ground/ground-stand.ts';

export interface CoverGap {
  readonly plot: string;
  readonly span: Span;
  /** Half open, as day numbers. */
  readonly fromDay: number;
  readonly toDay: number;
  readonly before: GroundStand | null;
  /** What is sown or planted next; null where nothing is planned yet. */
  readonly after: GroundStand | null;
}

export interface GapSetting {
  readonly plot: string;
  readonly todayDay: number;
  readonly lastDay: number;
  readonly winters: readonly Winter[];
}

const leastGapDays = 21;
/** What is planned ends somewhere; ground open for longer than this is not a gap but not planned yet. */
const mostOpenDays = 400;

export function coverGaps(lanes: readonly Lane[], setting: GapSetting): readonly CoverGap[] {
  const gaps: CoverGap[] = [];
  for (const gap of lanes.flatMap((lane) => gapsOfLane(lane, setting))) {
    const at = gaps.findIndex((left) => isSame(left, gap) && Math.abs(left.span.toShare - gap.span.fromShare) < 1e-9);
    const left = gaps[at];
    if (left === undefined) gaps.push(gap);
    else gaps[at] = { ...left, span: { fromShare: left.span.fromShare, toShare: gap.span.toShare } };
  }
  return gaps.sort((a, b) => a.fromDay - b.fromDay || a.span.fromShare - b.span.fromShare);
}

function isSame(a: CoverGap, b: CoverGap): boolean {
  return a.fromDay === b.fromDay && a.toDay === b.toDay;
}

function gapsOfLane(lane: Lane, setting: GapSetting): readonly CoverGap[] {
  const gaps: CoverGap[] = [];
  let before: GroundStand | null = null;
  for (const after of [...lane.stands].sort((a, b) => a.fromDay - b.fromDay)) {
    if (before !== null) add(gaps, lane, { fromDay: before.toDay, toDay: after.fromDay, before, after, setting });
    if (before === null || after.toDay > before.toDay) before = after;
  }
  const winterEnd = before === null ? null : openUntil(before, setting);
  if (before !== null && winterEnd !== null)
    add(gaps, lane, { fromDay: before.toDay, toDay: winterEnd, before, after: null, setting });
  return gaps;
}

interface Between {
  readonly fromDay: number;
  readonly toDay: number;
  readonly before: GroundStand;
  readonly after: GroundStand | null;
  readonly setting: GapSetting;
}

function add(gaps: CoverGap[], lane: Lane, { fromDay, toDay, before, after, setting }: Between): void {
  const opens = Math.max(fromDay, setting.todayDay);
  const closes = Math.min(toDay, setting.lastDay);
  if (closes - opens < leastGapDays || toDay - fromDay > mostOpenDays) return;
  gaps.push({ plot: setting.plot, span: lane.span, fromDay: opens, toDay: closes, before, after });
}

/** To the end of the winter that is on or begins within half a year of the last stand. */
function openUntil(last: GroundStand, { winters }: GapSetting): number | null {
  const winter = winters.find((one) => one.toDay > last.toDay && one.fromDay - last.toDay < 183);
  return winter?.toDay ?? null;
}
