/** The odds that the promise is kept, week by week. */
import { roundForJson } from '@leywright/api';
import { odds } from '@leywright/planner';
import { parseFarmWish } from '../arguments.ts';
import { openFarm, planWishOf } from '../farm/open-farm.ts';
import { type ExitCode, type Io, refuse } from '../io.ts';
import { oddsText } from '../tables/odds-tables.ts';
import { said } from '../words.ts';

export async function promiseCommand(args: readonly string[], io: Io): Promise<ExitCode> {
  const parsed = parseFarmWish(args, 1, io);
  if (parsed.kind === 'problems') return refuse(io, parsed.sentences);
  const { wish } = parsed;
  const opened = await openFarm({ ...wish, name: wish.words[0] }, io);
  if (typeof opened === 'number') return opened;
  const boxOdds = odds.farmOdds(opened.farm, planWishOf(wish, opened));
  if (boxOdds === null) return refuse(io, [said.noPromise]);
  io.out(wish.json ? JSON.stringify(roundForJson({ odds: boxOdds })) : oddsText(boxOdds));
  return 0;
}
