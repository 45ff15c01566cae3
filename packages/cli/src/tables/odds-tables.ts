/** The odds for a terminal. */
import { mondayOf } from '@leywright/measures';
import type { BoxOdds, CountedOdds } from '@leywright/planner';
import { textTable, wrapped } from './text-table.ts';

export function oddsText(odds: BoxOdds): string {
  const { missedWeeks } = odds;
  const years = `${odds.samples} years drawn from seed ${odds.seed}`;
  return [
    wrapped(
      `Of ${odds.weeks.length} box weeks, ${one(missedWeeks.mid)} fall short in a middling year; in 8 years out of 10 between ` +
        `${one(missedWeeks.low)} and ${one(missedWeeks.high)} do. All are kept in ${percent(odds.allKept)} of years, all but two in ` +
        `${percent(odds.atMostTwoMissed)}. A week is kept when its boxes have 98 of 100 promised items.`,
    ),
    weeksTable(odds),
    wrapped(
      `Counted over ${years}: yields and warmth that go up and down together, stores that keep well or badly. ` +
        'What fails outright, frost, floods and pests are not in it. The spreads are the crop table’s, else assumed (docs/science/odds.md).',
    ),
  ].join('\n\n');
}

function weeksTable(odds: BoxOdds): string {
  const rows = odds.weeks.map((week) => [
    week.week,
    mondayOf(week.week),
    percentOf(week.keptShare),
    `${percentOf(week.lowShare)} to ${percentOf(week.highShare)}`,
    `${week.items.low.toFixed(1)} to ${week.items.high.toFixed(1)} of ${week.promised.toFixed(1)}`,
    week.heldUpBy.map((lack) => `${lack.slot} (${percentOf(lack.yearsShare)})`).join(', '),
  ]);
  return textTable(
    [
      { head: 'Week' },
      { head: 'Monday' },
      { head: 'Kept', align: 'right' },
      { head: 'Sure to', align: 'right' },
      { head: 'Items, 8 years of 10', align: 'right' },
      { head: 'Most often lacking' },
    ],
    rows,
  );
}

function percent({ keptShare }: CountedOdds): string {
  return percentOf(keptShare);
}

function percentOf(share: number): string {
  return `${Math.round(100 * share)} %`;
}

function one(count: number): string {
  return String(Math.round(count));
}
