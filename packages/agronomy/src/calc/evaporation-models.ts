/** Reference evapotranspiration and its parts by name. */
import * as monthly from '../weather/monthly-evapotranspiration.ts';
import * as radiation from '../weather/radiation.ts';
import * as eto from '../weather/reference-evapotranspiration.ts';
import * as vapour from '../weather/vapour-pressure.ts';
import { type CalcModel, type CalcValues, calcModel } from './calc-model.ts';
import { inputs, outputs } from './input-list.ts';
import { evapotranspirationClippingHolds } from './properties.ts';

const fao = (what: string) => `FAO-56 (Allen et al. 1998) ${what}`;
const latJ = ['lat deg latitude, south negative', 'J d day of the year'] as const;
const temperatures = ['Tmax C highest temperature', 'Tmin C lowest temperature'] as const;
const place = ['lat deg latitude, south negative', 'z m height of the place', 'J d day of the year', ...temperatures] as const;

const airModels: Readonly<Record<string, CalcModel>> = {
  pressure: calcModel({ title: 'Air pressure', inputs: inputs('z_m m height of the place'), outputs: outputs('P_kPa kPa air pressure'), source: fao('eq. 7'), evaluate: (v) => ({ P_kPa: vapour.airPressureKpa(v.number('z_m')) }) }),
  gamma: calcModel({ title: 'Psychrometric constant', inputs: inputs('P_kPa kPa air pressure'), outputs: outputs('gamma kPa/C psychrometric constant'), source: fao('eq. 8'), evaluate: (v) => ({ gamma: vapour.psychrometricKpaC(v.number('P_kPa')) }) }),
  e0: calcModel({ title: 'Saturation vapour pressure', inputs: inputs('T C temperature'), outputs: outputs('e0 kPa saturation pressure'), source: fao('eq. 11'), evaluate: (v) => ({ e0: vapour.saturationKpa(v.number('T')) }) }),
  es: calcModel({ title: 'Mean saturation vapour pressure', inputs: inputs(...temperatures), outputs: outputs('es kPa mean saturation pressure'), source: fao('eq. 12'), evaluate: (v) => ({ es: vapour.meanSaturationKpa(v.number('Tmax'), v.number('Tmin')) }) }),
  delta: calcModel({ title: 'Slope of the saturation curve', inputs: inputs('T C temperature'), outputs: outputs('delta kPa/C slope'), source: fao('eq. 13'), evaluate: (v) => ({ delta: vapour.saturationSlopeKpaC(v.number('T')) }) }),
  ea_psychrometer: calcModel({
    title: 'Vapour pressure from wet and dry bulb', inputs: inputs('Twet C wet bulb', 'Tdry C dry bulb', 'P_kPa kPa air pressure', 'a_psy 1/C coefficient of the instrument'),
    outputs: outputs('ea kPa vapour pressure'), source: fao('eqs 15, 16'),
    evaluate: (v) => ({ ea: vapour.vapourFromBulbsKpa({ wetC: v.number('Twet'), dryC: v.number('Tdry'), pressureKpa: v.number('P_kPa'), coefficientPerC: v.number('a_psy') }) }),
  }),
  ea_rhminmax: calcModel({
    title: 'Vapour pressure from greatest and least humidity', inputs: inputs(...temperatures, 'RHmax % greatest humidity', 'RHmin % least humidity'), outputs: outputs('ea kPa vapour pressure'), source: fao('eq. 17'),
    evaluate: (v) => ({ ea: vapour.vapourFromRhRangeKpa({ tMaxC: v.number('Tmax'), tMinC: v.number('Tmin'), rhMaxPct: v.number('RHmax'), rhMinPct: v.number('RHmin') }) }),
  }),
  ea_rhmax: calcModel({ title: 'Vapour pressure from greatest humidity', inputs: inputs('Tmin C lowest temperature', 'RHmax % greatest humidity'), outputs: outputs('ea kPa vapour pressure'), source: fao('eq. 18'), evaluate: (v) => ({ ea: vapour.vapourFromRhMaxKpa(v.number('Tmin'), v.number('RHmax')) }) }),
  ea_rhmean: calcModel({ title: 'Vapour pressure from mean humidity', inputs: inputs(...temperatures, 'RHmean % mean humidity'), outputs: outputs('ea kPa vapour pressure'), source: fao('eq. 19'), evaluate: (v) => ({ ea: vapour.vapourFromRhMeanKpa(v.number('Tmax'), v.number('Tmin'), v.number('RHmean')) }) }),
  u2: calcModel({ title: 'Wind at 2 m', inputs: inputs('uz m/s wind at the gauge', 'z m height of the gauge'), outputs: outputs('u2 m/s wind at 2 m'), source: fao('eq. 47'), evaluate: (v) => ({ u2: eto.wind2mMS(v.number('uz'), v.number('z')) }) }),
};

const radiationModels: Readonly<Record<string, CalcModel>> = {
  Ra: calcModel({ title: 'Radiation above the air', inputs: inputs(...latJ), outputs: outputs('Ra MJ/m2/d radiation above the air'), source: fao('eq. 21'), evaluate: (v) => ({ Ra: raOf(v) }) }),
  Ra_parts: calcModel({
    title: 'Radiation above the air, with its parts', inputs: inputs(...latJ), outputs: outputs('dr - inverse relative distance of the sun', 'decl rad declination', 'ws rad sunset hour angle', 'Ra MJ/m2/d radiation above the air'), source: fao('eqs 21-25'),
    evaluate: (v) => ({ dr: radiation.sunDistanceFactor(v.number('J')), decl: radiation.declinationRad(v.number('J')), ws: radiation.sunsetAngleRad(v.number('lat'), v.number('J')), Ra: raOf(v) }),
  }),
  N: calcModel({ title: 'Possible sunshine', inputs: inputs(...latJ), outputs: outputs('N h possible sunshine'), source: fao('eq. 34'), evaluate: (v) => ({ N: possibleOf(v) }) }),
  polar: calcModel({ title: 'Sunset angle where the sun does not set or rise', inputs: inputs(...latJ), outputs: outputs('ws rad sunset hour angle'), source: fao('eq. 25, held within 0 and pi'), evaluate: (v) => ({ ws: radiation.sunsetAngleRad(v.number('lat'), v.number('J')) }) }),
  Rs_sunshine: calcModel({
    title: 'Solar radiation from sunshine', inputs: inputs(...latJ, 'n h hours of sunshine'), outputs: outputs('Ra MJ/m2/d radiation above the air', 'N h possible sunshine', 'Rs MJ/m2/d solar radiation'), source: fao('eq. 35'),
    evaluate: (v) => ({ Ra: raOf(v), N: possibleOf(v), Rs: radiation.solarFromSunshineMjM2(raOf(v), v.number('n'), possibleOf(v)) }),
  }),
  Rs_temperature: calcModel({
    title: 'Solar radiation from the range of temperature', inputs: inputs('Ra MJ/m2/d radiation above the air', ...temperatures, 'kRs C^-0.5 0.16 inland, 0.19 coast'), outputs: outputs('Rs MJ/m2/d solar radiation'), source: fao('eq. 50'),
    evaluate: (v) => ({ Rs: radiation.solarFromTemperatureMjM2(v.number('Ra'), v.number('Tmax') - v.number('Tmin'), v.number('kRs')) }),
  }),
  Rnl: calcModel({
    title: 'Net long-wave radiation', inputs: inputs(...temperatures, 'ea kPa vapour pressure', 'Rs MJ/m2/d solar radiation', 'Rso MJ/m2/d under a clear sky'), outputs: outputs('Rnl MJ/m2/d net long-wave radiation'), source: fao('eq. 39'),
    evaluate: (v) => ({ Rnl: longWaveOf(v, v.number('ea'), v.number('Rso')) }),
  }),
  Rn: calcModel({
    title: 'Net radiation', inputs: inputs('Rs MJ/m2/d solar radiation', 'Rnl MJ/m2/d net long-wave radiation'), outputs: outputs('Rns MJ/m2/d net short-wave radiation', 'Rn MJ/m2/d net radiation'), source: fao('eqs 38, 40'),
    evaluate: (v) => ({ Rns: radiation.netShortWaveMjM2(v.number('Rs')), Rn: radiation.netShortWaveMjM2(v.number('Rs')) - v.number('Rnl') }),
  }),
  radiation_chain: calcModel({
    title: 'Vapour and radiation of a day', inputs: inputs(...place, 'RHmax % greatest humidity', 'RHmin % least humidity', 'Rs MJ/m2/d solar radiation'),
    outputs: outputs('ea kPa vapour pressure', 'es kPa saturation pressure', 'Ra MJ/m2/d radiation above the air', 'Rso MJ/m2/d under a clear sky', 'Rnl MJ/m2/d net long-wave radiation'), source: fao('eqs 12, 17, 21, 37, 39'),
    evaluate: (v) => {
      const ea = vapour.vapourFromRhRangeKpa({ tMaxC: v.number('Tmax'), tMinC: v.number('Tmin'), rhMaxPct: v.number('RHmax'), rhMinPct: v.number('RHmin') });
      const Rso = radiation.clearSkyMjM2(raOf(v), v.number('z'));
      return { ea, es: vapour.meanSaturationKpa(v.number('Tmax'), v.number('Tmin')), Ra: raOf(v), Rso, Rnl: longWaveOf(v, ea, Rso) };
    },
  }),
  G_month: calcModel({ title: 'Soil heat of a month', inputs: inputs('Tprev C mean of the month before', 'Tnext C mean of the month after'), outputs: outputs('G MJ/m2/d heat into the soil'), source: fao('eq. 43'), evaluate: (v) => ({ G: monthly.soilHeatBetweenMonthsMjM2(v.number('Tprev'), v.number('Tnext')) }) }),
};

const evaporationModelsOnly: Readonly<Record<string, CalcModel>> = {
  ETo_day: calcModel({
    title: 'Reference evapotranspiration of a day',
    inputs: inputs(...place, 'ea? kPa vapour pressure', 'RHmax? % greatest humidity', 'RHmin? % least humidity', 'u2? m/s wind at 2 m', 'u10_kmh? km/h wind at 10 m', 'uz? m/s wind at the gauge', 'zw? m height of the gauge', 'Rs? MJ/m2/d solar radiation', 'n? h hours of sunshine', 'N? h possible sunshine, instead of our own', 'Rso? MJ/m2/d clear sky, instead of our own'),
    outputs: outputs('ETo mm/d reference evapotranspiration', 'es kPa saturation pressure', 'ea kPa vapour pressure', 'vpd kPa deficit', 'Ra MJ/m2/d radiation above the air', 'N h possible sunshine', 'Rs MJ/m2/d solar radiation', 'Rso MJ/m2/d under a clear sky', 'Rn MJ/m2/d net radiation', 'u2 m/s wind at 2 m', 'rungs - what each input rested on'), source: fao('eq. 6'),
    evaluate: (v) => {
      const day = eto.referenceEvapotranspiration(dayOf(v), { latDeg: v.number('lat'), elevationM: v.number('z') });
      return {
        ETo: day.etoMm, es: day.saturationKpa, ea: day.vapourKpa, vpd: day.saturationKpa - day.vapourKpa, Ra: day.raMjM2, N: day.possibleSunH, Rs: day.solarMjM2, Rso: day.clearSkyMjM2,
        Rn: day.netRadiationMjM2, u2: day.wind2mMS, rungs: `humidity: ${day.humidityRung}; radiation: ${day.radiationRung}; wind: ${day.windRung}`,
      };
    },
  }),
  ETo_day_missing_data: calcModel({
    title: 'Reference evapotranspiration from temperatures only', inputs: inputs(...place), outputs: outputs('ETo mm/d reference evapotranspiration', 'es kPa saturation pressure', 'ea kPa vapour pressure', 'Ra MJ/m2/d radiation above the air', 'Rs MJ/m2/d solar radiation'), source: fao('eqs 48, 50, 6'),
    evaluate: (v) => {
      const day = eto.referenceEvapotranspiration({ dayOfYear: v.number('J'), tMaxC: v.number('Tmax'), tMinC: v.number('Tmin') }, { latDeg: v.number('lat'), elevationM: v.number('z') });
      return { ETo: day.etoMm, es: day.saturationKpa, ea: day.vapourKpa, Ra: day.raMjM2, Rs: day.solarMjM2 };
    },
  }),
  ETo_month: calcModel({
    title: 'Reference evapotranspiration of a month', inputs: inputs(...place, 'ea kPa vapour pressure', 'u2 m/s wind at 2 m', 'n h sunshine a day', 'Tmean_prev_month C mean of the month before'),
    outputs: outputs('ETo mm/d reference evapotranspiration', 'es kPa saturation pressure', 'delta kPa/C slope', 'gamma kPa/C psychrometric constant', 'Ra MJ/m2/d radiation above the air', 'N h possible sunshine', 'Rs MJ/m2/d solar radiation', 'Rn MJ/m2/d net radiation', 'G MJ/m2/d heat into the soil'), source: fao('eqs 6, 44'),
    evaluate: (v) => {
      const month = monthly.monthlyEvapotranspiration({
        latDeg: v.number('lat'), elevationM: v.number('z'), dayOfYear: v.number('J'), tMaxC: v.number('Tmax'), tMinC: v.number('Tmin'), vapourKpa: v.number('ea'), wind2mMS: v.number('u2'), sunH: v.number('n'), tMeanBeforeC: v.number('Tmean_prev_month'),
      });
      return { ETo: month.etoMm, es: month.saturationKpa, delta: month.slopeKpaC, gamma: month.gammaKpaC, Ra: month.raMjM2, N: month.possibleSunH, Rs: month.solarMjM2, Rn: month.netRadiationMjM2, G: month.soilHeatMjM2 };
    },
  }),
  Hargreaves: calcModel({
    title: 'Evapotranspiration from temperature (Hargreaves)', inputs: inputs(...temperatures, 'Tmean? C mean temperature', 'lat? deg latitude', 'J? d day of the year', 'Ra? MJ/m2/d radiation above the air'), outputs: outputs('ETo mm/d reference evapotranspiration'), source: fao('eq. 52'),
    evaluate: (v) => {
      if (!v.given('Ra') && !(v.given('lat') && v.given('J'))) return { ETo: null };
      const tMeanC = v.maybe('Tmean');
      return { ETo: eto.hargreavesMm(v.number('Tmax'), v.number('Tmin'), { raMjM2: v.maybe('Ra') ?? raOf(v), ...(tMeanC === null ? {} : { tMeanC }) }) };
    },
  }),
  ETo_invariant: calcModel({ title: 'Clipping rules hold', inputs: [], outputs: outputs('ok - whether the rules hold over a grid of days'), source: fao('chapter 3; ASCE 2005'), evaluate: () => ({ ok: evapotranspirationClippingHolds() }) }),
};

export const evaporationModels: Readonly<Record<string, CalcModel>> = { ...airModels, ...radiationModels, ...evaporationModelsOnly };

function raOf(v: CalcValues): number {
  return radiation.extraterrestrialMjM2(v.number('lat'), v.number('J'));
}

function possibleOf(v: CalcValues): number {
  return radiation.sunHoursPossible(v.number('lat'), v.number('J'));
}

function longWaveOf(v: CalcValues, vapourKpa: number, clearMjM2: number): number {
  const bright = radiation.brightness(v.number('Rs'), clearMjM2) ?? 0.65;
  return radiation.netLongWaveMjM2({ tMaxC: v.number('Tmax'), tMinC: v.number('Tmin'), vapourKpa, brightness: bright });
}

function dayOf(v: CalcValues): eto.EvapotranspirationDay {
  const [windMS, windHeightM] = v.given('u2') ? [v.maybe('u2'), 2] : v.given('u10_kmh') ? [v.number('u10_kmh') / 3.6, 10] : [v.maybe('uz'), v.maybe('zw') ?? 2];
  return {
    dayOfYear: v.number('J'), tMaxC: v.number('Tmax'), tMinC: v.number('Tmin'), vapourKpa: v.maybe('ea'), rhMaxPct: v.maybe('RHmax'), rhMinPct: v.maybe('RHmin'), windMS, windHeightM,
    solarMjM2: v.maybe('Rs'), sunH: v.maybe('n'), possibleSunH: v.maybe('N'), clearSkyMjM2: v.maybe('Rso'),
  };
}
