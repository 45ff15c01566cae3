/** Shapes of stands, of the rotation, of own rests and crops. */
import type { CourseId, CropId, PlotId, StandId, SuccessionId } from '@leywright/measures';
import * as z from 'zod';
import {
  type OwnCrop,
  type OwnRest,
  type Rotation,
  type Stand,
  standEnds,
  standKinds,
  standStates,
} from '../farm/stand.ts';
import { amount, day, id, monthDay, orNull, share, span, unit, words } from './plain-shapes.ts';

export const standShape = z
  .strictObject({
    id: id<StandId>(),
    succession: orNull(id<SuccessionId>()),
    plot: id<PlotId>(),
    span,
    what: id<string>(),
    kind: z.enum(standKinds),
    variety: orNull(words),
    state: z.enum(standStates),
    sownOn: orNull(day),
    plantedOn: orNull(day),
    from: day,
    to: day,
    plannedFrom: z.exactOptional(day),
    plannedTo: z.exactOptional(day),
    undersownIn: orNull(id<StandId>()),
    course: orNull(id<CourseId>()),
    courseYear: orNull(z.number().int()),
    establishedShare: orNull(share),
    endedBy: orNull(z.enum(standEnds)),
    reason: orNull(words),
    yieldTHa: orNull(amount),
  })
  .refine((stand) => stand.from < stand.to, 'ends-before-start') satisfies z.ZodType<Stand>;

const courseStand = z.strictObject({
  key: id<string>(),
  what: id<string>(),
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
      id: id<CourseId>(),
      name: words,
      stands: z.array(courseStand),
      hoursPerHa: orNull(amount),
      hoursFollow: z.enum(['need', 'ground']),
    }),
  ),
  placed: z.exactOptional(
    z.array(
      z.strictObject({
        plot: id<PlotId>(),
        year: z.number().int().min(1900).max(2200),
        course: orNull(id<CourseId>()),
        state: z.enum(['pencil', 'agreed']),
        reason: orNull(words),
      }),
    ),
  ),
});

export const restShape: z.ZodType<OwnRest> = z.strictObject({
  id: id<string>(),
  name: words,
  family: orNull(words),
  hosts: z.array(words),
  years: amount,
  force: z.enum(['hard', 'warn', 'info']),
  countsCovers: z.boolean(),
  countsUndersown: z.boolean(),
});

export const cropShape: z.ZodType<OwnCrop> = z.strictObject({
  id: id<CropId>(),
  basedOn: orNull(id<CropId>()),
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
