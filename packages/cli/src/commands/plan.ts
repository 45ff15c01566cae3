/** The whole chain of a farm: ground, promise, stores, boxes, work and findings. */
import { headlineOf, roundForJson, tellFindings, voiceOf } from '@leywright/api';
import { planFarm } from '@leywright/planner';
import { parseFarmWish } from '../arguments.ts';
import { openFarm, planWishOf } from '../farm/open-farm.ts';
import { type ExitCode, type Io, refuse } from '../io.ts';
import {
  boxesTable,
  climateLine,
  groundTable,
  needsTable,
  nitrogenTable,
  reachLine,
  storesTable,
  workTable,
} from '../tables/plan-tables.ts';
import { wrapped } from '../tables/text-table.ts';
import { exitOf, findingsText } from './check.ts';

export async function planCommand(args: readonly string[], io: Io): Promise<ExitCode> {
  const parsed = parseFarmWish(args, 1, io);
  if (parsed.kind === 'problems') return refuse(io, parsed.sentences);
  const { wish } = parsed;
  const opened = await openFarm({ ...wish, name: wish.words[0] }, io);
  if (typeof opened === 'number') return opened;
  const plan = planFarm(opened.farm, planWishOf(wish, opened));
  if (wish.json) io.out(JSON.stringify(roundForJson(plan)));
  else {
    const voice = voiceOf(plan, opened.farm);
    const told = tellFindings(plan, voice);
    const head = `${plan.farm.name}${plan.farm.sample ? ' (sample farm, invented)' : ''}, ${plan.year}, as of ${plan.today}`;
    const parts = [
      head,
      wrapped(headlineOf(plan, 'ground', voice)),
      climateLine(plan),
      groundTable(plan, voice),
      nitrogenTable(plan),
      needsTable(plan, voice),
      reachLine(plan),
      storesTable(plan, voice),
      boxesTable(plan),
      workTable(plan),
      findingsText(told.findings),
    ];
    io.out(parts.filter((part) => part !== null).join('\n\n'));
  }
  return exitOf(plan.findings, wish.stopAt);
}
