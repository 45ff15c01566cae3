/** Nitrogen in the ground by name: residue, humus, leaching, need. */
import { criticalNPct, type DilutionCurve, dilutionCurves } from '../../nitrogen/critical-nitrogen.ts';
import { burnsLeachedShare } from '../../nitrogen/leaching.ts';
import {
  humusRatePerDay,
  humusWarmthFactor,
  residueWarmthFactor,
  wetnessFactor,
} from '../../nitrogen/release-factors.ts';
import { fixedByShootKgHa, residueNitrogen } from '../../nitrogen/residue-nitrogen.ts';
import { freshResidue, residueRates, stepResidue } from '../../nitrogen/residue-release.ts';
import { type CalcModel, type CalcValues, calcModel, noAnswer } from '../calc-model.ts';
import { inputs, outputs } from '../input-list.ts';
import { layersAgainstBurns } from './soil-properties.ts';

const stics = (where: string) => `Brisson et al. 2008, STICS crop model, ${where}`;

export const residueModels: Readonly<Record<string, CalcModel>> = {
  nicolardot: calcModel({
    title: 'Nitrogen freed by a batch of residue',
    inputs: inputs(
      'C_kg kg carbon in the residue',
      'CN - C:N of the residue',
      'Y? - carbon the microbes keep, 0.62',
      'kbio? 1/d death of microbes, 0.011',
      'CNhum? - C:N of humus, 9.52',
    ),
    outputs: outputs(
      'kres 1/d decay on a normalised day',
      'CNbio - C:N of the microbes',
      'hres - share of dying microbes that becomes humus',
      'Nmin_kg_at_day kg mineral nitrogen by normalised day, 0 to 730',
    ),
    source: 'Nicolardot, Recous & Mary 2001, Plant and Soil 228:83',
    evaluate: residueYear,
  }),
  fT_residue: calcModel({
    title: 'Warmth factor of residues',
    inputs: inputs('T C soil temperature'),
    outputs: outputs('f - factor'),
    source: stics('p. 147'),
    evaluate: (v) => ({ f: residueWarmthFactor(v.number('T')) }),
  }),
  fT_humus: calcModel({
    title: 'Warmth factor of humus',
    inputs: inputs('T C soil temperature'),
    outputs: outputs('f - factor'),
    source: stics('p. 147'),
    evaluate: (v) => ({ f: humusWarmthFactor(v.number('T')) }),
  }),
  fW: calcModel({
    title: 'Water factor of release',
    inputs: inputs('theta_over_FC - water as a share of field capacity'),
    outputs: outputs('f - factor'),
    source: stics('eq. 8.2'),
    evaluate: (v) => ({ f: wetnessFactor(v.number('theta_over_FC')) }),
  }),
  K2_humus: calcModel({
    title: 'Release rate of active humus',
    inputs: inputs('clay % clay', 'CaCO3? % free lime'),
    outputs: outputs('k_per_day 1/d share a normalised day'),
    source: stics('eq. 8.5'),
    evaluate: (v) => ({ k_per_day: humusRatePerDay(v.number('clay'), v.maybe('CaCO3') ?? 0) }),
  }),
  ipcc_residue_N: calcModel({
    title: 'Nitrogen in residues',
    inputs: inputs(
      'crop text:- row of the 2019 table',
      'yield_fresh_t? t/ha fresh yield',
      'yield_DM_t? t/ha dry yield',
    ),
    outputs: outputs('crop_DM t/ha dry yield', 'AG_N_kg kg/ha above ground', 'BG_N_kg kg/ha below ground'),
    source: 'IPCC 2019 Refinement, volume 4 chapter 11, eq. 11.6 and Table 11.1A',
    evaluate: (v) => {
      const [freshTHa, dryTHa] = [v.maybe('yield_fresh_t'), v.maybe('yield_DM_t')];
      if (freshTHa === null && dryTHa === null) return noAnswer('yield_fresh_t', 'give it, or yield_DM_t');
      const found = residueNitrogen(v.text('crop'), dryTHa === null ? { freshTHa: freshTHa ?? 0 } : { dryTHa });
      if (found === null) return noAnswer('crop', `"${v.text('crop')}" is not in the table`);
      return {
        crop_DM: found.cropDryTHa,
        AG_N_kg: found.aboveGroundKgHa,
        BG_N_kg: found.belowGroundKgHa,
      };
    },
  }),
  herridge_grain: calcModel({
    title: 'Nitrogen fixed by a grain legume',
    inputs: inputs(
      'crop? label:- name',
      'shoot_DM_t t/ha shoot dry matter',
      'N_pct % nitrogen in it',
      'BG - below-ground factor',
      'Ndfa - share from the air',
    ),
    outputs: outputs('N_fixed kg/ha nitrogen from the air'),
    source: 'Herridge et al. 2022',
    evaluate: (v) => ({
      N_fixed: fixedByShootKgHa(v.number('shoot_DM_t'), {
        nPct: v.number('N_pct'),
        belowGroundFactor: v.number('BG'),
        airShare: v.number('Ndfa'),
      }),
    }),
  }),
};

export const leachingModels: Readonly<Record<string, CalcModel>> = {
  burns: calcModel({
    title: 'Share of nitrate leached',
    inputs: inputs('P_cm cm drainage', 'Vm_pct % water of the soil volume at field capacity', 'h_cm cm depth'),
    outputs: outputs('f - share leached below the depth'),
    source: 'Burns 1975, J. agric. Sci. 85:443',
    evaluate: (v) => ({ f: burnsLeachedShare(v.number('P_cm'), v.number('Vm_pct'), v.number('h_cm')) }),
  }),
  tipping_bucket_1cm_layers_single_event: calcModel({
    title: 'Layers of 1 cm and one event are Burns’ equation',
    inputs: [],
    outputs: outputs('abs_diff - greatest difference in the share leached over a grid'),
    source: 'identity',
    evaluate: () => ({ abs_diff: layersAgainstBurns() }),
  }),
  Nc_cabbage: dilutionModel('cabbage', 'W_t_ha', 'Ekbladh & Witter 2010, European J. Agronomy 33:276'),
  Nc_grass: calcModel({
    title: 'Critical nitrogen of grass',
    inputs: inputs('W t/ha dry matter'),
    outputs: outputs('Nc_pct % of dry matter'),
    source: 'Duru et al. 1997; as printed, constant under 1 t',
    evaluate: (v) => ({ Nc_pct: criticalNPct({ ...dilutionCurves.grass, flatBelowTHa: 1 }, v.number('W')) }),
  }),
  Nc_C3_greenwood1990: calcModel({
    title: 'Critical nitrogen of C3 crops',
    inputs: inputs('W t/ha dry matter'),
    outputs: outputs('Nc_pct % of dry matter'),
    source: 'Greenwood et al. 1990, Annals of Botany 66:425 (recalled); as printed, without a flat start',
    evaluate: (v) => ({ Nc_pct: criticalNPct({ ...dilutionCurves.general, flatBelowTHa: 0 }, v.number('W')) }),
  }),
};

function dilutionModel(name: keyof typeof dilutionCurves, key: string, source: string): CalcModel {
  const curve: DilutionCurve = dilutionCurves[name];
  return calcModel({
    title: `Critical nitrogen of ${name}`,
    inputs: inputs(`${key} t/ha dry matter`),
    outputs: outputs('Nc_pct % of dry matter'),
    source,
    evaluate: (v) => ({ Nc_pct: criticalNPct(curve, v.number(key)) }),
  });
}

function residueYear(v: CalcValues) {
  const cnRatio = v.number('CN');
  const rates = residueRates(cnRatio);
  const [keeps, death, humus] = [v.maybe('Y'), v.maybe('kbio'), v.maybe('CNhum')];
  const kind = {
    cnRatio,
    rates,
    ...(keeps === null ? {} : { yieldFraction: keeps }),
    ...(death === null ? {} : { deathPerDay: death }),
    ...(humus === null ? {} : { humusCnRatio: humus }),
  };
  const byDay: Record<string, number> = { 0: 0 };
  let state = freshResidue(v.number('C_kg'));
  for (let day = 1; day <= 730; day++) {
    state = stepResidue(state, kind, 1);
    byDay[day] = state.mineralNKgHa;
  }
  return { kres: rates.decayPerDay, CNbio: rates.microbeCnRatio, hres: rates.humifiedFraction, Nmin_kg_at_day: byDay };
}
