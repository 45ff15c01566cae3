/** Figures that sentences ask for and findings do not carry: the same numbers, parted by what can be said of them. */
import type { Finding } from '@leywright/planner';
import type { Figures } from './template.ts';

/** A finding's place and its figures under one roof (a figure of the same name wins), with those parted figures. */
export function figuresOf(
  { place, figures }: Pick<Finding, 'place' | 'figures'>,
  ruleWords: Readonly<Record<string, string>>,
): Figures {
  const { rule = null, ruleName = null, gapYears = null, year = null, recordedDays = null } = figures;
  return {
    ...place,
    ...figures,
    ruleSaid: typeof rule === 'string' ? (ruleWords[rule] ?? ruleName) : ruleName,
    laterYears: typeof gapYears === 'number' && gapYears > 0 ? gapYears : null,
    sameYear: gapYears === 0 ? year : null,
    ownDays: typeof recordedDays === 'number' && recordedDays > 0 ? recordedDays : null,
  };
}
