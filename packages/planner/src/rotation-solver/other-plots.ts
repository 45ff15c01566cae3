/** What the other plots make of a course on one plot: areas, balance and sister parts, as costs to add to each of its arcs. */

import type { ExtraScore } from '../rotation-model/best-path.ts';
import { askedAres, bandAres, freeAres, splitParts } from '../rotation-model/coupling.ts';
import { type RotationProblem, rotatedPlots } from '../rotation-problem/problem.ts';

/** Keeps the area of each course and year, and answers for one plot at a time. */
export interface OtherPlots {
  readonly put: (plotIndex: number, courses: readonly number[]) => void;
  readonly take: (plotIndex: number) => void;
  /** Exact for a plot that is taken off: its own score and these extras sum to the change of the whole. */
  readonly extraFor: (plotIndex: number) => ExtraScore;
  /** Areas, balance and splits of all that is put, in the score. */
  readonly coupledScore: () => number;
}

interface Tables {
  readonly years: number;
  readonly courses: number;
  readonly low: Float64Array;
  readonly high: Float64Array;
  readonly areaWeight: Float64Array;
  readonly balanceWeight: Float64Array;
  readonly freeAres: Float64Array;
}

export function otherPlots(problem: RotationProblem): OtherPlots {
  const tables = tablesOf(problem);
  const { years } = tables;
  const ares = new Float64Array(tables.courses * years);
  const put = new Map<number, readonly number[]>();
  const sisters = sistersOf(problem);
  const aresOf = (plotIndex: number) => (problem.plots[plotIndex]?.areaM2 ?? 0) / 100;
  const add = (courses: readonly number[], plotAres: number) => {
    for (let year = 0; year < years; year++) {
      const at = (courses[year] ?? 0) * years + year;
      ares[at] = (ares[at] ?? 0) + plotAres;
    }
  };
  return {
    put: (plotIndex, courses) => {
      put.set(plotIndex, courses);
      add(courses, aresOf(plotIndex));
    },
    take: (plotIndex) => {
      const courses = put.get(plotIndex);
      if (courses === undefined) return;
      put.delete(plotIndex);
      add(courses, -aresOf(plotIndex));
    },
    extraFor: (plotIndex) => {
      const extras = extrasOf(tables, ares, aresOf(plotIndex));
      const own = (sisters.get(plotIndex) ?? []).flatMap((sister) => put.get(sister) ?? []);
      addSplitExtras(extras.alone, { own, years, weight: problem.weights.splitWeight });
      return (arc) => {
        const at = arc.courseIndex * years + arc.year;
        const alone = extras.alone[at] ?? 0;
        if (arc.year === 0 || arc.lastCourseIndex === arc.courseIndex) return alone;
        return alone + (extras.coming[at] ?? 0) + (extras.going[arc.lastCourseIndex * years + arc.year] ?? 0);
      };
    },
    coupledScore: () => {
      let score = 0;
      for (let at = 0; at < ares.length; at++) {
        score += areaScore(tables, at, ares[at] ?? 0);
        if (at % years > 0) score += balanceScore(tables, at, (ares[at] ?? 0) - (ares[at - 1] ?? 0));
      }
      return score + splitScore(problem, put);
    },
  };
}

function tablesOf(problem: RotationProblem): Tables {
  const { years, weights } = problem;
  const fill = (value: (course: string, year: number) => number) =>
    Float64Array.from(
      problem.courses.flatMap((course) => Array.from({ length: years }, (_, year) => value(course, year))),
    );
  return {
    years,
    courses: problem.courses.length,
    low: fill((course, year) => bandAres(problem, course, year)[0]),
    high: fill((course, year) => bandAres(problem, course, year)[1]),
    areaWeight: fill((course, year) => weights.areaWeight / askedAres(problem, course, year)),
    balanceWeight: fill((course, year) => weights.balanceWeight / askedAres(problem, course, year)),
    freeAres: fill((course, year) => freeAres(problem, course, year)),
  };
}

function areaScore(tables: Tables, at: number, courseAres: number): number {
  const missed = Math.max(0, (tables.low[at] ?? 0) - courseAres) + Math.max(0, courseAres - (tables.high[at] ?? 0));
  return (tables.areaWeight[at] ?? 0) * missed;
}

function balanceScore(tables: Tables, at: number, change: number): number {
  return (tables.balanceWeight[at] ?? 0) * Math.max(0, Math.abs(change) - (tables.freeAres[at] ?? 0));
}

/** By course and year: a course's own area, its coming where another stood, its going where another comes. */
function extrasOf(tables: Tables, ares: Float64Array, plotAres: number) {
  const alone = new Float64Array(ares.length);
  const coming = new Float64Array(ares.length);
  const going = new Float64Array(ares.length);
  for (let at = 0; at < ares.length; at++) {
    const now = ares[at] ?? 0;
    alone[at] = areaScore(tables, at, now + plotAres) - areaScore(tables, at, now);
    if (at % tables.years === 0) continue;
    const change = now - (ares[at - 1] ?? 0);
    const still = balanceScore(tables, at, change);
    coming[at] = balanceScore(tables, at, change + plotAres) - still;
    going[at] = balanceScore(tables, at, change - plotAres) - still;
  }
  return { alone, coming, going };
}

/** Sisters of a part: the parts it is held against. */
function sistersOf(problem: RotationProblem): ReadonlyMap<number, readonly number[]> {
  const sisters = new Map<number, number[]>(rotatedPlots(problem).map((index) => [index, []]));
  for (const [first, other] of splitParts(problem)) {
    sisters.get(first)?.push(other);
    sisters.get(other)?.push(first);
  }
  return sisters;
}

interface SisterCourses {
  /** Courses of all sisters, one after another. */
  readonly own: readonly number[];
  readonly years: number;
  readonly weight: number;
}

function addSplitExtras(alone: Float64Array, { own, years, weight }: SisterCourses): void {
  for (const [place, courseIndex] of own.entries()) {
    const year = place % years;
    for (let at = year; at < alone.length; at += years)
      if (at !== courseIndex * years + year) alone[at] = (alone[at] ?? 0) + weight;
  }
}

function splitScore(problem: RotationProblem, put: ReadonlyMap<number, readonly number[]>): number {
  let score = 0;
  for (const [first, other] of splitParts(problem)) {
    const there = put.get(first);
    const here = put.get(other);
    if (there === undefined || here === undefined) continue;
    score += problem.weights.splitWeight * there.filter((course, year) => here[year] !== course).length;
  }
  return score;
}
