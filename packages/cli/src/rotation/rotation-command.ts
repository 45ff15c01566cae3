/** Proposes the rotation: proven best, or by how much it may not be, or what conflicts. Changes nothing. */
import { behindSentences, roundForJson, type ToldRotation, tellRotation } from '@leywright/api';
import { farmDay } from '@leywright/book';
import { rotations } from '@leywright/planner';
import { highsSolver } from '@leywright/server';
import { parseFarmWish } from '../arguments.ts';
import { exitOf } from '../commands/check.ts';
import { openFarm } from '../farm/open-farm.ts';
import { type ExitCode, type Io, printJson, refuse } from '../io.ts';
import { wrapped } from '../tables/text-table.ts';
import { parseRotationWish } from './arguments.ts';
import { rotationText } from './rotation-text.ts';

export async function rotationCommand(args: readonly string[], io: Io): Promise<ExitCode> {
  const own = parseRotationWish(args);
  const parsed = parseFarmWish(own.rest, 1, io);
  const sentences = [...own.sentences, ...(parsed.kind === 'problems' ? parsed.sentences : [])];
  if (parsed.kind === 'problems' || sentences.length > 0) return refuse(io, sentences);
  const { wish } = parsed;
  const opened = await openFarm({ ...wish, name: wish.words[0] }, io);
  if (typeof opened === 'number') return opened;
  const { farm } = opened;
  const unknown = own.unknownNames(farm);
  if (unknown.length > 0) return refuse(io, unknown);
  const today = farmDay(farm.about, wish.today, wish.isDaySaid);
  const solver = highsSolver();
  try {
    const ask = { timeLimitS: own.seconds, gapShare: own.gapShare };
    const answer = await rotations.proposeRotation(farm, { ...own.wish, today }, { ask, solver });
    const told = tellRotation(answer, { farm, today });
    const isExplained = own.isExplained && answer.kind === 'proposal';
    const behind = isExplained ? behindSentences(await rotations.behindProposal(answer, { ask, solver })) : [];
    if (wish.json) printJson(io, roundForJson(isExplained ? { ...told, behind } : told));
    else io.out([rotationText(told), ...behind.map((one) => wrapped(one))].join('\n\n'));
    return exitOfRotation(told, () => exitOf(answer.kind === 'proposal' ? answer.findings : [], wish.stopAt));
  } finally {
    await solver.close();
  }
}

function exitOfRotation(told: ToldRotation, ofFindings: () => ExitCode): ExitCode {
  if (told.kind === 'nothing-to-plan') return 2;
  return told.kind === 'no-plan' ? 1 : ofFindings();
}
