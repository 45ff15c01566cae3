/** Random tables of a farm that name no plot: what it says of itself, its rotation, its promise, its people. */
import { addDays, type CropId, type Id } from '@leywright/measures';
import fc from 'fast-check';
import { type About, defaultConventions, type Farm, featureKinds, roles, standKinds, working } from '../src/index.ts';
import {
  amount,
  crop,
  cropList,
  day,
  family,
  id,
  many,
  monthDay,
  orNull,
  plant,
  rec,
  share,
  span,
  unit,
  week,
  words,
} from './arbitrary-pieces.ts';
import { known } from './known.ts';

export const about: fc.Arbitrary<About> = rec<About>({
  id: id(),
  name: words,
  sample: fc.boolean(),
  sampleDay: fc.option(day, { nil: null }),
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

export const rotation = orNull(
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

export const promise = orNull(
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

export const plain = rec<
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
      weekdays: fc.subarray([1, 2, 3, 4, 5, 6, 7]),
      skills: fc.uniqueArray(fc.constantFrom(...working.skills)),
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
