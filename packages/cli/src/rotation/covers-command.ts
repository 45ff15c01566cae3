/** Which cover for every gap between stands, ranked, each with its reasons. */
import { roundForJson, speak, type ToldCovers, tellCovers } from '@leywright/api';
import { farmDay } from '@leywright/book';
import { yearOf } from '@leywright/measures';
import { rotations } from '@leywright/planner';
import { parseFarmWish } from '../arguments.ts';
import { openFarm } from '../farm/open-farm.ts';
import { type ExitCode, type Io, printJson, refuse } from '../io.ts';
import { wrapped } from '../tables/text-table.ts';

const shownChoices = 3;

export async function coversCommand(args: readonly string[], io: Io): Promise<ExitCode> {
  const parsed = parseFarmWish(args, 1, io);
  if (parsed.kind === 'problems') return refuse(io, parsed.sentences);
  const { wish } = parsed;
  const opened = await openFarm({ ...wish, name: wish.words[0] }, io);
  if (typeof opened === 'number') return opened;
  const { farm } = opened;
  const today = farmDay(farm.about, wish.today, wish.isDaySaid);
  const toYear = (wish.year ?? yearOf(today)) + 1;
  const told = tellCovers(rotations.coversForFarm(farm, { today, toYear }), { farm, today });
  if (wish.json) printJson(io, roundForJson(told));
  else io.out(coversText(told, (areaM2) => speak.area(areaM2, { shows: farm.about.shows })));
  return 0;
}

function coversText(told: ToldCovers, area: (areaM2: number) => string): string {
  const head = `${told.farm}, as of ${told.today}`;
  if (told.gaps.length === 0) return `${head}\n\nThere is no gap of three weeks or more.`;
  return [head, ...told.gaps.map((gap) => gapText(gap, area))].join('\n\n');
}

function gapText(gap: ToldCovers['gaps'][number], area: (areaM2: number) => string): string {
  const between = [gap.before, gap.after].map((one) => one ?? 'nothing planned').join(' and ');
  const head = wrapped(`${gap.name}, ${area(gap.areaM2)}, ${gap.from} to ${gap.to}, between ${between}`);
  if (gap.choices.length === 0) return `${head}\n  No cover of the table can be sown here.`;
  return [
    head,
    ...gap.choices
      .slice(0, shownChoices)
      .map((choice, at) =>
        wrapped(
          `${at + 1}. ${choice.name}${choice.isSound ? '' : ' (not sound here)'}. ${choice.reasons.join(' ')}`,
          '     ',
        ).replace('     ', '  '),
      ),
  ].join('\n');
}
