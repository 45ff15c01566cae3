/** Why a plot's nitrogen balance of a year is what it is: every term with its ends, and what would narrow it. */

import type { Plot } from '@leywright/book';
import { type Interval, intervals } from '@leywright/measures';
import { plotCover } from '../ground/plot-cover.ts';
import { nitrogenInput, plotArea } from '../ground/plot-ground.ts';
import type { GroundSetting } from '../ground/stage.ts';
import type { Lever, Why, WhyInput } from '../plan/why.ts';
import { type NitrogenTerm, type NitrogenWay, nitrogenTerms } from '../soil/nitrogen-terms.ts';
import { doubtsOf, sumOf } from '../soil/nitrogen-year.ts';
import { ofFarm, ofPractice, ofTable, why, written } from './terms.ts';

const unit = 'kg/ha';

export function whyNitrogen(plot: Plot, year: number, setting: GroundSetting): Why | null {
  const input = nitrogenInput(plot, plotCover(plot.id, plot.kind === 'tunnel', setting), {
    setting,
    netM2: plotArea(plot, setting).netM2,
  });
  const terms = nitrogenTerms(input, year);
  if (terms.length === 0) return null;
  const [fixed, otherIn, offtake, lost] = (['fixed', 'other-in', 'offtake', 'lost'] as const).map((way) =>
    sumOf(terms, way),
  ) as [Interval, Interval, Interval, Interval];
  const left = intervals.subtractIntervals(
    intervals.addIntervals(fixed, otherIn),
    intervals.addIntervals(offtake, lost),
  );
  return why(`nitrogen/${plot.id}/${year}`, 'nitrogen', {
    figures: { plot: plot.id, year, lowKgHa: left.low, highKgHa: left.high },
    value: left.typ,
    low: left.low,
    high: left.high,
    unit,
    formula:
      'left = fixed + other inputs − off-take − lost; the low end takes low inputs with high losses, the high end the other way round',
    sum: [
      `low: ${written(fixed.low)} + ${written(otherIn.low)} − ${written(offtake.high)} − ${written(lost.high)} = ${written(left.low)}`,
      `high: ${written(fixed.high)} + ${written(otherIn.high)} − ${written(offtake.low)} − ${written(lost.low)} = ${written(left.high)}`,
    ].join('; '),
    inputs: terms.map(termInput),
    doubt: doubtsOf(terms, input),
    levers: leversOf(terms, left),
  });
}

const signOf: Readonly<Record<NitrogenWay, string>> = { fixed: '+', 'other-in': '+', offtake: '−', lost: '−' };

function termInput(term: NitrogenTerm): WhyInput {
  const name = `${signOf[term.way]} ${nameOf(term)}`;
  const amount = { name, value: `${written(term.kgHa.low)} to ${written(term.kgHa.high)}`, unit };
  const { plantId } = term;
  if (plantId !== null && (term.what === 'ley' || term.what === 'cover'))
    return ofTable(amount, 'covers', { row: plantId, column: 'n_high_kg_ha' });
  if (plantId !== null && (term.what === 'crop' || term.what === 'seed' || term.what === 'pulse'))
    return ofTable(amount, 'crops', { row: plantId, column: 'n_high_kg_t' });
  return term.stand === null
    ? ofPractice(amount, 'nitrogen/yearly-balance.ts')
    : ofFarm(amount, `history.csv, ${term.stand}`);
}

const termWords: Readonly<Record<string, string>> = {
  ley: 'fixed by',
  cover: 'fixed by',
  pulse: 'fixed by',
  seed: 'brought by seed of',
  crop: 'carried off with',
  deposition: 'from the air and rain',
  gas: 'lost as gas',
  'leached-ley': 'washed out under ley',
  'leached-cover': 'washed out under cover',
  'leached-late-crop': 'washed out under a late crop',
  'leached-bare': 'washed out of bare ground',
  'leached-ley-broken': 'washed out of bare ground after a ley',
};

function nameOf(term: NitrogenTerm): string {
  const share =
    term.areaShare >= 0.9995
      ? ''
      : `, ${written(100 * term.areaShare)} % of the ${term.what.startsWith('leached') ? 'winter' : 'plot'}`;
  return `${termWords[term.what] ?? term.what}${term.name === null ? '' : ` ${term.name}`}${share}`;
}

/** What it would be without the term that widens it most, and with no ground bare in winter. */
function leversOf(terms: readonly NitrogenTerm[], left: Interval): readonly Lever[] {
  const widest = terms.reduce((a, b) => (b.kgHa.high - b.kgHa.low > a.kgHa.high - a.kgHa.low ? b : a));
  const bare = terms.filter((term) => term.what === 'leached-bare' || term.what === 'leached-ley-broken');
  const saved = bare.reduce((sum, term) => sum + term.kgHa.typ - term.areaShare * coveredTypKgHa, 0);
  return [
    {
      change: `a measured figure for: ${nameOf(widest)}; the interval narrows to`,
      value: written(left.high - left.low - (widest.kgHa.high - widest.kgHa.low)),
      unit,
      result: left.typ,
    },
    ...(saved > 0 ? [{ change: 'no bare ground in winter', value: 0, unit: 'days', result: left.typ + saved }] : []),
  ];
}

const coveredTypKgHa = 22;
