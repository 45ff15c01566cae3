/**
 * How many years one course must keep from another on the same ground: found by laying both out as dated stands and looking.
 *
 * Rule    A pair of courses so many years apart is unlawful when a hard rest is broken between their stands, or two of them want the same ground on the
 *         same day. Gaps grow by a year with each year between, so three years are looked at and the rest is reckoned on.
 * Holds   a course is its stands, covers and undersowing with their spans and days: half a plot of brassicas asks for a rest on that half alone.
 */
import type { Course, OrganismMark, Plot } from '@leywright/book';
import { type Overlap, overlapsOf } from '../faults/overlap.ts';
import { type GroundStand, groundStand, inOrder } from '../ground/ground-stand.ts';
import type { Visit } from '../plan/ground.ts';
import type { CropBook } from '../plan/inputs.ts';
import type { RestGround } from '../rests/host-book.ts';
import { visitsOf } from '../rests/visits.ts';
import { courseStandsOn } from '../rotation/lay-out.ts';

/** What keeps two courses apart: a rest, or that one still stands when the other begins. */
export type Apart =
  | { readonly kind: 'rest'; readonly rule: string; readonly name: string; readonly infested: boolean }
  | { readonly kind: 'overlap'; readonly earlier: string; readonly later: string }
  /** A course that goes on with what stands there, where nothing does. */
  | { readonly kind: 'nothing-stands' };

export interface CoursePair {
  readonly earlier: string;
  readonly later: string;
  /** Fewest years from the one to the other; 1 = the next year. */
  readonly needYears: number;
  /** What asks for that many. */
  readonly because: readonly Apart[];
}

export interface PairSetting {
  readonly plot: Plot;
  readonly year: number;
  readonly crops: CropBook;
  readonly rests: Pick<RestGround, 'rules' | 'season'>;
  /** Organisms recorded on the ground. */
  readonly marks: readonly OrganismMark[];
}

const lookedYears = 3;

/** All ordered pairs that may not follow each other in the very next year; those not listed may. */
export function coursePairs(courses: readonly Course[], setting: PairSetting): readonly CoursePair[] {
  return courses.flatMap((earlier) =>
    courses.flatMap((later): readonly CoursePair[] => {
      const needs = needsOf(earlier, later, setting);
      const needYears = Math.max(1, ...needs.map((one) => one.years));
      if (needYears === 1) return [];
      const because = needs.filter((one) => one.years === needYears).map((one) => one.apart);
      return [{ earlier: earlier.id, later: later.id, needYears, because: distinct(because) }];
    }),
  );
}

interface Need {
  readonly years: number;
  readonly apart: Apart;
}

function needsOf(earlier: Course, later: Course, setting: PairSetting): readonly Need[] {
  const needs: Need[] = [];
  const first = laid(earlier, setting.year, setting);
  for (let years = 1; years <= lookedYears; years++) {
    const second = laid(later, setting.year + years, setting);
    for (const visit of brokenBetween(first, second, setting)) {
      const missing = visit.needYears - visit.gapYears;
      const apart = { kind: 'rest' as const, rule: visit.rule, name: visit.ruleName, infested: visit.infested };
      needs.push({ years: years + missing, apart });
    }
    for (const { earlier: one, later: other } of overlapsBetween(first, second).filter(
      (found) => !mayEndEarlier(found),
    ))
      needs.push({ years: years + 1, apart: { kind: 'overlap', earlier: one.plant.name, later: other.plant.name } });
  }
  return needs;
}

function laid(course: Course, year: number, { plot, crops }: PairSetting): readonly GroundStand[] {
  return courseStandsOn(course, plot, year).map((stand) => groundStand(stand, 'rotation', crops));
}

/** Hard rests broken between two lists of stands on one plot, whichever comes first. */
export function brokenBetween(
  first: readonly GroundStand[],
  second: readonly GroundStand[],
  { plot, rests, marks }: Pick<PairSetting, 'plot' | 'rests' | 'marks'>,
): readonly Visit[] {
  if (first.length === 0 || second.length === 0) return [];
  const stands = [...first, ...second].sort(inOrder);
  const here = stands.map((one) => ({ ...one, stand: { ...one.stand, plot: plot.id } }));
  const firstIds = new Set<string>(first.map((one) => one.stand.id));
  const ground: RestGround = { ...rests, parts: [], marks, standsOf: () => here };
  return visitsOf(plot.id, Number.NEGATIVE_INFINITY, ground).filter(
    (visit) => !visit.kept && visit.force === 'hard' && firstIds.has(visit.stand) !== firstIds.has(visit.previous),
  );
}

export function overlapsBetween(first: readonly GroundStand[], second: readonly GroundStand[]) {
  const firsts = new Set(first);
  return overlapsOf([...first, ...second].sort(inOrder)).filter(
    ({ earlier, later }) => firsts.has(earlier) !== firsts.has(later),
  );
}

const leastCoverDays = 28;

/** A cover that would still stand is turned in when the next needs its ground, as long as it had four weeks. */
export function mayEndEarlier({ earlier, later }: Overlap): boolean {
  return earlier.stand.kind === 'cover' && later.fromDay - earlier.fromDay >= leastCoverDays;
}

function distinct(list: readonly Apart[]): readonly Apart[] {
  return [...new Map(list.map((one) => [JSON.stringify(one), one])).values()];
}
