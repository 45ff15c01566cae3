/** Shapes of the promise, of what keeps it, of people and weather. */
import type { CropId, PersonId, StoreId } from '@leywright/measures';
import * as z from 'zod';
import {
  type BoxPromise,
  type OwnStoreLoss,
  type Person,
  type Price,
  roles,
  type StorePlace,
  type WeatherDay,
} from '../farm/promise.ts';
import { skills } from '../farm/work.ts';
import { amount, day, id, monthDay, orNull, share, unit, week, words } from './plain-shapes.ts';

const slotWindow = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('yearly'), from: monthDay, to: monthDay }),
  z.strictObject({ kind: z.literal('once'), from: day, to: day }),
]);

export const promiseShape: z.ZodType<BoxPromise> = z.strictObject({
  sizes: z.array(z.strictObject({ id: id<string>(), name: words, households: amount })),
  itemsPerBox: orNull(amount),
  packWeekday: z.number().int().min(1).max(7),
  from: orNull(day),
  to: orNull(day),
  closedWeeks: z.array(week),
  closedEveryYear: z.array(z.number().int().min(1).max(53)),
  movedPackDays: z.array(z.strictObject({ week, packOn: day })),
  slots: z.array(
    z.strictObject({
      id: id<string>(),
      crops: z.array(id<CropId>()),
      window: slotWindow,
      everyWeeks: z.number().int().min(1),
      unit,
      portions: z.record(z.string(), amount),
    }),
  ),
  needs: z.array(z.strictObject({ crop: id<CropId>(), kgHousehold: orNull(amount), m2Household: orNull(amount) })),
  boxWeeksPerYear: orNull(amount),
});

export const priceShape: z.ZodType<Price> = z.strictObject({
  crop: id<CropId>(),
  from: orNull(day),
  unit,
  priceMinor: z.number().int().min(0),
});

export const storeShape: z.ZodType<StorePlace> = z.strictObject({
  id: id<StoreId>(),
  name: words,
  kind: words,
  crops: z.array(id<CropId>()),
  capacityKg: orNull(amount),
});

export const storeLossShape: z.ZodType<OwnStoreLoss> = z.strictObject({
  crop: id<CropId>(),
  from: orNull(day),
  lossShareWeek: share,
});

export const personShape: z.ZodType<Person> = z.strictObject({
  id: id<PersonId>(),
  name: words,
  role: z.enum(roles),
  hoursWeek: orNull(amount),
  hoursYear: orNull(amount),
  from: orNull(monthDay),
  to: orNull(monthDay),
  paid: z.boolean(),
  weekdays: z.exactOptional(z.array(z.number().int().min(1).max(7))),
  skills: z.exactOptional(z.array(z.enum(skills))),
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
