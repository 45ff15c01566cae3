/** A person's jobs as an iCalendar feed (RFC 5545): one event of whole days a job, with its window and its hours told. */
import { workWords } from '@leywright/api';
import type { Farm } from '@leywright/book';
import { addDays, type Day } from '@leywright/measures';
import type { Job, Plan } from '@leywright/planner';
import ICAL from 'ical.js';

export interface FeedWish {
  /** UTC instant the feed is made at, ISO 8601. */
  readonly madeAt: string;
  /** Null: everyone's jobs. */
  readonly person: string | null;
  readonly daysBack?: number;
  readonly daysOn?: number;
}

// The library counts the space that a folded line begins with beyond its 75 octets; the standard counts it in.
ICAL.foldLength = 74;

const usualBackDays = 14;
const usualOnDays = 120;

/** The feed, lines ended as the standard asks. */
export function calendarFeed(farm: Farm, plan: Plan, wish: FeedWish): string {
  const calendar = new ICAL.Component('vcalendar');
  calendar.addPropertyWithValue('version', '2.0');
  calendar.addPropertyWithValue('prodid', '-//Leywright//Jobs//EN');
  calendar.addPropertyWithValue('x-wr-calname', `${farm.about.name}: jobs`);
  const from = addDays(plan.today, -(wish.daysBack ?? usualBackDays));
  const to = addDays(plan.today, wish.daysOn ?? usualOnDays);
  for (const { job, hoursH } of workWords.jobsFor(farm, plan, wish.person)) {
    if (job.to < from || job.from > to || job.doneShare >= 1) continue;
    calendar.addSubcomponent(eventOf(job, { farm, plan, hoursH, madeAt: wish.madeAt }));
  }
  return `${calendar.toString()}\r\n`;
}

interface EventAt {
  readonly farm: Farm;
  readonly plan: Plan;
  readonly hoursH: number;
  readonly madeAt: string;
}

function eventOf(job: Job, { farm, plan, hoursH, madeAt }: EventAt): InstanceType<typeof ICAL.Component> {
  const event = new ICAL.Component('vevent');
  const plot = plan.ground.find((one) => one.plot === job.plot)?.name ?? null;
  event.addPropertyWithValue('uid', `${farm.about.id}/${job.id}`.replace(/[^\w./-]/g, '_').concat('@leywright'));
  event.addPropertyWithValue('dtstamp', ICAL.Time.fromDateTimeString(madeAt.replace(/\.\d+/, '')));
  event.addPropertyWithValue('dtstart', dayTime(job.from));
  event.addPropertyWithValue('dtend', dayTime(addDays(job.to, 1)));
  event.addPropertyWithValue(
    'summary',
    plot === null ? workWords.jobTitle(job) : `${plot}: ${workWords.jobTitle(job)}`,
  );
  if (plot !== null) event.addPropertyWithValue('location', plot);
  event.addPropertyWithValue('description', describe(job, hoursH));
  event.addPropertyWithValue('transp', 'TRANSPARENT');
  return event;
}

function describe(job: Job, hoursH: number): string {
  const lines = [
    workWords.jobAmount(job),
    `About ${workWords.jobHours(hoursH)}. May be done from ${job.window.from} to ${job.window.to}.`,
    workWords.jobHow(job),
    job.caution === null ? '' : `Mind: ${job.caution}.`,
  ];
  return lines.filter((line) => line !== '').join('\n');
}

function dayTime(day: Day): InstanceType<typeof ICAL.Time> {
  return ICAL.Time.fromDateString(day);
}
