/** Hours of a day and the blight rules by name. */
import { type BlightRule, blightOfDays, blightRulesMet } from '../../pests/blight.ts';
import { humidityAtPct, temperatureAtHourC } from '../../weather/hours-of-day.ts';
import { saturationKpa } from '../../weather/vapour-pressure.ts';
import { type CalcModel, type CalcValues, calcModel, noAnswer } from '../calc-model.ts';
import { inputs, outputs } from '../input-list.ts';

export const pestModels: Readonly<Record<string, CalcModel>> = {
  hourly_T: calcModel({
    title: 'Temperature at an hour of local solar time',
    inputs: inputs(
      'lat deg latitude, south negative',
      'J d day of the year',
      'Tmin C lowest temperature',
      'Tmax C highest temperature',
      'Tmin_next C lowest temperature of the coming morning',
      'hour h hour of local solar time, 0 to 24',
    ),
    outputs: outputs('T C temperature'),
    source: 'Parton & Logan 1981 in the form of Wann et al. 1985, the night ending at its lowest',
    evaluate: (v) => ({ T: temperatureAtHourC(dayOf(v), v.number('hour')) }),
  }),
  hourly_RH: calcModel({
    title: 'Relative humidity from temperature and dew point',
    inputs: inputs('T C temperature', 'Tdew C dew point'),
    outputs: outputs('RH % relative humidity'),
    source: 'FAO-56 (Allen et al. 1998) eqs 10 and 11',
    evaluate: (v) => ({ RH: humidityAtPct(v.number('T'), saturationKpa(v.number('Tdew'))) }),
  }),
  blight_rule: calcModel({
    title: 'Blight: the rules that two days on end meet',
    inputs: inputs(
      'Tmin rows:C lowest temperatures, two days a row',
      'RH90_hours rows:h hours at 90 % humidity or more, two days a row',
    ),
    outputs: outputs(
      'hutton - Hutton criteria',
      'smith - full Smith period',
      'smith_near - near miss of a Smith period',
    ),
    source: 'James Hutton Institute and AHDB 2017; Smith 1956',
    evaluate: (v) => {
      const [cold, damp] = [v.rows('Tmin'), v.rows('RH90_hours')];
      if (cold.length !== damp.length) return noAnswer('RH90_hours', 'as many rows as Tmin has');
      const met = cold.map((row, at) => blightRulesMet(dampDay(row, damp[at], 0), dampDay(row, damp[at], 1)));
      const has = (rule: BlightRule) => met.map((rules) => rules.includes(rule));
      return { hutton: has('hutton'), smith: has('smith'), smith_near: has('smith-near') };
    },
  }),
  blight_answer: calcModel({
    title: 'Blight: what may be said by the kind of humidity record',
    inputs: inputs('humidity text:- hourly, none or normals'),
    outputs: outputs('answer - verdict or cannot say'),
    source: 'our rule: without a humidity record nothing is said',
    evaluate: (v) => {
      const humidity = v.text('humidity').trim().toLowerCase();
      if (!['hourly', 'none', 'normals'].includes(humidity)) return noAnswer('humidity', 'hourly, none or normals');
      return { answer: answerFor(humidity) };
    },
  }),
};

function dayOf(v: CalcValues) {
  return {
    latDeg: v.number('lat'),
    dayOfYear: v.number('J'),
    tMinC: v.number('Tmin'),
    tMaxC: v.number('Tmax'),
    tMinNextC: v.number('Tmin_next'),
  };
}

function dampDay(cold: readonly unknown[], damp: readonly unknown[] | undefined, at: number) {
  return { tMinC: Number(cold[at]), dampH: Number(damp?.[at]) };
}

/** Two warm days as such a record would hold them, put to the rule itself. */
function answerFor(humidity: string): string {
  const hours = Array.from({ length: 24 }, () => ({ tC: 15, rhPct: 95 }));
  const days = [0, 1].map((day) => ({
    day,
    tMinC: 12,
    tMaxC: 18,
    ...(humidity === 'hourly' ? { hours } : {}),
  }));
  return blightOfDays(days, 52)[1]?.verdict === 'cannot-say' ? 'cannot say' : 'verdict';
}
