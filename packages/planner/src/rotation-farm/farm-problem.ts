/**
 * The question a farm asks the rotation planner, made from its plots, courses, rests, past, records and wishes.
 *
 * Rule    Courses are the farm's own, with the covers and undersowing that go with them. How many years one must keep from another comes from laying both out
 *         (course-pairs.ts), what is open on each plot from what really stood there (plot-past.ts). Areas asked for come from the promise where it
 *         and the yields are known, else every course gets an equal part. Tunnels and permanent ground are left out.
 * Holds   a plan that keeps this problem's rules has no hard rest broken and no two stands on the same ground, once laid out.
 */
import type { Course, Farm, Plot, Rotation } from '@leywright/book';
import { dayOf } from '@leywright/measures';
import { courseOf } from '../rotation/lay-out.ts';
import type { RotationPlot, RotationProblem } from '../rotation-problem/problem.ts';
import { askedAreas } from './asked-areas.ts';
import { type CourseRules, courseRules } from './course-rules.ts';
import type { Barred } from './plot-past.ts';
import { type FarmRotationWish, heldCourse, type LeftOut, type RotationFarm, rotationFarm } from './rotation-farm.ts';

export interface FarmProblem {
  readonly problem: RotationProblem;
  readonly firstYear: number;
  /** Plots of the problem, in its order. */
  readonly plots: readonly Plot[];
  readonly rules: CourseRules;
  /** Why a course is barred, by plot and course. */
  readonly barred: ReadonlyMap<string, Readonly<Record<string, readonly Barred[]>>>;
  readonly leftOut: readonly LeftOut[];
  /** Whether areas come from the promise. */
  readonly areasBy: 'promise' | 'even';
}

export type FarmProblemAnswer =
  | { readonly kind: 'problem'; readonly asked: FarmProblem }
  | { readonly kind: 'nothing-to-plan'; readonly why: 'no-rotation' | 'no-plots' | 'too-few-courses' };

export function farmProblem(farm: Farm, wish: FarmRotationWish): FarmProblemAnswer {
  const { rotation } = farm;
  if (rotation === null || rotation.courses.length === 0) return { kind: 'nothing-to-plan', why: 'no-rotation' };
  if (rotation.courses.length < 2) return { kind: 'nothing-to-plan', why: 'too-few-courses' };
  const made = rotationFarm(farm, rotation, wish);
  if (made.plots.length === 0) return { kind: 'nothing-to-plan', why: 'no-plots' };
  return { kind: 'problem', asked: problemOf(made) };
}

function problemOf(made: RotationFarm): FarmProblem {
  const { rotation, wish, firstYear, years } = made;
  const rules = courseRules(made);
  const { byPlot: askedM2, by } = askedAreas(made);
  const hasHeld = made.plots.some((one) => one.past.heldYears.length > 0 || yearsGone(one.plot, made).length > 0);
  const courses = [...rotation.courses.map((course) => course.id as string), ...(hasHeld ? [heldCourse] : [])];
  const problem: RotationProblem = {
    name: made.farm.about.id,
    years,
    courses,
    standardNext: standardNext(rotation),
    restYears: rules.restYears,
    options: [...rules.options, ...(hasHeld ? [optionOf(heldCourse)] : [])],
    pastOptions: courses.map((course) => optionOf(course, pastId(course))),
    mayFollow: mayFollow(rotation.courses, hasHeld),
    mustBeFollowedBy: {},
    mostSinceLeyYears: {},
    leyCourses: [],
    plots: made.plots.map((one) => plotOf(one, made, rules)),
    askedM2: { ...askedM2, ...(hasHeld ? { [heldCourse]: Array.from({ length: years }, () => 0) } : {}) },
    bands: Object.fromEntries(
      courses.map((course) => [course, course === heldCourse ? { low: 0, high: 0 } : { low: 0.7, high: 1.35 }]),
    ),
    weights: {
      areaWeight: 10,
      orderWeight: 1,
      balanceWeight: 2,
      freeBalanceShare: 0.1,
      freeBalanceM2: freeBalanceM2(made),
      stabilityWeight: wish.stabilityWeight ?? 0.5,
      stabilityDecayFactor: 0.85,
      splitWeight: 0.5,
      optionWeight: 1,
    },
  };
  return {
    problem,
    firstYear,
    plots: made.plots.map((one) => one.plot),
    rules,
    barred: new Map(made.plots.map((one) => [one.plot.id as string, one.past.barred])),
    leftOut: made.leftOut,
    areasBy: by,
  };
}

/** An option of the past asks for nothing: what it really left is in the years barred. */
function pastId(course: string): string {
  return `${course} before`;
}

function optionOf(course: string, id = course) {
  return { id, course, hosts: [], leaves: [], isContinuation: false, costScore: 0 };
}

/** Order of the courses; held ground goes on where it left off, so nothing is asked of it. */
function standardNext(rotation: Rotation): Readonly<Record<string, string>> {
  const { courses } = rotation;
  return Object.fromEntries(courses.map((course, at) => [course.id, courses[(at + 1) % courses.length]?.id ?? '']));
}

/** A course without stands of its own goes on with what the one before it in the order left standing; all others may follow any. */
function mayFollow(courses: readonly Course[], hasHeld: boolean): Readonly<Record<string, readonly string[]>> {
  const held = hasHeld ? [heldCourse] : [];
  const all = courses.map((course) => course.id as string);
  return Object.fromEntries([
    ...courses.map((course, at): [string, readonly string[]] => {
      const before = courses[(at + courses.length - 1) % courses.length]?.id ?? '';
      return [course.id, course.stands.length === 0 ? [before] : [...all, ...held]];
    }),
    ...held.map((one): [string, readonly string[]] => [one, [...all, ...held]]),
  ]);
}

function plotOf(
  { plot, past, netM2 }: RotationFarm['plots'][number],
  made: RotationFarm,
  rules: CourseRules,
): RotationPlot {
  const { rotation, wish, firstYear, years } = made;
  const gone = new Set([...past.heldYears, ...yearsGone(plot, made)]);
  const every = Array.from({ length: years }, (_, year) => year);
  const wished = wish.pins.filter((pin) => pin.plot === plot.id);
  return {
    id: plot.id,
    areaM2: Math.max(1, netM2),
    parent: null,
    isRotated: true,
    history: knownEnd(past.courses).map(pastId),
    longerRestYears: rules.restsOn(plot.id),
    pins: {
      ...Object.fromEntries(wished.map((pin) => [pin.year - firstYear, pin.course])),
      ...past.pins,
      ...Object.fromEntries([...gone].map((year) => [year, heldCourse])),
    },
    never: wish.never.filter((one) => one.plot === plot.id).map((one) => one.course),
    barredYears: {
      ...Object.fromEntries(
        Object.entries(past.barred).flatMap(([course, barred]): [string, number[]][] =>
          barred.length === 0 ? [] : [[course, barred.map((one) => one.year)]],
        ),
      ),
      [heldCourse]: every.filter((year) => !gone.has(year)),
    },
    dearScore: Object.fromEntries(
      wish.dear.filter((one) => one.plot === plot.id).map((one) => [one.course, one.dearScore]),
    ),
    agreed: every.map((year) => courseOf(rotation, plot, firstYear + year)?.id ?? null),
  };
}

/** Courses of the past without a gap, up to the year before the first. */
function knownEnd(courses: readonly (string | null)[]): readonly string[] {
  const unknown = courses.lastIndexOf(null);
  return courses.slice(unknown + 1).filter((course) => course !== null);
}

/** Years in which the plot is no part of the farm on midsummer's day. */
function yearsGone(plot: Plot, { firstYear, years }: RotationFarm): readonly number[] {
  return Array.from({ length: years }, (_, year) => year).filter((year) => {
    const midsummer = dayOf(firstYear + year, 7, 1);
    return (plot.to !== null && plot.to <= midsummer) || (plot.from !== null && plot.from > midsummer);
  });
}

/** Nothing where the plots divide evenly by the courses; else the largest plot may come and go. */
function freeBalanceM2({ plots, rotation }: RotationFarm): number {
  return plots.length % rotation.courses.length === 0 ? 0 : Math.max(...plots.map((one) => one.netM2));
}
