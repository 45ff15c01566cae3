/**
 * Bare ground: how long, how much of it in the leaching season, and what stood before and after.
 *
 * Rule    A day is bare when less than the farm's bare limit of the lane is covered. A spell is bare days on end for the farm's weeks or more. Days
 *         before the first stand known on a lane are not known, and days after the last one count, when it ends within a year of today, up to the end of the leaching
 *         season that is on or begins within four months: beyond that nothing is planned yet, which is not the same as bare. Lanes side by side with the same spell are one.
 */

import type { Conventions } from '@leywright/book';
import { dayAt } from '@leywright/measures';
import type { GroundStand } from '../ground/ground-stand.ts';
import type { BareCount, BareSpell } from '../plan/ground.ts';
import type { DaySpan, Lane } from './lanes.ts';
import { commonDays, type Winter } from './seasons.ts';

export interface BareSetting {
  readonly plot: string;
  readonly netM2: number;
  readonly days: DaySpan;
  readonly todayDay: number;
  readonly conventions: Pick<Conventions, 'bareCoverShare' | 'bareWeeks'>;
  readonly winters: readonly Winter[];
}

const soonDays = 122;
/** People plan a year ahead; what follows a stand that ends later is not thought of yet, and records that ended long ago are not known to go on. */
const nearDays = 366;

/** Days of a lane about which anything is known, half open. */
export function knownDays(lane: Lane, setting: Pick<BareSetting, 'days' | 'todayDay' | 'winters'>): DaySpan {
  let first = Number.POSITIVE_INFINITY;
  let last = Number.NEGATIVE_INFINITY;
  for (const one of lane.stands) {
    first = Math.min(first, one.fromDay);
    last = Math.max(last, one.toDay);
  }
  const winter = setting.winters.find((one) => one.toDay > last);
  const isOpen =
    winter === undefined || winter.fromDay - last > soonDays || Math.abs(last - setting.todayDay) > nearDays;
  const until = isOpen ? last : winter.toDay;
  return { fromDay: Math.max(first, setting.days.fromDay), toDay: Math.min(until, setting.days.toDay) };
}

export function bareSpells(lanes: readonly Lane[], setting: BareSetting): readonly BareSpell[] {
  const spells = lanes.flatMap((lane) => spellsOfLane(lane, setting));
  return merged(spells).sort((a, b) =>
    a.from < b.from ? -1 : a.from > b.from ? 1 : a.span.fromShare - b.span.fromShare,
  );
}

function spellsOfLane(lane: Lane, setting: BareSetting): readonly BareSpell[] {
  const { fromDay, toDay } = knownDays(lane, setting);
  const leastDays = 7 * setting.conventions.bareWeeks;
  const spells: BareSpell[] = [];
  let start: number | null = null;
  for (let day = fromDay; day <= toDay; day++) {
    const isBare = day < toDay && isBareDay(lane, day, setting);
    if (isBare && start === null) start = day;
    if (isBare || start === null) continue;
    if (day - start >= leastDays) spells.push(spell(lane, { fromDay: start, toDay: day }, setting));
    start = null;
  }
  return spells;
}

function isBareDay(lane: Lane, day: number, setting: Pick<BareSetting, 'days' | 'conventions'>): boolean {
  return 1 - (lane.openShare[day - setting.days.fromDay] ?? 1) < setting.conventions.bareCoverShare;
}

function spell(lane: Lane, days: DaySpan, setting: BareSetting): BareSpell {
  const before = laidOpen(lane, days.fromDay);
  const after =
    lane.stands.find(
      (one) => one.fromDay > (before?.fromDay ?? Number.NEGATIVE_INFINITY) && one.toDay > days.toDay && one !== before,
    ) ?? null;
  return {
    plot: setting.plot,
    span: lane.span,
    from: dayAt(days.fromDay),
    to: dayAt(days.toDay),
    days: days.toDay - days.fromDay,
    leachingDays: setting.winters.reduce((sum, winter) => sum + commonDays(days.fromDay, days.toDay, winter), 0),
    areaM2: setting.netM2 * (lane.span.toShare - lane.span.fromShare),
    before: before?.stand.id ?? null,
    after: after !== null && after.fromDay <= days.toDay ? after.stand.id : null,
    answered: after?.stand.reason ?? before?.stand.reason ?? null,
  };
}

/** The stand whose end laid the ground open: the one that ended that day, or that died back while it still stood, or the last to end before. */
function laidOpen(lane: Lane, day: number): GroundStand | null {
  let last: GroundStand | null = null;
  for (const one of lane.stands) if (one.toDay <= day && (last === null || one.toDay >= last.toDay)) last = one;
  if (last?.toDay === day) return last;
  return lane.stands.find((one) => one.fromDay < day && one.toDay > day) ?? last;
}

function merged(spells: readonly BareSpell[]): BareSpell[] {
  const done: BareSpell[] = [];
  for (const one of spells) {
    const at = done.findIndex(
      (other) =>
        other.from === one.from && other.to === one.to && Math.abs(other.span.toShare - one.span.fromShare) < 1e-9,
    );
    const left = done[at];
    if (left === undefined) done.push(one);
    else
      done[at] = {
        ...left,
        span: { fromShare: left.span.fromShare, toShare: one.span.toShare },
        areaM2: left.areaM2 + one.areaM2,
        answered: left.answered ?? one.answered,
      };
  }
  return done;
}

/** Bare days of each winter in the plan's years, weighed by area. */
export function bareCounts(lanes: readonly Lane[], setting: BareSetting): readonly BareCount[] {
  const counts = setting.winters.map((winter) => ({ plot: setting.plot, winter: winter.winter, bareDays: 0 }));
  for (const lane of lanes) {
    const known = knownDays(lane, setting);
    const width = lane.span.toShare - lane.span.fromShare;
    setting.winters.forEach((winter, at) => {
      const count = counts[at];
      if (count === undefined) return;
      const last = Math.min(winter.toDay, known.toDay);
      for (let day = Math.max(winter.fromDay, known.fromDay); day < last; day++)
        if (isBareDay(lane, day, setting)) count.bareDays += width;
    });
  }
  return counts.filter(
    (_, at) =>
      (setting.winters[at]?.toDay ?? 0) > setting.days.fromDay &&
      (setting.winters[at]?.fromDay ?? 0) < setting.days.toDay,
  );
}
