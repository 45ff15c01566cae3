/** The year's work: hours against hands, what levelling moves, who does what. */
import { roundForJson, speak, workWords } from '@leywright/api';
import { planFarm } from '@leywright/planner';
import { parseFarmWish } from '../arguments.ts';
import { openFarm, planWishOf } from '../farm/open-farm.ts';
import { type ExitCode, type Io, refuse } from '../io.ts';
import { textTable, wrapped } from '../tables/text-table.ts';

const right = 'right' as const;
const shownMoves = 20;

export async function workCommand(args: readonly string[], io: Io): Promise<ExitCode> {
  const parsed = parseFarmWish(args, 1, io);
  if (parsed.kind === 'problems') return refuse(io, parsed.sentences);
  const { wish } = parsed;
  const opened = await openFarm({ ...wish, name: wish.words[0] }, io);
  if (typeof opened === 'number') return opened;
  const told = workWords.tellWork(opened.farm, planFarm(opened.farm, planWishOf(wish, opened)));
  if (wish.json) {
    io.out(JSON.stringify(roundForJson(told)));
    return 0;
  }
  const parts = [
    wrapped(
      `${told.farm}, ${told.year}: ${Math.round(told.yearH)} hours. Over the hands there are: ${Math.round(told.overBeforeH)} hours, ${Math.round(told.overAfterH)} after moving what may move.`,
    ),
    weeksTable(told),
    movesTable(told),
    stuckTable(told),
    ...(['person', 'kind'] as const).map((by) => sumsTable(told, by)),
  ];
  io.out(parts.filter((part) => part !== null).join('\n\n'));
  return 0;
}

type Told = ReturnType<typeof workWords.tellWork>;

function weeksTable({ weeks }: Told): string {
  const rows = weeks
    .filter((week) => week.hours.typ > 0)
    .map((week) => [
      speak.weekStart(week.week),
      ...[week.hours.low, week.hours.typ, week.hours.high].map((hours) => String(Math.round(hours))),
      week.handsH === null ? 'not known' : String(Math.round(week.handsH)),
      String(Math.round(week.levelledH)),
    ]);
  const heads = ['Hours, low', 'typical', 'high', 'Hands have', 'Levelled'];
  return textTable([{ head: 'Week' }, ...heads.map((head) => ({ head, align: right }))], rows);
}

function movesTable({ moved }: Told): string | null {
  if (moved.length === 0) return null;
  const rows = moved.slice(0, shownMoves).map((one) => [one.title, one.from, one.to, String(Math.round(one.hoursH))]);
  const more = moved.length > shownMoves ? `\n… and ${moved.length - shownMoves} more.` : '';
  return `${textTable([{ head: 'Moved' }, { head: 'from' }, { head: 'to' }, { head: 'Hours', align: right }], rows)}${more}`;
}

const whyWords = {
  days: 'its days are in this week alone',
  order: 'what comes before or after it holds it',
  'no-room': 'no week it may go to has room',
} as const;

function stuckTable({ stuck }: Told): string | null {
  if (stuck.length === 0) return null;
  const rows = stuck.map((one) => [one.title, one.week, whyWords[one.why]]);
  return textTable([{ head: 'Cannot move' }, { head: 'Week' }, { head: 'Why' }], rows);
}

function sumsTable({ hoursBy }: Told, by: 'person' | 'kind'): string {
  const rows = Object.entries(hoursBy[by] ?? {})
    .toSorted(([, a], [, b]) => b - a)
    .map(([key, hours]) => [key === '' ? 'nobody' : key, String(Math.round(hours))]);
  return textTable([{ head: by === 'person' ? 'Person' : 'Job' }, { head: 'Hours', align: right }], rows);
}
