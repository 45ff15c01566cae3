/** Why a winter counts as bare on a plot: the spells, their days inside the leaching season, and the limits that make a day bare. */

import type { Plot } from '@leywright/book';
import { dayNumber } from '@leywright/measures';
import { bareCounts, bareSpells } from '../cover/bare.ts';
import { commonDays } from '../cover/seasons.ts';
import { plotCover } from '../ground/plot-cover.ts';
import { bareSetting, plotArea } from '../ground/plot-ground.ts';
import type { GroundSetting } from '../ground/stage.ts';
import type { Why } from '../plan/why.ts';
import { ofConvention, ofSums, why, written } from './terms.ts';

export function whyBare(plot: Plot, winterYear: number, setting: GroundSetting): Why | null {
  const winter = setting.winters.find((one) => one.winter === winterYear);
  if (winter === undefined) return null;
  const { lanes } = plotCover(plot.id, plot.kind === 'tunnel', setting);
  const at = bareSetting(plot, plotArea(plot, setting).netM2, setting);
  const bareDays = bareCounts(lanes, at).find((one) => one.winter === winterYear)?.bareDays ?? null;
  if (bareDays === null) return null;
  const { bareCoverShare, bareWeeks, leachingFrom, leachingTo } = setting.farm.about.conventions;
  const spells = bareSpells(lanes, at)
    .map((spell) => ({ spell, days: commonDays(dayNumber(spell.from), dayNumber(spell.to), winter) }))
    .filter((one) => one.days > 0);
  return why(`bare/${plot.id}/${winterYear}`, 'bare', {
    figures: { plot: plot.id, winter: winterYear },
    value: bareDays,
    unit: 'days',
    formula:
      'bare days = sum over the plot’s lanes of share of width × days on which less than the bare limit is covered, inside the leaching season',
    sum:
      spells.length === 0
        ? `no spell of ${bareWeeks} weeks; ${written(bareDays)} days in shorter ones`
        : spells
            .map(
              ({ spell, days }) =>
                `${written(spell.span.toShare - spell.span.fromShare)} × ${days} (${spell.from} to ${spell.to})`,
            )
            .join(' + '),
    inputs: [
      ofConvention({ name: 'bare limit, share covered', value: bareCoverShare, unit: '' }, 'bare_cover_share'),
      ofConvention({ name: 'bare for at least', value: bareWeeks, unit: 'weeks' }, 'bare_weeks'),
      ofConvention({ name: 'leaching season from', value: leachingFrom, unit: '' }, 'leaching_from'),
      ofConvention({ name: 'to', value: leachingTo, unit: '' }, 'leaching_to'),
      ...spells.map(({ spell, days }) =>
        ofSums({ name: `bare after ${spell.before ?? 'nothing known'}`, value: days, unit: 'days' }),
      ),
    ],
    doubt: setting.climate.used.recordedDays === 0 ? ['climate-normals'] : [],
  });
}
