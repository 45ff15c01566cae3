/** The carbon of the topsoil by name. */
import * as rothc from '../../carbon/rothc.ts';
import * as files from '../../carbon/rothc-file.ts';
import * as rates from '../../carbon/rothc-rates.ts';
import * as start from '../../carbon/start-pools.ts';
import { type CalcModel, type CalcValue, type CalcValues, calcModel, noAnswer } from '../calc-model.ts';
import { inputs, outputs } from '../input-list.ts';
import { greatestCarbonError } from './carbon-properties.ts';

const description = 'Coleman, Prout & Milne 2024, RothC, a model for the turnover of carbon in soil';
const pools = ['DPM', 'RPM', 'BIO', 'HUM'] as const;

export const carbonModels: Readonly<Record<string, CalcModel>> = {
  TSMD: calcModel({
    title: 'Moisture deficit of the topsoil, month by month',
    inputs: inputs(
      'clay % clay',
      'depth cm depth of the stocks',
      'rain series:mm rain of each month',
      'pan series:mm open-pan evaporation of each month',
      'PC label:- 1 covered, 0 bare; one or one a month',
    ),
    outputs: outputs('maxTSMD mm greatest deficit', 'acc mm deficit at each month’s end'),
    source: `${description}, section 1.6`,
    evaluate: (v) => {
      const months = monthsOf(v);
      if (months === null) return noAnswer('rain', 'rain, pan and a list of PC must have as many months');
      const soil = soilOf(v);
      return { maxTSMD: rates.greatestDeficitMm(soil), acc: rates.deficitsMm(soil, months) };
    },
  }),
  a_modifier: calcModel({
    title: 'Warmth of a month',
    inputs: inputs('T C mean air temperature'),
    outputs: outputs('a - factor'),
    source: `${description}, section 1.6`,
    evaluate: (v) => ({ a: rates.warmthFactor(v.number('T')) }),
  }),
  b_modifier: calcModel({
    title: 'Dryness of a month',
    inputs: inputs(
      'for? text:- the description’s own twelve months',
      'clay? % clay',
      'depth? cm depth of the stocks',
      'acc? mm deficit, 0 or negative',
    ),
    outputs: outputs('b - factor'),
    source: `${description}, section 1.6`,
    evaluate: (v) => {
      if (v.given('acc') && v.given('clay') && v.given('depth'))
        return { b: rates.drynessFactor(v.number('acc'), rates.greatestDeficitMm(soilOf(v))) };
      if (!v.given('for')) return noAnswer('acc', 'give clay, depth and acc, or name the description’s months');
      const greatestMm = rates.greatestDeficitMm(printedSoil);
      return { b: rates.deficitsMm(printedSoil, printedMonths).map((mm) => rates.drynessFactor(mm, greatestMm)) };
    },
  }),
  c_modifier: calcModel({
    title: 'Cover of a month',
    inputs: inputs('PC - 1 covered, 0 bare'),
    outputs: outputs('c - factor'),
    source: `${description}, section 1.6`,
    evaluate: (v) => ({ c: rates.coverFactor(v.number('PC') === 1) }),
  }),
  x_ratio: calcModel({
    title: 'Carbon breathed out for each part kept',
    inputs: inputs('clay % clay'),
    outputs: outputs('x - CO2 over microbes and humus'),
    source: `${description}, section 1.7`,
    evaluate: (v) => ({ x: rates.breathedRatio(v.number('clay')) }),
  }),
  one_month: calcModel({
    title: 'One month of the topsoil’s carbon',
    inputs: inputs(
      'clay % clay',
      'abc - combined rate, warmth × dryness × cover',
      'start object:t/ha DPM, RPM, BIO, HUM before',
      'C_in t/ha plant carbon of the month',
      'DPM_RPM? - easy over resistant, 1.44 when not given',
      'FYM? t/ha carbon of rotted material',
    ),
    outputs: outputs(...pools.map((pool) => `${pool} t/ha after`), 'CO2 t/ha breathed out'),
    source: `${description}, section 2.2`,
    evaluate: (v) => {
      const [dpm, rpm, bio, hum] = pools.map((pool) => v.part('start', pool));
      if (dpm == null || rpm == null || bio == null || hum == null)
        return noAnswer('start', 'wants DPM, RPM, BIO and HUM');
      const next = rothc.turnOver(
        { easyPlantTHa: dpm, resistantPlantTHa: rpm, microbesTHa: bio, humusTHa: hum },
        { rateFactor: v.number('abc'), clayPct: v.number('clay') },
        {
          plantTHa: v.number('C_in'),
          easyToResistantRatio: v.maybe('DPM_RPM') ?? rothc.easyToResistant.arable,
          rottedTHa: v.maybe('FYM') ?? 0,
        },
      );
      return {
        DPM: next.easyPlantTHa,
        RPM: next.resistantPlantTHa,
        BIO: next.microbesTHa,
        HUM: next.humusTHa,
        CO2: next.breathedTHa,
      };
    },
  }),
  IOM_Falloon: calcModel({
    title: 'Inert carbon of a stock',
    inputs: inputs('TOC t/ha organic carbon'),
    outputs: outputs('IOM t/ha inert'),
    source: 'Falloon et al. 1998, as in the description of RothC',
    evaluate: (v) => ({ IOM: start.inertCarbonTHa(v.number('TOC')) }),
  }),
  pools_pedotransfer: calcModel({
    title: 'Start pools of a stock',
    inputs: inputs('SOC t/ha organic carbon', 'clay % clay'),
    outputs: outputs(...pools.map((pool) => `${pool} t/ha at the start`), 'IOM t/ha inert'),
    source: 'Weihermüller et al. 2013 (recalled); Falloon et al. 1998',
    evaluate: (v) => {
      const found = start.poolsFromStock(v.number('SOC'), v.number('clay'));
      return {
        DPM: found.easyPlantTHa,
        RPM: found.resistantPlantTHa,
        BIO: found.microbesTHa,
        HUM: found.humusTHa,
        IOM: found.inertTHa,
      };
    },
  }),
  run: calcModel({
    title: 'Spin-up and whole run of an input file',
    inputs: inputs(
      'file file:- input file in the authors’ form',
      'clay? % clay, instead of the file’s',
      'depth? cm depth, instead of the file’s',
      'IOM? t/ha inert carbon, instead of the file’s',
      'spin_up label:- in words',
      'expected_file? file:- the authors’ months',
      'expected_years_file? file:- the authors’ Decembers',
    ),
    outputs: outputs(
      'spinup_months - months to equilibrium',
      'eq t/ha pools at equilibrium',
      'last t/ha pools after the last month',
      'dec2007 t/ha pools after December 2007',
      'rows - months after the spin-up',
      'max_abs_diff_all_rows t/ha greatest difference to the authors’ files',
    ),
    source: `${description}; the authors’ published runs`,
    evaluate: runOfFile,
  }),
  mass_balance: calcModel({
    title: 'Property: carbon in = change + breathed out, every month',
    inputs: [],
    outputs: outputs('abs_error t/ha greatest error found'),
    source: description,
    evaluate: () => ({ abs_error: greatestCarbonError() }),
  }),
};

/** The twelve months printed in section 1.6, under plants. */
const printedSoil = { clayPct: 23.4, depthCm: 23 } as const;
const printedRainMm = [74, 59, 62, 51, 52, 57, 34, 55, 58, 56, 75, 71];
const printedPanMm = [8, 10, 27, 49, 83, 99, 103, 91, 69, 34, 16, 8];
const printedMonths = printedRainMm.map((rainMm, at) => ({ rainMm, panMm: printedPanMm[at] ?? 0, covered: true }));

function soilOf(v: CalcValues): rates.CarbonSoil {
  return { clayPct: v.number('clay'), depthCm: v.number('depth') };
}

function monthsOf(v: CalcValues) {
  const [rain, pan, cover] = [v.series('rain'), v.series('pan'), [v.whole('PC') ?? 1].flat() as readonly unknown[]];
  if (rain.length !== pan.length || ![1, rain.length].includes(cover.length)) return null;
  const coverAt = (at: number) => Number(cover[cover.length === 1 ? 0 : at]);
  return rain.map((rainMm, at) => ({ rainMm, panMm: pan[at] ?? 0, covered: coverAt(at) === 1 }));
}

function runOfFile(v: CalcValues) {
  const read = files.readCarbonFile(v.file('file'));
  if (read.kind === 'bad') return noAnswer('file', `line ${read.lineNumber}: ${read.found}`);
  const soil = {
    clayPct: v.maybe('clay') ?? read.run.soil.clayPct,
    depthCm: v.maybe('depth') ?? read.run.soil.depthCm,
  };
  const run = { ...read.run, soil, inertTHa: v.maybe('IOM') ?? read.run.inertTHa };
  const ours = files.runCarbonFile(run);
  const at = run.months.slice(12).findIndex((month) => month.year === 2007 && month.monthNumber === 12);
  const shown = (state: rothc.CarbonState | undefined): CalcValue =>
    state === undefined ? null : files.byAuthorsNames(state, run.inertTHa);
  const compared = ['expected_file', 'expected_years_file']
    .filter((key) => v.given(key))
    .map((key) => files.greatestDifferenceTHa(v.file(key), run, ours));
  const unmatched = compared.find((one) => one.unmatchedRows > 0);
  if (unmatched !== undefined)
    return noAnswer('expected_file', `${unmatched.unmatchedRows} rows match no month of the run`);
  return {
    spinup_months: ours.spinUpMonths,
    eq: shown(ours.equilibrium),
    last: shown(ours.states.at(-1)),
    dec2007: shown(ours.states[at]),
    rows: ours.states.length,
    max_abs_diff_all_rows: compared.length === 0 ? null : Math.max(...compared.map((one) => one.greatestTHa)),
  };
}
