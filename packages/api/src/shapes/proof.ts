/** Shapes of what is told about lots: a trace back or forward, a recall, a mass balance. */
import { z } from 'zod';

const nullable = <T extends z.ZodType>(shape: T) => z.nullable(shape);
const kg = z.number();

const missingLink = z
  .object({
    code: z.string(),
    sentence: z.string(),
    on: z.string(),
    named: z.string(),
    kg: nullable(kg),
    entries: z.array(z.string()),
  })
  .meta({ id: 'MissingLink' });

const lot = z
  .object({
    id: z.string(),
    label: z.string(),
    kind: z.enum(['harvest', 'bought']),
    crop: z.string(),
    cropName: z.string(),
    on: z.string(),
    plot: nullable(z.string()),
    plotName: nullable(z.string()),
    stand: nullable(z.string()),
    status: z.string(),
    grossKg: nullable(kg),
    isEstimated: z.boolean(),
    gradedOutKg: kg,
    isForBox: z.boolean(),
    entry: z.string(),
  })
  .meta({ id: 'Lot' });

const handing = z.object({
  run: z.string(),
  on: z.string(),
  round: nullable(z.string()),
  drop: z.string(),
  boxes: z.number(),
  entry: z.string(),
});

const run = z.object({
  id: z.string(),
  on: z.string(),
  week: z.string(),
  size: nullable(z.string()),
  boxes: z.number(),
  entries: z.array(z.string()),
});

const lotBack = z.object({
  lot,
  kg,
  share: z.number(),
  sowings: z.array(
    z.object({
      on: z.string(),
      plot: z.string(),
      what: z.string(),
      variety: nullable(z.string()),
      seedLot: nullable(z.string()),
      entry: z.string(),
    }),
  ),
  seedPapers: z.array(
    z.object({ batch: z.string(), supplier: nullable(z.string()), paper: nullable(z.string()), entry: z.string() }),
  ),
  ground: z.array(z.object({ on: z.string(), kind: z.string(), what: z.string(), by: z.string(), entry: z.string() })),
  inputs: z.array(
    z.object({
      on: z.string(),
      batch: z.string(),
      name: nullable(z.string()),
      amount: nullable(z.number()),
      animalFree: z.string(),
      paper: nullable(z.string()),
      entry: z.string(),
    }),
  ),
});

export const trace = z
  .object({
    what: z.string(),
    knownOn: nullable(z.string()),
    direction: z.enum(['back', 'forward']),
    kg,
    notKnownKg: kg,
    runs: z.array(run.extend({ kg })),
    handings: z.array(handing),
    lots: z.array(lotBack),
    others: z.array(
      z.object({ how: z.string(), on: z.string(), kg, recipient: nullable(z.string()), entry: z.string() }),
    ),
    leftKg: kg,
    bins: z.array(z.object({ bin: z.string(), kg })),
    missing: z.array(missingLink),
  })
  .meta({ id: 'Trace' });

const terms = z.object({
  harvested: kg,
  bought: kg,
  boxes: kg,
  sale: kg,
  'own-use': kg,
  gift: kg,
  seed: kg,
  'graded-out': kg,
  compost: kg,
  loss: kg,
});

export const balance = z
  .object({
    crop: z.string(),
    cropName: z.string(),
    from: z.string(),
    to: z.string(),
    status: nullable(z.string()),
    knownOn: nullable(z.string()),
    openingKg: kg,
    termsKg: terms,
    entries: z.record(z.string(), z.array(z.string())),
    closingKg: kg,
    isClosingWeighed: z.boolean(),
    notAccountedKg: kg,
    notAccountedShare: nullable(z.number()),
    bandShare: z.number(),
    judged: z.enum(['fine', 'look', 'alarm']),
    notPackedKg: kg,
    estimatedKg: kg,
    yieldCheck: z.object({
      liftedKg: kg,
      areaM2: z.number(),
      yieldTHa: nullable(z.number()),
      lowTHa: nullable(z.number()),
      highTHa: nullable(z.number()),
      judged: z.enum(['plausible', 'low', 'high', 'unknown']),
    }),
    sentence: z.string(),
  })
  .meta({ id: 'Balance' });

export const balances = z.object({ balances: z.array(balance) }).meta({ id: 'Balances' });

export type ToldTrace = z.infer<typeof trace>;
export type ToldBalance = z.infer<typeof balance>;
