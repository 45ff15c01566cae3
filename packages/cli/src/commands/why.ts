/** Where one figure comes from: the sum, its inputs, its doubt, and what would change it. */
import { roundForJson, tellWhy, voiceOf } from '@leywright/api';
import { planFarm, type WhyInput, whyOf } from '@leywright/planner';
import { parseFarmWish } from '../arguments.ts';
import { openFarm, planWishOf } from '../farm/open-farm.ts';
import { type ExitCode, type Io, printJson, refuse } from '../io.ts';
import { textTable, wrapped } from '../tables/text-table.ts';
import { said } from '../words.ts';

export async function whyCommand(args: readonly string[], io: Io): Promise<ExitCode> {
  const parsed = parseFarmWish(args, 2, io);
  if (parsed.kind === 'problems') return refuse(io, parsed.sentences);
  const { wish } = parsed;
  const [name, figure] = wish.words;
  const opened = await openFarm({ ...wish, name }, io);
  if (typeof opened === 'number') return opened;
  if (figure === undefined) return refuse(io, [said.noFigure]);
  const why = whyOf(opened.farm, planWishOf(wish, opened), figure);
  if (why === null) return refuse(io, [said.noSuchFigure(figure)]);
  const plan = planFarm(opened.farm, planWishOf(wish, opened));
  const told = tellWhy(why, voiceOf(plan, opened.farm));
  if (wish.json) printJson(io, roundForJson(told));
  else io.out(whyText(told));
  return 0;
}

function whyText(told: ReturnType<typeof tellWhy>): string {
  const between = told.low === null || told.high === null ? '' : ` (${written(told.low)} to ${written(told.high)})`;
  const value = told.value === null ? 'not known' : `${written(told.value)} ${told.unit}${between}`;
  const parts = [
    `${told.titleWords}: ${value}`,
    '',
    wrapped(told.formula, '  '),
    wrapped(told.sum, '  '),
    '',
    inputsTable(told.inputs),
  ];
  if (told.doubtWords.length > 0) parts.push('', 'How sure', ...told.doubtWords.map((doubt) => wrapped(doubt, '  ')));
  if (told.levers.length > 0) {
    parts.push(
      '',
      'What would change it',
      ...told.levers.map((lever) =>
        wrapped(`${lever.change} ${written(lever.value)} ${lever.unit}: ${written(lever.result)} ${told.unit}`, '  '),
      ),
    );
  }
  return parts.join('\n');
}

function inputsTable(inputs: readonly WhyInput[]): string {
  const rows = inputs.map((input) => [
    input.name,
    input.value === null ? 'not known' : `${written(input.value)} ${input.unit}`.trim(),
    input.from,
    [input.where, input.source, input.howKnown].filter((part) => part !== null).join(', '),
  ]);
  return textTable(
    [{ head: 'Input' }, { head: 'Value', align: 'right' }, { head: 'From' }, { head: 'Where, source' }],
    rows,
  );
}

function written(value: number | string): string {
  return typeof value === 'string' ? value : String(Number(value.toPrecision(6)));
}
