/** Why phosphate, potash, lime, humus and carbon of a plot are what they are: each term, its source, and what would narrow it. */
import { minerals } from '@leywright/agronomy';
import type { Plot } from '@leywright/book';
import { intervals } from '@leywright/measures';
import { classOf, lastPh, limeAccount } from '../fertility/acidity.ts';
import { carbonAccount, lastOrganic, topsoil } from '../fertility/carbon-stock.ts';
import { humusAccount, humusTerms } from '../fertility/humus.ts';
import {
  type AccountedNutrient,
  harvestOfftakeKgHa,
  idOf,
  meanOfftakeKgHa,
  nutrientAccount,
} from '../fertility/nutrients.ts';
import { plantCarbon } from '../fertility/plant-carbon.ts';
import { type FertilityInputs, fertilityInputs } from '../fertility/plot-fertility.ts';
import { plotCover } from '../ground/plot-cover.ts';
import { nitrogenInput, plotArea } from '../ground/plot-ground.ts';
import type { GroundSetting } from '../ground/stage.ts';
import type { Why, WhyInput } from '../plan/why.ts';
import { ofFarm, ofPractice, ofSums, ofTable, why, written } from './terms.ts';

type Deriver = (plot: Plot, of: FertilityInputs) => Why | null;

/** A derivation of a plot's fertility by the first word of its id; null where the plot has no such figure. */
export function whyFertility(word: FertilityWord, plot: Plot, setting: GroundSetting): Why | null {
  const covered = plotCover(plot.id, plot.kind === 'tunnel', setting);
  const input = nitrogenInput(plot, covered, { setting, netM2: plotArea(plot, setting).netM2 });
  return derivers[word](plot, fertilityInputs(plot, input, setting));
}

export const fertilityWords = ['phosphate', 'potash', 'lime', 'humus', 'carbon'] as const;
export type FertilityWord = (typeof fertilityWords)[number];

const derivers: Readonly<Record<FertilityWord, Deriver>> = {
  phosphate: (plot, of) => whyNutrient('phosphorus', plot, of),
  potash: (plot, of) => whyNutrient('potassium', plot, of),
  lime: whyLime,
  humus: whyHumus,
  carbon: whyCarbon,
};

const oxideName = { phosphorus: 'P2O5', potassium: 'K2O' } as const;
const oxideColumn = { phosphorus: 'p2o5_kg_t', potassium: 'k2o_kg_t' } as const;

function whyNutrient(nutrient: AccountedNutrient, plot: Plot, { record }: FertilityInputs): Why {
  const account = nutrientAccount(nutrient, record);
  const mean = meanOfftakeKgHa(nutrient, record);
  const unit = `kg ${oxideName[nutrient]}/ha a year`;
  const taken = record.harvests.map((harvest) => {
    const kg = harvestOfftakeKgHa(harvest, nutrient);
    return ofTable(
      { name: `− ${harvest.name}, ${harvest.year}`, value: span(kg), unit: `kg ${oxideName[nutrient]}/ha` },
      'crops',
      { row: harvest.cropId, column: oxideColumn[nutrient] },
    );
  });
  const samples = account.samples.map((one) =>
    ofFarm(
      { name: `sample of ${one.takenOn}, index ${one.index ?? 'not known'}`, value: one.amountMgL, unit: 'mg/l' },
      `soil.csv, ${plot.id}`,
    ),
  );
  const { slopeSampledMgLPerYear: line, slopeReckonedMgLPerYear: reckoned } = account;
  return why(`${idOf[nutrient]}/${plot.id}`, idOf[nutrient], {
    figures: { plot: plot.id },
    value: mean.typ,
    low: mean.low,
    high: mean.high,
    unit,
    formula: `leaves a year = sum of (yield × ${oxideName[nutrient]} in a tonne × share of the plot) ÷ years; as the element × ${minerals.oxides.elementShare[nutrient === 'phosphorus' ? 'p' : 'k']}`,
    sum: `${record.harvests.length} harvests ÷ ${record.years} years = ${span(mean)}`,
    inputs: [
      ...taken,
      ...samples,
      ofSums({ name: 'the samples’ own slope', value: line === null ? null : span(line), unit: 'mg/l a year' }),
      ofPractice(
        { name: 'slope of the off-take alone', value: span(reckoned), unit: 'mg/l a year' },
        'minerals/soil-trend.ts',
      ),
      ofPractice(
        { name: `index to hold, ${account.targetIndex}, begins at`, value: account.targetMgL, unit: 'mg/l' },
        'minerals/soil-index.ts',
      ),
    ],
    doubt: account.doubt,
    levers: [
      {
        change: 'a sample every four years, by the same laboratory and method',
        value: 4,
        unit: 'years',
        result: mean.typ,
      },
    ],
  });
}

function whyLime(plot: Plot, { acid }: FertilityInputs): Why | null {
  const account = limeAccount(acid);
  const sample = lastPh(acid.samples);
  if (account === null || sample === null) return null;
  const ground = classOf(acid);
  const need = account.needTHa;
  const factor = ground === null ? null : minerals.lime.limeFactorTPh[ground.lime].arable;
  return why(`lime/${plot.id}`, 'lime', {
    figures: { plot: plot.id },
    value: need?.typ ?? null,
    low: need?.low ?? null,
    high: need?.high ?? null,
    unit: 't ground limestone/ha',
    formula: 'need = (pH wanted − pH measured) × factor of the soil, never under 0; doubt: a field’s pH ± 0.2',
    sum:
      factor === null
        ? 'the soil of this plot is not known'
        : `(${written(account.targetPh)} − ${written(sample.ph)}) × ${written(factor)} = ${written(need?.typ ?? 0)}`,
    inputs: [
      ofFarm({ name: 'pH measured', value: sample.ph, unit: '' }, `soil.csv, ${plot.id}, ${sample.takenOn}`),
      ofPractice({ name: 'pH wanted', value: account.targetPh, unit: '' }, 'minerals/lime.ts'),
      ofPractice(
        { name: `factor of ${ground?.lime ?? 'an unknown soil'}`, value: factor, unit: 't/ha for each pH' },
        'minerals/lime.ts',
      ),
      ofSums({ name: 'pH by now, no lime given', value: span(account.phNow), unit: '' }),
    ],
    doubt: account.doubt,
    levers: [
      { change: 'a material of neutralising value', value: 50, unit: '%', result: ((need?.typ ?? 0) * 54) / 50 },
    ],
  });
}

function whyHumus(plot: Plot, { humus }: FertilityInputs): Why | null {
  const account = humusAccount(humus);
  if (account === null) return null;
  const terms = humusTerms(humus);
  const years = humus.years.toYear - humus.years.fromYear + 1;
  return why(`humus/${plot.id}`, 'humus', {
    figures: { plot: plot.id },
    value: account.balanceKgCHa,
    unit: 'kg humus carbon/ha a year',
    formula: 'balance = sum of (figure of the use × share of the plot) ÷ years; an index, not a forecast',
    sum: `${terms.length} stands ÷ ${years} years = ${written(account.balanceKgCHa)}; wanted ${written(account.aimKgCHa.low)} to ${written(account.aimKgCHa.high)}`,
    inputs: terms.map((term): WhyInput => {
      const amount = {
        name: `${term.name}, ${term.year}, ${written(100 * term.areaShare)} % of the plot`,
        value: term.kgCHa,
        unit: 'kg C/ha',
      };
      return term.use === null
        ? { ...amount, value: null, from: 'reference', where: null, source: null, howKnown: null, why: null }
        : ofTable(amount, 'science/humus-demand-kgC-ha-a', { row: term.use, column: 'kg_humusC_per_ha_a' });
    }),
    doubt: account.doubt,
  });
}

function whyCarbon(plot: Plot, { carbon }: FertilityInputs): Why | null {
  const account = carbon === null ? null : carbonAccount(carbon);
  const sample = carbon === null ? null : lastOrganic(carbon.samples);
  const last = account?.years.at(-1);
  if (carbon === null || account === null || sample === null || last === undefined) return null;
  const brought = plantCarbon(carbon.stands).reduce(
    (sum, one) => intervals.addIntervals(sum, one.carbonTHa),
    intervals.exactly(0),
  );
  return why(`carbon/${plot.id}`, 'carbon', {
    figures: { plot: plot.id, year: last.year },
    value: last.stockTHa.typ,
    low: last.stockTHa.low,
    high: last.stockTHa.high,
    unit: `t carbon/ha to ${topsoil.depthCm} cm`,
    formula:
      'RothC-26.3, month by month: each pool goes on by exp(−rate × warmth × dryness × cover ÷ 12); what plants leave is added at the month’s end',
    sum: `${written(account.stockTHa)} on ${sample.takenOn} → ${written(last.stockTHa.typ)} at the end of ${last.year}`,
    inputs: [
      ofFarm(
        { name: 'organic matter', value: sample.organicMatterPct, unit: '%' },
        `soil.csv, ${plot.id}, ${sample.takenOn}`,
      ),
      ofPractice({ name: 'clay of the soil’s class', value: carbon.clayPct, unit: '%' }, 'fertility/ground-of.ts'),
      ofPractice(
        { name: 'weight of the topsoil', value: topsoil.bulkDensityTPerM3, unit: 't/m3' },
        'fertility/carbon-stock.ts',
      ),
      ofSums({ name: 'carbon plants leave over all years known', value: span(brought), unit: 't/ha' }),
      ...account.years.map(({ year, stockTHa }) =>
        ofSums({ name: `stock at the end of ${year}`, value: span(stockTHa), unit: 't/ha' }),
      ),
    ],
    doubt: account.doubt,
    levers: [
      {
        change: 'a sample of organic matter five years on narrows all of it',
        value: 5,
        unit: 'years',
        result: last.stockTHa.typ,
      },
    ],
  });
}

function span({ low, high }: { readonly low: number; readonly high: number }): string {
  return `${written(low)} to ${written(high)}`;
}
