/** What cannot be right in a problem whose members are all of the right kind: names that lead nowhere, lists too short, a stand without a start. */
import { nearest } from '@leywright/book';
import { type RotationPlot, type RotationProblem, restOn } from './problem.ts';
import type { ProblemFault } from './read-fields.ts';

export function problemFaults(problem: RotationProblem): readonly ProblemFault[] {
  return [
    ...twice('order', problem.courses),
    ...twice(
      'options',
      problem.options.map((one) => one.id),
    ),
    ...twice(
      'plots',
      problem.plots.map((one) => one.id),
    ),
    ...nameFaults(problem),
    ...areaFaults(problem),
    ...continuationFaults(problem),
    ...problem.plots.flatMap((plot, at) => plotFaults(problem, plot, `plots.${at}`)),
  ];
}

function twice(place: string, names: readonly string[]): readonly ProblemFault[] {
  const again = names.filter((name, at) => names.indexOf(name) !== at);
  return [...new Set(again)].map((name) => ({ place, found: `"${name}" more than once`, need: 'each name once' }));
}

/** Faults for the names in a list that are not among the known ones. */
function unknown(place: string, names: readonly string[], known: readonly string[]): readonly ProblemFault[] {
  return names
    .filter((name) => !known.includes(name))
    .map((name) => ({
      place,
      found: `"${name}"`,
      need: `one of ${nearest(name, known).join(', ') || known.join(', ')}`,
    }));
}

function nameFaults(problem: RotationProblem): readonly ProblemFault[] {
  const { courses } = problem;
  const organisms = Object.keys(problem.restYears);
  return [
    ...problem.options.flatMap((one, at) => [
      ...unknown(`options.${at}.course`, [one.course], courses),
      ...unknown(`options.${at}.hosts`, one.hosts, organisms),
    ]),
    ...courses
      .filter((course) => !problem.options.some((one) => one.course === course))
      .map((course) => ({ place: 'options', found: `no option of ${course}`, need: 'at least one for each course' })),
    ...courses
      .filter((course) => !Object.hasOwn(problem.mayFollow, course))
      .map((course) => ({ place: `pred.${course}`, found: 'nothing', need: 'the courses it may follow' })),
    ...Object.entries(problem.mayFollow).flatMap(([course, before]) =>
      unknown(`pred.${course}`, [course, ...before], courses),
    ),
    ...Object.entries(problem.mustBeFollowedBy).flatMap(([course, next]) =>
      unknown(`mustFollow.${course}`, [course, next], courses),
    ),
    ...Object.entries(problem.standardNext).flatMap(([course, next]) =>
      unknown(`succ.${course}`, [course, next], courses),
    ),
    ...unknown('maxYearsSinceLey', Object.keys(problem.mostSinceLeyYears), courses),
  ];
}

function areaFaults(problem: RotationProblem): readonly ProblemFault[] {
  return problem.courses.flatMap((course) => {
    const askedM2 = problem.askedM2[course] ?? [];
    const band = problem.bands[course];
    const faults: ProblemFault[] = [];
    if (askedM2.length < problem.years)
      faults.push({ place: `demand.${course}`, found: `${askedM2.length} years`, need: `${problem.years} years` });
    if (band === undefined) faults.push({ place: `bounds.${course}`, found: 'nothing', need: 'least and most share' });
    else if (band.low > band.high)
      faults.push({ place: `bounds.${course}`, found: `${band.low} to ${band.high}`, need: 'the lower share first' });
    return faults;
  });
}

/** A continuation is the same stand a year later, so it may only come after what hosts the same. */
function continuationFaults(problem: RotationProblem): readonly ProblemFault[] {
  return problem.options.flatMap((one, at) => {
    if (!one.isContinuation) return [];
    const before = problem.mayFollow[one.course] ?? [];
    const strangers = problem.options.filter(
      (other) => before.includes(other.course) && !one.hosts.every((host) => other.hosts.includes(host)),
    );
    return strangers.map((other) => ({
      place: `options.${at}`,
      found: `${one.id} goes on after ${other.id}`,
      need: 'a continuation comes after what is host of the same',
    }));
  });
}

function plotFaults(problem: RotationProblem, plot: RotationPlot, place: string): readonly ProblemFault[] {
  const optionIds = [...problem.options, ...(problem.pastOptions ?? [])].map((one) => one.id);
  const organisms = Object.keys(problem.restYears);
  const years = Array.from({ length: problem.years }, (_, year) => String(year));
  return [
    ...unknown(`${place}.history`, plot.history, optionIds),
    ...unknown(`${place}.longer`, Object.keys(plot.longerRestYears), organisms),
    ...unknown(`${place}.never`, plot.never, problem.courses),
    ...unknown(`${place}.dear`, Object.keys(plot.dearScore), problem.courses),
    ...unknown(`${place}.pins`, Object.keys(plot.pins), years),
    ...unknown(`${place}.pins`, Object.values(plot.pins), problem.courses),
    ...organisms
      .filter((organism) => !Number.isInteger(restOn(problem, plot, organism)))
      .map((organism) => ({
        place: `${place}.longer.${organism}`,
        found: String(restOn(problem, plot, organism)),
        need: 'whole years',
      })),
  ];
}
