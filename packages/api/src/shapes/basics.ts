/** Small shapes all others are made of. Each is named for the documents by `.meta({ id })`. */
import type { Day, IsoWeek } from '@leywright/measures';
import { z } from 'zod';

/** Types of the plan are branded and readonly; what is checked at run time is their text. */
export const day = z
  .string()
  .regex(/^\d{4}-\d{2}-\d{2}$/)
  .meta({ id: 'Day', description: 'A calendar day, 2027-04-18.' }) as unknown as z.ZodType<Day>;
export const isoWeek = z
  .string()
  .regex(/^\d{4}-w\d{2}$/)
  .meta({ id: 'IsoWeek', description: 'A week of the ISO calendar, 2027-w16.' }) as unknown as z.ZodType<IsoWeek>;

export const span = z
  .object({ fromShare: z.number(), toShare: z.number() })
  .meta({ id: 'Span', description: 'Part of a plot, from side to side across its beds, 0 to 1.' });

export const lowTypHigh = z
  .object({ low: z.number(), typ: z.number(), high: z.number() })
  .meta({ id: 'LowTypicalHigh' });
export const range = z.object({ low: z.number(), high: z.number() }).meta({ id: 'Range' });
export const saleUnit = z.enum(['kg', 'head', 'bunch']).meta({ id: 'SaleUnit' });
export const figure = z.union([z.string(), z.number(), z.null()]);
export const figures = z.record(z.string(), figure);

/** A type with everything in it readonly, as the plan's own types are; what may be absent is absent, never `undefined`. */
export type Frozen<T> = T extends string | number | boolean | null
  ? T
  : { readonly [K in keyof T]: Frozen<Exclude<T[K], undefined>> };

/** `true` only when each of the two types can stand for the other; for the compiler, at no cost when it runs. */
export type Same<A, B> = [A] extends [B] ? ([B] extends [A] ? true : false) : false;
