/** Small farms by chance, for holding the models against trying every plan. Invented for shape. */

import type { CourseOption, RotationPlot, RotationProblem } from '@leywright/planner';
import fc from 'fast-check';

const courses = ['L1', 'L2', 'POT', 'BRA', 'ROOT'] as const;

const brassicas: CourseOption = { id: 'BRA', course: 'BRA', hosts: ['clubroot'], isContinuation: false, costScore: 0 };

const options: readonly CourseOption[] = [
  { id: 'L1', course: 'L1', hosts: ['legume'], isContinuation: false, costScore: 0 },
  { id: 'L2', course: 'L2', hosts: ['legume'], isContinuation: true, costScore: 0 },
  { id: 'POT+rye', course: 'POT', hosts: ['cyst'], isContinuation: false, costScore: 0.25 },
  { id: 'POT+mustard', course: 'POT', hosts: ['cyst', 'clubroot'], isContinuation: false, costScore: 0 },
  brassicas,
  { id: 'ROOT', course: 'ROOT', hosts: ['umbel'], isContinuation: false, costScore: 0 },
];

/** As where winter brassicas stand on into the next year: what they leave asks for a longer rest than what they meet. */
const oneSided: readonly CourseOption[] = options.map((one) =>
  one.id === 'BRA' ? { ...one, leaves: ['clubroot', 'cyst'] } : one,
);

const someCourses = (least: number) => fc.subarray([...courses], { minLength: least });
const restYears = fc.record({
  legume: fc.integer({ min: 1, max: 3 }),
  cyst: fc.integer({ min: 1, max: 4 }),
  clubroot: fc.integer({ min: 1, max: 4 }),
  umbel: fc.integer({ min: 1, max: 3 }),
});

const plotOf = (id: string, years: number): fc.Arbitrary<RotationPlot> =>
  fc.record({
    id: fc.constant(id),
    areaM2: fc.integer({ min: 5, max: 50 }).map((ares) => ares * 100),
    parent: fc.constantFrom(null, null, 'whole'),
    isRotated: fc.boolean().map((isIt) => isIt || id === 'P0'),
    history: fc.array(fc.constantFrom(...options.map((one) => one.id), 'BRA long gone'), { maxLength: 5 }),
    longerRestYears: fc.constantFrom<Readonly<Record<string, number>>>({}, {}, { clubroot: 5 }),
    pins: fc.constantFrom<Readonly<Record<string, string>>>({}, {}, { [years - 1]: 'POT' }, { 0: 'BRA' }),
    never: fc.constantFrom<readonly string[]>([], [], ['ROOT']),
    barredYears: fc.constantFrom<Readonly<Record<string, readonly number[]>>>({}, {}, { BRA: [0, 1] }),
    dearScore: fc.constantFrom<Readonly<Record<string, number>>>({}, { BRA: 0.7 }),
    agreed: fc.option(fc.array(fc.option(fc.constantFrom(...courses)), { minLength: years, maxLength: years })),
  });

/** Up to four plots and four years; not every one has a plan. */
export const smallRotations: fc.Arbitrary<RotationProblem> = fc
  .tuple(fc.integer({ min: 1, max: 4 }), fc.integer({ min: 2, max: 4 }))
  .chain(([plots, years]) =>
    fc.record({
      name: fc.constant('small'),
      years: fc.constant(years),
      courses: fc.constant(courses),
      standardNext: fc.constant({ L1: 'L2', L2: 'POT', POT: 'BRA', BRA: 'ROOT', ROOT: 'L1' }),
      restYears,
      options: fc.constantFrom(options, oneSided),
      pastOptions: fc.constant([{ ...brassicas, id: 'BRA long gone', leaves: [] }]),
      mayFollow: fc.record({
        L1: someCourses(1).map((some) => some.filter((one) => one !== 'L1')),
        L2: fc.constant(['L1']),
        POT: someCourses(2),
        BRA: someCourses(2),
        ROOT: someCourses(2),
      }),
      mustBeFollowedBy: fc.constantFrom<Readonly<Record<string, string>>>({ L1: 'L2' }, { L1: 'L2', ROOT: 'L1' }, {}),
      mostSinceLeyYears: fc.constantFrom<Readonly<Record<string, number>>>({}, { BRA: 2, ROOT: 3 }),
      leyCourses: fc.constant(['L2']),
      plots: fc.tuple(...Array.from({ length: plots }, (_, at) => plotOf(`P${at}`, years))),
      askedM2: fc.record(
        Object.fromEntries(
          courses.map((course) => [
            course,
            fc.array(fc.integer({ min: 0, max: 6000 }), { minLength: years, maxLength: years }),
          ]),
        ),
      ),
      bands: fc.constant(Object.fromEntries(courses.map((course) => [course, { low: 0.7, high: 1.35 }]))),
      weights: fc.record({
        areaWeight: fc.constant(10),
        orderWeight: fc.constant(1),
        balanceWeight: fc.constantFrom(0, 2),
        freeBalanceShare: fc.constantFrom(0, 0.1),
        freeBalanceM2: fc.constantFrom(0, 2000),
        stabilityWeight: fc.constantFrom(0, 0.5),
        stabilityDecayFactor: fc.constant(0.85),
        splitWeight: fc.constant(0.5),
        optionWeight: fc.constant(1),
      }),
    }),
  );
