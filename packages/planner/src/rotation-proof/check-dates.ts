/**
 * Holds dated stands of one plot against each other, two by two, the way one would with a calendar: the same ground on the same day, and family rests.
 *
 * Rule    A stand is held against every earlier one that shares ground with it. Hard family rests of reference/intervals.csv: years from the last year in which
 *         the earlier stood on a day of the rest season to the year the later came. Covers count where the table says so; what is undersown never does here.
 * Holds   shares no code with the planner's models nor with the findings of a plan, so that neither can hide the other's mistake.
 * Leaves out  rests of single organisms, own rests, and years of farms south of the equator.
 */
import { reference } from '@leywright/agronomy';
import type { Stand } from '@leywright/book';

export interface DatedBreach {
  readonly kind: 'same-ground' | 'family-rest';
  readonly earlier: string;
  readonly later: string;
  readonly about: string;
}

export interface RestMonths {
  /** Such as 03-01 and 10-31. */
  readonly from: string;
  readonly to: string;
}

export function datedBreaches(stands: readonly Stand[], season: RestMonths): readonly DatedBreach[] {
  const inOrder = [...stands].sort((a, b) => (`${a.from} ${a.id}` < `${b.from} ${b.id}` ? -1 : 1));
  return inOrder.flatMap((later, at) =>
    inOrder
      .slice(0, at)
      .filter((earlier) => shareGround(earlier, later))
      .flatMap((earlier) => pairBreaches(earlier, later, season)),
  );
}

function pairBreaches(earlier: Stand, later: Stand, season: RestMonths): readonly DatedBreach[] {
  const who = { earlier: earlier.id, later: later.id };
  const found: DatedBreach[] = brokenFamilies(earlier, later, season).map((about) => ({
    kind: 'family-rest',
    ...who,
    about,
  }));
  if (earlier.to > later.from && !areTogether(earlier, later))
    found.push({ kind: 'same-ground', ...who, about: later.from });
  return found;
}

function shareGround(a: Stand, b: Stand): boolean {
  return Math.min(a.span.toShare, b.span.toShare) - Math.max(a.span.fromShare, b.span.fromShare) > 0.001;
}

/** One is sown into the other, or both into the same. */
function areTogether(a: Stand, b: Stand): boolean {
  return (
    a.undersownIn === b.id || b.undersownIn === a.id || (a.undersownIn !== null && a.undersownIn === b.undersownIn)
  );
}

function brokenFamilies(earlier: Stand, later: Stand, season: RestMonths): readonly string[] {
  if (earlier.courseYear !== null && earlier.courseYear === later.courseYear) return [];
  const last = lastYearOf(earlier, season);
  if (last === null) return [];
  const came = Number(later.from.slice(0, 4));
  return [...reference.intervals.values()]
    .filter((row) => row.ruleScope === 'family' && row.forceClean === 'hard')
    .filter((row) => counts(row, earlier) && counts(row, later) && came - last < row.returnYearsMin)
    .map((row) => row.id);
}

type IntervalRow = typeof reference.intervals extends ReadonlyMap<string, infer Row> ? Row : never;

function counts(row: IntervalRow, stand: Stand): boolean {
  if (stand.undersownIn !== null) return false;
  if (stand.kind === 'crop') return row.hostCropIds.includes(stand.what);
  const way = stand.kind === 'ley' ? 'own' : 'cover';
  return (row.countsAs as readonly string[]).includes(way) && row.hostCoverIds.includes(stand.what);
}

/** The last year with a day of the season in it; null for a stand of winter months alone. */
function lastYearOf(stand: Stand, season: RestMonths): number | null {
  for (let year = Number(stand.to.slice(0, 4)); year >= Number(stand.from.slice(0, 4)); year--)
    if (stand.from <= `${year}-${season.to}` && stand.to > `${year}-${season.from}`) return year;
  return null;
}
