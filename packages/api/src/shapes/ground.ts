import { plotKinds, standEnds, standKinds, standStates } from '@leywright/book';
import { looks, type PlotGround } from '@leywright/planner';
import { z } from 'zod';
import { day, type Frozen, type Same, span } from './basics.ts';
import { finding } from './finding.ts';

const netArea = z
  .object({
    grossM2: z.number(),
    bufferM2: z.number(),
    bufferBy: z.enum(['law', 'own-policy', 'none', 'unknown']),
    bankM2: z.number(),
    headlandM2: z.number(),
    netM2: z.number(),
    why: z.string(),
  })
  .meta({ id: 'NetArea', description: 'The ground that can be cropped, and what was taken off.' });

export const placedStand = z
  .object({
    id: z.string(),
    succession: z.string().nullable(),
    plot: z.string(),
    span,
    areaM2: z.number(),
    what: z.string(),
    kind: z.enum(standKinds),
    look: z.enum(looks),
    family: z.string().nullable(),
    name: z.string(),
    variety: z.string().nullable(),
    state: z.enum(standStates),
    origin: z.enum(['rotation', 'said', 'recorded']),
    from: day,
    to: day,
    sownOn: day.nullable(),
    plantedOn: day.nullable(),
    harvestFrom: day.nullable(),
    harvestTo: day.nullable(),
    driftDays: z.number(),
    undersownIn: z.string().nullable(),
    course: z.string().nullable(),
    courseYear: z.number().nullable(),
    endedBy: z.enum(standEnds).nullable(),
    establishedShare: z.number().nullable(),
    reason: z.string().nullable(),
    coverFromWeek: z.number(),
    coverShare: z.array(z.number()),
    coverBasis: z.enum(['published', 'common-practice', 'derived', 'unknown']),
  })
  .meta({
    id: 'PlacedStand',
    description: 'What stands on part of a plot between two days; the last day is the first free one.',
  });

const bareSpell = z
  .object({
    plot: z.string(),
    span,
    from: day,
    to: day,
    days: z.number(),
    leachingDays: z.number(),
    areaM2: z.number(),
    before: z.string().nullable(),
    after: z.string().nullable(),
    answered: z.string().nullable(),
  })
  .meta({ id: 'BareSpell', description: 'Ground under the bare limit for longer than the farm allows.' });

const visit = z
  .object({
    rule: z.string(),
    ruleName: z.string(),
    scope: z.enum(['family', 'organism', 'own']),
    plot: z.string(),
    stand: z.string(),
    year: z.number(),
    previous: z.string(),
    previousName: z.string(),
    previousYear: z.number(),
    gapYears: z.number(),
    needYears: z.number(),
    force: z.enum(['hard', 'warn', 'info']),
    infested: z.boolean(),
    earliestYear: z.number(),
    sharedShare: z.number(),
    kept: z.boolean(),
    why: z.string(),
  })
  .meta({ id: 'Visit', description: 'One return of a host to ground that carried one before.' });

export const plotGround = z
  .object({
    plot: z.string(),
    letter: z.string(),
    name: z.string(),
    kind: z.enum(plotKinds),
    area: netArea,
    soil: z.string().nullable(),
    courses: z.array(z.object({ year: z.number(), course: z.string(), name: z.string() })),
    stands: z.array(placedStand),
    coverShare: z.array(z.number()),
    bare: z.array(bareSpell),
    bareCounts: z.array(z.object({ plot: z.string(), winter: z.number(), bareDays: z.number() })),
    visits: z.array(visit),
    findings: z.array(finding),
  })
  .meta({ id: 'PlotGround', description: 'One plot over the years of the plan.' });

const isGround: Same<Frozen<z.infer<typeof plotGround>>, Frozen<PlotGround>> = true;
void isGround;
