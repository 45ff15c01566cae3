/** Nitrogen to and from the air, and the warmth of the soil, by name. */
import { denitrificationWarmthFactor, denitrifiedKgHa } from '../../nitrogen/denitrification.ts';
import { shareFromAir } from '../../nitrogen/fixation-fall.ts';
import { type MulchWay, mulchAmmoniaKgHa, mulchWays } from '../../nitrogen/mulch-ammonia.ts';
import {
  bareGroundFactor,
  dailyLagFactor,
  dampingDepthM,
  soilMonthsC,
  stepSoilTemperatureC,
  waveTemperatureC,
} from '../../soil/soil-temperature.ts';
import { type CalcModel, type CalcValues, calcModel, noAnswer } from '../calc-model.ts';
import { inputs, outputs } from '../input-list.ts';

export const gasModels: Readonly<Record<string, CalcModel>> = {
  ndfa_eff: calcModel({
    title: 'Share from the air in rich soil',
    inputs: inputs('Ndfa - usual share from the air', 'Nmin_kg_ha kg/ha mineral nitrogen, 0-60 cm'),
    outputs: outputs('Ndfa_eff - share from the air'),
    source: 'engineering line inside published findings; see docs/science/nitrogen.md',
    evaluate: (v) => ({ Ndfa_eff: shareFromAir(v.number('Ndfa'), v.number('Nmin_kg_ha')) }),
  }),
  denit: calcModel({
    title: 'Denitrified nitrogen',
    inputs: inputs(
      'NO3_mg_kg mg/kg nitrate nitrogen in dry soil',
      'WFPS - share of pores filled with water',
      'T C soil temperature',
      'Dp kg/ha/d potential of the top 20 cm',
    ),
    outputs: outputs('D kg/ha/d nitrogen lost'),
    source: 'Hénault & Germon 2000, European J. Soil Science 51:281',
    evaluate: (v) => ({
      D: denitrifiedKgHa(
        v.number('NO3_mg_kg'),
        { filledPoreShare: v.number('WFPS'), soilC: v.number('T') },
        v.number('Dp'),
      ),
    }),
  }),
  denit_fT: calcModel({
    title: 'Warmth factor of denitrification',
    inputs: inputs('T C soil temperature'),
    outputs: outputs('f - factor'),
    source: 'Hénault & Germon 2000, European J. Soil Science 51:281',
    evaluate: (v) => ({ f: denitrificationWarmthFactor(v.number('T')) }),
  }),
  mulch_ammonia: calcModel({
    title: 'Ammonia from cut herbage',
    inputs: inputs(
      'N_cut_kg_ha kg/ha nitrogen laid down',
      'N_pct % nitrogen in its dry matter',
      'how text:- in place, carried, or worked in',
    ),
    outputs: outputs('loss_kg_ha kg/ha nitrogen lost', 'low kg/ha seldom less', 'high kg/ha seldom more'),
    source: 'range of Larsson et al. 1998 and Weber et al. 2018',
    evaluate: (v) => {
      const how = v.text('how').trim().toLowerCase().replaceAll('-', ' ');
      if (!isMulchWay(how)) return noAnswer('how', `"${v.text('how')}": ${mulchWays.join(', ')}`);
      const loss = mulchAmmoniaKgHa(v.number('N_cut_kg_ha'), v.number('N_pct'), how);
      return { loss_kg_ha: loss.typ, low: loss.low, high: loss.high };
    },
  }),
};

export const soilTemperatureModels: Readonly<Record<string, CalcModel>> = {
  damping_depth: calcModel({
    title: 'Damping depth',
    inputs: inputs('kappa_m2_s m2/s thermal diffusivity', 'period_s s length of the wave'),
    outputs: outputs('D_m m depth at which the wave has fallen to 1/e'),
    source: 'van Wijk & de Vries 1963; Campbell & Norman 1998',
    evaluate: (v) => ({ D_m: dampingDepthM(v.number('kappa_m2_s'), v.number('period_s')) }),
  }),
  soil_wave: calcModel({
    title: 'Soil temperature by the year’s wave',
    inputs: inputs(
      'T_mean C mean of the year',
      'A C amplitude at the surface',
      'D_m m damping depth',
      'z_m m depth',
      'day d day of the year',
      'day_max d warmest day at the surface',
    ),
    outputs: outputs('T C soil temperature'),
    source: 'van Wijk & de Vries 1963; Campbell & Norman 1998',
    evaluate: (v) => ({ T: waveOf(v) }),
  }),
  soil_lag_step: calcModel({
    title: 'Soil temperature of the next day',
    inputs: inputs(
      'T_prev C yesterday',
      'T_air C air, mean of the day',
      'T_year C air, mean of the year',
      `s? - bare-ground term, ${bareGroundFactor}`,
      `k? - share of the way in a day, ${dailyLagFactor}`,
      'cover? - ground covered, 0 when not given',
    ),
    outputs: outputs('T C soil temperature, 0-30 cm'),
    source: 'lag after Zheng, Hunt & Running 1993, Climate Research 2:183; bare-ground term fitted to Rothamsted',
    evaluate: (v) => ({
      T: stepSoilTemperatureC(
        v.number('T_prev'),
        { airC: v.number('T_air'), yearMeanC: v.number('T_year'), coverShare: v.maybe('cover') ?? 0 },
        lagOf(v),
      ),
    }),
  }),
  soil_lag_year: calcModel({
    title: 'Soil temperature by month from air by month',
    inputs: inputs(
      'air_month series:C twelve means of the air',
      `s? - bare-ground term, ${bareGroundFactor}`,
      `k? - share of the way in a day, ${dailyLagFactor}`,
    ),
    outputs: outputs('T_month C twelve means of the soil under bare ground'),
    source: 'lag after Zheng, Hunt & Running 1993, Climate Research 2:183; bare-ground term fitted to Rothamsted',
    evaluate: (v) => {
      const air = v.series('air_month');
      return air.length === 12 ? { T_month: soilMonthsC(air, lagOf(v)) } : noAnswer('air_month', 'wants twelve months');
    },
  }),
};

function lagOf(v: CalcValues) {
  return { bareGroundFactor: v.maybe('s') ?? bareGroundFactor, lagFactor: v.maybe('k') ?? dailyLagFactor };
}

function waveOf(v: CalcValues): number {
  const wave = {
    meanC: v.number('T_mean'),
    amplitudeC: v.number('A'),
    warmestDayOfYear: v.number('day_max'),
    dampingDepthM: v.number('D_m'),
  };
  return waveTemperatureC(wave, v.number('z_m'), v.number('day'));
}

function isMulchWay(text: string): text is MulchWay {
  return (mulchWays as readonly string[]).includes(text);
}
