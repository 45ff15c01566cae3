/** Work, the day and the orders, as `leywright work|day|order --json` and the API answer them. */
import { working } from '@leywright/book';
import { orders as ordering } from '@leywright/planner';
import { z } from 'zod';
import { day, isoWeek, lowTypHigh } from './basics.ts';
import { job } from './plan.ts';

const whyStuck = z.enum(['days', 'order', 'no-room']);

export const work = z
  .object({
    farm: z.string(),
    today: day,
    year: z.number(),
    yearH: z.number(),
    overBeforeH: z.number(),
    overAfterH: z.number(),
    proven: z.boolean(),
    weeks: z.array(
      z.object({ week: isoWeek, hours: lowTypHigh, handsH: z.number().nullable(), levelledH: z.number() }),
    ),
    moved: z.array(
      z.object({ job: z.string(), title: z.string(), from: day, to: day, week: isoWeek, hoursH: z.number() }),
    ),
    stuck: z.array(z.object({ job: z.string(), title: z.string(), week: isoWeek, why: whyStuck })),
    hoursBy: z.record(z.string(), z.record(z.string(), z.number())),
    jobs: z.array(job),
  })
  .meta({
    id: 'ToldWork',
    title: 'Work',
    description: 'A year’s hours against the hands there are, before and after levelling, and all jobs.',
  });

const raised = z
  .object({
    stand: z.string(),
    crop: z.string(),
    name: z.string(),
    variety: z.string().nullable(),
    plot: z.string(),
    sownOn: day,
    plantOn: day,
    holdsTo: day,
    plants: z.number(),
    cells: z.number().nullable(),
    cellsPerTray: z.number().nullable(),
    trays: z.number().nullable(),
    spareCells: z.number().nullable(),
    mixL: z.number().nullable(),
    seedbedM: z.number().nullable(),
  })
  .meta({ id: 'Raised', description: 'Plants raised for one stand.' });

export const dayOfWork = z
  .object({
    farm: z.string(),
    today: day,
    week: isoWeek,
    person: z.string().nullable(),
    hoursH: z.number(),
    jobs: z.array(
      z.object({
        id: z.string(),
        letter: z.string().nullable(),
        plot: z.string().nullable(),
        title: z.string(),
        amount: z.string(),
        how: z.string(),
        hoursH: z.number(),
        from: day,
        by: day,
        isLate: z.boolean(),
        caution: z.string().nullable(),
      }),
    ),
    sownToday: z.array(raised),
  })
  .meta({ id: 'ToldDay', title: 'Day', description: 'What is to be done this week, in the order of the walk.' });

const offer = z
  .object({
    id: z.string(),
    what: z.string(),
    variety: z.string().nullable(),
    supplier: z.string(),
    status: z.enum(working.seedStatuses),
    packKg: z.number().nullable(),
    packSeeds: z.number().nullable(),
    available: z.boolean(),
    seenOn: day.nullable(),
  })
  .meta({ id: 'SeedOffer' });

const authorisation = z
  .object({
    id: z.string(),
    what: z.string(),
    variety: z.string().nullable(),
    askedOn: day.nullable(),
    grantedOn: day.nullable(),
    until: day.nullable(),
    reason: z.string().nullable(),
    proof: z.string().nullable(),
  })
  .meta({ id: 'SeedAuthorisation' });

const lotInHand = z.object({
  lot: z.string(),
  massKg: z.number().nullable(),
  seeds: z.number().nullable(),
  testAgain: z.boolean(),
  proof: z.string().nullable(),
});

const order = z
  .object({
    what: z.string(),
    name: z.string(),
    variety: z.string().nullable(),
    firstUseOn: day,
    needSeeds: z.number().nullable(),
    needKg: z.number().nullable(),
    inHand: z.array(lotInHand),
    buySeeds: z.number().nullable(),
    buyKg: z.number().nullable(),
    offer: offer.nullable(),
    packs: z.number().nullable(),
    right: z.enum(ordering.seedRights),
    grantedBefore: day.nullable(),
    askBy: day.nullable(),
    authorisation: authorisation.nullable(),
    sownWithout: z.boolean(),
    instead: z.array(offer),
  })
  .meta({ id: 'SeedOrder', description: 'What is to be ordered of one plant and variety, and by which right.' });

export const orders = z
  .object({
    farm: z.string(),
    today: day,
    year: z.number(),
    term: z.enum(['derogation', 'authorisation', 'documented search']),
    orders: z.array(order),
    lines: z.array(
      z.object({
        stand: z.string(),
        what: z.string(),
        kind: z.enum(['crop', 'cover']),
        variety: z.string().nullable(),
        course: z.string().nullable(),
        useOn: day,
        week: isoWeek,
        isRecorded: z.boolean(),
        seeds: z.number().nullable(),
        massKg: z.number().nullable(),
      }),
    ),
    plants: z.object({
      year: z.number(),
      lines: z.array(raised),
      bench: z.array(z.object({ week: isoWeek, trays: z.number(), benchM2: z.number() })),
      trays: z.number(),
      mixL: z.number(),
      seedbedM: z.number(),
      fullest: z.object({ week: isoWeek, trays: z.number(), benchM2: z.number() }).nullable(),
    }),
  })
  .meta({ id: 'ToldOrders', title: 'Orders', description: 'Seed, sets and tubers to order, and plants to raise.' });
