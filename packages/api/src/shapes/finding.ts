import { type Finding, findingCodes, gravities, type Why } from '@leywright/planner';
import { z } from 'zod';
import { type Frozen, figure, figures, type Same } from './basics.ts';

export const place = z
  .object({
    plot: z.string(),
    stand: z.string(),
    crop: z.string(),
    year: z.number(),
    week: z.string(),
    store: z.string(),
    entry: z.string(),
    from: z.string(),
    to: z.string(),
  })
  .partial()
  .meta({ id: 'Place', description: 'Where a finding is.' });

export const mend = z
  .object({ code: z.string(), figures })
  .meta({ id: 'Mend', description: 'One thing that could be done about it.' });

export const finding = z
  .object({
    code: z.enum(findingCodes),
    gravity: z.enum(gravities),
    place,
    figures,
    mend: z.array(mend),
    reason: z.string().nullable(),
    why: z.string().nullable(),
  })
  .meta({ id: 'Finding', description: 'Something to put right, to look at, or to know.' });

/** A finding and its words. */
export const toldFinding = finding
  .extend({ title: z.string(), sentence: z.string(), cause: z.string(), mends: z.array(z.string()) })
  .meta({ id: 'ToldFinding', description: 'A finding with its sentence, its cause and its mends in words.' });

const whyInput = z.object({
  name: z.string(),
  value: figure,
  unit: z.string(),
  from: z.enum(['farm', 'record', 'reference', 'convention', 'derived', 'climate']),
  where: z.string().nullable(),
  source: z.string().nullable(),
  howKnown: z.enum(['verified', 'memory', 'common practice', 'own']).nullable(),
  why: z.string().nullable(),
});

const lever = z.object({
  change: z.string(),
  value: z.union([z.number(), z.string()]),
  unit: z.string(),
  result: z.number(),
});

export const why = z
  .object({
    id: z.string(),
    title: z.string(),
    figures,
    value: z.number().nullable(),
    low: z.number().nullable(),
    high: z.number().nullable(),
    unit: z.string(),
    formula: z.string(),
    sum: z.string(),
    inputs: z.array(whyInput),
    doubt: z.array(z.string()),
    levers: z.array(lever),
  })
  .meta({ id: 'Why', description: 'Where one figure comes from.' });

/** A derivation and its words. */
export const toldWhy = why
  .extend({ titleWords: z.string(), doubtWords: z.array(z.string()) })
  .meta({ id: 'ToldWhy', description: 'A derivation with its title and its doubt in words.' });

// The compiler stops here when the shapes and the planner's types part ways.
const isFinding: Same<Frozen<z.infer<typeof finding>>, Frozen<Finding>> = true;
const isWhy: Same<Frozen<z.infer<typeof why>>, Frozen<Why>> = true;
void [isFinding, isWhy];
