/** A week's packing: what each size gets, the pick list, what a box weighs. */
import { roundForJson } from '@leywright/api';
import { readIsoWeek, weekOf } from '@leywright/measures';
import { type PackWeek, packing, planFarm } from '@leywright/planner';
import { parseFarmWish } from '../arguments.ts';
import { openFarm, planWishOf } from '../farm/open-farm.ts';
import { type ExitCode, type Io, printJson, refuse } from '../io.ts';
import { textTable } from '../tables/text-table.ts';
import { said } from '../words.ts';

export async function weekCommand(args: readonly string[], io: Io): Promise<ExitCode> {
  const parsed = parseFarmWish(args, 2, io);
  if (parsed.kind === 'problems') return refuse(io, parsed.sentences);
  const { wish } = parsed;
  const [name, asked] = wish.words;
  const opened = await openFarm({ ...wish, name }, io);
  if (typeof opened === 'number') return opened;
  const planWish = planWishOf(wish, opened);
  const week = asked === undefined ? weekOf(planWish.today) : readIsoWeek(asked);
  const packed = week === null ? null : packing.packWeek(planFarm(opened.farm, planWish), opened.farm, week);
  if (packed === null) return refuse(io, [said.noWeek(asked ?? String(week))]);
  if (wish.json) printJson(io, roundForJson(packed));
  else io.out(weekText(packed));
  return packed.sizes.some((size) => size.isTooHeavy) ? 1 : 0;
}

const amount = (quantity: number, unit: string) => `${Math.round(quantity * 100) / 100} ${unit}`;

function weekText({ week, packOn, closed, boxes, sizes, picks }: PackWeek): string {
  if (closed !== null) return `${week}: no box this week.`;
  const lines = [...new Set(sizes.flatMap((size) => size.lines.map((line) => line.slot)))];
  const contents = textTable(
    [
      { head: 'In the box' },
      ...sizes.map((size) => ({ head: `${size.name} (${size.boxes})`, align: 'right' as const })),
    ],
    [
      ...lines.map((slot) => {
        const found = sizes.map((size) => size.lines.find((line) => line.slot === slot));
        return [
          found.find((line) => line !== undefined)?.name ?? slot,
          ...found.map((line) => (line === undefined ? '' : amount(line.portionQuantity, line.unit))),
        ];
      }),
      ['Weighs', ...sizes.map((size) => `${size.boxKg.toFixed(1)} kg${size.isTooHeavy ? ' TOO HEAVY' : ''}`)],
    ],
  );
  const pickList = textTable(
    [
      { head: 'Pick' },
      { head: 'From' },
      { head: 'Needed', align: 'right' },
      { head: 'To cut', align: 'right' },
      { head: 'kg', align: 'right' },
    ],
    picks.map((pick) => [
      pick.name,
      [pick.from, ...pick.plots].join(' '),
      amount(pick.neededQuantity, pick.unit),
      amount(pick.toCutQuantity, pick.unit),
      pick.toCutKg === null ? 'not known' : pick.toCutKg.toFixed(0),
    ]),
  );
  return [`${week}, packed on ${packOn}: ${boxes} boxes`, contents, pickList].join('\n\n');
}
