/** Seed, sets and tubers to order; `--to` writes the sheet as CSV or XLSX. */
import { roundForJson, workWords } from '@leywright/api';
import { orders, planFarm } from '@leywright/planner';
import { loadSheets } from '@leywright/server';
import { parseFarmWish } from '../arguments.ts';
import { openFarm, planWishOf } from '../farm/open-farm.ts';
import { type ExitCode, type Io, refuse } from '../io.ts';
import { textTable } from '../tables/text-table.ts';
import { said } from '../words.ts';
import { writeNew } from './day.ts';

export async function orderCommand(args: readonly string[], io: Io): Promise<ExitCode> {
  const parsed = parseFarmWish(args, 1, io);
  if (parsed.kind === 'problems') return refuse(io, parsed.sentences);
  const { wish } = parsed;
  if (wish.to !== null && !/\.(csv|xlsx)$/.test(wish.to)) return refuse(io, [said.sheetEnding(wish.to)]);
  const opened = await openFarm({ ...wish, name: wish.words[0] }, io);
  if (typeof opened === 'number') return opened;
  const plan = planFarm(opened.farm, planWishOf(wish, opened));
  if (wish.to !== null) {
    const sheets = await loadSheets();
    const rows = orders.orderSheet(orders.seedOrders(opened.farm, plan));
    const content = wish.to.endsWith('.csv') ? sheets.ordersCsv(rows) : await sheets.ordersXlsx(rows);
    return writeNew(wish.to, content, io);
  }
  const told = workWords.tellOrders(opened.farm, plan);
  io.out(wish.json ? JSON.stringify(roundForJson(told)) : textOf(told));
  return 0;
}

type Told = ReturnType<typeof workWords.tellOrders>;

function rightWords(order: Told['orders'][number], term: string): string {
  const words: Readonly<Record<typeof order.right, string>> = {
    organic: 'organic',
    'in-conversion': 'in conversion',
    granted: `${term} granted`,
    ask: `ask for a ${term} by ${order.askBy}`,
    refused: `the ${term} does not cover ${order.firstUseOn}`,
    'not-known': 'no offer written down',
    'not-to-be-had': 'sold out',
    'nothing-to-buy': 'in hand',
  };
  return words[order.right];
}

function textOf(told: Told): string {
  const rows = told.orders.map((order) => [
    `${order.name}${order.variety === null ? '' : `, ${order.variety}`}`,
    order.firstUseOn,
    order.buyKg === null ? '' : grams(order.buyKg),
    order.buySeeds === null ? '' : Math.ceil(order.buySeeds).toLocaleString('en-GB'),
    order.packs === null ? '' : String(order.packs),
    rightWords(order, told.term),
  ]);
  const right = 'right' as const;
  const table = textTable(
    [
      { head: `To order for ${told.year}` },
      { head: 'First use' },
      { head: 'Mass', align: right },
      { head: 'Seeds', align: right },
      { head: 'Packs', align: right },
      { head: 'By which right' },
    ],
    rows,
  );
  const { plants } = told;
  const fullest =
    plants.fullest === null
      ? ''
      : `\nThe bench is fullest in ${plants.fullest.week}: ${plants.fullest.trays} trays, ${plants.fullest.benchM2.toFixed(1)} m².`;
  return `${table}\n\n${plants.trays} trays, ${Math.round(plants.mixL)} litres of mix, ${Math.round(plants.seedbedM)} m of seedbed.${fullest}`;
}

function grams(massKg: number): string {
  return massKg < 1 ? `${Math.ceil(massKg * 1000)} g` : `${massKg.toFixed(1)} kg`;
}
