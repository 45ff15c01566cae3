/**
 * What lies on a plot on each day of its leaching seasons, as shares by calendar year: ley, cover, late crop, bare, or bare after a broken ley.
 *
 * A share is days of that ground over the days of the season, weighed by area, so that a whole winter under one ground is 1.
 */
import { nitrogenBalance, type WinterGround } from '@leywright/agronomy';
import { dayAt, dayNumber, dayOf, yearOf } from '@leywright/measures';
import type { Lane } from '../cover/lanes.ts';
import type { Winter } from '../cover/seasons.ts';

export interface WinterSetting {
  readonly lanes: readonly Lane[];
  readonly winters: readonly Winter[];
  /** First day of the lanes' figures. */
  readonly laneFirstDay: number;
  readonly bareCoverShare: number;
}

export type WinterShares = ReadonlyMap<number, Readonly<Record<WinterGround, number>>>;

/** Days after a ley was turned in during which bare ground gives up most. Common practice. */
const brokenLeyDays = 150;

const grounds = nitrogenBalance.winterGrounds;
const [ley, cover, lateCrop, bare, leyBroken] = (['ley', 'cover', 'late-crop', 'bare', 'ley-broken'] as const).map(
  (ground) => grounds.indexOf(ground),
) as [number, number, number, number, number];

export function winterShares(setting: WinterSetting): WinterShares {
  const byYear = new Map<number, Float64Array>();
  for (const lane of setting.lanes) addLane(lane, byYear, setting);
  return new Map(
    [...byYear].map(([year, shares]) => [
      year,
      Object.fromEntries(grounds.map((ground, at) => [ground, shares[at] ?? 0])) as Record<WinterGround, number>,
    ]),
  );
}

function addLane(
  lane: Lane,
  byYear: Map<number, Float64Array>,
  { winters, laneFirstDay, bareCoverShare }: WinterSetting,
): void {
  const standing = standingGround(lane, laneFirstDay);
  const lastDay = laneFirstDay + lane.openShare.length;
  for (const winter of winters) {
    const dayShare = (lane.span.toShare - lane.span.fromShare) / (winter.toDay - winter.fromDay);
    let day = Math.max(winter.fromDay, laneFirstDay);
    while (day < Math.min(winter.toDay, lastDay)) {
      const year = yearOf(dayAt(day));
      const until = Math.min(winter.toDay, lastDay, dayNumber(dayOf(year + 1, 1, 1)));
      const shares = byYear.get(year) ?? new Float64Array(grounds.length);
      byYear.set(year, shares);
      for (; day < until; day++) {
        const at = groundOf(
          standing[day - laneFirstDay] ?? 0,
          1 - (lane.openShare[day - laneFirstDay] ?? 1) < bareCoverShare,
        );
        shares[at] = (shares[at] ?? 0) + dayShare;
      }
    }
  }
}

const isCrop = 1;
const isCover = 2;
const isLey = 4;
const isBrokenLey = 8;

/** What stands on each day, as marks that may lie together. */
function standingGround(lane: Lane, firstDay: number): Uint8Array {
  const marks = new Uint8Array(lane.openShare.length);
  const mark = (fromDay: number, toDay: number, with_: number) => {
    const last = Math.min(toDay - firstDay, marks.length);
    for (let at = Math.max(0, fromDay - firstDay); at < last; at++) marks[at] = (marks[at] ?? 0) | with_;
  };
  for (const one of lane.stands) {
    const { kind } = one.stand;
    mark(one.fromDay, one.toDay, kind === 'ley' ? isLey : kind === 'cover' ? isCover : isCrop);
    if (kind === 'ley') mark(one.toDay, one.toDay + brokenLeyDays, isBrokenLey);
  }
  return marks;
}

function groundOf(marks: number, isBare: boolean): number {
  if (isBare) return (marks & isBrokenLey) !== 0 ? leyBroken : bare;
  if ((marks & isLey) !== 0) return ley;
  return (marks & isCover) !== 0 || (marks & isCrop) === 0 ? cover : lateCrop;
}
