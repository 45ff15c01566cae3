/** Air, its vapour and its radiation by name: the parts of reference evapotranspiration. */
import * as monthly from '../weather/monthly-evapotranspiration.ts';
import * as radiation from '../weather/radiation.ts';
import * as eto from '../weather/reference-evapotranspiration.ts';
import * as vapour from '../weather/vapour-pressure.ts';
import { type CalcModel, calcModel } from './calc-model.ts';
import { fao, latJ, longWaveOf, place, possibleOf, raOf, temperatures } from './evaporation-inputs.ts';
import { inputs, outputs } from './input-list.ts';

export const airModels: Readonly<Record<string, CalcModel>> = {
  pressure: calcModel({
    title: 'Air pressure',
    inputs: inputs('z_m m height of the place'),
    outputs: outputs('P_kPa kPa air pressure'),
    source: fao('eq. 7'),
    evaluate: (v) => ({ P_kPa: vapour.airPressureKpa(v.number('z_m')) }),
  }),
  gamma: calcModel({
    title: 'Psychrometric constant',
    inputs: inputs('P_kPa kPa air pressure'),
    outputs: outputs('gamma kPa/C psychrometric constant'),
    source: fao('eq. 8'),
    evaluate: (v) => ({ gamma: vapour.psychrometricKpaC(v.number('P_kPa')) }),
  }),
  e0: calcModel({
    title: 'Saturation vapour pressure',
    inputs: inputs('T C temperature'),
    outputs: outputs('e0 kPa saturation pressure'),
    source: fao('eq. 11'),
    evaluate: (v) => ({ e0: vapour.saturationKpa(v.number('T')) }),
  }),
  es: calcModel({
    title: 'Mean saturation vapour pressure',
    inputs: inputs(...temperatures),
    outputs: outputs('es kPa mean saturation pressure'),
    source: fao('eq. 12'),
    evaluate: (v) => ({ es: vapour.meanSaturationKpa(v.number('Tmax'), v.number('Tmin')) }),
  }),
  delta: calcModel({
    title: 'Slope of the saturation curve',
    inputs: inputs('T C temperature'),
    outputs: outputs('delta kPa/C slope'),
    source: fao('eq. 13'),
    evaluate: (v) => ({ delta: vapour.saturationSlopeKpaC(v.number('T')) }),
  }),
  ea_psychrometer: calcModel({
    title: 'Vapour pressure from wet and dry bulb',
    inputs: inputs(
      'Twet C wet bulb',
      'Tdry C dry bulb',
      'P_kPa kPa air pressure',
      'a_psy 1/C coefficient of the instrument',
    ),
    outputs: outputs('ea kPa vapour pressure'),
    source: fao('eqs 15, 16'),
    evaluate: (v) => ({
      ea: vapour.vapourFromBulbsKpa({
        wetC: v.number('Twet'),
        dryC: v.number('Tdry'),
        pressureKpa: v.number('P_kPa'),
        coefficientPerC: v.number('a_psy'),
      }),
    }),
  }),
  ea_rhminmax: calcModel({
    title: 'Vapour pressure from greatest and least humidity',
    inputs: inputs(...temperatures, 'RHmax % greatest humidity', 'RHmin % least humidity'),
    outputs: outputs('ea kPa vapour pressure'),
    source: fao('eq. 17'),
    evaluate: (v) => ({
      ea: vapour.vapourFromRhRangeKpa({
        tMaxC: v.number('Tmax'),
        tMinC: v.number('Tmin'),
        rhMaxPct: v.number('RHmax'),
        rhMinPct: v.number('RHmin'),
      }),
    }),
  }),
  ea_rhmax: calcModel({
    title: 'Vapour pressure from greatest humidity',
    inputs: inputs('Tmin C lowest temperature', 'RHmax % greatest humidity'),
    outputs: outputs('ea kPa vapour pressure'),
    source: fao('eq. 18'),
    evaluate: (v) => ({ ea: vapour.vapourFromRhMaxKpa(v.number('Tmin'), v.number('RHmax')) }),
  }),
  ea_rhmean: calcModel({
    title: 'Vapour pressure from mean humidity',
    inputs: inputs(...temperatures, 'RHmean % mean humidity'),
    outputs: outputs('ea kPa vapour pressure'),
    source: fao('eq. 19'),
    evaluate: (v) => ({ ea: vapour.vapourFromRhMeanKpa(v.number('Tmax'), v.number('Tmin'), v.number('RHmean')) }),
  }),
  u2: calcModel({
    title: 'Wind at 2 m',
    inputs: inputs('uz m/s wind at the gauge', 'z m height of the gauge'),
    outputs: outputs('u2 m/s wind at 2 m'),
    source: fao('eq. 47'),
    evaluate: (v) => ({ u2: eto.wind2mMS(v.number('uz'), v.number('z')) }),
  }),
};

export const radiationModels: Readonly<Record<string, CalcModel>> = {
  Ra: calcModel({
    title: 'Radiation above the air',
    inputs: inputs(...latJ),
    outputs: outputs('Ra MJ/m2/d radiation above the air'),
    source: fao('eq. 21'),
    evaluate: (v) => ({ Ra: raOf(v) }),
  }),
  Ra_parts: calcModel({
    title: 'Radiation above the air, with its parts',
    inputs: inputs(...latJ),
    outputs: outputs(
      'dr - inverse relative distance of the sun',
      'decl rad declination',
      'ws rad sunset hour angle',
      'Ra MJ/m2/d radiation above the air',
    ),
    source: fao('eqs 21-25'),
    evaluate: (v) => ({
      dr: radiation.sunDistanceFactor(v.number('J')),
      decl: radiation.declinationRad(v.number('J')),
      ws: radiation.sunsetAngleRad(v.number('lat'), v.number('J')),
      Ra: raOf(v),
    }),
  }),
  N: calcModel({
    title: 'Possible sunshine',
    inputs: inputs(...latJ),
    outputs: outputs('N h possible sunshine'),
    source: fao('eq. 34'),
    evaluate: (v) => ({ N: possibleOf(v) }),
  }),
  polar: calcModel({
    title: 'Sunset angle where the sun does not set or rise',
    inputs: inputs(...latJ),
    outputs: outputs('ws rad sunset hour angle'),
    source: fao('eq. 25, held within 0 and pi'),
    evaluate: (v) => ({ ws: radiation.sunsetAngleRad(v.number('lat'), v.number('J')) }),
  }),
  Rs_sunshine: calcModel({
    title: 'Solar radiation from sunshine',
    inputs: inputs(...latJ, 'n h hours of sunshine'),
    outputs: outputs('Ra MJ/m2/d radiation above the air', 'N h possible sunshine', 'Rs MJ/m2/d solar radiation'),
    source: fao('eq. 35'),
    evaluate: (v) => ({
      Ra: raOf(v),
      N: possibleOf(v),
      Rs: radiation.solarFromSunshineMjM2(raOf(v), v.number('n'), possibleOf(v)),
    }),
  }),
  Rs_temperature: calcModel({
    title: 'Solar radiation from the range of temperature',
    inputs: inputs('Ra MJ/m2/d radiation above the air', ...temperatures, 'kRs C^-0.5 0.16 inland, 0.19 coast'),
    outputs: outputs('Rs MJ/m2/d solar radiation'),
    source: fao('eq. 50'),
    evaluate: (v) => ({
      Rs: radiation.solarFromTemperatureMjM2(v.number('Ra'), v.number('Tmax') - v.number('Tmin'), v.number('kRs')),
    }),
  }),
  Rnl: calcModel({
    title: 'Net long-wave radiation',
    inputs: inputs(
      ...temperatures,
      'ea kPa vapour pressure',
      'Rs MJ/m2/d solar radiation',
      'Rso MJ/m2/d under a clear sky',
    ),
    outputs: outputs('Rnl MJ/m2/d net long-wave radiation'),
    source: fao('eq. 39'),
    evaluate: (v) => ({ Rnl: longWaveOf(v, v.number('ea'), v.number('Rso')) }),
  }),
  Rn: calcModel({
    title: 'Net radiation',
    inputs: inputs('Rs MJ/m2/d solar radiation', 'Rnl MJ/m2/d net long-wave radiation'),
    outputs: outputs('Rns MJ/m2/d net short-wave radiation', 'Rn MJ/m2/d net radiation'),
    source: fao('eqs 38, 40'),
    evaluate: (v) => ({
      Rns: radiation.netShortWaveMjM2(v.number('Rs')),
      Rn: radiation.netShortWaveMjM2(v.number('Rs')) - v.number('Rnl'),
    }),
  }),
  radiation_chain: calcModel({
    title: 'Vapour and radiation of a day',
    inputs: inputs(...place, 'RHmax % greatest humidity', 'RHmin % least humidity', 'Rs MJ/m2/d solar radiation'),
    outputs: outputs(
      'ea kPa vapour pressure',
      'es kPa saturation pressure',
      'Ra MJ/m2/d radiation above the air',
      'Rso MJ/m2/d under a clear sky',
      'Rnl MJ/m2/d net long-wave radiation',
    ),
    source: fao('eqs 12, 17, 21, 37, 39'),
    evaluate: (v) => {
      const ea = vapour.vapourFromRhRangeKpa({
        tMaxC: v.number('Tmax'),
        tMinC: v.number('Tmin'),
        rhMaxPct: v.number('RHmax'),
        rhMinPct: v.number('RHmin'),
      });
      const Rso = radiation.clearSkyMjM2(raOf(v), v.number('z'));
      return {
        ea,
        es: vapour.meanSaturationKpa(v.number('Tmax'), v.number('Tmin')),
        Ra: raOf(v),
        Rso,
        Rnl: longWaveOf(v, ea, Rso),
      };
    },
  }),
  G_month: calcModel({
    title: 'Soil heat of a month',
    inputs: inputs('Tprev C mean of the month before', 'Tnext C mean of the month after'),
    outputs: outputs('G MJ/m2/d heat into the soil'),
    source: fao('eq. 43'),
    evaluate: (v) => ({ G: monthly.soilHeatBetweenMonthsMjM2(v.number('Tprev'), v.number('Tnext')) }),
  }),
};
