/** From codes to sentences: the one place where screen, command and HTTP get their words. */
import type { Problem } from '@leywright/book';
import type { Finding, Mend, Plan, Why } from '@leywright/planner';
import { figuresOf } from './derived.ts';
import { problemFrame } from './en-GB/problems.ts';
import { wordTables } from './tables.ts';
import { type Figures, fill, type Run, runsOf } from './template.ts';
import { plainVoice, type Voice } from './voice.ts';
import type { HeadlinePlace } from './word-kinds.ts';

/** A few words for a list: "A family back too soon". */
export function titleOf(finding: Pick<Finding, 'code'>, voice: Voice): string {
  return tablesOf(voice).findings[finding.code].title;
}

/** What is so, with its figures. */
export function sentenceOf(finding: Finding, voice: Voice): string {
  return sentenceRuns(finding, voice)
    .map((run) => run.text)
    .join('');
}

/** The same in runs, so that a screen can set the figures apart. */
export function sentenceRuns(finding: Finding, voice: Voice): readonly Run[] {
  return runsOf(
    tablesOf(voice).findings[finding.code].sentence,
    figuresOf(finding, tablesOf(voice).rules),
    tablesOf(voice).writeFigure(voice),
  );
}

/** Why it matters. */
export function causeOf(finding: Pick<Finding, 'code'>, voice: Voice): string {
  return tablesOf(voice).findings[finding.code].cause;
}

/** One thing that could be done about it. */
export function mendSentence(mend: Mend, finding: Finding, voice: Voice): string {
  const template = tablesOf(voice).mends[mend.code];
  if (template === undefined)
    throw new Error(`There are no words for the mend "${mend.code}". Add them to words/${voice.language}/mends.ts.`);
  return fill(template, figuresOf(finding, tablesOf(voice).rules, mend), tablesOf(voice).writeFigure(voice));
}

/** The first sentence of a place. */
export function headlineOf(plan: Plan, place: HeadlinePlace, voice: Voice): string {
  return tablesOf(voice).headlines[place](plan, voice);
}

/** What the derivation is of: "Net area of Far Ridding". */
export function whyTitle(why: Pick<Why, 'title' | 'figures'>, voice: Voice): string {
  const template = tablesOf(voice).whyTitles[why.title];
  return template === undefined ? why.title : fill(template, why.figures, tablesOf(voice).writeFigure(voice));
}

/** What makes a figure unsure. */
export function doubtSentence(code: string, voice: Voice): string {
  return tablesOf(voice).doubts[code] ?? code;
}

/** Where, what is wrong, and what would do: "plots.csv, line 3, crop: there is no "carot". Did you mean carrot?" */
export function problemSentence(problem: Problem, voice: Voice = plainVoice()): string {
  const tables = tablesOf(voice);
  const template = tables.problems[problem.code];
  if (template === undefined)
    throw new Error(
      `There are no words for the problem "${problem.code}". Add them to words/${voice.language}/problems.ts.`,
    );
  const write = tables.writeFigure(voice);
  const said = fill(template, { found: problem.found, ...problem.figures }, asIs);
  const line =
    problem.line === null ? null : fill(problemFrame.line, { line: problem.line }, write).toLocaleLowerCase('en');
  const place = [problem.file, line, problem.column].filter((part) => part !== null && part !== '').join(', ');
  return `${place === '' ? '' : `${place}: `}${said}${answerOf(problem)}`;
}

/** A name nearly right is asked back; of anything else, what would do is said. */
function answerOf({ code, nearest }: Problem): string {
  if (nearest.length === 0) return '';
  const frame =
    nearest.length > 1
      ? problemFrame.oneOf
      : code === 'unknown-name' || code.startsWith('unknown-')
        ? problemFrame.didYouMean
        : problemFrame.wouldDo;
  return ` ${fill(frame, { nearest: nearest.join(', ') }, asIs)}`;
}

/** Why a request or a command is not met. */
export function refusalSentence(code: string, figures: Figures, voice: Voice = plainVoice()): string {
  const template = tablesOf(voice).refusals[code];
  if (template === undefined)
    throw new Error(`There are no words for the refusal "${code}". Add them to words/${voice.language}/refusals.ts.`);
  return fill(template, figures, asIs);
}

/** What people wrote is quoted back as they wrote it. */
function asIs(_name: string, value: string | number | boolean): string {
  return String(value);
}

function tablesOf(voice: Voice) {
  return wordTables[voice.language];
}
