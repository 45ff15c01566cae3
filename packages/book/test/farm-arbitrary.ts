/** Random farms for properties: every table filled, every reference right, texts and numbers as odd as they may be. */
import {
  addDays,
  asId,
  type CropId,
  type Day,
  dayAt,
  type Id,
  type IsoWeek,
  monthDayOf,
  weekOf,
} from '@leywright/measures';
import fc from 'fast-check';
import {
  type About,
  defaultConventions,
  emptyFarm,
  type Farm,
  featureKinds,
  plotKinds,
  roles,
  type Span,
  type Stand,
  standEnds,
  standKinds,
  wholePlot,
} from '../src/index.ts';
import { known } from './known.ts';

const id = <T extends Id>(): fc.Arbitrary<T> =>
  fc.stringMatching(/^[a-zA-Zäé0-9]{1,6}(-[a-z0-9]{1,5})?$/).map((text) => asId<T>(text.normalize('NFC')));
const odd = fc.constantFrom(
  '=1+1',
  '+44',
  '-',
  '@x',
  "'=a",
  'a "b" c',
  'a,b;c',
  'two\nlines',
  'a\r\nb',
  'a\tb',
  '5',
  '1,5',
  '2027-01-01',
  'ä',
  '日本',
  '"',
  "''",
);
export const words = fc
  .oneof(odd, fc.string({ minLength: 1, maxLength: 12 }), fc.string({ unit: 'grapheme', minLength: 1, maxLength: 6 }))
  .map((text) => text.normalize('NFC').replaceAll('\0', '').trim())
  .filter((text) => text !== '');
const amount = (max = 1e6, min = 0) => fc.double({ min, max, noNaN: true }).map((value) => value + 0);
const share = amount(1);
const day: fc.Arbitrary<Day> = fc.integer({ min: 12_000, max: 25_000 }).map(dayAt);
const monthDay = day.map(monthDayOf);
const week: fc.Arbitrary<IsoWeek> = day.map(weekOf);
const orNull = <T>(one: fc.Arbitrary<T>) => fc.option(one, { nil: null });
const span: fc.Arbitrary<Span> = fc.oneof(
  fc.constant(wholePlot),
  fc
    .tuple(share, share)
    .filter(([a, b]) => a !== b)
    .map(([a, b]) => ({ fromShare: Math.min(a, b), toShare: Math.max(a, b) })),
);
const many = <T, K>(one: fc.Arbitrary<T>, key: (value: T) => K, maxLength = 4) =>
  fc.uniqueArray(one, { selector: key, maxLength });
const crops = [...known.crops.keys()] as CropId[];
const crop = fc.constantFrom(...crops);
const cropList = fc.uniqueArray(crop, { minLength: 1, maxLength: 3 });
const plant = fc.constantFrom(...crops, ...known.covers.keys());
const unit = fc.constantFrom('kg' as const, 'head' as const, 'bunch' as const);
const family = fc.oneof(
  fc.constantFrom(...known.families),
  words.filter((text) => !known.families.some((one) => one.toLowerCase() === text.toLowerCase())),
);
const rec = <T extends object>(model: { [K in keyof T]: fc.Arbitrary<T[K]> }): fc.Arbitrary<T> =>
  fc.record(model) as fc.Arbitrary<T>;

const about: fc.Arbitrary<About> = rec<About>({
  id: id(),
  name: words,
  sample: fc.boolean(),
  place: rec({
    latDeg: amount(60, -60),
    lonDeg: amount(170, -170),
    elevationM: orNull(amount(2000)),
    near: orNull(words),
    jurisdiction: words,
    timeZone: fc.constant('Europe/London'),
  }),
  conventions: fc
    .record({
      restSeasonFrom: monthDay,
      leachingTo: monthDay,
      familyRests: fc.constantFrom('reference' as const, 'own' as const),
      organismRests: fc.boolean(),
      hedgeBufferM: orNull(amount(20)),
      headlandShare: share,
      gradingLossShare: orNull(share),
      storeLossFrom: orNull(day),
      packingHBox: orNull(share),
      deliveryHWeek: orNull(amount(50)),
      lastDayCounts: fc.boolean(),
    })
    .map((own) => ({ ...defaultConventions, ...own })),
  shows: rec({
    area: fc.constantFrom('ha' as const, 'acres' as const),
    mass: fc.constantFrom('kg' as const, 'lb' as const),
    weekStart: fc.constantFrom('monday' as const, 'sunday' as const),
    money: fc.constantFrom('GBP', 'EUR', 'JPY', 'KWD'),
  }),
});

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

const rotation = orNull(
  rec<NonNullable<Farm['rotation']>>({
    firstYear: fc.integer({ min: 2010, max: 2040 }),
    state: fc.constantFrom('pencil' as const, 'agreed' as const),
    agreedOn: orNull(day),
    courses: many(
      rec<NonNullable<Farm['rotation']>['courses'][number]>({
        id: id(),
        name: words,
        hoursPerHa: orNull(amount(900)),
        hoursFollow: fc.constantFrom('need' as const, 'ground' as const),
        stands: many(
          fc
            .record({
              key: id<Id>().map(String),
              what: plant,
              kind: fc.constantFrom(...standKinds),
              variety: orNull(words),
              span,
              sow: monthDay,
              plant: orNull(monthDay),
              startYearOffset: fc.integer({ min: -1, max: 1 }),
              end: monthDay,
              undersownIn: fc.constant(null),
            })
            .map((stand) => ({ ...stand, endYearOffset: stand.startYearOffset + 1 })),
          (stand) => stand.key,
          3,
        ),
      }),
      (course) => course.id,
    ),
  }),
);

const promise = orNull(
  many(
    rec({ id: id<Id>().map((one) => String(one).toLowerCase()), name: words, households: amount(500) }),
    (size) => size.id,
    3,
  ).chain((sizes) =>
    rec<NonNullable<Farm['promise']>>({
      sizes: fc.constant(sizes),
      itemsPerBox: orNull(amount(20)),
      packWeekday: fc.integer({ min: 1, max: 7 }),
      from: orNull(day),
      to: orNull(day),
      closedWeeks: many(week, String).map((weeks) => weeks.filter((one) => one < '2010')),
      closedEveryYear: many(fc.integer({ min: 1, max: 53 }), Number),
      movedPackDays: many(rec({ week, packOn: day }), (moved) => moved.week).map((moved) =>
        moved.filter((one) => one.week >= '2010'),
      ),
      slots: many(
        rec<NonNullable<Farm['promise']>['slots'][number]>({
          id: id<Id>().map(String),
          crops: cropList,
          everyWeeks: fc.integer({ min: 1, max: 4 }),
          unit,
          window: fc.oneof(
            rec({ kind: fc.constant('yearly' as const), from: monthDay, to: monthDay }),
            fc
              .tuple(day, fc.integer({ min: 0, max: 300 }))
              .map(([from, days]) => ({ kind: 'once' as const, from, to: addDays(from, days) })),
          ),
          portions: fc
            .subarray([...sizes])
            .chain((some) => fc.tuple(...some.map((size) => amount(5).map((portion) => [size.id, portion] as const))))
            .map((pairs) => Object.fromEntries(pairs)),
        }),
        (slot) => slot.id,
      ),
      needs: many(
        fc.tuple(crop, amount(80), fc.boolean()).map(([one, figure, byKg]) => ({
          crop: one,
          kgHousehold: byKg ? figure : null,
          m2Household: byKg ? null : figure,
        })),
        (need) => need.crop,
      ),
      boxWeeksPerYear: orNull(amount(53)),
    }),
  ),
);

const standsOn = (plots: Farm['plots'], courses: readonly string[]): fc.Arbitrary<readonly Stand[]> =>
  plots.length === 0
    ? fc.constant([])
    : many(
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
          course: courses.length === 0 ? fc.constant(null) : orNull(fc.constantFrom(...courses)),
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
            ...(moved === null
              ? {}
              : { plannedFrom: addDays(row.from, moved), plannedTo: addDays(row.from, moved + days) }),
          }))
          .sort((a, b) => (a.from < b.from ? -1 : a.from > b.from ? 1 : a.id < b.id ? -1 : 1)),
      );

const plain = rec<
  Pick<
    Farm,
    'fields' | 'features' | 'rests' | 'crops' | 'prices' | 'stores' | 'storeLosses' | 'people' | 'weather' | 'aliases'
  >
>({
  fields: many(
    rec<Farm['fields'][number]>({
      id: id(),
      name: words,
      areaM2: orNull(amount()),
      hedgesOver5Years: orNull(fc.boolean()),
    }),
    (one) => one.id,
  ),
  features: many(
    rec<Farm['features'][number]>({
      id: id<Id>().map(String),
      kind: fc.constantFrom(...featureKinds),
      name: words,
      lengthM: orNull(amount(900)),
      areaM2: orNull(amount(900)),
      line: orNull(fc.array(fc.tuple(amount(170, -170), amount(80, -80)), { minLength: 2, maxLength: 4 })),
    }),
    (one) => one.id,
  ),
  rests: many(
    rec<Farm['rests'][number]>({
      id: id<Id>().map(String),
      name: words,
      family,
      hosts: fc.uniqueArray(plant),
      years: fc.integer({ min: 0, max: 12 }),
      force: fc.constantFrom('hard' as const, 'warn' as const, 'info' as const),
      countsCovers: fc.boolean(),
      countsUndersown: fc.boolean(),
    }),
    (one) => one.id,
  ),
  crops: many(
    rec<Farm['crops'][number]>({
      id: fc.oneof(crop, id<CropId>()),
      basedOn: orNull(crop),
      name: orNull(words),
      family: orNull(family),
      variety: orNull(words),
      unit: orNull(unit),
      unitKg: orNull(amount(3, 0.01)),
      yieldGrossTHa: orNull(amount(90)),
      yieldMarketableTHa: fc.constant(null),
      yieldPackedTHa: fc.constant(null),
      gradingLossShare: orNull(share),
      packingLossShare: orNull(share),
      storeLossTotalShare: orNull(share),
      bedCentresM: orNull(amount(3, 0.2)),
      rowsPerBed: orNull(amount(9, 1)),
      plantsPerRowM: orNull(amount(90, 1)),
      germinationShare: orNull(share),
      fieldFactorShare: orNull(share),
      thousandSeedG: orNull(amount(500, 0.001)),
      seedMarginShare: orNull(share),
      packSeeds: orNull(amount(1e6, 1)),
      hoursPerHa: orNull(amount(900)),
    }),
    (one) => one.id,
  ),
  prices: many(
    rec<Farm['prices'][number]>({ crop, from: orNull(day), unit, priceMinor: fc.integer({ min: 0, max: 1_000_000 }) }),
    (one) => `${one.crop} ${one.from} ${one.unit}`,
  ),
  stores: many(
    rec<Farm['stores'][number]>({
      id: id(),
      name: words,
      kind: fc.constantFrom(...known.storeKinds),
      crops: fc.uniqueArray(crop),
      capacityKg: orNull(amount()),
    }),
    (one) => one.id,
  ),
  storeLosses: many(
    rec<Farm['storeLosses'][number]>({ crop, from: orNull(day), lossShareWeek: share }),
    (one) => `${one.crop} ${one.from}`,
  ),
  people: many(
    rec<Farm['people'][number]>({
      id: id(),
      name: words,
      role: fc.constantFrom(...roles),
      hoursWeek: orNull(amount(60)),
      hoursYear: orNull(amount(2000)),
      from: orNull(monthDay),
      to: orNull(monthDay),
      paid: fc.boolean(),
    }),
    (one) => one.id,
  ),
  weather: many(
    rec<Farm['weather'][number]>({
      day,
      tMaxC: orNull(amount(40, -20)),
      tMinC: orNull(amount(20, -30)),
      rainMm: orNull(amount(90)),
      sunH: orNull(amount(16)),
      radiationMjM2: orNull(amount(30)),
      windMS: orNull(amount(20)),
      humidityPct: orNull(amount(100)),
    }),
    (one) => one.day,
  ),
  aliases: many(
    fc.tuple(
      words
        .map((text) => text.toLowerCase().normalize('NFC').trim())
        .filter((text) => text !== '' && text.toLowerCase() === text),
      crop,
    ),
    ([alias]) => alias,
  ).map((pairs) => Object.fromEntries(pairs)),
});

/** A farm without records: those travel as entries. */
export const farmArbitrary: fc.Arbitrary<Farm> = fc
  .tuple(about, plain, rotation, promise)
  .chain(([head, tables, round, box]) => {
    const fields = tables.fields.map((field) => field.id);
    const courses = round?.courses.map((course) => course.id) ?? [];
    const plots = many(
      fc.record({
        id: id<Farm['plots'][number]['id']>(),
        letter: words,
        name: words,
        field: fields.length === 0 ? fc.constant(null) : orNull(fc.constantFrom(...fields)),
        kind: fc.constantFrom(...plotKinds),
        grossM2: amount(1e5, 1),
        measuredBy: fc.constantFrom('typed' as const, 'geometry' as const),
        hedgeM: amount(500),
        bankM2: amount(500),
        headlandShare: orNull(share),
        soil: orNull(words),
        bedCentresM: orNull(amount(3, 0.5)),
        bedCount: orNull(fc.integer({ min: 1, max: 90 })),
        courseAtStart: courses.length === 0 ? fc.constant(null) : orNull(fc.constantFrom(...courses)),
        status: fc.constantFrom('organic' as const, 'in-conversion' as const, 'unknown' as const),
        statusSince: orNull(day),
        drawn: fc.boolean(),
      }),
      (plot) => plot.id,
      5,
    ).map((rows) =>
      rows.map(({ drawn, ...row }, at) => ({
        ...row,
        from: null,
        to: null,
        ring: drawn ? square(at, head.place.latDeg, head.place.lonDeg) : null,
      })),
    );
    return plots.chain((land) =>
      fc
        .tuple(
          standsOn(land, courses),
          land.length === 0
            ? fc.constant([])
            : many(
                rec<Farm['parts'][number]>({
                  id: id(),
                  plot: fc.constantFrom(...land.map((plot) => plot.id)),
                  span,
                  from: day,
                  to: fc.constant(null),
                  why: orNull(words),
                  parents: fc.array(rec({ plot: fc.constantFrom(...land.map((plot) => plot.id)), span, share }), {
                    maxLength: 2,
                  }),
                }),
                (part) => part.id,
              ),
          land.length === 0
            ? fc.constant([])
            : many(
                rec<Farm['marks'][number]>({
                  organism: fc.constantFrom(...known.organisms.keys()),
                  plot: fc.constantFrom(...land.map((plot) => plot.id)),
                  span,
                  foundOn: day,
                  clearedOn: fc.constant(null),
                  note: orNull(words),
                }),
                (mark) => `${mark.organism} ${mark.plot} ${mark.foundOn}`,
              ),
          land.length === 0
            ? fc.constant([])
            : many(
                rec<Farm['soilSamples'][number]>({
                  plot: fc.constantFrom(...land.map((plot) => plot.id)),
                  takenOn: day,
                  method: words,
                  ph: orNull(amount(9, 4)),
                  pMgL: orNull(amount(90)),
                  kMgL: orNull(amount(400)),
                  mgMgL: orNull(amount(400)),
                  organicMatterPct: orNull(amount(20)),
                }),
                (sample) => `${sample.plot} ${sample.takenOn}`,
              ),
        )
        .map(
          ([stands, parts, marks, soilSamples]): Farm => ({
            ...emptyFarm(head),
            ...tables,
            rotation: round,
            promise: box,
            plots: land,
            stands,
            parts,
            marks,
            soilSamples,
          }),
        ),
    );
  });
