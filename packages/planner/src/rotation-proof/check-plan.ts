/**
 * Holds a rotation plan against its rules, one after another, the way one would with a pencil.
 *
 * Holds   shares no code with the models that make plans, so that neither can hide the other's mistake. Reads the plan alone: what each plot
 *         carries each year, its past, and the rules as they were given.
 */
import type { CourseOption, RotationPlan, RotationPlot, RotationProblem } from '../rotation-problem/problem.ts';

export const breachKinds = [
  'not-whole',
  'left-out',
  'follows',
  'followed-by',
  'since-ley',
  'never',
  'barred',
  'rest',
  'pin',
] as const;
export type BreachKind = (typeof breachKinds)[number];

export interface Breach {
  readonly kind: BreachKind;
  readonly plot: string;
  /** Null where the whole plot is meant. */
  readonly year: number | null;
  /** The course, organism or option it is about. */
  readonly about: string;
}

/** Every breach of every plot; none for a lawful plan. */
export function planBreaches(problem: RotationProblem, plan: RotationPlan): readonly Breach[] {
  return problem.plots.flatMap((plot, at) => sequenceBreaches(problem, plot, plan[at] ?? []));
}

/** Breaches of one plot by a sequence of options. */
export function sequenceBreaches(
  problem: RotationProblem,
  plot: RotationPlot,
  sequence: readonly string[],
): readonly Breach[] {
  const breach = (kind: BreachKind, year: number | null, about: string): Breach => ({
    kind,
    plot: plot.id,
    year,
    about,
  });
  if (!plot.isRotated) return sequence.length === 0 ? [] : [breach('left-out', null, plot.id)];
  const byId = new Map(problem.options.map((option) => [option.id, option]));
  const planned = sequence.map((id) => byId.get(id));
  const isWhole = planned.length === problem.years && planned.every((one) => one !== undefined);
  if (!isWhole) return [breach('not-whole', null, sequence.join(' '))];
  const past = plot.history.map((id) => byId.get(id) ?? problem.pastOptions?.find((option) => option.id === id));
  const all = [...past, ...planned].filter((one) => one !== undefined);
  return Array.from({ length: problem.years }, (_, year) => {
    const place = { all, here: past.length + year };
    return [
      ...coursePromises(plot, { ...place, year }),
      ...neighbourYears(problem, place),
      ...(isTooLongSinceLey(problem, place)
        ? [{ kind: 'since-ley' as const, about: all[place.here]?.course ?? '' }]
        : []),
      ...brokenRests(problem, plot, place).map((organism) => ({ kind: 'rest' as const, about: organism })),
    ].map(({ kind, about }) => breach(kind, year, about));
  }).flat();
}

type Found = Pick<Breach, 'kind' | 'about'>;

interface YearInAll {
  /** Past and plan in one row. */
  readonly all: readonly CourseOption[];
  readonly here: number;
}

/** What is pinned here, and what must never stand here. */
function coursePromises(
  plot: RotationPlot,
  { all, here, year }: YearInAll & { readonly year: number },
): readonly Found[] {
  const course = all[here]?.course ?? '';
  const pin = plot.pins[String(year)];
  const found: Found[] = [];
  if (pin !== undefined && pin !== course) found.push({ kind: 'pin', about: pin });
  if (plot.never.includes(course)) found.push({ kind: 'never', about: course });
  if ((plot.barredYears?.[course] ?? []).some((barred) => barred === year))
    found.push({ kind: 'barred', about: course });
  return found;
}

/** What came the year before, and what had to come after it. */
function neighbourYears(problem: RotationProblem, { all, here }: YearInAll): readonly Found[] {
  const course = all[here]?.course ?? '';
  const before = all[here - 1]?.course;
  if (before === undefined) return [];
  const found: Found[] = [];
  if (!(problem.mayFollow[course] ?? []).includes(before)) found.push({ kind: 'follows', about: course });
  const next = problem.mustBeFollowedBy[before];
  if (next !== undefined && next !== course) found.push({ kind: 'followed-by', about: before });
  return found;
}

function isTooLongSinceLey(problem: RotationProblem, { all, here }: YearInAll): boolean {
  const most = problem.mostSinceLeyYears[all[here]?.course ?? ''];
  if (most === undefined) return false;
  const recent = all.slice(Math.max(0, here - most), here);
  return !recent.some((option) => problem.leyCourses.includes(option.course));
}

/** Organisms a new stand of whose hosts starts here although one stood too short a time ago. */
function brokenRests(problem: RotationProblem, plot: RotationPlot, { all, here }: YearInAll): readonly string[] {
  const option = all[here];
  if (option === undefined || option.isContinuation) return [];
  return option.hosts.filter((organism) => {
    const usual = problem.restYears[organism] ?? 0;
    const longer = plot.longerRestYears[organism] ?? 0;
    const rest = Math.max(longer, usual);
    for (let back = 1; back < rest; back++) {
      const earlier = all[here - back];
      if (earlier !== undefined && (earlier.leaves ?? earlier.hosts).includes(organism)) return true;
    }
    return false;
  });
}
