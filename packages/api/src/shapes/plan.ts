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

const sampledFigure = z.object({
  takenOn: day,
  method: z.string(),
  amountMgL: z.number(),
  index: z.string().nullable(),
});

const nutrientAccount = z
  .object({
    nutrient: z.enum(['phosphorus', 'potassium']),
    offtakeOxideKgHa: range,
    offtakeElementKgHa: range,
    samples: z.array(sampledFigure),
    otherMethods: z.number(),
    slopeSampledMgLPerYear: range.nullable(),
    slopeReckonedMgLPerYear: range,
    targetIndex: z.string(),
    targetMgL: z.number(),
    untilTarget: z
      .object({
        soonestYears: z.number().nullable(),
        likelyYears: z.number().nullable(),
        latestYears: z.number().nullable(),
      })
      .nullable(),
    buildUpOxideKgHa: z.number().nullable(),
    doubt: z.array(z.string()),
    why: z.string(),
  })
  .meta({ id: 'NutrientAccount', description: 'Phosphorus or potassium of a plot: off-take, samples and slope.' });

const plotFertility = z
  .object({
    plot: z.string(),
    phosphorus: nutrientAccount,
    potassium: nutrientAccount,
    lime: z
      .object({
        takenOn: day,
        ph: z.number(),
        targetPh: z.number(),
        phNow: range,
        needTHa: lowTypHigh.nullable(),
        cautions: z.array(z.string()),
        doubt: z.array(z.string()),
        why: z.string(),
      })
      .nullable(),
    magnesium: sampledFigure.nullable(),
    cautions: z.array(z.object({ risk: z.string(), stand: z.string(), name: z.string(), year: z.number() })),
    humus: z
      .object({
        balanceKgCHa: z.number(),
        aimKgCHa: range,
        unknownShare: z.number(),
        doubt: z.array(z.string()),
        why: z.string(),
      })
      .nullable(),
    carbon: z
      .object({
        takenOn: day,
        stockTHa: z.number(),
        years: z.array(z.object({ year: z.number(), stockTHa: lowTypHigh })),
        doubt: z.array(z.string()),
        why: z.string(),
      })
      .nullable(),
  })
  .meta({ id: 'PlotFertility', description: 'Phosphate, potash, lime, humus and carbon of a plot.' });

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
    fertility: z.array(plotFertility),
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
