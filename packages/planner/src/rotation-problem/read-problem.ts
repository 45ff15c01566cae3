/** Reads a rotation problem from its JSON form `o1-1`, and says everything that is wrong with it at once. */
import type { AreaBand, CourseOption, RotationPlot, RotationProblem, RotationWeights } from './problem.ts';
import { problemFaults } from './problem-faults.ts';
import { type Fields, type ProblemFault, readFields } from './read-fields.ts';

export type ReadProblem =
  | { readonly kind: 'problem'; readonly problem: RotationProblem }
  | { readonly kind: 'faults'; readonly faults: readonly ProblemFault[] };

export const rotationSchema = 'o1-1';
/** Years a rotation may be planned for. The form itself allows shorter ones, for checking by hand. */
export const mostRotationYears = 30;

/** What was said, as a problem; or all faults, each with its place and what was found there. */
export function readRotationProblem(said: unknown): ReadProblem {
  const faults: ProblemFault[] = [];
  const root = readFields(said, '', faults);
  const schema = root.text('schema', rotationSchema);
  if (schema !== rotationSchema) faults.push({ place: 'schema', found: schema, need: `"${rotationSchema}"` });
  const years = root.whole('years', { least: 1, most: mostRotationYears });
  const agreed = root.list('present', true);
  const problem: RotationProblem = {
    name: root.text('name'),
    years,
    courses: root.texts('order'),
    standardNext: root.textsByName('succ'),
    restYears: root.numbersByName('organisms', 1),
    options: root.list('options').map((one, at) => readOption(one, `options.${at}`, faults)),
    mayFollow: root.listsByName('pred'),
    mustBeFollowedBy: root.textsByName('mustFollow'),
    mostSinceLeyYears: root.numbersByName('maxYearsSinceLey', 0),
    leyCourses: root.has('leyYears') ? root.texts('leyYears') : ['L2'],
    plots: root
      .list('plots')
      .map((one, at) => readPlot(one, { place: `plots.${at}`, agreed: agreed[at], years }, faults)),
    askedM2: root.numberListsByName('demand'),
    bands: readBands(root),
    weights: readWeights(readFields(root.raw('weights') ?? {}, 'weights', faults)),
  };
  faults.push(...(faults.length === 0 ? problemFaults(problem) : []));
  return faults.length > 0 ? { kind: 'faults', faults } : { kind: 'problem', problem };
}

function readOption(said: unknown, place: string, faults: ProblemFault[]): CourseOption {
  const fields = readFields(said, place, faults);
  return {
    id: fields.text('id'),
    course: fields.text('course'),
    hosts: fields.texts('hosts'),
    isContinuation: fields.flag('continuation'),
    costScore: fields.number('cost', { least: 0, absent: 0 }),
  };
}

interface PlotPlace {
  readonly place: string;
  readonly agreed: unknown;
  readonly years: number;
}

function readPlot(said: unknown, at: PlotPlace, faults: ProblemFault[]): RotationPlot {
  const fields = readFields(said, at.place, faults);
  return {
    id: fields.text('id'),
    areaM2: fields.number('area', { least: 1 }),
    parent: fields.has('parent') ? fields.text('parent') : null,
    isRotated: !fields.flag('perennial'),
    history: fields.texts('history'),
    longerRestYears: fields.has('longer') ? fields.numbersByName('longer', 1) : {},
    pins: fields.has('pins') ? fields.textsByName('pins') : {},
    never: fields.has('never') ? fields.texts('never') : [],
    dearScore: fields.has('dear') ? fields.numbersByName('dear', 0) : {},
    agreed: readAgreed(at, faults),
  };
}

function readAgreed(at: PlotPlace, faults: ProblemFault[]): readonly (string | null)[] | null {
  const said = at.agreed;
  if (said === undefined || said === null) return null;
  if (Array.isArray(said) && said.every((one): one is string | null => one === null || typeof one === 'string'))
    return said;
  faults.push({ place: at.place.replace('plots', 'present'), found: JSON.stringify(said), need: 'a course a year' });
  return null;
}

function readBands(root: Fields): Readonly<Record<string, AreaBand>> {
  return Object.fromEntries(
    Object.entries(root.numberListsByName('bounds')).map(([course, [low = 0, high = low]]) => [course, { low, high }]),
  );
}

function readWeights(fields: Fields): RotationWeights {
  const weight = (name: string, absent: number) => fields.number(name, { least: 0, absent });
  return {
    areaWeight: weight('area', 10),
    orderWeight: weight('dev', 1),
    balanceWeight: weight('imb', 2),
    freeBalanceShare: weight('imbFree', 0),
    // The form has this one figure in hundreds of square metres.
    freeBalanceM2: weight('imbFreeAbs', 0) * 100,
    stabilityWeight: weight('stab', 0.5),
    stabilityDecayFactor: weight('stabDecay', 0.85),
    splitWeight: weight('split', 0.5),
    optionWeight: weight('optCost', 1),
  };
}
