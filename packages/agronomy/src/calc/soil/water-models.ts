/** Water of crop and ground by name. */
import {
  depletionFractionFor,
  dryDown,
  readilyAvailableMm,
  stepRootZone,
  totalAvailableMm,
} from '../../water/available-water.ts';
import { coefficientAt, coefficientInClimate, greatestKc } from '../../water/crop-coefficient.ts';
import { stepSurface } from '../../water/surface-evaporation.ts';
import { type CalcModel, type CalcValues, calcModel, noAnswer } from '../calc-model.ts';
import { inputs, outputs } from '../input-list.ts';
import { waterBalanceErrorMm } from './soil-properties.ts';

const fao = (where: string) => `FAO-56 (Allen et al. 1998) ${where}`;

export const waterModels: Readonly<Record<string, CalcModel>> = {
  TAW_RAW: calcModel({
    title: 'Available water of the root zone',
    inputs: inputs(
      'FC m3/m3 field capacity',
      'WP m3/m3 wilting point',
      'Zr m root depth',
      'p - depletion fraction',
      'crop? label:- name',
    ),
    outputs: outputs('TAW mm total available water', 'RAW mm readily available water'),
    source: fao('eqs 82, 83'),
    evaluate: (v) => {
      const TAW = totalAvailableMm(v.number('FC'), v.number('WP'), v.number('Zr'));
      return { TAW, RAW: readilyAvailableMm(TAW, v.number('p')) };
    },
  }),
  p_adjust: calcModel({
    title: 'Depletion fraction for the demand',
    inputs: inputs('p_tab - fraction of the table', 'ETc mm/d water the crop asks'),
    outputs: outputs('p - depletion fraction'),
    source: fao('note under Table 22'),
    evaluate: (v) => ({ p: depletionFractionFor(v.number('p_tab'), v.number('ETc')) }),
  }),
  Ks_drydown: calcModel({
    title: 'Stress over days without rain',
    inputs: inputs(
      'TAW mm total available water',
      'RAW mm readily available water',
      'Dr0 mm depletion at the start',
      'ETo mm/d reference evapotranspiration',
      'Kc - crop coefficient',
      'days d days',
    ),
    outputs: outputs('Ks - stress coefficient by day', 'Dr_end mm depletion at the end of each day'),
    source: fao('eq. 84, example 37'),
    evaluate: (v) => {
      const spell = dryDown({
        totalMm: v.number('TAW'),
        readilyMm: v.number('RAW'),
        depletionMm: v.number('Dr0'),
        cropDemandMm: v.number('Kc') * v.number('ETo'),
        days: v.number('days'),
      });
      return { Ks: spell.ks, Dr_end: spell.depletionMm };
    },
  }),
  Dr_next: calcModel({
    title: 'Root-zone depletion of the next day',
    inputs: inputs(
      'Dr mm depletion',
      'rain mm rain',
      'irr mm irrigation',
      'ETa mm water used',
      'TAW mm total available water',
    ),
    outputs: outputs('Dr mm depletion', 'DP mm drained below the roots'),
    source: fao('eqs 85, 88'),
    evaluate: (v) => {
      const day = { rainMm: v.number('rain'), irrigationMm: v.number('irr'), usedMm: v.number('ETa') };
      const step = stepRootZone(v.number('Dr'), day, v.number('TAW'));
      return { Dr: step.depletionMm, DP: step.drainedMm };
    },
  }),
  balance_invariant: calcModel({
    title: 'The water account closes',
    inputs: [],
    outputs: outputs('abs_error_mm mm greatest error over a grid of days'),
    source: fao('eqs 85-88'),
    evaluate: () => ({ abs_error_mm: waterBalanceErrorMm() }),
  }),
};

const greatestModel = calcModel({
  title: 'Greatest coefficient of crop and wet ground',
  inputs: inputs(
    'Kcb - basal coefficient',
    'u2? m/s wind at 2 m',
    'RHmin? % least humidity',
    'h? m height',
    'cases_u2_RHmin_h? rows:- rows of wind, least humidity and height, in place of the three',
  ),
  outputs: outputs('Kc_max - greatest coefficient'),
  source: fao('eq. 72'),
  evaluate: (v) => {
    if (!(v.given('u2') && v.given('RHmin') && v.given('h')))
      return noAnswer('u2', 'give u2, RHmin and h, or cases_u2_RHmin_h');
    return { Kc_max: greatestKc(v.number('Kcb'), v.number('h'), climateOf(v)) };
  },
});

/** Rows of wind, humidity and height as three lists, so that they go with the coefficient element by element. */
function casesAsLists(given: Readonly<Record<string, unknown>>): Readonly<Record<string, unknown>> {
  const { cases_u2_RHmin_h: cases, ...rest } = given;
  if (!Array.isArray(cases) || !cases.every(Array.isArray)) return given;
  const column = (at: number) => cases.map((row: readonly unknown[]) => row[at]);
  return { ...rest, u2: column(0), RHmin: column(1), h: column(2) };
}

export const coefficientModels: Readonly<Record<string, CalcModel>> = {
  Kc_curve: calcModel({
    title: 'Crop coefficient on days of the season',
    inputs: inputs(
      'Lini d initial stage',
      'Ldev d development',
      'Lmid d mid-season',
      'Llate d late season',
      'Kc_ini - first coefficient',
      'Kc_mid - middle coefficient',
      'Kc_end - last coefficient',
      'days d day of the season',
    ),
    outputs: outputs('Kc - crop coefficient'),
    source: fao('eq. 66'),
    evaluate: (v) => {
      const ini = v.number('Lini');
      const dev = ini + v.number('Ldev');
      const mid = dev + v.number('Lmid');
      const curve = {
        initialKc: v.number('Kc_ini'),
        midKc: v.number('Kc_mid'),
        endKc: v.number('Kc_end'),
        stageEndsTotal: [ini, dev, mid, mid + v.number('Llate')] as const,
      };
      return { Kc: coefficientAt(curve, v.number('days')) };
    },
  }),
  Kc_mid_adjust: calcModel({
    title: 'Crop coefficient in another climate',
    inputs: inputs('Kc_tab - of the table', 'h m height', 'u2 m/s wind at 2 m', 'RHmin % least humidity'),
    outputs: outputs('Kc - crop coefficient'),
    source: fao('eq. 62'),
    evaluate: (v) => ({
      Kc: coefficientInClimate(v.number('Kc_tab'), v.number('h'), climateOf(v)),
    }),
  }),
  Kc_max: {
    ...greatestModel,
    run: (given, readText) => greatestModel.run(casesAsLists(given), readText),
  },
  dual_Kc_evaporation: calcModel({
    title: 'Evaporation from the ground over days',
    inputs: inputs(
      'TEW mm most that evaporates from the surface layer',
      'REW mm evaporates freely',
      'De0 mm depletion at the start',
      'Kc_max - greatest coefficient',
      'ETo series:mm/d reference evapotranspiration',
      'rain_minus_RO series:mm rain less runoff',
      'irrigation_over_fw series:mm irrigation over the wetted share',
      'fw? series:- wetted share, in few already',
      'few series:- open and wetted share',
      'Kcb series:- basal coefficient',
    ),
    outputs: outputs(
      'Kr - reduction coefficient',
      'Ke - evaporation coefficient',
      'Kc - both together',
      'De_end mm depletion at the end of each day',
      'DPe_day1 mm drained from the surface layer on the first day',
    ),
    source: fao('eqs 71-79, example 35'),
    evaluate: surfaceOverDays,
  }),
};

function surfaceOverDays(v: CalcValues) {
  const limits = { totalMm: v.number('TEW'), readilyMm: v.number('REW'), greatestKc: v.number('Kc_max') };
  const at = (key: string, day: number) => v.series(key)[day] ?? 0;
  let depletionMm = v.number('De0');
  const steps = v.series('ETo').map((etoMm, day) => {
    const surface = {
      etoMm,
      rainLessRunoffMm: at('rain_minus_RO', day),
      irrigationMm: at('irrigation_over_fw', day),
      openShare: at('few', day),
      basalKcb: at('Kcb', day),
    };
    const step = stepSurface(depletionMm, surface, limits);
    depletionMm = step.depletionMm;
    return step;
  });
  return {
    Kr: steps.map((step) => step.reductionFactor),
    Ke: steps.map((step) => step.ke),
    Kc: steps.map((step, day) => step.ke + at('Kcb', day)),
    De_end: steps.map((step) => step.depletionMm),
    DPe_day1: steps[0]?.drainedMm ?? null,
  };
}

function climateOf(v: CalcValues) {
  return { wind2mMS: v.number('u2'), rhMinPct: v.number('RHmin') };
}
