/** What every language brings: one table a kind of word, keyed by code. A missing code does not compile. */
import type { FindingCode } from '@leywright/planner';
import { writeFigure } from './en-GB/figures.ts';
import { bookFindingWords } from './en-GB/findings-book.ts';
import { groundFindingWords } from './en-GB/findings-ground.ts';
import { promiseFindingWords } from './en-GB/findings-promise.ts';
import { headlineWords } from './en-GB/headlines.ts';
import { mendWords } from './en-GB/mends.ts';
import { problemWords } from './en-GB/problems.ts';
import { refusalWords } from './en-GB/refusals.ts';
import { ruleWords } from './en-GB/rules.ts';
import { doubtWords, whyTitles } from './en-GB/whys.ts';
import type { Language } from './languages.ts';
import { peopleRefusalWords } from './people/en-GB.ts';
import type { WriteFigure } from './template.ts';
import type { Voice } from './voice.ts';
import type { FindingWords, HeadlineWords } from './word-kinds.ts';

export interface WordTables {
  readonly findings: Readonly<Record<FindingCode, FindingWords>>;
  readonly mends: Readonly<Record<string, string>>;
  readonly problems: Readonly<Record<string, string>>;
  /** Rests by the word growers use for their family or organism. */
  readonly rules: Readonly<Record<string, string>>;
  readonly refusals: Readonly<Record<string, string>>;
  readonly whyTitles: Readonly<Record<string, string>>;
  readonly doubts: Readonly<Record<string, string>>;
  readonly headlines: HeadlineWords;
  readonly writeFigure: (voice: Voice) => WriteFigure;
}

export const wordTables: Readonly<Record<Language, WordTables>> = {
  'en-GB': {
    findings: { ...groundFindingWords, ...promiseFindingWords, ...bookFindingWords },
    mends: mendWords,
    problems: problemWords,
    rules: ruleWords,
    refusals: { ...refusalWords, ...peopleRefusalWords },
    whyTitles,
    doubts: doubtWords,
    headlines: headlineWords,
    writeFigure,
  },
};
