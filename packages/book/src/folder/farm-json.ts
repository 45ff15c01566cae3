/** The shape of farm.json. Keys are our field names in snake_case. */
import {
  addDays,
  type Day,
  dayOrders,
  decimalSigns,
  type MonthDay,
  mondayOf,
  readDay,
  readId,
  readIsoWeek,
  readMonthDay,
} from '@leywright/measures';
import * as z from 'zod';

const day = z.custom<Day>((value) => typeof value === 'string' && readDay(value) !== null, 'not-a-day');
const monthDay = z.custom<MonthDay>(
  (value) => typeof value === 'string' && readMonthDay(value) !== null,
  'not-a-month-day',
);
const id = z.string().refine((text) => readId(text) === text, 'not-an-id');
const words = z.string().trim().min(1).max(2000);
const share = z.number().min(0).max(1);
const atLeastNought = z.number().min(0);

/** A day, or a week that stands for one of its days. */
const dayOrWeek = (weekday: number) =>
  z.string().transform((text, context): Day => {
    const week = readIsoWeek(text);
    const read = week === null ? readDay(text) : addDays(mondayOf(week), weekday);
    if (read !== null) return read;
    context.addIssue({ code: 'custom', message: /w/i.test(text) ? 'no-such-week' : 'not-a-day' });
    return z.NEVER;
  });

export const farmJson = z.object({
  id: id.optional(),
  name: words.optional(),
  sample: z.boolean().optional(),
  /** How days and numbers are written in the folder's tables, where a cell could be read two ways. */
  day_order: z.enum(dayOrders).optional(),
  decimals: z.enum(decimalSigns).optional(),
  place: z
    .object({
      lat_deg: z.number().min(-90).max(90),
      lon_deg: z.number().min(-180).max(180),
      elevation_m: z.number().min(-430).max(6000).nullish(),
      near: words.nullish(),
      jurisdiction: words.nullish(),
      time_zone: words.nullish(),
    })
    .optional(),
  shows: z
    .object({
      area: z.enum(['ha', 'acres']),
      mass: z.enum(['kg', 'lb']),
      week_start: z.enum(['monday', 'sunday']),
      money: z.string().regex(/^[A-Z]{3}$/),
    })
    .partial()
    .optional(),
  conventions: z
    .object({
      rest_season_from: monthDay,
      rest_season_to: monthDay,
      family_rests: z.enum(['reference', 'own']),
      organism_rests: z.boolean(),
      hedge_buffer_m: atLeastNought.nullable(),
      headland_share: share,
      leaching_from: monthDay,
      leaching_to: monthDay,
      bare_cover_share: share,
      bare_weeks: z.number().int().min(1),
      grading_loss_share: share.nullable(),
      packing_loss_share: share,
      seed_margin_share: atLeastNought,
      store_loss_from: dayOrWeek(0).nullable(),
      packing_h_box: atLeastNought.nullable(),
      delivery_h_week: atLeastNought.nullable(),
      last_day_counts: z.boolean(),
    })
    .partial()
    .optional(),
  rotation: z
    .object({
      first_year: z.number().int().min(1900).max(2200),
      state: z.enum(['pencil', 'agreed']).optional(),
      agreed_on: day.nullish(),
    })
    .optional(),
  promise: z
    .object({
      items_per_box: atLeastNought.nullable(),
      pack_weekday: z.number().int().min(1).max(7),
      from: dayOrWeek(0).nullable(),
      to: dayOrWeek(6).nullable(),
      closed_every_year: z.array(z.number().int().min(1).max(53)),
      box_weeks_per_year: z.number().min(0).max(53).nullable(),
    })
    .partial()
    .optional(),
});

export type FarmJson = z.infer<typeof farmJson>;
