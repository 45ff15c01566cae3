/** Canopy cover and what lies on the ground, by name. */
import { canopyRate, growingCover } from '../cover/canopy-curve.ts';
import { coverFromBasalCoefficient, soilLossFactor } from '../cover/ground-cover.ts';
import { fixedInForageKgHa, fixedInGrainKgHa, totalFixedKgHa } from '../nitrogen/fixation.ts';
import { type CalcModel, calcModel } from './calc-model.ts';
import { inputs, outputs } from './input-list.ts';

export const canopyModels: Readonly<Record<string, CalcModel>> = {
  canopy_rate: calcModel({
    title: 'Growth rate of a canopy',
    inputs: inputs('CC0 - cover at the start', 'CCx - greatest cover', 't_full C_d thermal time to 98 % of it'),
    outputs: outputs('g 1/(C_d) growth rate'),
    source: 'Raes et al. 2009, Agronomy Journal 101:438',
    evaluate: (v) => ({ g: canopyRate(v.number('CC0'), v.number('CCx'), v.number('t_full')) }),
  }),
  canopy_cover: calcModel({
    title: 'Cover of a growing canopy',
    inputs: inputs(
      'CC0 - cover at the start',
      'CCx - greatest cover',
      'g 1/(C_d) growth rate',
      't C_d thermal time since emergence or planting',
    ),
    outputs: outputs('CC - cover'),
    source: 'Raes et al. 2009, Agronomy Journal 101:438',
    evaluate: (v) => ({
      CC: growingCover(
        { startCoverShare: v.number('CC0'), fullCoverShare: v.number('CCx') },
        v.number('g'),
        v.number('t'),
      ),
    }),
  }),
  fc_Kcb: calcModel({
    title: 'Cover from the basal coefficient',
    inputs: inputs(
      'Kcb - basal coefficient',
      'Kc_min - least coefficient',
      'Kc_max - greatest coefficient',
      'h m height',
    ),
    outputs: outputs('fc - cover'),
    source: 'FAO-56 (Allen et al. 1998) eq. 76',
    evaluate: (v) => ({
      fc: coverFromBasalCoefficient({
        kcb: v.number('Kcb'),
        kcMin: v.number('Kc_min'),
        kcMax: v.number('Kc_max'),
        heightM: v.number('h'),
      }),
    }),
  }),
  residue_erosion_factor: calcModel({
    title: 'Soil loss under a cover',
    inputs: inputs('cover_pct % ground covered', 'b? 1/% coefficient, 0.025-0.05; 0.035 when not given'),
    outputs: outputs('factor - soil loss relative to bare ground'),
    source: 'RUSLE, Renard et al. 1997 (recalled)',
    evaluate: (v) => ({ factor: soilLossFactor(v.number('cover_pct'), v.maybe('b') ?? 0.035) }),
  }),
};

/** Lucerne and the clovers, by whatever name goes before: "red clover". */
const forageLegumes = /lucerne|alfalfa|clover|trefoil|medick|sainfoin|vetch ley/i;

export const fixationModels: Readonly<Record<string, CalcModel>> = {
  anglade_forage: calcModel({
    title: 'Nitrogen fixed in shoots of forage legumes',
    inputs: inputs('N_shoot_kg_ha kg/ha nitrogen in the shoots'),
    outputs: outputs('BNF_shoot kg/ha nitrogen from the air'),
    source: 'Anglade et al. 2015, Ecosphere 6(3):37',
    evaluate: (v) => ({ BNF_shoot: fixedInForageKgHa(v.number('N_shoot_kg_ha')) }),
  }),
  anglade_grain: calcModel({
    title: 'Nitrogen fixed in shoots of grain legumes',
    inputs: inputs('N_shoot_kg_ha kg/ha nitrogen in the shoots'),
    outputs: outputs('BNF_shoot kg/ha nitrogen from the air'),
    source: 'Anglade et al. 2015, Ecosphere 6(3):37',
    evaluate: (v) => ({ BNF_shoot: fixedInGrainKgHa(v.number('N_shoot_kg_ha')) }),
  }),
  total_BNF: calcModel({
    title: 'Nitrogen fixed with roots',
    inputs: inputs(
      'crop text:- lucerne or clover, else a grain legume',
      'N_shoot_total kg/ha nitrogen in the shoots',
      'BGN - below-ground factor',
    ),
    outputs: outputs('BNF_total kg/ha nitrogen from the air'),
    source: 'Anglade et al. 2015, Ecosphere 6(3):37',
    evaluate: (v) => ({
      BNF_total: totalFixedKgHa(
        forageLegumes.test(v.text('crop')) ? 'forage' : 'grain',
        v.number('N_shoot_total'),
        v.number('BGN'),
      ),
    }),
  }),
};
