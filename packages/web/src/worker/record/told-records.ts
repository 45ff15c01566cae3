/** The last records of a farm as sentences, newest first. */
import { speak, type Voice, workWords } from '@leywright/api';
import type { Entry, EntryBody } from '@leywright/book';
import { addDays, type Day } from '@leywright/measures';
import type { Plan } from '@leywright/planner';
import { words } from '../../words.ts';
import type { FarmView } from '../plan-source.ts';
import { readOwnJob } from './bodies.ts';
import type { ToldRecord } from './wish.ts';

const DAYS_SHOWN = 14;
const said = words.record;

interface Teller {
  readonly plan: Plan;
  readonly voice: Voice;
  readonly amendments: ReadonlyMap<string, readonly Entry[]>;
  readonly waiting: ReadonlySet<string>;
}

export function toldRecords(
  entries: readonly Entry[],
  asked: { readonly plan: Plan; readonly voice: Voice; readonly waiting: ReadonlySet<string>; readonly today: Day },
): readonly ToldRecord[] {
  const amendments = new Map<string, Entry[]>();
  for (const entry of entries)
    if (entry.amends !== null) amendments.set(entry.amends, [...(amendments.get(entry.amends) ?? []), entry]);
  const teller: Teller = { ...asked, amendments };
  const since = addDays(asked.today, -DAYS_SHOWN);
  const told: ToldRecord[] = [];
  for (const entry of entries) {
    if (entry.amends !== null || entry.doneOn < since || !isRecord(entry.body)) continue;
    const record = tell(entry, teller);
    if (record === null) continue;
    const before = told.at(-1);
    // A job and what it brought in are entered at one moment by one device, and are one record to a person.
    if (before !== undefined && isTogether(before, record, entries)) told[told.length - 1] = together(before, record);
    else told.push(record);
  }
  return told.reverse();
}

function isRecord(body: EntryBody | null): body is EntryBody {
  return body !== null && ['harvest', 'job-done', 'observation', 'weighing'].includes(body.kind);
}

function isTogether(before: ToldRecord, record: ToldRecord, entries: readonly Entry[]): boolean {
  const find = (one: ToldRecord) => entries.find(({ id }) => id === one.entries[0]);
  const [a, b] = [find(before), find(record)];
  return a !== undefined && b !== undefined && a.device === b.device && a.enteredAt === b.enteredAt;
}

function together(job: ToldRecord, more: ToldRecord): ToldRecord {
  const sentence = job.sentence === more.sentence ? job.sentence : more.kg === null ? job.sentence : more.sentence;
  return {
    ...job,
    sentence,
    entries: [...job.entries, ...more.entries],
    kg: job.kg ?? more.kg,
    waits: job.waits || more.waits,
    plot: job.plot ?? more.plot,
    corrected: job.corrected ?? more.corrected,
    struckOut: job.struckOut || more.struckOut,
  };
}

function tell(entry: Entry, teller: Teller): ToldRecord | null {
  const holding = inForce(entry, teller);
  const { body } = holding.entry;
  if (body === null) return null;
  return {
    entries: [entry.id],
    sentence: sentenceOf(body, teller),
    doneOn: holding.entry.doneOn,
    doneAt: holding.entry.doneAt,
    waits: teller.waiting.has(entry.id),
    plot: 'plot' in body ? body.plot : null,
    kg: body.kind === 'harvest' ? body.grossKg : body.kind === 'weighing' ? body.kg : null,
    corrected: holding.reason,
    struckOut: holding.struckOut,
  };
}

/** The version to show: the last correction, when there are no rivals. */
function inForce(
  entry: Entry,
  teller: Teller,
): { readonly entry: Entry; readonly reason: string | null; readonly struckOut: boolean } {
  const [amendment, ...rivals] = teller.amendments.get(entry.id) ?? [];
  if (amendment === undefined || rivals.length > 0) return { entry, reason: null, struckOut: false };
  if (amendment.body?.kind === 'struck-out') return { entry, reason: amendment.reason, struckOut: true };
  const later = inForce(amendment, teller);
  return { ...later, reason: later.reason ?? amendment.reason };
}

function sentenceOf(body: EntryBody, { plan, voice }: Teller): string {
  const plant = (id: string) => speak.plant(voice.names.plants.get(id) ?? id, voice);
  const at = (plot: string | null) => (plot === null ? '' : ` ${said.on} ${letterOf(plot, plan)}`);
  switch (body.kind) {
    case 'harvest':
      return `${said.lifted} ${body.grossKg === null ? '' : `${speak.mass(body.grossKg, voice)} ${said.of} `}${plant(body.crop)}${at(body.plot)}`;
    case 'weighing':
      return `${said.weighed} ${speak.mass(body.kg, voice)} ${said.of} ${plant(body.crop)}`;
    case 'observation': {
      const counted = body.count === null ? '' : ` ${said.onCount(body.count, body.of)}`;
      const crop = body.crop === undefined ? '' : ` ${said.in} ${plant(body.crop)}`;
      return `${said.saw} ${body.what}${counted}${crop}${at(body.plot)}${body.words === null ? '' : `: ${body.words}`}`;
    }
    case 'job-done':
      return jobSentence(body.job, { plan, plant, at });
    default:
      return '';
  }
}

interface Words {
  readonly plan: Plan;
  readonly plant: (id: string) => string;
  readonly at: (plot: string | null) => string;
}

function jobSentence(id: string, { plan, plant, at }: Words): string {
  const own = readOwnJob(id);
  if (own !== null) {
    const verb = said.verbs[own.verb as keyof typeof said.verbs] ?? said.verbs.other;
    return `${verb}${own.crop === null ? '' : ` ${plant(own.crop)}`}${at(own.plot)}${own.words === null ? '' : `: ${own.words}`}`;
  }
  const job = plan.work.jobs.find((one) => one.id === id);
  return job === undefined ? said.jobDone : `${said.done} ${lowerFirst(workWords.jobTitle(job))}${at(job.plot)}`;
}

function lowerFirst(text: string): string {
  return text.charAt(0).toLocaleLowerCase('en') + text.slice(1);
}

function letterOf(plot: string, plan: Plan): string {
  return plan.ground.find((one) => one.plot === plot)?.letter ?? plot;
}

const KINDS_SHOWN = 60;

/** What was seen in each crop, the latest first, each once. */
export function seenBefore(entries: readonly Entry[]): FarmView['seenBefore'] {
  const seen = new Map<string, FarmView['seenBefore'][number]>();
  for (let at = entries.length - 1; at >= 0 && seen.size < KINDS_SHOWN; at -= 1) {
    const body = entries[at]?.body;
    if (body?.kind !== 'observation' || body.seen === undefined) continue;
    const crop = body.crop ?? null;
    const key = `${crop} ${body.what}`;
    if (!seen.has(key)) seen.set(key, { what: body.what, crop });
  }
  return [...seen.values()];
}
