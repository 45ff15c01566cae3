/**
 * Whether a plot's nitrogen is drawn down, or cannot be told, over one turn of the rotation.
 *
 * Rule    The mean of the balances of as many years as the rotation has courses, from the year in focus or so much before it that they lie within the
 *         plan (without a rotation: of that year alone).
 *         A year that draws down is what a ley is for; a whole turn that does is worth a look. A mean whose sign is not known is noted.
 */
import type { Plot } from '@leywright/book';
import { finding, mend } from '../faults/say.ts';
import type { GroundSetting } from '../ground/stage.ts';
import type { Finding } from '../plan/finding.ts';
import type { NitrogenYear } from '../plan/soil.ts';

export function nitrogenFindings(
  years: readonly NitrogenYear[],
  { plot, setting }: { readonly plot: Plot; readonly setting: GroundSetting },
): readonly Finding[] {
  const turnYears = Math.max(1, setting.farm.rotation?.courses.length ?? 1);
  const first = firstOfTurn(turnYears, setting);
  const turn = years.filter((one) => one.year >= first && one.year < first + turnYears);
  // Part of a turn, without its ley, would always seem to draw down.
  if (plot.kind !== 'rotation' || turn.length < turnYears) return [];
  const low = turn.reduce((sum, one) => sum + one.leftKgHa.low, 0) / turn.length;
  const high = turn.reduce((sum, one) => sum + one.leftKgHa.high, 0) / turn.length;
  if (low >= 0) return [];
  const code = high < 0 ? 'nitrogen-drawn-down' : 'nitrogen-undecided';
  return [
    finding(code, {
      gravity: code === 'nitrogen-drawn-down' ? 'look' : 'note',
      place: { plot: plot.id, year: first },
      figures: {
        plot: plot.id,
        year: first,
        toYear: first + turnYears - 1,
        overYears: turnYears,
        lowKgHa: low,
        highKgHa: high,
      },
      mend:
        code === 'nitrogen-drawn-down'
          ? [mend('lengthen-ley', { plot: plot.id }), mend('undersow-more', { plot: plot.id })]
          : [mend('look-at-stands', { plot: plot.id })],
      why: `nitrogen/${plot.id}/${setting.year}`,
    }),
  ];
}

/** The year in focus, or the last from which a whole turn lies within the plan. */
function firstOfTurn(turnYears: number, { year, horizon }: GroundSetting): number {
  return Math.min(year, Math.max(horizon.fromYear, horizon.toYear - turnYears + 1));
}
