/** Shapes of what the farm says of itself and of its land, for entries that come from outside: what the types promise, checked. */
import type { CourseId, FarmId, FieldId, PartId, PlotId } from '@leywright/measures';
import * as z from 'zod';
import type { About } from '../farm/farm.ts';
import {
  type Feature,
  type Field,
  featureKinds,
  type OrganismMark,
  type Part,
  type Plot,
  plotKinds,
  type SoilSample,
} from '../farm/land.ts';
import { isTimeZone } from '../farm/time-zone.ts';
import { amount, day, id, line, monthDay, orNull, share, span, words } from './plain-shapes.ts';

export const aboutShape: z.ZodType<About> = z.strictObject({
  id: id<FarmId>(),
  name: words,
  sample: z.boolean(),
  // Farms of before this was kept have none.
  sampleDay: orNull(day).default(null),
  place: z.strictObject({
    latDeg: z.number().min(-90).max(90),
    lonDeg: z.number().min(-180).max(180),
    elevationM: orNull(z.number()),
    near: orNull(words),
    jurisdiction: words,
    timeZone: words.refine(isTimeZone, 'not-in-list'),
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
export const fieldShape: z.ZodType<Field> = z.strictObject({
  id: id<FieldId>(),
  name: words,
  areaM2: orNull(amount),
  hedgesOver5Years: orNull(z.boolean()),
});

export const plotShape: z.ZodType<Plot> = z.strictObject({
  id: id<PlotId>(),
  letter: words,
  name: words,
  field: orNull(id<FieldId>()),
  kind: z.enum(plotKinds),
  grossM2: z.number().positive(),
  measuredBy: z.enum(['typed', 'geometry']),
  hedgeM: amount,
  bankM2: amount,
  headlandShare: orNull(share),
  soil: orNull(words),
  bedCentresM: orNull(z.number().positive()),
  bedCount: orNull(z.number().int().min(1)),
  courseAtStart: orNull(id<CourseId>()),
  from: orNull(day),
  to: orNull(day),
  status: z.enum(['organic', 'in-conversion', 'unknown']),
  statusSince: orNull(day),
  ring: orNull(line),
});

export const partShape: z.ZodType<Part> = z.strictObject({
  id: id<PartId>(),
  plot: id<PlotId>(),
  span,
  from: day,
  to: orNull(day),
  parents: z.array(z.strictObject({ plot: id<PlotId>(), span, share })),
  why: orNull(words),
});

export const featureShape: z.ZodType<Feature> = z.strictObject({
  id: id<string>(),
  kind: z.enum(featureKinds),
  name: words,
  lengthM: orNull(amount),
  areaM2: orNull(amount),
  line: orNull(line),
});

export const markShape: z.ZodType<OrganismMark> = z.strictObject({
  organism: words,
  plot: id<PlotId>(),
  span,
  foundOn: day,
  clearedOn: orNull(day),
  note: orNull(words),
});

export const soilShape: z.ZodType<SoilSample> = z.strictObject({
  plot: id<PlotId>(),
  takenOn: day,
  method: words,
  ph: orNull(z.number()),
  pMgL: orNull(amount),
  kMgL: orNull(amount),
  mgMgL: orNull(amount),
  organicMatterPct: orNull(amount),
});
