/** The first sentence of each place, from the plan's own numbers. */
import { weekOf } from '@leywright/measures';
import type { Plan } from '@leywright/planner';
import type { Voice } from '../voice.ts';
import type { HeadlineWords } from '../word-kinds.ts';
import { counted, countedInWords, monthName, number, writeWeek } from './figures.ts';

export const headlineWords: HeadlineWords = {
  ground: (plan) => `${barePart(plan)} ${boxPart(plan)}`,
  boxes: (plan, voice) => boxesHeadline(plan, voice),
  day: (plan, voice) => dayHeadline(plan, voice),
  work: (plan) => workHeadline(plan),
};

function barePart(plan: Plan): string {
  const { bareWinters } = plan.headline;
  if (plan.ground.length === 0) return 'No plots are on the list yet.';
  if (bareWinters.length === 0) return 'No winter lies bare.';
  const count = new Set(bareWinters.map((bare) => bare.winter)).size;
  const names = [...new Set(bareWinters.map((bare) => bare.name))];
  const where = names.length > 3 ? `${countedInWords(names.length, 'plot', 'plots')}` : listed(names);
  const what = countedInWords(count, 'winter lies bare', 'winters lie bare');
  return `${capital(what)}, on ${where}.`;
}

function boxPart(plan: Plan): string {
  const { shortWeeks, boxWeeks } = plan.headline;
  if (plan.supply === null || boxWeeks === 0) return 'No boxes are promised yet.';
  const first = shortWeeks[0];
  if (first === undefined) return `The box is full in ${everyWeek(boxWeeks)}.`;
  if (shortWeeks.length === boxWeeks) return `The box is short in ${everyWeek(boxWeeks)}.`;
  return `The box is short for ${countedInWords(shortWeeks.length, 'week', 'weeks')} from ${monthName(first)}.`;
}

function boxesHeadline(plan: Plan, voice: Voice): string {
  const { shortWeeks, shortItems, boxWeeks, households } = plan.headline;
  if (plan.supply === null || boxWeeks === 0) return `No boxes are promised for ${plan.year} yet.`;
  const first = shortWeeks[0];
  if (first === undefined)
    return `Every box of ${plan.year} is full: ${counted(households, 'household', 'households')}, ${counted(boxWeeks, 'week', 'weeks')}.`;
  const short = countedInWords(shortWeeks.length, 'week', 'weeks');
  const items = counted(Math.max(1, Math.round(shortItems)), 'item', 'items');
  return `The box is short in ${short} of ${number(boxWeeks)}: ${items} missing in all, first in ${writeWeek(first, voice)}.`;
}

function dayHeadline(plan: Plan, voice: Voice): string {
  const week = weekOf(plan.today);
  const jobs = plan.work.jobs.filter((job) => job.week === week && job.doneShare < 1);
  if (jobs.length === 0) return `Nothing is due in ${writeWeek(week, voice)}.`;
  const hours = Math.round(jobs.reduce((sum, job) => sum + job.hours.typ * (1 - job.doneShare), 0));
  const count = capital(countedInWords(jobs.length, 'job', 'jobs'));
  return `${count} for ${writeWeek(week, voice)}, ${hours === 0 ? 'less than an hour' : `about ${counted(hours, 'hour', 'hours')}`} of work.`;
}

const dayH = 8;

function workHeadline({ work }: Plan): string {
  if (work.yearH < 1) return `No work follows from the plan for ${work.year} yet.`;
  if (work.weeks.every((week) => week.handsH === null))
    return `The year asks for ${counted(Math.round(work.yearH), 'hour', 'hours')} of work: nobody’s hours are written down yet.`;
  const over = work.weeks.filter((week) => week.handsH !== null && week.hours.typ > week.handsH);
  const overH = over.reduce((sum, week) => sum + week.hours.typ - (week.handsH ?? 0), 0);
  if (over.length === 0)
    return `There are hands for all the work of ${work.year}: ${number(Math.round(work.yearH))} hours.`;
  const days = Math.max(1, Math.round(overH / dayH));
  const what = days === 1 ? 'day of work has' : 'days of work have';
  const weeks = over.map((week) => String(Number(week.week.slice(6))));
  const where =
    weeks.length > 8
      ? `in ${weeks.length} weeks of the year`
      : `${weeks.length === 1 ? 'week' : 'weeks'} ${listed(weeks)}`;
  return `${number(days)} ${what} nobody to do ${days === 1 ? 'it' : 'them'}: ${where}.`;
}

function everyWeek(boxWeeks: number): string {
  return boxWeeks === 1 ? 'its one week' : boxWeeks === 2 ? 'both weeks' : `all ${number(boxWeeks)} weeks`;
}

function listed(names: readonly string[]): string {
  return names.length < 2 ? names.join('') : `${names.slice(0, -1).join(', ')} and ${names.at(-1)}`;
}

function capital(text: string): string {
  return text.charAt(0).toLocaleUpperCase('en-GB') + text.slice(1);
}
