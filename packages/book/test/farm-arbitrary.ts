/** Random farms for properties: every table filled, every reference right, texts and numbers as odd as they may be. */
import { addDays, type Day, type PlotId } from '@leywright/measures';
import fc from 'fast-check';
import { emptyFarm, type Farm, plotKinds, type Stand, standEnds, standKinds } from '../src/index.ts';
import { byDays } from '../src/rows/stands.ts';
import { amount, day, id, many, orNull, plant, rec, share, span, words } from './arbitrary-pieces.ts';
import { about, plain, promise, rotation } from './arbitrary-tables.ts';
import { absencesOf, working } from './arbitrary-work.ts';
import { known } from './known.ts';

/** A square of about 50 m, one field's breadth from the next, so that no two plots overlap. */
const square = (at: number, latDeg: number, lonDeg: number): readonly (readonly [number, number])[] => {
  const west = lonDeg + at * 0.002;
  return [
    [west, latDeg],
    [west + 0.0007, latDeg],
    [west + 0.0007, latDeg + 0.0005],
    [west, latDeg + 0.0005],
    [west, latDeg],
  ];
};

const oneOrNull = <T>(list: readonly T[]): fc.Arbitrary<T | null> =>
  list.length === 0 ? fc.constant(null) : orNull(fc.constantFrom(...list));

const plotsOf = (
  head: Farm['about'],
  fields: Farm['fields'],
  courses: readonly string[],
): fc.Arbitrary<Farm['plots']> =>
  many(
    fc.record({
      id: id<PlotId>(),
      letter: words,
      name: words,
      field: oneOrNull(fields.map((field) => field.id)),
      kind: fc.constantFrom(...plotKinds),
      grossM2: amount(1e5, 1),
      measuredBy: fc.constantFrom('typed' as const, 'geometry' as const),
      hedgeM: amount(500),
      bankM2: amount(500),
      headlandShare: orNull(share),
      soil: orNull(words),
      bedCentresM: orNull(amount(3, 0.5)),
      bedCount: orNull(fc.integer({ min: 1, max: 90 })),
      courseAtStart: oneOrNull(courses),
      status: fc.constantFrom('organic' as const, 'in-conversion' as const, 'unknown' as const),
      statusSince: orNull(day),
      drawn: fc.boolean(),
    }),
    (plot) => plot.id,
    5,
  ).map((rows) =>
    rows.map(({ drawn, courseAtStart, ...row }, at) => ({
      ...row,
      courseAtStart: courseAtStart as Farm['plots'][number]['courseAtStart'],
      from: null,
      to: null,
      ring: drawn ? square(at, head.place.latDeg, head.place.lonDeg) : null,
    })),
  );

const partsOn = (plots: readonly PlotId[]): fc.Arbitrary<Farm['parts']> =>
  many(
    rec<Farm['parts'][number]>({
      id: id(),
      plot: fc.constantFrom(...plots),
      span,
      from: day,
      to: fc.constant(null),
      why: orNull(words),
      parents: fc.array(rec({ plot: fc.constantFrom(...plots), span, share }), { maxLength: 2 }),
    }),
    (part) => part.id,
  );

const marksOn = (plots: readonly PlotId[]): fc.Arbitrary<Farm['marks']> =>
  many(
    rec<Farm['marks'][number]>({
      organism: fc.constantFrom(...known.organisms.keys()),
      plot: fc.constantFrom(...plots),
      span,
      foundOn: day,
      clearedOn: fc.constant(null),
      note: orNull(words),
    }),
    (mark) => `${mark.organism} ${mark.plot} ${mark.foundOn}`,
  );

const samplesOn = (plots: readonly PlotId[]): fc.Arbitrary<Farm['soilSamples']> =>
  many(
    rec<Farm['soilSamples'][number]>({
      plot: fc.constantFrom(...plots),
      takenOn: day,
      method: words,
      ph: orNull(amount(9, 4)),
      pMgL: orNull(amount(90)),
      kMgL: orNull(amount(400)),
      mgMgL: orNull(amount(400)),
      organicMatterPct: orNull(amount(20)),
    }),
    (sample) => `${sample.plot} ${sample.takenOn}`,
  );

const plannedDays = (from: Day, moved: number | null, days: number) =>
  moved === null ? {} : { plannedFrom: addDays(from, moved), plannedTo: addDays(from, moved + days) };

const standsOn = (plots: Farm['plots'], courses: readonly string[]): fc.Arbitrary<readonly Stand[]> =>
  many(
    fc.record({
      id: id<Stand['id']>(),
      succession: orNull(id<NonNullable<Stand['succession']>>()),
      plot: fc.constantFrom(...plots.map((plot) => plot.id)),
      span,
      what: plant,
      kind: fc.constantFrom(...standKinds),
      variety: orNull(words),
      state: fc.constantFrom('pencil' as const, 'agreed' as const, 'recorded' as const),
      from: day,
      days: fc.integer({ min: 1, max: 900 }),
      sown: orNull(fc.integer({ min: 0, max: 90 })),
      planted: orNull(fc.integer({ min: 0, max: 3 })),
      moved: fc.option(fc.integer({ min: -30, max: 30 }), { nil: null }),
      course: oneOrNull(courses),
      courseYear: orNull(fc.integer({ min: 2010, max: 2040 })),
      establishedShare: orNull(share),
      endedBy: orNull(fc.constantFrom(...standEnds)),
      reason: orNull(words),
      yieldTHa: orNull(amount(90)),
    }),
    (stand) => stand.id,
    8,
  ).map((rows) =>
    rows
      .map(({ days, sown, planted, moved, ...row }, at) => ({
        ...row,
        course: row.course as Stand['course'],
        to: addDays(row.from, days),
        sownOn: sown === null ? null : addDays(row.from, -sown),
        plantedOn: planted === null ? null : addDays(row.from, planted),
        undersownIn: at % 3 === 2 ? (rows[0]?.id ?? null) : null,
        ...plannedDays(row.from, moved, days),
      }))
      .sort(byDays),
  );

/** A farm without records: those travel as entries. */
export const farmArbitrary: fc.Arbitrary<Farm> = fc
  .tuple(about, plain, rotation, promise, working)
  .chain(([head, tables, round, box, work]) => {
    const courses = round?.courses.map((course) => course.id) ?? [];
    const rest = { ...emptyFarm(head), ...tables, ...work, rotation: round, promise: box };
    return plotsOf(head, tables.fields, courses).chain((plots) => {
      const on = plots.map((plot) => plot.id);
      const onPlots =
        on.length === 0
          ? fc.constant(null)
          : fc.tuple(standsOn(plots, courses), partsOn(on), marksOn(on), samplesOn(on));
      return fc.tuple(onPlots, absencesOf(tables.people)).map(([found, absences]): Farm => {
        const [stands, parts, marks, soilSamples] = found ?? [[], [], [], []];
        return { ...rest, plots, stands, parts, marks, soilSamples, absences };
      });
    });
  });
