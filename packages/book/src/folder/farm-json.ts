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
import { isTimeZone } from '../farm/time-zone.ts';

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

const place = z.object({
  lat_deg: z.number().min(-90).max(90).describe('degrees north; south is negative'),
  lon_deg: z.number().min(-180).max(180).describe('degrees east; west is negative'),
  elevation_m: z.number().min(-430).max(6000).nullish().describe('metres above the sea'),
  near: words.nullish().describe('for people, such as the nearest town'),
  jurisdiction: words
    .nullish()
    .describe('whose rules hold: England, Wales, Scotland/NI, EU, USA; only general ones when left out'),
  time_zone: words.refine(isTimeZone, 'not-in-list').nullish().describe('IANA name; Europe/London when left out'),
});

const shows = z.object({
  area: z.enum(['ha', 'acres']).describe('how areas are shown; kept in m²'),
  mass: z.enum(['kg', 'lb']).describe('how masses are shown; kept in kg'),
  week_start: z
    .enum(['monday', 'sunday'])
    .describe('first day of a week on screen; weeks are counted as ISO weeks all the same'),
  money: z
    .string()
    .regex(/^[A-Z]{3}$/)
    .describe('three letters of ISO 4217, of every price in the folder'),
});

const conventions = z.object({
  rest_season_from: monthDay.describe('a stand occupies each year in which it stands on any day of this season'),
  rest_season_to: monthDay.describe('last day of it'),
  family_rests: z.enum(['reference', 'own']).describe('own: only the rests of rests.csv hold'),
  organism_rests: z.boolean().describe('whether rests of single organisms are looked at'),
  hedge_buffer_m: atLeastNought
    .nullable()
    .describe('own policy, metres from a hedge’s centre; only where the law asks when left out'),
  headland_share: share.describe('headlands and bed ends, of what is left after buffer and bank'),
  leaching_from: monthDay.describe('season in which bare ground loses most'),
  leaching_to: monthDay.describe('last day of it'),
  bare_cover_share: share.describe('ground under less cover counts as bare'),
  bare_weeks: z.number().int().min(1).describe('once it has been so for this many weeks'),
  grading_loss_share: share.nullable().describe('of what is lifted; the crop’s own when left out'),
  packing_loss_share: share.describe('of what is packed'),
  seed_margin_share: atLeastNought.describe('seed bought over the need'),
  store_loss_from: dayOrWeek(0)
    .nullable()
    .describe('first day or week in which a store loses; from lifting when left out'),
  packing_h_box: atLeastNought.nullable().describe('hours of packing a box'),
  delivery_h_week: atLeastNought.nullable().describe('hours of delivery a week'),
  last_day_counts: z
    .boolean()
    .describe(
      'whether `to` in history.csv and agreed.csv is the last day on the ground, instead of the first free one',
    ),
});

const rotation = z.object({
  first_year: z.number().int().min(1900).max(2199).describe('year in which the plots are on their `course_at_start`'),
  state: z.enum(['pencil', 'agreed']).optional().describe('agreed when left out'),
  agreed_on: day.nullish().describe('day it was agreed'),
});

const promise = z.object({
  items_per_box: atLeastNought.nullable().describe('items promised in a box'),
  pack_weekday: z.number().int().min(1).max(7).describe('1 = Monday; 4 when left out'),
  from: dayOrWeek(0).nullable().describe('day or week of the first box; every year of the plan when left out'),
  to: dayOrWeek(6).nullable().describe('day or week of the last box'),
  closed_every_year: z
    .array(z.number().int().min(1).max(53))
    .describe('numbers of the weeks without a box in every year; 53 only where a year has it'),
  box_weeks_per_year: z.number().min(0).max(53).nullable().describe('when only their number is known'),
});

export const farmJson = z.object({
  id: id.optional().describe('made from the name when left out'),
  name: words.optional().describe('as people say it'),
  sample: z.boolean().optional().describe('true for an invented farm; said on every page'),
  sample_day: day.nullable().optional().describe('the day an invented farm lives on, unless another is asked for'),
  day_order: z
    .enum(dayOrders)
    .optional()
    .describe('how days such as 3/4/2027 are meant in the tables; refused when left out'),
  decimals: z
    .enum(decimalSigns)
    .optional()
    .describe('sign before the decimals in the tables; told from each file when left out'),
  place: place.optional().describe('where the farm lies'),
  shows: shows.partial().optional().describe('how figures are shown'),
  conventions: conventions.partial().optional().describe('how this farm counts'),
  rotation: rotation.optional().describe('with courses.csv and rotation.csv'),
  promise: promise.partial().optional().describe('with sizes.csv and promise.csv'),
});

export type FarmJson = z.infer<typeof farmJson>;
