/** Shapes of own jobs, absences and seed. */
import type { PersonId } from '@leywright/measures';
import * as z from 'zod';
import {
  type Absence,
  jobKinds,
  type OwnJob,
  type SeedAuthorisation,
  type SeedLot,
  type SeedOffer,
  seedStatuses,
} from '../farm/work.ts';
import { amount, day, id, orNull, share, words } from './plain-shapes.ts';

export const ownJobShape: z.ZodType<OwnJob> = z.strictObject({
  what: orNull(id<string>()),
  job: z.enum(jobKinds),
  done: z.boolean(),
  hoursPerHa: orNull(amount),
  times: orNull(z.number().int().min(0)),
  windowDays: orNull(z.number().int().min(0)),
});

export const absenceShape: z.ZodType<Absence> = z.strictObject({
  person: id<PersonId>(),
  from: day,
  to: day,
  why: orNull(words),
});

export const seedLotShape: z.ZodType<SeedLot> = z.strictObject({
  lot: id<string>(),
  what: id<string>(),
  variety: orNull(words),
  massKg: orNull(amount),
  seeds: orNull(amount),
  germinationShare: orNull(share),
  testedOn: orNull(day),
  harvestYear: orNull(z.number().int()),
  status: z.enum(seedStatuses),
  proof: orNull(words),
});

export const seedOfferShape: z.ZodType<SeedOffer> = z.strictObject({
  id: id<string>(),
  what: id<string>(),
  variety: orNull(words),
  supplier: words,
  status: z.enum(seedStatuses),
  packKg: orNull(amount),
  packSeeds: orNull(amount),
  available: z.boolean(),
  seenOn: orNull(day),
});

export const seedAuthorisationShape: z.ZodType<SeedAuthorisation> = z.strictObject({
  id: id<string>(),
  what: id<string>(),
  variety: orNull(words),
  askedOn: orNull(day),
  grantedOn: orNull(day),
  until: orNull(day),
  reason: orNull(words),
  proof: orNull(words),
});
