/** Day length, degree-days and emergence by name. */
import {
  celsiusDegreeDays,
  daysAtConstant,
  degreeDaysByHeldMean,
  degreeDaysByMean,
  degreeDaysBySine,
  degreeDaysBySineCutOff,
} from '../growth/degree-days.ts';
import { emergenceDays, emergenceTableCrops } from '../growth/emergence.ts';
import { dayLengthFaoH, dayLengthH, shortDaySpan } from '../weather/day-length.ts';
import { type CalcModel, type CalcValues, calcModel, noAnswer } from './calc-model.ts';
import { inputs, outputs } from './input-list.ts';
import { meanEqualsSineAboveBase } from './properties.ts';

const latJ = inputs('lat deg latitude, south negative', 'J d day of the year');
const day = ['Tmin deg lowest temperature', 'Tmax deg highest temperature', 'Tbase deg base temperature'] as const;
const degreeDays = outputs('GDD deg_d degree-days of the day');
const range = (v: CalcValues) => ({ tMax: v.number('Tmax'), tMin: v.number('Tmin') });

export const thermalModels: Readonly<Record<string, CalcModel>> = {
  N_fao: calcModel({
    title: 'Day length without refraction',
    inputs: latJ,
    outputs: outputs('h h day length'),
    source: 'FAO-56 (Allen et al. 1998) eq. 34',
    evaluate: (v) => ({ h: dayLengthFaoH(v.number('lat'), v.number('J')) }),
  }),
  'CBM_p0.8333': calcModel({
    title: 'Day length with refraction',
    inputs: latJ,
    outputs: outputs('h h day length'),
    source: 'Forsythe et al. 1995, Ecological Modelling 80:87',
    evaluate: (v) => ({ h: dayLengthH(v.number('lat'), v.number('J')) }),
  }),
  ten_hour_period_CBM: calcModel({
    title: 'Winter span of days under ten hours',
    inputs: inputs('lat deg latitude'),
    outputs: outputs('first_doy_below_10h_autumn__last_doy_below_10h_spring d first and last day of the year'),
    source: 'Forsythe et al. 1995, year of 365 days',
    evaluate: (v) => {
      const span = shortDaySpan(v.number('lat'));
      return {
        first_doy_below_10h_autumn__last_doy_below_10h_spring:
          span === null ? null : [span.firstDayOfYear, span.lastDayOfYear],
      };
    },
  }),
  avg: calcModel({
    title: 'Degree-days by the mean',
    inputs: inputs(
      'Tbase deg base temperature',
      'Tmin? deg lowest temperature',
      'Tmax? deg highest temperature',
      'mean? deg mean temperature',
      'unit? label:- F or C, the same for all',
    ),
    outputs: degreeDays,
    source: 'Wilson & Barnett 1983, California Agriculture 37(1):4',
    evaluate: (v) => {
      if (!v.given('mean') && !(v.given('Tmin') && v.given('Tmax')))
        return noAnswer('Tmin', 'give Tmin and Tmax, or mean');
      return { GDD: degreeDaysByMean(v.maybe('mean') ?? (v.number('Tmin') + v.number('Tmax')) / 2, v.number('Tbase')) };
    },
  }),
  single_sine: calcModel({
    title: 'Degree-days by the sine',
    inputs: inputs(...day),
    outputs: degreeDays,
    source: 'Baskerville & Emin 1969',
    evaluate: (v) => ({ GDD: degreeDaysBySine(range(v), v.number('Tbase')) }),
  }),
  single_sine_horizontal_cutoff: calcModel({
    title: 'Degree-days by the sine with an upper limit',
    inputs: inputs(...day, 'Tupper deg upper limit'),
    outputs: degreeDays,
    source: 'Baskerville & Emin 1969; Zalom et al. 1983',
    evaluate: (v) => ({ GDD: degreeDaysBySineCutOff(range(v), v.number('Tbase'), v.number('Tupper')) }),
  }),
  corn_mod_avg: calcModel({
    title: 'Degree-days by the held mean',
    inputs: inputs(...day, 'Tcut deg upper limit'),
    outputs: degreeDays,
    source: 'US corn 86/50 method',
    evaluate: (v) => ({ GDD: degreeDaysByHeldMean(range(v), v.number('Tbase'), v.number('Tcut')) }),
  }),
  emergence_days: calcModel({
    title: 'Days to emergence at a constant soil temperature',
    inputs: inputs('crop text:- vegetable of the table', 'Tsoil_const C soil temperature'),
    outputs: outputs('days d days from sowing'),
    source: 'Harrington & Minges 1954',
    evaluate: (v) => {
      const crop = v.text('crop').trim().toLowerCase();
      if (!emergenceTableCrops().includes(crop)) return noAnswer('crop', `"${v.text('crop')}" is not in the table`);
      return { days: emergenceDays(crop, v.number('Tsoil_const')) };
    },
  }),
  germination_50pct: calcModel({
    title: 'Days to half germinated',
    inputs: inputs('crop? label:- name', 'Tb C base temperature', 'S C_d thermal time', 'T C temperature'),
    outputs: outputs('days d days from sowing'),
    source: 'Brewster 2008, Onions and Other Vegetable Alliums, eq. 4.7',
    evaluate: (v) => ({ days: daysAtConstant(v.number('T'), v.number('Tb'), v.number('S')) }),
  }),
  Tmean_methods_equal: calcModel({
    title: 'Mean and sine agree above the base',
    inputs: [],
    outputs: outputs('ok - whether the rule holds over a grid of days'),
    source: 'identity',
    evaluate: () => ({ ok: meanEqualsSineAboveBase() }),
  }),
  F_to_C_degree_days: calcModel({
    title: 'Degree-days Fahrenheit in Celsius',
    inputs: inputs('F F_d degree-days Fahrenheit'),
    outputs: outputs('C C_d degree-days Celsius'),
    source: '1.8 °F to 1 °C',
    evaluate: (v) => ({ C: celsiusDegreeDays(v.number('F')) }),
  }),
};
