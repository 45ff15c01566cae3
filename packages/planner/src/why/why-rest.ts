/** Why a stand may, or may not yet, stand where it is to: the earlier host, the years it occupied, the rest asked for and by whom. */
import { reference } from '@leywright/agronomy';
import { restGround } from '../ground/plot-ground.ts';
import type { GroundSetting } from '../ground/stage.ts';
import type { Visit } from '../plan/ground.ts';
import type { Why, WhyInput } from '../plan/why.ts';
import { visitOf } from '../rests/visits.ts';
import { ofConvention, ofFarm, ofSums, ofTable, why } from './terms.ts';

export function whyRest(standId: string, ruleId: string, setting: GroundSetting): Why | null {
  const found = setting.farm.plots.flatMap((plot) => setting.standsOf(plot.id)).find((one) => one.stand.id === standId);
  if (found === undefined) return null;
  const visit = visitOf(found, ruleId, restGround(setting));
  if (visit === null) return null;
  const { restSeasonFrom, restSeasonTo } = setting.farm.about.conventions;
  return why(visit.why, 'rest', {
    figures: {
      stand: visit.stand,
      plot: visit.plot,
      rule: visit.rule,
      ruleName: visit.ruleName,
      year: visit.year,
      previous: visit.previous,
      previousName: visit.previousName,
      previousYear: visit.previousYear,
      gapYears: visit.gapYears,
      needYears: visit.needYears,
      earliestYear: visit.earliestYear,
      kept: visit.kept ? 1 : 0,
    },
    value: visit.gapYears,
    unit: visit.gapYears === 1 ? 'year' : 'years',
    formula:
      'years between = year of the planting − last year the earlier host occupied; first lawful year = that year + rest',
    sum: `${visit.year} − ${visit.previousYear} = ${visit.gapYears}; ${visit.previousYear} + ${visit.needYears} = ${visit.earliestYear}`,
    inputs: [
      ofSums({ name: 'year of the planting', value: visit.year, unit: '' }),
      ofSums({ name: `last year ${visit.previousName} occupied`, value: visit.previousYear, unit: '' }),
      restInput(visit),
      ofConvention(
        { name: 'a year counts when a stand is there on any day from', value: restSeasonFrom, unit: '' },
        'rest_season_from',
      ),
      ofConvention({ name: 'to', value: restSeasonTo, unit: '' }, 'rest_season_to'),
      ofSums({ name: 'share of this ground that carried it', value: visit.sharedShare, unit: '' }),
    ],
    doubt: visit.infested ? ['organism-recorded-here'] : [],
    levers: visit.kept
      ? []
      : [{ change: 'planting year', value: visit.earliestYear, unit: '', result: visit.needYears }],
  });
}

function restInput(visit: Visit): WhyInput {
  const amount = {
    name: visit.infested ? 'rest where the organism is recorded' : 'rest',
    value: visit.needYears,
    unit: 'years',
  };
  if (!reference.intervals.has(visit.rule) || visit.scope === 'own')
    return ofFarm(amount, `rests.csv, ${visit.rule}, years`);
  return ofTable(amount, 'intervals', {
    row: visit.rule,
    column: visit.infested ? 'return_years_infested_low' : 'return_years_min',
  });
}
