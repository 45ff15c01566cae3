/** What the ground's daily account says of a plot's nitrogen and water in a year: every term with its ends, its model and its published source. */
import type { Plot } from '@leywright/book';
import type { Interval } from '@leywright/measures';
import { plotCover } from '../ground/plot-cover.ts';
import type { GroundSetting } from '../ground/stage.ts';
import type { Lever, Why, WhyInput } from '../plan/why.ts';
import { type AccountYear, accountYear } from '../soil-run/plot-account.ts';
import { type PlotParts, partsOfPlot } from '../soil-run/plot-parts.ts';
import { type AccountTerm, insideTerms, nitrogenTerms, waterTerms } from './account-terms.ts';
import { why, written } from './terms.ts';

/** Nitrogen of a year: in, out, and what the ground gained or lost by it. */
export function whyAccount(plot: Plot, year: number, setting: GroundSetting): Why | null {
  const told = accountOf(plot, year, setting);
  if (told === null) return null;
  const { account, plotParts } = told;
  const gained = gainOf(account, nitrogenTerms);
  return why(`account/${plot.id}/${year}`, 'account', {
    figures: { plot: plot.id, year, texture: plotParts.profile.texture },
    value: gained.typ,
    low: gained.low,
    high: gained.high,
    unit: 'kg/ha',
    formula:
      'gained = fixed + from rain and air + brought − sold − carried off − washed out − gone as gas and ammonia, each summed day by day',
    sum: sumInWords(account, nitrogenTerms, gained.typ),
    inputs: [...nitrogenTerms, ...insideTerms].map((term) => inputOf(term, account, 'kg/ha')),
    doubt: doubtsOf(plotParts, setting),
    levers: leversOf(account),
  });
}

/** Water of a year: in, out, and what the ground gained or lost by it. */
export function whyWater(plot: Plot, year: number, setting: GroundSetting): Why | null {
  const told = accountOf(plot, year, setting);
  if (told === null) return null;
  const { account, plotParts } = told;
  const gained = gainOf(account, waterTerms);
  return why(`water/${plot.id}/${year}`, 'water', {
    figures: { plot: plot.id, year, texture: plotParts.profile.texture },
    value: gained.typ,
    low: gained.low,
    high: gained.high,
    unit: 'mm',
    formula: 'gained = rain + irrigation − evaporated − drunk − run off − drained, each summed day by day',
    sum: sumInWords(account, waterTerms, gained.typ),
    inputs: [
      ...waterTerms.map((term) => inputOf(term, account, 'mm')),
      stockInput('water in the ground before the year', account.before('waterMm')),
      stockInput('water in the ground at its end', account.of('waterMm')),
    ],
    doubt: doubtsOf(plotParts, setting),
  });
}

function accountOf(
  plot: Plot,
  year: number,
  setting: GroundSetting,
): { readonly account: AccountYear; readonly plotParts: PlotParts } | null {
  const { fromYear, toYear } = setting.horizon;
  if (year < fromYear || year > toYear) return null;
  const plotParts = partsOfPlot(plot, plotCover(plot.id, plot.kind === 'tunnel', setting), setting);
  return { account: accountYear(plotParts.parts, { year, weather: setting.climate.ofSoil() }), plotParts };
}

function amountOf(term: AccountTerm, account: AccountYear): Interval {
  return account.of(term.column);
}

/** As the terms fell together in each run, not their ends added up. */
function gainOf(account: AccountYear, terms: readonly AccountTerm[]): Interval {
  return account.balance(terms.map(({ column, sign }) => ({ column, sign: sign === '−' ? -1 : 1 })));
}

function sumInWords(account: AccountYear, terms: readonly AccountTerm[], result: number): string {
  const parts = terms.map((term, at) => `${at === 0 ? '' : ` ${term.sign} `}${written(amountOf(term, account).typ)}`);
  return `${parts.join('')} = ${written(result)}`;
}

function inputOf(term: AccountTerm, account: AccountYear, unit: string): WhyInput {
  const amount = amountOf(term, account);
  const isPoint = amount.high - amount.low < 0.05;
  return {
    name: term.sign === '' ? term.name : `${term.sign} ${term.name}`,
    value: isPoint ? written(amount.typ) : `${written(amount.low)} to ${written(amount.high)}`,
    unit,
    from: term.source === null && term.howKnown === 'common practice' ? 'reference' : 'derived',
    where: term.where,
    source: term.source,
    howKnown: term.howKnown,
    why: null,
  };
}

function stockInput(name: string, amount: Interval): WhyInput {
  return {
    name,
    value: written(amount.typ),
    unit: 'mm',
    from: 'derived',
    where: 'soil/run-soil.ts',
    source: null,
    howKnown: null,
    why: null,
  };
}

function doubtsOf({ profile, unknownStands }: PlotParts, setting: GroundSetting): readonly string[] {
  const doubts: readonly (readonly [string, boolean])[] = [
    ['soil-not-named', !profile.isTextureSaid],
    ['humus-not-sampled', !profile.isMatterSampled],
    ['start-of-account-taken', true],
    ['plants-not-known', unknownStands.length > 0],
    ['fixation-from-tables', true],
    ['climate-normals', setting.climate.recorded.includes(0)],
  ];
  return doubts.filter(([, holds]) => holds).map(([doubt]) => doubt);
}

/** What would narrow it most: a measured figure for the widest term. */
function leversOf(account: AccountYear): readonly Lever[] {
  const wide = nitrogenTerms
    .map((term) => ({ term, amount: amountOf(term, account) }))
    .reduce((a, b) => (b.amount.high - b.amount.low > a.amount.high - a.amount.low ? b : a));
  return [
    {
      change: `a measured figure for: ${wide.term.name}; it lies within`,
      value: written(wide.amount.high - wide.amount.low),
      unit: 'kg/ha',
      result: gainOf(account, nitrogenTerms).typ,
    },
  ];
}
