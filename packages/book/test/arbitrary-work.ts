/** Random tables of how a farm works: own jobs, absences, seed. */
import { addDays, type Id } from '@leywright/measures';
import fc from 'fast-check';
import { type Farm, working as work } from '../src/index.ts';
import { amount, day, id, many, orNull, plant, rec, share, words } from './arbitrary-pieces.ts';

export const working = rec<Pick<Farm, 'ownJobs' | 'seedLots' | 'seedOffers' | 'seedAuthorisations'>>({
  ownJobs: many(
    rec<Farm['ownJobs'][number]>({
      what: orNull(plant),
      job: fc.constantFrom(...work.jobKinds),
      done: fc.boolean(),
      hoursPerHa: orNull(amount(900)),
      times: orNull(fc.integer({ min: 0, max: 9 })),
      windowDays: orNull(fc.integer({ min: 0, max: 60 })),
    }),
    (one) => `${one.what} ${one.job}`,
  ),
  seedLots: many(
    rec<Farm['seedLots'][number]>({
      lot: id<Id>().map(String),
      what: plant,
      variety: orNull(words),
      massKg: orNull(amount(500)),
      seeds: orNull(amount(1e6)),
      germinationShare: orNull(share),
      testedOn: orNull(day),
      harvestYear: orNull(fc.integer({ min: 2010, max: 2040 })),
      status: fc.constantFrom(...work.seedStatuses),
      proof: orNull(words),
    }),
    (one) => one.lot,
  ),
  seedOffers: many(
    rec<Farm['seedOffers'][number]>({
      id: id<Id>().map(String),
      what: plant,
      variety: orNull(words),
      supplier: words,
      status: fc.constantFrom(...work.seedStatuses),
      packKg: orNull(amount(50, 0.001)),
      packSeeds: orNull(amount(1e6, 1)),
      available: fc.boolean(),
      seenOn: orNull(day),
    }),
    (one) => one.id,
  ),
  seedAuthorisations: many(
    rec<Farm['seedAuthorisations'][number]>({
      id: id<Id>().map(String),
      what: plant,
      variety: orNull(words),
      askedOn: orNull(day),
      grantedOn: orNull(day),
      until: orNull(day),
      reason: orNull(words),
      proof: orNull(words),
    }),
    (one) => one.id,
  ),
});

/** Days away of people the farm has. */
export const absencesOf = (people: Farm['people']): fc.Arbitrary<Farm['absences']> =>
  people.length === 0
    ? fc.constant([])
    : many(
        fc
          .record({
            person: fc.constantFrom(...people.map((one) => one.id)),
            from: day,
            days: fc.integer({ min: 0, max: 40 }),
            why: orNull(words),
          })
          .map(({ days, ...row }) => ({ ...row, to: addDays(row.from, days) })),
        (one) => `${one.person} ${one.from}`,
      );
