/** Findings as the command and the server tell them. */
import { z } from 'zod';
import { toldFinding } from './finding.ts';

export const findings = z
  .object({
    farm: z.string(),
    today: z.string(),
    year: z.number(),
    toPutRight: z.number(),
    findings: z.array(toldFinding),
  })
  .meta({
    id: 'Findings',
    title: 'Findings',
    description: 'All findings of a farm with their sentences, worst first.',
  });

/** What `leywright import` says. */
export const imported = z
  .object({ farm: z.string(), name: z.string(), entries: z.number() })
  .meta({ id: 'Imported', title: 'Imported' });

/** What `leywright export` says. */
export const exported = z
  .object({ farm: z.string(), files: z.array(z.string()), to: z.string() })
  .meta({ id: 'Exported', title: 'Exported' });

/** What `leywright verify-book` says. */
export const verified = z
  .object({
    ok: z.boolean(),
    entries: z.number().nullable(),
    firstBad: z.number().nullable(),
    why: z.string().nullable(),
  })
  .meta({ id: 'Verified', title: 'Verified' });
