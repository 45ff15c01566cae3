/** What is to be done this week, in the order of the walk; as a sheet for the shed, or as a calendar file. */
import { writeFile } from 'node:fs/promises';
import { roundForJson, speak, workWords } from '@leywright/api';
import { nearest } from '@leywright/book';
import { planFarm } from '@leywright/planner';
import { loadSheets } from '@leywright/server';
import { parseFarmWish } from '../arguments.ts';
import { openFarm, planWishOf } from '../farm/open-farm.ts';
import { type ExitCode, type Io, refuse } from '../io.ts';
import { textTable, wrapped } from '../tables/text-table.ts';
import { said } from '../words.ts';

export async function dayCommand(args: readonly string[], io: Io): Promise<ExitCode> {
  const parsed = parseFarmWish(args, 1, io);
  if (parsed.kind === 'problems') return refuse(io, parsed.sentences);
  const { wish } = parsed;
  const opened = await openFarm({ ...wish, name: wish.words[0] }, io);
  if (typeof opened === 'number') return opened;
  const ids = opened.farm.people.map((one) => one.id as string);
  if (wish.person !== null && !ids.includes(wish.person))
    return refuse(io, [said.noPerson(wish.person, nearest(wish.person, ids)[0] ?? null)]);
  const plan = planFarm(opened.farm, planWishOf(wish, opened));
  if (wish.to !== null) {
    const { calendarFeed } = await loadSheets();
    const feed = calendarFeed(opened.farm, plan, { madeAt: `${plan.today}T00:00:00Z`, person: wish.person });
    return writeNew(wish.to, feed, io);
  }
  const told = workWords.tellDay(opened.farm, plan, wish.person);
  io.out(wish.json ? JSON.stringify(roundForJson(told)) : sheetOf(told, plan.year));
  return 0;
}

/** A new file; nothing is ever written over. */
export async function writeNew(path: string, content: string | Uint8Array, io: Io): Promise<ExitCode> {
  try {
    await writeFile(path, content, { flag: 'wx' });
  } catch (error) {
    return refuse(io, [said.cannotWrite(path, error instanceof Error ? error.message : String(error))]);
  }
  io.out(path);
  return 0;
}

function sheetOf(told: ReturnType<typeof workWords.tellDay>, year: number): string {
  const head = `${told.farm}, ${speak.day(told.today, { year })}. This week: ${workWords.jobHours(told.hoursH)}${told.person === null ? '' : ` for ${told.person}`}.`;
  const rows = told.jobs.map((job) => [
    job.letter ?? '',
    `${job.title}${job.isLate ? ' (late)' : ''}`,
    job.amount,
    job.by,
    workWords.jobHours(job.hoursH),
  ]);
  const columns = [
    { head: 'Plot' },
    { head: 'Job' },
    { head: 'How much' },
    { head: 'By' },
    { head: 'Hours', align: 'right' as const },
  ];
  const sown = told.sownToday.map(
    (one) =>
      `Sown today: ${one.name}, ${one.trays === null ? `${Math.ceil(one.seedbedM ?? 0)} m of seedbed` : `${one.trays} trays of ${one.cellsPerTray}`}.`,
  );
  return [wrapped(head), textTable(columns, rows), ...sown].join('\n\n');
}
