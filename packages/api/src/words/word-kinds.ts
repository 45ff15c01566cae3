/** Kinds of words that are more than one sentence. */
import type { Plan } from '@leywright/planner';
import type { Voice } from './voice.ts';

export interface FindingWords {
  /** A few words for a list. */
  readonly title: string;
  /** What is so, with its figures. */
  readonly sentence: string;
  /** Why it matters or how it comes about. */
  readonly cause: string;
  /** What is done about it in general; a finding's own mends say it with names and days. */
  readonly remedy: string;
}

export const headlinePlaces = ['ground', 'boxes', 'day', 'work'] as const;
export type HeadlinePlace = (typeof headlinePlaces)[number];

/** The first sentence of each place. */
export type HeadlineWords = Readonly<Record<HeadlinePlace, (plan: Plan, voice: Voice) => string>>;
