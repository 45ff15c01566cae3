/** A job as people say it, on the screen, on paper and in a calendar. */
import type { Job } from '@leywright/planner';
import { jobVerbs, toolWords, waitingWords } from '../words/jobs/en-gb.ts';

/** Plant out leeks. */
export function jobTitle(job: Pick<Job, 'kind' | 'name'>): string {
  const name = job.name === '' ? 'boxes' : job.name.charAt(0).toLowerCase() + job.name.slice(1);
  return `${jobVerbs[job.kind]} ${name}`;
}

/** 2,400 plants, 320 m of row, 0.12 ha. */
export function jobAmount(job: Pick<Job, 'amount' | 'amountUnit' | 'rowM' | 'areaM2'>): string {
  const count = (value: number) => Math.round(value).toLocaleString('en-GB');
  const parts = [
    job.amount === null || job.amountUnit === null ? null : `${count(job.amount)} ${job.amountUnit}`,
    job.rowM === null ? null : `${count(job.rowM)} m of row`,
    job.areaM2 === null
      ? null
      : job.areaM2 < 1000
        ? `${count(job.areaM2)} m²`
        : `${(job.areaM2 / 10_000).toFixed(2)} ha`,
  ];
  return parts.filter((part) => part !== null).join(', ');
}

/** With what, and what it waits for. */
export function jobHow(job: Pick<Job, 'tools' | 'waitsFor'>): string {
  const tools = job.tools.map((tool) => toolWords[tool]).join(', ');
  const waits = job.waitsFor.map((one) => waitingWords[one]).join(', ');
  return [tools === '' ? null : `With ${tools}.`, waits === '' ? null : `Waits for ${waits}.`]
    .filter((part) => part !== null)
    .join(' ');
}

/** "2.5 h", whole from ten hours on. */
export function jobHours(hoursH: number): string {
  return hoursH >= 10 ? `${Math.round(hoursH)} h` : `${Number(hoursH.toFixed(1))} h`;
}
