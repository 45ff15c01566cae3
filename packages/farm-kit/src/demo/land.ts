/** The sample farm's ground: two fields of six plots, a yard with a tunnel and a strip of rhubarb, hedges, banks and margins. */
import type { Feature, Field, Part, Plot, SoilSample } from '@leywright/book';
import { asDay, asId } from '@leywright/measures';
import { part, plot, span } from '../build/farm.ts';
import { onEarth, rowOfPlots } from './map.ts';

export const sampleFields: readonly Field[] = [
  { id: asId('north-field'), name: 'North Field', areaM2: 29_600, hedgesOver5Years: true },
  { id: asId('south-field'), name: 'South Field', areaM2: 29_400, hedgesOver5Years: true },
  { id: asId('yard'), name: 'The Yard', areaM2: 4_200, hedgesOver5Years: true },
];

/** Gross, hedge and bank are such that the net areas are 0.98, 0.74, 1.08, 0.86, 0.62 and 0.92 ha with 6 % for headlands. */
const fieldPlots = [
  [
    'A',
    'Ash Piece',
    'north-field',
    { grossM2: 10_840, hedgeM: 205, bankM2: 0, soil: 'clay loam', bedCount: 54 },
    'ley',
  ],
  [
    'B',
    'Brook Doles',
    'north-field',
    { grossM2: 8_030, hedgeM: 80, bankM2: 0, soil: 'clay loam', bedCount: 42 },
    'squash',
  ],
  [
    'C',
    'Cinder Hill',
    'south-field',
    { grossM2: 11_890, hedgeM: 107, bankM2: 186, soil: 'sandy loam', bedCount: 60 },
    'brassicas',
  ],
  [
    'D',
    'Dovecote',
    'north-field',
    { grossM2: 9_510, hedgeM: 92, bankM2: 180, soil: 'sandy clay loam', bedCount: 48 },
    'roots',
  ],
  [
    'E',
    'Elder Stubs',
    'south-field',
    { grossM2: 6_600, hedgeM: 0, bankM2: 0, soil: 'sandy loam', bedCount: 36 },
    'potatoes',
  ],
  [
    'F',
    'Far Ridding',
    'south-field',
    { grossM2: 9_790, hedgeM: 0, bankM2: 0, soil: 'clay loam', bedCount: 50 },
    'alliums',
  ],
] as const;

/** Bays of the tunnel are two beds each. */
const yardPlots = [
  ['T', 'tunnel', 'The Tunnel', { kind: 'tunnel', grossM2: 1_200, soil: 'sandy loam', bedCentresM: 1.5, bedCount: 12 }],
  [
    'R',
    'rhubarb',
    'Rhubarb Strip',
    { kind: 'permanent', grossM2: 500, soil: 'sandy loam', bedCentresM: 1.8, bedCount: 4 },
  ],
] as const;

const organic = { status: 'organic', statusSince: asDay('2014-03-01') } as const;

export function samplePlots(): readonly Plot[] {
  const rings = {
    ...rowOf(
      'ABD',
      () => 9,
      (eastM) => 106 + 0.035 * eastM,
    ),
    ...rowOf(
      'CEF',
      (eastM) => -112 + 0.03 * eastM,
      () => 0,
    ),
  };
  return [
    ...fieldPlots.map(([letter, name, field, pieces, courseAtStart]) =>
      plot(letter, {
        id: letter.toLowerCase(),
        name,
        field,
        ...pieces,
        courseAtStart,
        headlandShare: 0.06,
        ring: rings[letter] ?? null,
        ...organic,
      }),
    ),
    ...yardPlots.map(([letter, id, name, pieces]) =>
      plot(letter, { id, name, field: 'yard', headlandShare: 0, ...pieces, ...organic }),
    ),
  ];
}

/** The rhubarb was cut back in 2021 and the tunnel lengthened over it by two bays. */
export const sampleParts: readonly Part[] = [
  part('tunnel-east', 'tunnel', {
    span: span(0.666667, 1),
    from: asDay('2021-03-01'),
    parents: [{ plot: asId('rhubarb'), span: span(), share: 1 }],
    why: 'Two bays added to the tunnel, over half of what was the rhubarb.',
  }),
];

type Line = (eastM: number) => number;

function rowOf(letters: string, lower: Line, upper: Line): Readonly<Record<string, Plot['ring']>> {
  const areasM2 = [...letters].map((letter) => fieldPlots.find((one) => one[0] === letter)?.[3].grossM2 ?? 0);
  const rings = rowOfPlots(lower, upper, areasM2);
  return Object.fromEntries([...letters].map((letter, at) => [letter, rings[at] ?? null]));
}

/** Lines in metres east and north of the fields' corner. */
export const sampleFeatures: readonly Feature[] = [
  feature('north-hedge', 'hedge', { name: 'North hedge', lengthM: 277, line: '-2 107, 90 110, 180 113, 275 117' }),
  feature('west-hedge', 'hedge', { name: 'West hedge', lengthM: 207, line: '-3 107, -1 9, -2 -100' }),
  feature('south-windbreak', 'windbreak', {
    name: 'South windbreak',
    lengthM: 193,
    line: '-4 -116, 90 -113, 189 -110',
  }),
  feature('bank-c-e', 'beetle-bank', { name: 'Bank, C to E', lengthM: 93, areaM2: 186, line: '104 -105, 108 -12' }),
  feature('bank-b-d', 'beetle-bank', { name: 'Bank, B to D', lengthM: 90, areaM2: 180, line: '184 14, 186 104' }),
  feature('east-margin', 'margin', {
    name: 'East margin',
    lengthM: 200,
    areaM2: 600,
    line: '282 110, 276 10, 279 -90',
  }),
  feature('track-margin', 'margin', { name: 'Track margin', lengthM: 166, areaM2: 330, line: '0 4, 166 5' }),
];

interface FeaturePieces {
  readonly name: string;
  readonly lengthM: number;
  readonly areaM2?: number;
  readonly line: string;
}

function feature(id: string, kind: Feature['kind'], { name, lengthM, areaM2, line }: FeaturePieces): Feature {
  const points = line.split(', ').map((point) => point.split(' ').map(Number) as unknown as readonly [number, number]);
  return { id, kind, name, lengthM, areaM2: areaM2 ?? null, line: points.map(onEarth) };
}

/** Two rounds of samples; potash falls, as it does where boxes leave and nothing is brought in. */
export const sampleSoil: readonly SoilSample[] = [
  ...samplesOf('2021-02-16', {
    a: [6.6, 27, 168, 96, 4.1],
    b: [6.7, 25, 171, 104, 4.3],
    c: [6.5, 24, 152, 71, 3.2],
    d: [6.8, 28, 160, 88, 3.7],
    e: [6.4, 23, 149, 69, 3.0],
    f: [6.7, 26, 174, 99, 4.2],
  }),
  ...samplesOf('2026-02-24', {
    a: [6.6, 26, 161, 95, 4.3],
    b: [6.7, 24, 166, 103, 4.4],
    c: [6.5, 23, 138, 70, 3.4],
    d: [6.7, 27, 151, 86, 3.8],
    e: [6.5, 22, 141, 68, 3.2],
    f: [6.7, 25, 167, 98, 4.3],
  }),
];

function samplesOf(
  takenOn: string,
  plots: Readonly<Record<string, readonly [ph: number, p: number, k: number, mg: number, organicMatter: number]>>,
): readonly SoilSample[] {
  return Object.entries(plots).map(([plotId, [ph, pMgL, kMgL, mgMgL, organicMatterPct]]) => ({
    plot: asId(plotId),
    takenOn: asDay(takenOn),
    method: 'Olsen P, ammonium nitrate K and Mg',
    ph,
    pMgL,
    kMgL,
    mgMgL,
    organicMatterPct,
  }));
}
