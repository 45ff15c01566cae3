/**
 * Who does what: the hours of each week's jobs shared among those who are there and may do them.
 *
 * Rule    Week by week, jobs that ask for a skill first and the longest first; each goes to the person with the most hours left who may do it, and is shared
 *         where one has too few. What is left when all hours are given stands under nobody. A farm that names no skills lets everyone do everything.
 * Holds   the hours of all lines are the hours of all jobs, by whatever they are added up; nobody gets more hours than they have.
 */
import type { Absence, Person } from '@leywright/book';
import type { Job, Work } from '../plan/work.ts';
import { hoursOfPersonH } from './hands.ts';

export interface HandsLine {
  readonly job: string;
  readonly week: string;
  /** Null: no hands are left for it. */
  readonly person: string | null;
  readonly hoursH: number;
}

/** Lookers and people without hours do no work. */
function works(person: Person): boolean {
  return person.role !== 'looker' && (person.hoursWeek !== null || person.hoursYear !== null);
}

const dustH = 1e-9;

export function assignHands(
  work: Work,
  { people, absences }: { readonly people: readonly Person[]; readonly absences: readonly Absence[] },
): readonly HandsLine[] {
  const workers = people.filter(works);
  const skilled = workers.some((person) => (person.skills ?? []).length > 0);
  const byWeek = new Map<string, Job[]>();
  for (const job of work.jobs) byWeek.set(job.week, [...(byWeek.get(job.week) ?? []), job]);
  return work.weeks.flatMap(({ week }) => {
    const left = new Map(workers.map((person) => [person.id as string, hoursOfPersonH(person, week, absences)]));
    return inTurn(byWeek.get(week) ?? []).flatMap((job) => {
      const may = workers.filter(
        (person) => !skilled || job.skill === null || (person.skills ?? []).includes(job.skill),
      );
      return shared(job, may, left);
    });
  });
}

function inTurn(jobs: readonly Job[]): readonly Job[] {
  return jobs.toSorted((a, b) => Number(b.skill !== null) - Number(a.skill !== null) || b.hours.typ - a.hours.typ);
}

function shared(job: Job, may: readonly Person[], left: Map<string, number>): readonly HandsLine[] {
  const lines: HandsLine[] = [];
  let restH = job.hours.typ;
  const most = may.toSorted((a, b) => (left.get(b.id) ?? 0) - (left.get(a.id) ?? 0));
  for (const person of most) {
    const hoursH = Math.min(restH, left.get(person.id) ?? 0);
    if (hoursH <= dustH) continue;
    left.set(person.id, (left.get(person.id) ?? 0) - hoursH);
    restH -= hoursH;
    lines.push({ job: job.id, week: job.week, person: person.id, hoursH });
    if (restH <= dustH) break;
  }
  if (restH > dustH || lines.length === 0) lines.push({ job: job.id, week: job.week, person: null, hoursH: restH });
  return lines;
}

export const hoursBy = ['crop', 'week', 'person', 'course', 'kind', 'plot', 'pay'] as const;
export type HoursBy = (typeof hoursBy)[number];

/** The year's hours added up by one thing; '' stands for what has none. Every way gives the same total. */
export function hoursAddedUp(
  work: Work,
  by: HoursBy,
  hands: { readonly people: readonly Person[]; readonly absences: readonly Absence[] },
): ReadonlyMap<string, number> {
  const jobs = new Map(work.jobs.map((job) => [job.id, job]));
  const paid = new Map(hands.people.map((person) => [person.id as string, person.paid ? 'paid' : 'unpaid']));
  const keyOf = (line: HandsLine): string => {
    const job = jobs.get(line.job);
    if (by === 'person') return line.person ?? '';
    if (by === 'pay') return paid.get(line.person ?? '') ?? '';
    if (by === 'week') return line.week;
    return job?.[by] ?? '';
  };
  const sums = new Map<string, number>();
  for (const line of assignHands(work, hands)) sums.set(keyOf(line), (sums.get(keyOf(line)) ?? 0) + line.hoursH);
  return sums;
}
