/** Shapes of the farm's rows, for entries that come from outside: what the types promise, checked. */

import type {
  CourseId,
  CropId,
  Day,
  FarmId,
  FieldId,
  IsoWeek,
  MonthDay,
  PartId,
  PersonId,
  PlotId,
  StandId,
  StoreId,
  SuccessionId,
} from '@leywright/measures';
import { readDay, readId, readIsoWeek, readMonthDay } from '@leywright/measures';
import { z } from 'zod';
import type { About } from './farm.ts';
import {
  type Feature,
  type Field,
  featureKinds,
  type OrganismMark,
  type Part,
  type Plot,
  plotKinds,
  type SoilSample,
} from './land.ts';
import {
  type BoxPromise,
  type OwnStoreLoss,
  type Person,
  type Price,
  roles,
  type StorePlace,
  type WeatherDay,
} from './promise.ts';
import { type OwnCrop, type OwnRest, type Rotation, type Stand, standEnds, standKinds, standStates } from './stand.ts';

const idShape = <T extends string>() =>
  z.custom<T>((value) => typeof value === 'string' && readId(value) === value, 'not-an-id');
export const shapes = {
  id: idShape,
  day: z.custom<Day>((value) => typeof value === 'string' && readDay(value) !== null, 'not-a-day'),
  monthDay: z.custom<MonthDay>((value) => typeof value === 'string' && readMonthDay(value) !== null, 'not-a-month-day'),
  week: z.custom<IsoWeek>((value) => typeof value === 'string' && readIsoWeek(value) === value, 'not-a-week'),
  words: z.string().max(2000),
  share: z.number().min(0).max(1),
  amount: z.number().min(0),
  span: z
    .strictObject({ fromShare: z.number().min(0).max(1), toShare: z.number().min(0).max(1) })
    .refine((span) => span.fromShare < span.toShare, 'span-empty'),
  unit: z.enum(['kg', 'head', 'bunch']),
} as const;

const { day, monthDay, week, words, share, amount, span, unit } = shapes;
const orNull = <T extends z.ZodType>(shape: T) => z.nullable(shape);
const line = z.array(z.tuple([z.number(), z.number()]));

export const fieldShape: z.ZodType<Field> = z.strictObject({
  id: idShape<FieldId>(),
  name: words,
  areaM2: orNull(amount),
  hedgesOver5Years: orNull(z.boolean()),
});

export const plotShape: z.ZodType<Plot> = z.strictObject({
  id: idShape<PlotId>(),
  letter: words,
  name: words,
  field: orNull(idShape<FieldId>()),
  kind: z.enum(plotKinds),
  grossM2: z.number().positive(),
  measuredBy: z.enum(['typed', 'geometry']),
  hedgeM: amount,
  bankM2: amount,
  headlandShare: orNull(share),
  soil: orNull(words),
  bedCentresM: orNull(z.number().positive()),
  bedCount: orNull(z.number().int().min(1)),
  courseAtStart: orNull(idShape<CourseId>()),
  from: orNull(day),
  to: orNull(day),
  status: z.enum(['organic', 'in-conversion', 'unknown']),
  statusSince: orNull(day),
  ring: orNull(line),
});

export const partShape: z.ZodType<Part> = z.strictObject({
  id: idShape<PartId>(),
  plot: idShape<PlotId>(),
  span,
  from: day,
  to: orNull(day),
  parents: z.array(z.strictObject({ plot: idShape<PlotId>(), span, share })),
  why: orNull(words),
});

export const featureShape: z.ZodType<Feature> = z.strictObject({
  id: idShape<string>(),
  kind: z.enum(featureKinds),
  name: words,
  lengthM: orNull(amount),
  areaM2: orNull(amount),
  line: orNull(line),
});

export const markShape: z.ZodType<OrganismMark> = z.strictObject({
  organism: words,
  plot: idShape<PlotId>(),
  span,
  foundOn: day,
  clearedOn: orNull(day),
  note: orNull(words),
});

export const soilShape: z.ZodType<SoilSample> = z.strictObject({
  plot: idShape<PlotId>(),
  takenOn: day,
  method: words,
  ph: orNull(z.number()),
  pMgL: orNull(amount),
  kMgL: orNull(amount),
  mgMgL: orNull(amount),
  organicMatterPct: orNull(amount),
});

export const standShape = z
  .strictObject({
    id: idShape<StandId>(),
    succession: orNull(idShape<SuccessionId>()),
    plot: idShape<PlotId>(),
    span,
    what: idShape<string>(),
    kind: z.enum(standKinds),
    variety: orNull(words),
    state: z.enum(standStates),
    sownOn: orNull(day),
    plantedOn: orNull(day),
    from: day,
    to: day,
    plannedFrom: z.exactOptional(day),
    plannedTo: z.exactOptional(day),
    undersownIn: orNull(idShape<StandId>()),
    course: orNull(idShape<CourseId>()),
    courseYear: orNull(z.number().int()),
    establishedShare: orNull(share),
    endedBy: orNull(z.enum(standEnds)),
    reason: orNull(words),
    yieldTHa: orNull(amount),
  })
  .refine((stand) => stand.from < stand.to, 'ends-before-start') satisfies z.ZodType<Stand>;

const courseStand = z.strictObject({
  key: idShape<string>(),
  what: idShape<string>(),
  kind: z.enum(standKinds),
  variety: orNull(words),
  span,
  sow: orNull(monthDay),
  plant: orNull(monthDay),
  startYearOffset: z.number().int(),
  end: monthDay,
  endYearOffset: z.number().int(),
  undersownIn: orNull(words),
});

export const rotationShape: z.ZodType<Rotation> = z.strictObject({
  firstYear: z.number().int().min(1900).max(2200),
  state: z.enum(['pencil', 'agreed']),
  agreedOn: orNull(day),
  courses: z.array(
    z.strictObject({
      id: idShape<CourseId>(),
      name: words,
      stands: z.array(courseStand),
      hoursPerHa: orNull(amount),
      hoursFollow: z.enum(['need', 'ground']),
    }),
  ),
});

export const restShape: z.ZodType<OwnRest> = z.strictObject({
  id: idShape<string>(),
  name: words,
  family: orNull(words),
  hosts: z.array(words),
  years: amount,
  force: z.enum(['hard', 'warn', 'info']),
  countsCovers: z.boolean(),
  countsUndersown: z.boolean(),
});

export const cropShape: z.ZodType<OwnCrop> = z.strictObject({
  id: idShape<CropId>(),
  basedOn: orNull(idShape<CropId>()),
  name: orNull(words),
  family: orNull(words),
  variety: orNull(words),
  unit: orNull(unit),
  unitKg: orNull(amount),
  yieldGrossTHa: orNull(amount),
  yieldMarketableTHa: orNull(amount),
  yieldPackedTHa: orNull(amount),
  gradingLossShare: orNull(share),
  packingLossShare: orNull(share),
  storeLossTotalShare: orNull(share),
  bedCentresM: orNull(amount),
  rowsPerBed: orNull(amount),
  plantsPerRowM: orNull(amount),
  germinationShare: orNull(share),
  fieldFactorShare: orNull(share),
  thousandSeedG: orNull(amount),
  seedMarginShare: orNull(amount),
  packSeeds: orNull(amount),
  hoursPerHa: orNull(amount),
});

const slotWindow = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('yearly'), from: monthDay, to: monthDay }),
  z.strictObject({ kind: z.literal('once'), from: day, to: day }),
]);

export const promiseShape: z.ZodType<BoxPromise> = z.strictObject({
  sizes: z.array(z.strictObject({ id: idShape<string>(), name: words, households: amount })),
  itemsPerBox: orNull(amount),
  packWeekday: z.number().int().min(1).max(7),
  from: orNull(day),
  to: orNull(day),
  closedWeeks: z.array(week),
  closedEveryYear: z.array(z.number().int().min(1).max(53)),
  movedPackDays: z.array(z.strictObject({ week, packOn: day })),
  slots: z.array(
    z.strictObject({
      id: idShape<string>(),
      crops: z.array(idShape<CropId>()),
      window: slotWindow,
      everyWeeks: z.number().int().min(1),
      unit,
      portions: z.record(z.string(), amount),
    }),
  ),
  needs: z.array(z.strictObject({ crop: idShape<CropId>(), kgHousehold: orNull(amount), m2Household: orNull(amount) })),
  boxWeeksPerYear: orNull(amount),
});

export const priceShape: z.ZodType<Price> = z.strictObject({
  crop: idShape<CropId>(),
  from: orNull(day),
  unit,
  priceMinor: z.number().int().min(0),
});

export const storeShape: z.ZodType<StorePlace> = z.strictObject({
  id: idShape<StoreId>(),
  name: words,
  kind: words,
  crops: z.array(idShape<CropId>()),
  capacityKg: orNull(amount),
});

export const storeLossShape: z.ZodType<OwnStoreLoss> = z.strictObject({
  crop: idShape<CropId>(),
  from: orNull(day),
  lossShareWeek: share,
});

export const personShape: z.ZodType<Person> = z.strictObject({
  id: idShape<PersonId>(),
  name: words,
  role: z.enum(roles),
  hoursWeek: orNull(amount),
  hoursYear: orNull(amount),
  from: orNull(monthDay),
  to: orNull(monthDay),
  paid: z.boolean(),
});

export const weatherShape: z.ZodType<WeatherDay> = z.strictObject({
  day,
  tMaxC: orNull(z.number()),
  tMinC: orNull(z.number()),
  rainMm: orNull(amount),
  sunH: orNull(amount),
  radiationMjM2: orNull(amount),
  windMS: orNull(amount),
  humidityPct: orNull(amount),
});

export const aboutShape: z.ZodType<About> = z.strictObject({
  id: idShape<FarmId>(),
  name: words,
  sample: z.boolean(),
  place: z.strictObject({
    latDeg: z.number().min(-90).max(90),
    lonDeg: z.number().min(-180).max(180),
    elevationM: orNull(z.number()),
    near: orNull(words),
    jurisdiction: words,
    timeZone: words,
  }),
  conventions: z.strictObject({
    restSeasonFrom: monthDay,
    restSeasonTo: monthDay,
    familyRests: z.enum(['reference', 'own']),
    organismRests: z.boolean(),
    hedgeBufferM: orNull(amount),
    headlandShare: share,
    leachingFrom: monthDay,
    leachingTo: monthDay,
    bareCoverShare: share,
    bareWeeks: amount,
    gradingLossShare: orNull(share),
    packingLossShare: share,
    seedMarginShare: amount,
    storeLossFrom: orNull(day),
    packingHBox: orNull(amount),
    deliveryHWeek: orNull(amount),
    lastDayCounts: z.boolean(),
  }),
  shows: z.strictObject({
    area: z.enum(['ha', 'acres']),
    mass: z.enum(['kg', 'lb']),
    weekStart: z.enum(['monday', 'sunday']),
    money: z.string().regex(/^[A-Z]{3}$/),
  }),
});
