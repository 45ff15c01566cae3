import { calcModels, runCheckTable } from '@leywright/agronomy';
import { describe, expect, test } from 'vitest';
import { calc } from './calc-of.ts';
import { readChecks } from './read-checks.ts';

/** Worked out apart from the program, from the printed equations: limits, fall-backs, lists, and places where a formula is held. */
const rows = readChecks('more.csv').map((row) => ({
  id: '',
  inputs: '',
  expected: '',
  tolerance: '',
  source: '',
  ...row,
}));

describe('each function over its whole range', () => {
  test.for(rows)('$id agrees with $source', (row) => {
    const [checked] = runCheckTable([row]);
    expect(checked, JSON.stringify(checked)).toMatchObject({ status: 'met' });
  });

  test('there are a hundred such rows', () => expect(rows).toHaveLength(100));
});

/** Names an agronomist's table may use; each is a promise. */
const promised =
  'pressure gamma e0 es delta ea_psychrometer ea_rhminmax ea_rhmax ea_rhmean Ra Ra_parts N polar Rs_sunshine Rs_temperature Rnl Rn radiation_chain ' +
  'G_month u2 ETo_day ETo_day_missing_data ETo_month Hargreaves ETo_invariant TAW_RAW p_adjust Ks_drydown Kc_curve Kc_mid_adjust Kc_max ' +
  'dual_Kc_evaporation Dr_next balance_invariant N_fao CBM_p0.8333 ten_hour_period_CBM avg single_sine single_sine_horizontal_cutoff corn_mod_avg ' +
  'emergence_days germination_50pct Tmean_methods_equal F_to_C_degree_days TSMD a_modifier b_modifier x_ratio one_month IOM_Falloon pools_pedotransfer ' +
  'run mass_balance anglade_forage anglade_grain total_BNF herridge_grain ndfa_eff ipcc_residue_N nicolardot fT_residue fT_humus fW K2_humus burns ' +
  'tipping_bucket_1cm_layers_single_event Nc_cabbage Nc_grass Nc_C3_greenwood1990 denit denit_fT mulch_ammonia offtake P_index K_index Mg_index buildup ' +
  'lime_need official_example supply rotation relative_wind dataset sanity hedge_effect_range beetle_bank_distances_tested damping_depth soil_wave ' +
  'soil_lag_step soil_lag_year geng_p wet_fraction gamma_thom wgen_step generator_invariant hourly_T hourly_RH blight_rule blight_answer canopy_rate ' +
  'canopy_cover fc_Kcb residue_erosion_factor';

test('every promised name is a model', () => {
  expect(promised.split(' ').filter((name) => !Object.hasOwn(calcModels, name))).toEqual([]);
});

describe('properties hold when asked for by name', () => {
  test.each([
    ['ETo_invariant', { ok: true }],
    ['Tmean_methods_equal', { ok: true }],
    ['sanity', { ok: true }],
    ['generator_invariant', { ok: true }],
  ])('%s', (name, wanted) => expect(calc(name, {})).toEqual(wanted));

  test.each([
    ['balance_invariant', 'abs_error_mm', 1e-6],
    ['mass_balance', 'abs_error', 1e-9],
    ['tipping_bucket_1cm_layers_single_event', 'abs_diff', 1e-9],
  ])('%s closes', (name, key, within) => {
    const error = (calc(name, {}) as Readonly<Record<string, number>>)[key] ?? Number.NaN;
    expect(error).toBeGreaterThanOrEqual(0);
    expect(error).toBeLessThanOrEqual(within);
  });
});

describe('what is left out or cannot be is told, and no figure is made up', () => {
  test.each([
    ['avg', { Tbase: 5 }, /Tmin and Tmax, or mean/],
    ['Hargreaves', { Tmax: 20, Tmin: 10 }, /lat and J, or Ra/],
    ['ipcc_residue_N', { crop: 'rye' }, /yield/],
    ['ipcc_residue_N', { crop: 'carrots', yield_fresh_t: 40 }, /not in the table/],
    ['emergence_days', { crop: 'oca', Tsoil_const: 10 }, /not in the table/],
    ['mulch_ammonia', { N_cut_kg_ha: 50, N_pct: 3, how: 'thrown' }, /in place, carried, worked in/],
    ['offtake', { crop: 'gold', t_ha: 1 }, /gold/],
    ['supply', { material: 'finished compost', t_ha: 1 }, /say its dry matter/],
    ['rotation', { equal_plots: ['potatoes', 'moss'] }, /moss/],
    ['Kc_max', { Kcb: 1 }, /cases_u2_RHmin_h/],
    ['gamma_thom', { mean: 2, mean_ln: 3 }, /less than the logarithm/],
    ['wgen_step', { x_prev: [1, 2], e: [0, 0, 0] }, /x_prev|lists-differ/],
    ['geng_p', { wet_fraction: 1.2 }, /between 0 and 1/],
    ['soil_lag_year', { air_month: [1, 2, 3] }, /twelve/],
    ['blight_answer', { humidity: 'guess' }, /hourly, none or normals/],
    ['buildup', { index: 'low' }, /no index/],
    [
      'dual_Kc_evaporation',
      {
        TEW: 20,
        REW: 8,
        De0: 0,
        Kc_max: 1.2,
        ETo: [1, 2],
        rain_minus_RO: [0],
        irrigation_over_fw: 0,
        few: 1,
        Kcb: 0.2,
      },
      /lists-differ/,
    ],
  ])('%s of %j', (name, inputs, why) => expect(calc(name, inputs)).toMatch(why));

  test('a rye row has tops and no roots, as the table prints it', () => {
    expect(calc('ipcc_residue_N', { crop: 'rye', yield_DM_t: 4 })).toEqual({ crop_DM: 4, AG_N_kg: 32, BG_N_kg: null });
  });

  test('an output is a list when an input is, even of one', () => {
    expect(calc('fW', { theta_over_FC: [1] })).toEqual({ f: [1] });
    expect(calc('fW', { theta_over_FC: 1 })).toEqual({ f: 1 });
  });
});
