/** A proposed rotation, as the command and the server tell it. */
import { z } from 'zod';
import { toldFinding } from './finding.ts';

const year = z.object({
  year: z.number(),
  course: z.string().nullable().describe('null: what stands there stays, or the land is not ours that year'),
  name: z.string().nullable(),
  agreed: z.string().nullable(),
  moved: z.boolean(),
  pinned: z.boolean(),
  others: z
    .array(z.object({ course: z.string(), name: z.string(), extraScore: z.number() }))
    .describe('other lawful courses, the next best first, with what the whole plan would cost more'),
  barred: z.array(z.string()),
});

const sequences = z
  .array(z.object({ courses: z.array(z.string().nullable()), extraScore: z.number() }))
  .describe(
    'the best orders of courses for this plot while the others stay as proposed, with what the whole plan would cost more',
  );

const plan = z
  .object({
    firstYear: z.number(),
    lastYear: z.number(),
    status: z.enum(['optimal', 'time', 'stopped', 'unproven']),
    score: z.number(),
    bound: z.number().nullable(),
    gapShare: z.number().nullable(),
    seconds: z.number(),
    areasBy: z.enum(['promise', 'even']),
    costs: z.record(z.string(), z.number()).describe('what each soft rule costs'),
    leftOut: z.array(z.object({ plot: z.string(), why: z.string() })),
    plots: z.array(
      z.object({ plot: z.string(), letter: z.string(), name: z.string(), years: z.array(year), sequences }),
    ),
    behind: z
      .array(z.string())
      .optional()
      .describe('with --explain: what each soft rule costs, and whether halving plots would gain'),
    pencil: z.object({ placed: z.array(z.unknown()), stands: z.array(z.unknown()) }),
    findings: z.array(toldFinding),
  })
  .meta({ id: 'RotationPlan' });

const head = { farm: z.string(), today: z.string(), sentence: z.string() };

export const rotation = z
  .union([
    plan.extend({ ...head, kind: z.literal('proposal') }),
    z.object({
      ...head,
      kind: z.literal('no-plan'),
      conflicts: z.array(
        z.object({
          plot: z.string(),
          name: z.string(),
          rules: z.array(
            z.object({
              rule: z.string(),
              sentence: z.string(),
              frees: z.string(),
              isEnough: z.boolean(),
              sequences: z.number(),
            }),
          ),
        }),
      ),
      partial: plan.nullable(),
    }),
    z.object({ ...head, kind: z.literal('nothing-to-plan') }),
  ])
  .meta({ id: 'Rotation', title: 'Rotation', description: 'A proposed rotation, or the rules that conflict.' });

const cell = { plot: z.string().max(200), course: z.string().max(200) };

/** What a rotation is asked for. */
export const rotationWish = z
  .object({
    years: z.number().int().min(4).max(15).default(10),
    firstYear: z
      .number()
      .int()
      .min(1950)
      .max(2150)
      .nullable()
      .default(null)
      .describe('null: the first in which nothing has begun'),
    pins: z
      .array(z.object({ ...cell, year: z.number().int() }))
      .max(500)
      .default([]),
    never: z.array(z.object(cell)).max(500).default([]),
    dear: z
      .array(z.object({ ...cell, dearScore: z.number().min(0).max(1000) }))
      .max(500)
      .default([])
      .describe('what a course costs on a plot beside elsewhere'),
    seconds: z.number().min(1).max(60).default(20),
  })
  .meta({ id: 'RotationWish' });
export { covers } from './covers.ts';
