/** Reference evapotranspiration by name, of a day, of a month, and from temperature alone. */
import * as monthly from '../weather/monthly-evapotranspiration.ts';
import * as eto from '../weather/reference-evapotranspiration.ts';
import { type CalcModel, type CalcValues, calcModel, noAnswer } from './calc-model.ts';
import { fao, place, raOf, temperatures } from './evaporation-inputs.ts';
import { inputs, outputs } from './input-list.ts';
import { evapotranspirationClippingHolds } from './properties.ts';

export const evaporationModels: Readonly<Record<string, CalcModel>> = {
  ETo_day: calcModel({
    title: 'Reference evapotranspiration of a day',
    inputs: inputs(
      ...place,
      'ea? kPa vapour pressure',
      'RHmax? % greatest humidity',
      'RHmin? % least humidity',
      'Tdew? C dew point',
      'RHmean? % mean humidity',
      'u2? m/s wind at 2 m',
      'u10_kmh? km/h wind at 10 m',
      'uz? m/s wind at the gauge',
      'zw? m height of the gauge',
      'Rs? MJ/m2/d solar radiation',
      'n? h hours of sunshine',
      'N? h possible sunshine, instead of our own',
      'Rso? MJ/m2/d clear sky, instead of our own',
      'coast? - 1 where the sea is near and radiation must be guessed from temperature',
    ),
    outputs: outputs(
      'ETo mm/d reference evapotranspiration',
      'es kPa saturation pressure',
      'ea kPa vapour pressure',
      'vpd kPa deficit',
      'Ra MJ/m2/d radiation above the air',
      'N h possible sunshine',
      'Rs MJ/m2/d solar radiation',
      'Rso MJ/m2/d under a clear sky',
      'Rn MJ/m2/d net radiation',
      'u2 m/s wind at 2 m',
      'rungs - what each input rested on',
    ),
    source: fao('eq. 6'),
    evaluate: (v) => {
      const day = eto.referenceEvapotranspiration(dayOf(v), {
        latDeg: v.number('lat'),
        elevationM: v.number('z'),
        coast: v.maybe('coast') === 1,
      });
      return {
        ETo: day.etoMm,
        es: day.saturationKpa,
        ea: day.vapourKpa,
        vpd: day.saturationKpa - day.vapourKpa,
        Ra: day.raMjM2,
        N: day.possibleSunH,
        Rs: day.solarMjM2,
        Rso: day.clearSkyMjM2,
        Rn: day.netRadiationMjM2,
        u2: day.wind2mMS,
        rungs: `humidity: ${day.humidityRung}; radiation: ${day.radiationRung}; wind: ${day.windRung}`,
      };
    },
  }),
  ETo_day_missing_data: calcModel({
    title: 'Reference evapotranspiration from temperatures only',
    inputs: inputs(...place),
    outputs: outputs(
      'ETo mm/d reference evapotranspiration',
      'es kPa saturation pressure',
      'ea kPa vapour pressure',
      'Ra MJ/m2/d radiation above the air',
      'Rs MJ/m2/d solar radiation',
    ),
    source: fao('eqs 48, 50, 6'),
    evaluate: (v) => {
      const day = eto.referenceEvapotranspiration(
        { dayOfYear: v.number('J'), tMaxC: v.number('Tmax'), tMinC: v.number('Tmin') },
        { latDeg: v.number('lat'), elevationM: v.number('z') },
      );
      return { ETo: day.etoMm, es: day.saturationKpa, ea: day.vapourKpa, Ra: day.raMjM2, Rs: day.solarMjM2 };
    },
  }),
  ETo_month: calcModel({
    title: 'Reference evapotranspiration of a month',
    inputs: inputs(
      ...place,
      'ea kPa vapour pressure',
      'u2 m/s wind at 2 m',
      'n h sunshine a day',
      'Tmean_prev_month C mean of the month before',
    ),
    outputs: outputs(
      'ETo mm/d reference evapotranspiration',
      'es kPa saturation pressure',
      'delta kPa/C slope',
      'gamma kPa/C psychrometric constant',
      'Ra MJ/m2/d radiation above the air',
      'N h possible sunshine',
      'Rs MJ/m2/d solar radiation',
      'Rn MJ/m2/d net radiation',
      'G MJ/m2/d heat into the soil',
    ),
    source: fao('eqs 6, 44'),
    evaluate: (v) => {
      const month = monthly.monthlyEvapotranspiration({
        latDeg: v.number('lat'),
        elevationM: v.number('z'),
        dayOfYear: v.number('J'),
        tMaxC: v.number('Tmax'),
        tMinC: v.number('Tmin'),
        vapourKpa: v.number('ea'),
        wind2mMS: v.number('u2'),
        sunH: v.number('n'),
        tMeanBeforeC: v.number('Tmean_prev_month'),
      });
      return {
        ETo: month.etoMm,
        es: month.saturationKpa,
        delta: month.slopeKpaC,
        gamma: month.gammaKpaC,
        Ra: month.raMjM2,
        N: month.possibleSunH,
        Rs: month.solarMjM2,
        Rn: month.netRadiationMjM2,
        G: month.soilHeatMjM2,
      };
    },
  }),
  Hargreaves: calcModel({
    title: 'Evapotranspiration from temperature (Hargreaves)',
    inputs: inputs(
      ...temperatures,
      'Tmean? C mean temperature',
      'lat? deg latitude',
      'J? d day of the year',
      'Ra? MJ/m2/d radiation above the air',
    ),
    outputs: outputs('ETo mm/d reference evapotranspiration'),
    source: fao('eq. 52'),
    evaluate: (v) => {
      if (!v.given('Ra') && !(v.given('lat') && v.given('J'))) return noAnswer('Ra', 'give lat and J, or Ra');
      const tMeanC = v.maybe('Tmean');
      return {
        ETo: eto.hargreavesMm(v.number('Tmax'), v.number('Tmin'), {
          raMjM2: v.maybe('Ra') ?? raOf(v),
          ...(tMeanC === null ? {} : { tMeanC }),
        }),
      };
    },
  }),
  ETo_invariant: calcModel({
    title: 'Clipping rules hold',
    inputs: [],
    outputs: outputs('ok - whether the rules hold over a grid of days'),
    source: fao('chapter 3; ASCE 2005'),
    evaluate: () => ({ ok: evapotranspirationClippingHolds() }),
  }),
};

function dayOf(v: CalcValues): eto.EvapotranspirationDay {
  const [windMS, windHeightM] = v.given('u2')
    ? [v.maybe('u2'), 2]
    : v.given('u10_kmh')
      ? [v.number('u10_kmh') / 3.6, 10]
      : [v.maybe('uz'), v.maybe('zw') ?? 2];
  return {
    dayOfYear: v.number('J'),
    tMaxC: v.number('Tmax'),
    tMinC: v.number('Tmin'),
    vapourKpa: v.maybe('ea'),
    rhMaxPct: v.maybe('RHmax'),
    rhMinPct: v.maybe('RHmin'),
    dewPointC: v.maybe('Tdew'),
    rhMeanPct: v.maybe('RHmean'),
    windMS,
    windHeightM,
    solarMjM2: v.maybe('Rs'),
    sunH: v.maybe('n'),
    possibleSunH: v.maybe('N'),
    clearSkyMjM2: v.maybe('Rso'),
  };
}
