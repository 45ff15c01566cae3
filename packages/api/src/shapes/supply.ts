import { looks, type Supply } from '@leywright/planner';
import { z } from 'zod';
import { day, type Frozen, isoWeek, lowTypHigh, type Same, saleUnit } from './basics.ts';

const keep = z.object({ step: z.enum(['packing', 'store', 'grading']), keepShare: z.number(), source: z.string() });
const amount = z.number().nullable();

const cropNeed = z
  .object({
    crop: z.string(),
    name: z.string(),
    look: z.enum(looks),
    unit: saleUnit,
    boxWeeks: z.number(),
    demandUnits: z.number(),
    demandKg: amount,
    keeps: z.array(keep),
    keepShare: z.number(),
    liftKg: amount,
    yieldKgM2: amount,
    yieldBasis: z.enum(['own', 'reference', 'unknown']),
    needM2: amount,
    rowM: amount,
    stations: amount,
    seedsPerM: amount,
    seeds: amount,
    seedsWithMargin: amount,
    seedKg: amount,
    setKg: amount,
    packs: amount,
    trays: amount,
    harvestYear: z.number(),
    plannedM2: z.number(),
    plots: z.array(z.string()),
    why: z.object({ area: z.string(), seed: z.string() }),
  })
  .meta({ id: 'CropNeed', description: 'What one crop needs in one box year: from the promise to ground and seed.' });

const standHarvest = z
  .object({
    stand: z.string(),
    crop: z.string(),
    plot: z.string(),
    from: day,
    to: day,
    kg: lowTypHigh,
    recordedKg: amount,
    basis: z.enum(['own', 'reference', 'recorded', 'unknown']),
    fromWeek: z.number(),
    weekKg: z.array(z.number()),
    uncutKg: z.number(),
    uncutWhy: z.enum(['stand-ended', 'stood-too-long']).nullable(),
  })
  .meta({ id: 'StandHarvest', description: 'What one stand brings, week by week.' });

const storeWeek = z.object({
  week: isoWeek,
  openKg: z.number(),
  inKg: z.number(),
  lossKg: z.number(),
  outKg: z.number(),
  closeKg: z.number(),
});

const storeRun = z
  .object({
    crop: z.string(),
    name: z.string(),
    store: z.string().nullable(),
    harvestYear: z.number(),
    weeks: z.array(storeWeek),
    intoStoreKg: z.number(),
    lossKg: z.number(),
    fullWeeks: z.number(),
    lastFullWeek: isoWeek.nullable(),
    firstShortWeek: z.object({ week: isoWeek, stockKg: z.number(), boxesShare: z.number() }).nullable(),
    gapWeeks: z.number(),
    lossBasis: z.enum(['own', 'reference']),
    why: z.string(),
  })
  .meta({ id: 'StoreRun', description: 'One crop in store, drawn down week by week.' });

const boxItem = z
  .object({
    slot: z.string(),
    crop: z.string(),
    name: z.string(),
    look: z.enum(looks),
    from: z.enum(['field', 'tunnel', 'store']),
    plots: z.array(z.string()),
    boxesShare: z.number(),
    kg: z.number(),
    portions: z.record(z.string(), z.number()),
    unit: saleUnit,
  })
  .meta({ id: 'BoxItem' });

const boxWeek = z
  .object({
    week: isoWeek,
    weekIndex: z.number(),
    packOn: day.nullable(),
    closed: z.enum(['closed', 'outside']).nullable(),
    boxes: z.number(),
    promised: z.number(),
    items: z.array(boxItem),
    missing: z.array(z.object({ slot: z.string(), crops: z.array(z.string()), boxesShare: z.number() })),
    itemsPerBox: z.number(),
    shortItems: z.number(),
    low: z.number(),
    high: z.number(),
    why: z.string(),
  })
  .meta({ id: 'BoxWeek', description: 'What is in the boxes of one week.' });

const courseReach = z.object({
  course: z.string(),
  plot: z.string().nullable(),
  netM2: z.number(),
  m2Household: z.number(),
  households: amount,
});
const reachYear = z.object({
  year: z.number(),
  courses: z.array(courseReach),
  households: amount,
  binding: z.string().nullable(),
});

const reach = z
  .object({
    years: z.array(reachYear),
    byLand: z
      .object({ households: z.number(), year: z.number(), course: z.string(), plot: z.string().nullable() })
      .nullable(),
    bestYear: amount,
    hours: z
      .object({
        fieldH: z.number(),
        packingH: z.number(),
        deliveryH: z.number(),
        totalH: z.number(),
        availableH: z.number(),
      })
      .nullable(),
    byLabour: amount,
    households: amount,
    binding: z.enum(['land', 'labour', 'unknown']),
    why: z.string(),
  })
  .meta({ id: 'Reach', description: 'How many households this ground and these hands feed.' });

export const supply = z
  .object({
    year: z.number(),
    boxWeeks: z.number(),
    households: z.number(),
    needs: z.array(cropNeed),
    harvests: z.array(standHarvest),
    stores: z.array(storeRun),
    boxes: z.array(boxWeek),
    hungryGap: z.object({ from: isoWeek, to: isoWeek }).nullable(),
    reach: reach.nullable(),
  })
  .meta({ id: 'Supply', description: 'From the promise to ground, harvest, store and boxes.' });

const isSupply: Same<Frozen<z.infer<typeof supply>>, Frozen<Supply>> = true;
void isSupply;
