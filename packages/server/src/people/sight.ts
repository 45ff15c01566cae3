/**
 * What each role sees and may enter: one table. Each sees what it needs for its work and no more; a hand's phone holds no prices, no wages, no
 * households and no records older than two years.
 */
import { type EntryKind, type Role, type Subject, subjects } from '@leywright/book';

export interface Sight {
  /** Tables of the farm whose rows are handed out. */
  readonly readsSubjects: readonly Subject[];
  /** Records older than this are left out; null = all. What describes the farm is never too old. */
  readonly readsMonths: number | null;
  readonly readsMoney: boolean;
  readonly enters: readonly EntryKind[];
  readonly entersSubjects: readonly Subject[];
  /** Whether records of other people may be sent in and corrected. */
  readonly entersForOthers: boolean;
  /** All personal facts, or what a packer needs (name, size, drop, what they will not have), or nothing. */
  readonly households: 'all' | 'packing' | 'none';
}

const withoutMoneyAndPeople = subjects.filter((subject) => subject !== 'prices' && subject !== 'people');

const describes = ['set', 'rotation-agreed', 'organism-found'] as const satisfies readonly EntryKind[];
const benchWork = [
  'harvest',
  'weighing',
  'job-done',
  'observation',
  'struck-out',
] as const satisfies readonly EntryKind[];
const fieldWork = [
  ...benchWork,
  'sowing',
  'planting',
  'stand-ended',
  'establishment',
  'organism-found',
] as const satisfies readonly EntryKind[];

export const sights: Readonly<Record<Role, Sight>> = {
  grower: {
    readsSubjects: subjects,
    readsMonths: null,
    readsMoney: true,
    enters: [...describes, ...fieldWork, 'withdrawn'],
    entersSubjects: subjects,
    entersForOthers: true,
    households: 'all',
  },
  /** Keeps the papers: everything but agreeing the rotation and taking a body away for good. */
  office: {
    readsSubjects: subjects,
    readsMonths: null,
    readsMoney: true,
    enters: ['set', ...fieldWork],
    entersSubjects: subjects.filter((subject) => subject !== 'rotation'),
    entersForOthers: true,
    households: 'all',
  },
  /** The packing bench. */
  bench: {
    readsSubjects: withoutMoneyAndPeople,
    readsMonths: 24,
    readsMoney: false,
    enters: benchWork,
    entersSubjects: [],
    entersForOthers: false,
    households: 'packing',
  },
  hand: {
    readsSubjects: withoutMoneyAndPeople,
    readsMonths: 24,
    readsMoney: false,
    enters: fieldWork,
    entersSubjects: [],
    entersForOthers: false,
    households: 'none',
  },
  /** An inspector or a visitor: the whole record of the ground, nothing of money or persons, and nothing to enter. */
  looker: {
    readsSubjects: withoutMoneyAndPeople,
    readsMonths: null,
    readsMoney: false,
    enters: [],
    entersSubjects: [],
    entersForOthers: false,
    households: 'none',
  },
};
