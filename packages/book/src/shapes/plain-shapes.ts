/** Pieces of shapes: ids, days, shares. */
import { type Day, type IsoWeek, type MonthDay, readDay, readId, readIsoWeek, readMonthDay } from '@leywright/measures';
import * as z from 'zod';
import { inFarmYears } from '../farm/farm-years.ts';

const isDay = (value: unknown) => typeof value === 'string' && readDay(value) !== null && inFarmYears(value as Day);

export const day = z.custom<Day>(isDay, 'not-a-day');
export const monthDay = z.custom<MonthDay>(
  (value) => typeof value === 'string' && readMonthDay(value) !== null,
  'not-a-month-day',
);
export const week = z.custom<IsoWeek>(
  (value) => typeof value === 'string' && readIsoWeek(value) === value,
  'not-a-week',
);
export const words = z.string().max(2000);
export const share = z.number().min(0).max(1);
export const amount = z.number().min(0);
export const unit = z.enum(['kg', 'head', 'bunch']);
export const line = z.array(z.tuple([z.number(), z.number()]));
export const span = z
  .strictObject({ fromShare: share, toShare: share })
  .refine((one) => one.fromShare < one.toShare, 'span-empty');

/** An id, written as it is read. */
export function id<T extends string>() {
  return z.custom<T>((value) => typeof value === 'string' && readId(value) === value, 'not-an-id');
}

/** Null = not known. */
export function orNull<T extends z.ZodType>(shape: T) {
  return z.nullable(shape);
}
