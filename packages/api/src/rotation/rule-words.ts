/** The rules of a rotation as a grower says them: for conflicts, and for why a course cannot stand where it was wished. */

import type { Apart, FarmProblem, Lifted, PlotRule } from '@leywright/planner';
import { ruleWords } from '../words/en-GB/rules.ts';

/** Courses, plots and years by the names the farm gives them. */
export interface RotationNames {
  readonly course: (id: string) => string;
  readonly plot: (id: string) => string;
}

export interface RuleOn {
  readonly asked: FarmProblem;
  readonly plot: string;
  readonly names: RotationNames;
}

/** One rule of a plot, as one sentence. */
export function ruleSentence(rule: PlotRule, on: RuleOn): string {
  const { names, asked } = on;
  switch (rule.kind) {
    case 'pin':
      return `${names.course(rule.course)} is to stand here in ${asked.firstYear + rule.year}.`;
    case 'never':
      return `${names.course(rule.course)} is never to stand here.`;
    case 'barred':
      return barredSentence(rule, on);
    case 'rest':
      return restSentence(rule, on);
    case 'follows':
      return `${names.course(rule.course)} goes on from ${list(rule.after.map(names.course))} alone.`;
    case 'followed-by':
      return `${names.course(rule.course)} is followed by ${names.course(rule.next)}.`;
    case 'since-ley':
      return `${names.course(rule.course)} stands at most ${years(rule.mostYears)} after the ley.`;
  }
}

/** What lifting a rule alone would free. */
export function liftedSentence({ isEnough, sequences }: Lifted): string {
  if (!isEnough) return 'Without it alone the others still conflict.';
  return sequences === 1
    ? 'Without it one order of courses is open.'
    : `Without it ${sequences.toLocaleString('en-GB')} orders of courses are open.`;
}

function barredSentence(rule: Extract<PlotRule, { kind: 'barred' }>, { asked, plot, names }: RuleOn): string {
  const because = asked.barred.get(plot)?.[rule.course]?.flatMap((one) => one.because) ?? [];
  const when = list(rule.years.map((year) => String(asked.firstYear + year)));
  return `${names.course(rule.course)} cannot stand here in ${when}. Why: ${reasons(because)}.`;
}

function restSentence(rule: Extract<PlotRule, { kind: 'rest' }>, { asked, plot, names }: RuleOn): string {
  const [pair] = asked.rules.pairsOf(plot, rule.organism);
  if (pair === undefined) return `${rule.organism}: ${years(rule.restYears)}.`;
  const later = names.course(pair.later);
  const earlier = pair.earlier === pair.later ? 'the same' : names.course(pair.earlier);
  return `${later} after ${earlier}: ${years(pair.needYears)} at the earliest. Why: ${reasons(pair.because)}.`;
}

function reasons(because: readonly Apart[]): string {
  const said = [...new Set(because.map(reason))];
  return said.length > 3 ? `${said.slice(0, 3).join('; ')}; and more` : said.join('; ');
}

function reason(apart: Apart): string {
  switch (apart.kind) {
    case 'rest':
      return `the rest of ${ruleWords[apart.rule] ?? apart.name}${apart.infested ? ', longer because it is recorded here' : ''}`;
    case 'overlap':
      return `${apart.earlier} still stands when ${apart.later} needs the ground`;
    case 'nothing-stands':
      return 'nothing stands there that it could go on with';
  }
}

function years(count: number): string {
  return count === 1 ? '1 year' : `${count} years`;
}

function list(words: readonly string[]): string {
  const last = words.at(-1) ?? '';
  return words.length < 2 ? last : `${words.slice(0, -1).join(', ')} and ${last}`;
}
