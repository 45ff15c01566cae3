/** Figures that sentences ask for and findings do not carry: the same numbers, parted by what can be said of them. */
import type { Finding, Mend } from '@leywright/planner';
import type { Figures } from './template.ts';

/** A finding's place and its figures under one roof (a figure of the same name wins, and a mend's over both), with those parted figures. */
export function figuresOf(
  { place, figures }: Pick<Finding, 'place' | 'figures'>,
  ruleWords: Readonly<Record<string, string>>,
  mend: Mend | null = null,
): Figures {
  const all = { ...place, ...figures, ...mend?.figures };
  return { ...all, ...ofRest(figures, ruleWords), ...ofWeeks(all) };
}

function ofRest(
  {
    rule = null,
    ruleName = null,
    gapYears = null,
    year = null,
    recordedDays = null,
    previousYear = null,
    needYears = null,
    earliestYear = null,
  }: Finding['figures'],
  ruleWords: Readonly<Record<string, string>>,
): Figures {
  // Another rest may bind for longer than the one that is told: then the year does not follow from this one's sum.
  const isByThisRule =
    typeof previousYear === 'number' && typeof needYears === 'number' && previousYear + needYears === earliestYear;
  return {
    ruleFirstYear: isByThisRule ? earliestYear : null,
    allFirstYear: isByThisRule ? null : earliestYear,
    ruleSaid: typeof rule === 'string' ? (ruleWords[rule] ?? ruleName) : ruleName,
    laterYears: typeof gapYears === 'number' && gapYears > 0 ? gapYears : null,
    sameYear: gapYears === 0 ? year : null,
    ownDays: typeof recordedDays === 'number' && recordedDays > 0 ? recordedDays : null,
  };
}

/** A run of one week is said as that week. */
function ofWeeks({ fromWeek = null, toWeek = null }: Figures): Figures {
  const isOne = fromWeek === toWeek;
  return { onlyWeek: isOne ? fromWeek : null, firstWeek: isOne ? null : fromWeek, lastWeek: isOne ? null : toWeek };
}
