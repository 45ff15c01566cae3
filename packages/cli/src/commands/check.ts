/** Findings only: everything to put right, to look at and to know, each with what could be done. */
import { roundForJson, type ToldFinding, tellFindings, voiceOf } from '@leywright/api';
import { type Finding, type Gravity, gravities, planFarm } from '@leywright/planner';
import { parseFarmWish } from '../arguments.ts';
import { openFarm, planWishOf } from '../farm/open-farm.ts';
import { type ExitCode, type Io, printJson, refuse } from '../io.ts';
import { wrapped } from '../tables/text-table.ts';

export async function checkCommand(args: readonly string[], io: Io): Promise<ExitCode> {
  const parsed = parseFarmWish(args, 1, io);
  if (parsed.kind === 'problems') return refuse(io, parsed.sentences);
  const { wish } = parsed;
  const opened = await openFarm({ ...wish, name: wish.words[0] }, io);
  if (typeof opened === 'number') return opened;
  const plan = planFarm(opened.farm, planWishOf(wish, opened));
  const told = tellFindings(plan, voiceOf(plan, opened.farm));
  if (wish.json) printJson(io, roundForJson(told));
  else io.out(findingsText(told.findings));
  return exitOf(plan.findings, wish.stopAt ?? 'put-right');
}

/** 1 when a finding is as grave as the limit, or graver. */
export function exitOf(findings: readonly Finding[], stopAt: Gravity | null): ExitCode {
  if (stopAt === null) return 0;
  return findings.some((finding) => gravities.indexOf(finding.gravity) <= gravities.indexOf(stopAt)) ? 1 : 0;
}

const heads: Readonly<Record<Gravity, string>> = {
  'put-right': 'To put right',
  look: 'Worth a look',
  note: 'Worth knowing',
};

export function findingsText(findings: readonly ToldFinding[]): string {
  if (findings.length === 0) return 'Nothing to put right.';
  const parts = gravities.flatMap((gravity) => {
    const these = findings.filter((finding) => finding.gravity === gravity);
    return these.length === 0 ? [] : [`${heads[gravity]} (${these.length})`, ...these.map(findingText), ''];
  });
  return parts.join('\n').trimEnd();
}

function findingText(finding: ToldFinding): string {
  const lines = [
    wrapped(`${finding.title}. ${finding.sentence}`, '  ').replace('  ', '• '),
    ...finding.mends.map((mend) => wrapped(mend, '      ').replace('      ', '    – ')),
  ];
  if (finding.reason !== null) lines.push(wrapped(`Accepted: ${finding.reason}`, '    '));
  return lines.join('\n');
}
