/** Covers for the gaps of a farm, ranked. */
import { z } from 'zod';
import { day, span } from './basics.ts';

const choice = z.object({
  cover: z.string(),
  name: z.string(),
  way: z.enum(['after', 'undersown']),
  into: z.string().nullable(),
  sowOn: day,
  until: day,
  lastSafe: day.nullable(),
  lastBy: z.enum(['warmth', 'table', 'weeks-in-crop']).nullable(),
  lateDays: z.number(),
  seedLowKgHa: z.number(),
  seedHighKgHa: z.number(),
  coverByNovemberShare: z.number().nullable(),
  wetDaysCoveredShare: z
    .number()
    .nullable()
    .describe('share of the wet season’s days in the gap with a third of the ground covered'),
  gapDaysCoveredShare: z.number(),
  heldLowKgHa: z.number(),
  heldHighKgHa: z.number(),
  fixedLowKgHa: z.number(),
  fixedHighKgHa: z.number(),
  killedOn: day.nullable(),
  frostKillC: z.number(),
  turnInOn: day.nullable(),
  weeksBeforeNext: z.number(),
  missingWeeks: z.number(),
  rests: z.array(z.object({ rule: z.string(), name: z.string(), force: z.enum(['hard', 'warn', 'info']) }).loose()),
  isKinOfNext: z.boolean(),
  isSound: z.boolean(),
  value: z.number(),
  reasons: z.array(z.string()),
});

export const covers = z
  .object({
    farm: z.string(),
    today: day,
    gaps: z.array(
      z.object({
        plot: z.string(),
        name: z.string(),
        span,
        areaM2: z.number(),
        from: day,
        to: day,
        before: z.string().nullable(),
        after: z.string().nullable(),
        choices: z.array(choice),
      }),
    ),
  })
  .meta({
    id: 'Covers',
    title: 'Covers',
    description: 'Which cover for every gap between stands, best first, with reasons.',
  });
