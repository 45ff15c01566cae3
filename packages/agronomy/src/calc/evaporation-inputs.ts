/** Inputs that several models of evapotranspiration share, and what is read from them. */
import * as radiation from '../weather/radiation.ts';
import type { CalcValues } from './calc-model.ts';

export const fao = (what: string) => `FAO-56 (Allen et al. 1998) ${what}`;
export const latJ = ['lat deg latitude, south negative', 'J d day of the year'] as const;
export const temperatures = ['Tmax C highest temperature', 'Tmin C lowest temperature'] as const;
export const place = [
  'lat deg latitude, south negative',
  'z m height of the place',
  'J d day of the year',
  ...temperatures,
] as const;

export function raOf(v: CalcValues): number {
  return radiation.extraterrestrialMjM2(v.number('lat'), v.number('J'));
}

export function possibleOf(v: CalcValues): number {
  return radiation.sunHoursPossible(v.number('lat'), v.number('J'));
}

export function longWaveOf(v: CalcValues, vapourKpa: number, clearMjM2: number): number {
  const bright = radiation.brightness(v.number('Rs'), clearMjM2) ?? 0.65;
  return radiation.netLongWaveMjM2({ tMaxC: v.number('Tmax'), tMinC: v.number('Tmin'), vapourKpa, brightness: bright });
}
