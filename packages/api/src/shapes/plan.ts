import { working } from '@leywright/book';
import { jobKinds, type Plan, tools, waitings } from '@leywright/planner';
import { z } from 'zod';
import { day, type Frozen, isoWeek, lowTypHigh, range, type Same } from './basics.ts';
import { finding } from './finding.ts';
import { plotGround } from './ground.ts';
import { supply } from './supply.ts';

const horizon = z
  .object({ fromYear: z.number(), toYear: z.number(), firstMonday: day, weeks: z.number() })
  .meta({ id: 'Horizon' });

const climateUsed = z
  .object({
    station: z.string(),
    period: z.string(),
    distanceKm: z.number(),
    elevationDifferenceM: z.number().nullable(),
    recordedDays: z.number(),
    recordedFrom: day.nullable(),
    recordedTo: day.nullable(),
  })
  .meta({ id: 'ClimateUsed', description: 'Whose weather the plan reckons with.' });

const nitrogenYear = z
  .object({
    plot: z.string(),
    year: z.number(),
    course: z.string().nullable(),
    fixedKgHa: range,
    otherInKgHa: range,
    offtakeKgHa: range,
    lostKgHa: range,
    leftKgHa: range,
    doubt: z.array(z.string()),
    why: z.string(),
  })
  .meta({ id: 'NitrogenYear', description: 'The yearly nitrogen balance of a plot, as an interval.' });

export const job = z
  .object({
    id: z.string(),
    kind: z.enum(jobKinds),
    plot: z.string().nullable(),
    letter: z.string().nullable(),
    stand: z.string().nullable(),
    crop: z.string().nullable(),
    course: z.string().nullable(),
    name: z.string(),
    from: day,
    to: day,
    window: z.object({ from: day, to: day }),
    week: isoWeek,
    areaM2: z.number().nullable(),
    rowM: z.number().nullable(),
    amount: z.number().nullable(),
    amountUnit: z.enum(['kg', 'plants', 'g', 'trays', 'boxes', 'seeds']).nullable(),
    hours: lowTypHigh,
    basis: z.string(),
    doneShare: z.number(),
    caution: z.string().nullable(),
    tools: z.array(z.enum(tools)),
    skill: z.enum(working.skills).nullable(),
    after: z.array(z.string()),
    waitsFor: z.array(z.enum(waitings)),
  })
  .meta({ id: 'Job', description: 'One thing to do, when it may be done, and the hours it asks for.' });

const workWeek = z
  .object({
    week: isoWeek,
    hours: lowTypHigh,
    handsH: z.number().nullable(),
    byKind: z.partialRecord(z.enum(jobKinds), z.number()),
    why: z.string(),
  })
  .meta({ id: 'WorkWeek', description: 'The hours of one week against the hands there are.' });

const headline = z
  .object({
    bareWinters: z.array(z.object({ plot: z.string(), name: z.string(), winter: z.number() })),
    shortWeeks: z.array(isoWeek),
    shortItems: z.number(),
    boxWeeks: z.number(),
    households: z.number(),
    toPutRight: z.number(),
  })
  .meta({ id: 'Headline', description: 'Numbers of the first sentence.' });

/** Everything `leywright plan --json` and `GET /api/farms/:farm/plan` answer. */
export const plan = z
  .object({
    farm: z.object({ id: z.string(), name: z.string(), sample: z.boolean() }),
    today: day,
    year: z.number(),
    horizon,
    agreed: z.object({ state: z.enum(['pencil', 'agreed', 'none']), on: day.nullable() }),
    climate: climateUsed,
    ground: z.array(plotGround),
    nitrogen: z.array(nitrogenYear),
    supply: supply.nullable(),
    work: z
      .object({ year: z.number(), jobs: z.array(job), weeks: z.array(workWeek), yearH: z.number() })
      .meta({ id: 'Work' }),
    findings: z.array(finding),
    headline,
  })
  .meta({
    id: 'Plan',
    title: 'Plan',
    description: 'A farm’s ground, boxes, work and findings, worked out for one day and one year in focus.',
  });

const isPlan: Same<Frozen<z.infer<typeof plan>>, Frozen<Plan>> = true;
void isPlan;
