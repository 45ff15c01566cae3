/** The sample farm's ground: two fields of six plots, a yard with a tunnel and a strip of rhubarb, hedges, banks and margins. */
import type { Feature, Field, Plot, SoilSample } from '@leywright/book';
import { asDay, asId } from '@leywright/measures';
import { plot, type PlotPieces } from '../build/farm.ts';
import { onEarth, rowOfPlots } from './map.ts';

export const sampleFields: readonly Field[] = [
  { id: asId('north-field'), name: 'North Field', areaM2: 29_600, hedgesOver5Years: true },
  { id: asId('south-field'), name: 'South Field', areaM2: 29_400, hedgesOver5Years: true },
  { id: asId('yard'), name: 'The Yard', areaM2: 4_200, hedgesOver5Years: true },
];

/** Gross, hedge and bank are such that the net areas are 0.98, 0.74, 1.08, 0.86, 0.62 and 0.92 ha with 6 % for headlands. */
const beds: readonly (PlotPieces & { readonly letter: string; readonly grossM2: number })[] = [
  { letter: 'A', id: 'a', name: 'Ash Piece', field: 'north-field', grossM2: 10_840, hedgeM: 205, soil: 'clay loam', courseAtStart: 'ley', bedCount: 54 },
  { letter: 'B', id: 'b', name: 'Brook Doles', field: 'north-field', grossM2: 8_030, hedgeM: 80, soil: 'clay loam', courseAtStart: 'squash', bedCount: 42 },
  { letter: 'C', id: 'c', name: 'Cinder Hill', field: 'south-field', grossM2: 11_890, hedgeM: 107, bankM2: 186, soil: 'sandy loam', courseAtStart: 'brassicas', bedCount: 60 },
  { letter: 'D', id: 'd', name: 'Dovecote', field: 'north-field', grossM2: 9_510, hedgeM: 92, bankM2: 180, soil: 'sandy clay loam', courseAtStart: 'roots', bedCount: 48 },
  { letter: 'E', id: 'e', name: 'Elder Stubs', field: 'south-field', grossM2: 6_600, hedgeM: 0, soil: 'sandy loam', courseAtStart: 'potatoes', bedCount: 36 },
  { letter: 'F', id: 'f', name: 'Far Ridding', field: 'south-field', grossM2: 9_790, hedgeM: 0, soil: 'clay loam', courseAtStart: 'alliums', bedCount: 50 },
];

const yard: readonly PlotPieces[] = [
  { id: 'tunnel', name: 'The Tunnel', field: 'yard', kind: 'tunnel', grossM2: 1_200, soil: 'sandy loam', bedCentresM: 1.5, bedCount: 12 },
  { id: 'rhubarb', name: 'Rhubarb Strip', field: 'yard', kind: 'permanent', grossM2: 500, soil: 'sandy loam', bedCentresM: 1.8, bedCount: 4 },
];

export function samplePlots(): readonly Plot[] {
  const gross = (letters: string): number[] => [...letters].map((letter) => beds.find((one) => one.letter === letter)?.grossM2 ?? 0);
  const rings: Record<string, Plot['ring']> = {};
  const north = rowOfPlots(() => 9, (eastM) => 106 + 0.035 * eastM, gross('ABD'));
  const south = rowOfPlots((eastM) => -112 + 0.03 * eastM, () => 0, gross('CEF'));
  [...'ABD'].forEach((letter, at) => { rings[letter] = north[at] ?? null; });
  [...'CEF'].forEach((letter, at) => { rings[letter] = south[at] ?? null; });
  return [
    ...beds.map(({ letter, ...pieces }) => plot(letter, { ...pieces, headlandShare: 0.06, status: 'organic', statusSince: asDay('2014-03-01'), ring: rings[letter] ?? null })),
    ...yard.map((pieces, at) => plot(['T', 'R'][at] ?? '', { ...pieces, headlandShare: 0, status: 'organic', statusSince: asDay('2014-03-01') })),
  ];
}

export const sampleFeatures: readonly Feature[] = [
  feature('north-hedge', 'hedge', 'North hedge', 277, [[-2, 107], [90, 110], [180, 113], [275, 117]]),
  feature('west-hedge', 'hedge', 'West hedge', 207, [[-3, 107], [-1, 9], [-2, -100]]),
  feature('south-windbreak', 'windbreak', 'South windbreak', 193, [[-4, -116], [90, -113], [189, -110]]),
  feature('bank-c-e', 'beetle-bank', 'Bank, C to E', 93, [[104, -105], [108, -12]], 186),
  feature('bank-b-d', 'beetle-bank', 'Bank, B to D', 90, [[184, 14], [186, 104]], 180),
  feature('east-margin', 'margin', 'East margin', 200, [[282, 110], [276, 10], [279, -90]], 600),
  feature('track-margin', 'margin', 'Track margin', 166, [[0, 4], [166, 5]], 330),
];

function feature(id: string, kind: Feature['kind'], name: string, lengthM: number, line: readonly (readonly [number, number])[], areaM2: number | null = null): Feature {
  return { id, kind, name, lengthM, areaM2, line: line.map(onEarth) };
}

/** Two rounds of samples; potash falls, as it does where boxes leave and nothing is brought in. */
export const sampleSoil: readonly SoilSample[] = [
  ...samplesOf('2021-02-16', { a: [6.6, 27, 168, 96, 4.1], b: [6.7, 25, 171, 104, 4.3], c: [6.5, 24, 152, 71, 3.2], d: [6.8, 28, 160, 88, 3.7], e: [6.4, 23, 149, 69, 3.0], f: [6.7, 26, 174, 99, 4.2] }),
  ...samplesOf('2026-02-24', { a: [6.6, 26, 161, 95, 4.3], b: [6.7, 24, 166, 103, 4.4], c: [6.5, 23, 138, 70, 3.4], d: [6.7, 27, 151, 86, 3.8], e: [6.5, 22, 141, 68, 3.2], f: [6.7, 25, 167, 98, 4.3] }),
];

function samplesOf(takenOn: string, plots: Readonly<Record<string, readonly [ph: number, p: number, k: number, mg: number, organicMatter: number]>>): readonly SoilSample[] {
  return Object.entries(plots).map(([plotId, [ph, pMgL, kMgL, mgMgL, organicMatterPct]]) => ({
    plot: asId(plotId), takenOn: asDay(takenOn), method: 'Olsen P, ammonium nitrate K and Mg', ph, pMgL, kMgL, mgMgL, organicMatterPct,
  }));
}
