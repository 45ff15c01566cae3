/** Tables of how the farm works: its own jobs, who is away, its seed. */
import type { PersonId } from '@leywright/measures';
import {
  type Absence,
  jobKinds,
  type OwnJob,
  type SeedAuthorisation,
  type SeedLot,
  type SeedOffer,
  seedStatuses,
} from '../farm/work.ts';
import { may, must, orElse, type Table } from '../table/column.ts';
import { day } from '../table/day-kinds.ts';
import { nameOf } from '../table/name-kinds.ts';
import { id, number, oneOf, text, wholeNumber, yesNo } from '../table/plain-kinds.ts';

const plantNames = 'crop or cover';

export const ownJobTable: Table<OwnJob> = {
  file: 'jobs.csv',
  about: 'How this farm does a job, over what the tables say: for one crop or cover, or for all.',
  key: ['what', 'job'],
  columns: {
    what: may('what', nameOf<string>('plant'), `${plantNames}; all when left out`, { alsoCalled: ['crop'] }),
    job: must('job', oneOf(jobKinds), 'the job'),
    done: orElse('done', yesNo, true, 'no: this farm does not do it; yes when left out'),
    hoursPerHa: may('hours_ha', number('h a hectare', { least: 0, most: 10_000 }), 'hours of all hands, each time'),
    times: may('times', wholeNumber('times', { least: 0, most: 60 }), 'in a season'),
    windowDays: may('window_days', wholeNumber('days', { least: 0, most: 120 }), 'days it may wait'),
  },
};

export const absenceTable: Table<Absence> = {
  file: 'absences.csv',
  about: 'Days on which somebody is not there.',
  key: ['person', 'from'],
  columns: {
    person: must('person', nameOf<PersonId>('person'), 'who'),
    from: must('from', day, 'first day away'),
    to: must('to', day, 'last day away'),
    why: may('why', text, 'for people'),
  },
};

export const seedLotTable: Table<SeedLot> = {
  file: 'seed_lots.csv',
  about: 'Seed, sets and tubers in hand. What is not given is not known.',
  key: ['lot'],
  columns: {
    lot: must('lot', id<string>(), 'unique'),
    what: must('what', nameOf<string>('plant'), plantNames, { alsoCalled: ['crop'] }),
    variety: may('variety', text, 'variety'),
    massKg: may('mass_kg', number('kg', { least: 0 }), 'left of it'),
    seeds: may('seeds', number('seeds', { least: 0 }), 'or counted'),
    germinationShare: may('germination', number('share of 1', { least: 0, most: 1 }), 'share that came up in its test'),
    testedOn: may('tested_on', day, 'day of that test'),
    harvestYear: may('harvest_year', wholeNumber('year', { least: 1950, most: 2199 }), 'year it was harvested in'),
    status: orElse('status', oneOf(seedStatuses), 'unknown', 'own = saved on this farm; unknown when left out'),
    proof: may('proof', text, 'where its certificate or label is kept'),
  },
};

export const seedOfferTable: Table<SeedOffer> = {
  file: 'seed_offers.csv',
  about: 'What suppliers of seed offer, and what they have sold out.',
  key: ['id'],
  columns: {
    id: must('id', id<string>(), 'unique'),
    what: must('what', nameOf<string>('plant'), plantNames, { alsoCalled: ['crop'] }),
    variety: may('variety', text, 'variety'),
    supplier: must('supplier', text, 'who offers it'),
    status: orElse('status', oneOf(seedStatuses), 'unknown', 'unknown when left out'),
    packKg: may('pack_kg', number('kg', { least: 0, above: true }), 'in a pack, by weight'),
    packSeeds: may('pack_seeds', number('seeds', { least: 0, above: true }), 'or by count'),
    available: orElse('available', yesNo, true, 'no: sold out'),
    seenOn: may('seen_on', day, 'day the list was read'),
  },
};

export const seedAuthorisationTable: Table<SeedAuthorisation> = {
  file: 'seed_authorisations.csv',
  about: 'Derogations, authorisations and documented searches for seed that is not organic.',
  key: ['id'],
  columns: {
    id: must('id', id<string>(), 'unique'),
    what: must('what', nameOf<string>('plant'), plantNames, { alsoCalled: ['crop'] }),
    variety: may('variety', text, 'variety'),
    askedOn: may('asked_on', day, 'day it was asked for'),
    grantedOn: may('granted_on', day, 'day it was granted'),
    until: may('until', day, 'last day it holds'),
    reason: may('reason', text, 'why organic seed will not do'),
    proof: may('proof', text, 'number, and where the paper is kept'),
  },
};
