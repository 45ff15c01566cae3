import { expect, test } from 'vitest';
import { ringAreaM2 } from '../src/ground/rings.ts';
import { readFarmFolder } from '../src/index.ts';
import { known } from './known.ts';

type Ring = readonly (readonly [number, number])[];
const square = (west: number, south: number, wide = 0.001): Ring => [
  [west, south],
  [west + wide, south],
  [west + wide, south + 0.001],
  [west, south + 0.001],
  [west, south],
];
const polygon = (plot: string, ...rings: readonly Ring[]) => ({
  type: 'Feature',
  properties: { plot },
  geometry: { type: 'Polygon', coordinates: rings },
});
const line = (properties: object, coordinates: Ring) => ({
  type: 'Feature',
  properties,
  geometry: { type: 'LineString', coordinates },
});

function read(features: readonly object[], plots = 'id\na\nb\n', more: Record<string, string> = {}) {
  return readFarmFolder(
    new Map([
      ['farm.json', '{"name":"Garth","place":{"lat_deg":52,"lon_deg":-1,"jurisdiction":"England"}}'],
      ['plots.csv', plots],
      ['ground.geojson', JSON.stringify({ type: 'FeatureCollection', features })],
      ...Object.entries(more),
    ]),
    known,
  );
}

test.each([
  // An eighth of the whole WGS 84 ellipsoid, whose surface is 510 065 621 724 088.44 m² (GeographicLib's manual; memory).
  {
    what: 'an eighth of the earth',
    ring: [
      [0, 0],
      [90, 0],
      [90, 90],
      [0, 90],
      [0, 0],
    ] as Ring,
    areaM2: 63_758_202_715_511.055,
  },
])('the area of $what agrees with the surface of the ellipsoid', ({ ring, areaM2 }) => {
  expect(ringAreaM2(ring) / areaM2).toBeCloseTo(1, 9);
});

test('a plot without a typed area takes its outline’s, on the ellipsoid', () => {
  const { farm } = read([polygon('a', square(-1, 52)), polygon('b', square(-0.99, 52))]);
  // By hand: at 52° a thousandth of a degree is 111.27 m northward and 68.68 m eastward, 7642 m² (WGS 84; common practice).
  expect(farm?.plots[0]?.grossM2).toBeGreaterThan(7600);
  expect(farm?.plots[0]?.grossM2).toBeLessThan(7680);
  expect(farm?.plots[0]).toMatchObject({ measuredBy: 'geometry', ring: square(-1, 52) });
});

test('a typed area more than 2 % off its outline’s is worth a look, and stands', () => {
  const { farm, problems } = read([polygon('a', square(-1, 52))], 'id,gross_m2\na,7000\n');
  expect(problems).toMatchObject([
    { code: 'area-differs', gravity: 'look', file: 'plots.csv', line: 2, figures: { typedM2: 7000 } },
  ]);
  expect(farm?.plots[0]).toMatchObject({ grossM2: 7000, measuredBy: 'typed' });
});

test('a plot drawn over another is told, with the ground they share', () => {
  const { farm, problems } = read([polygon('a', square(-1, 52)), polygon('b', square(-0.9995, 52))]);
  expect(farm).toBeNull();
  expect(problems).toMatchObject([{ code: 'plots-overlap', gravity: 'stops', figures: { plot: 'a', other: 'b' } }]);
  expect(Number(problems[0]?.figures['overlapM2'])).toBeGreaterThan(3700);
});

test('plots that share a boundary, or lie there in other years, do not overlap', () => {
  expect(read([polygon('a', square(-1, 52)), polygon('b', square(-0.999, 52))]).problems).toEqual([]);
  expect(
    read([polygon('a', square(-1, 52)), polygon('b', square(-1, 52))], 'id,from,to\na,,2024-01-01\nb,2024-01-01,\n')
      .problems,
  ).toEqual([]);
});

test('a ring left open, one that crosses itself, one too small and a plot nobody knows are told', () => {
  const bow: Ring = [
    [-1, 52],
    [-0.999, 52.001],
    [-0.999, 52],
    [-1, 52.001],
    [-1, 52],
  ];
  const { problems } = read(
    [
      polygon('a', square(-1, 52).slice(0, -1)),
      polygon('b', bow),
      polygon('a', [
        [-1, 52],
        [-1, 52.1],
        [-1, 52],
      ]),
      polygon('c', square(-1, 52)),
    ],
    'id,gross_ha\na,1\nb,1\n',
  );
  expect(problems.map(({ code, column }) => [code, column])).toEqual([
    ['ring-open', 'features[0].geometry'],
    ['ring-crosses-itself', 'features[1].geometry'],
    ['wrong-geometry', 'features[2].geometry'],
    ['unknown-name', 'features[3].properties.plot'],
  ]);
});

test('a map whose longitudes and latitudes are the wrong way round is told, with what was meant', () => {
  const swapped = square(-1, 52).map(([lon, lat]) => [lat, lon] as const);
  expect(read([polygon('a', swapped)], 'id\na\n').problems).toMatchObject([
    { code: 'lon-lat-swapped', found: '[52,-1]', nearest: ['[-1,52]'] },
    { code: 'missing-value' },
  ]);
});

test('coordinates of a national grid are told as outside the world', () => {
  expect(
    read(
      [
        polygon('a', [
          [452_000, 251_000],
          [452_100, 251_000],
          [452_100, 251_100],
          [452_000, 251_000],
        ]),
      ],
      'id,gross_ha\na,1\n',
    ).problems,
  ).toMatchObject([{ code: 'outside-the-world' }]);
});

test('hedges are lines, found by their id in features.csv or standing for themselves', () => {
  const { farm, problems } = read(
    [
      line({ feature: 'north' }, [
        [-1, 52.1],
        [-0.99, 52.1],
      ]),
      line({ hedge: 'lane', name: 'Lane hedge' }, [
        [-1, 52.2],
        [-0.99, 52.2],
      ]),
    ],
    'id,gross_ha\na,1\n',
    { 'features.csv': 'id,kind,name,length_m\nnorth,windbreak,North belt,680\n' },
  );
  expect(problems).toEqual([]);
  expect(farm?.features.map(({ id, kind, name, lengthM }) => [id, kind, name, lengthM])).toEqual([
    ['north', 'windbreak', 'North belt', 680],
    ['lane', 'hedge', 'Lane hedge', null],
  ]);
});

test('ground inside a hole is not the plot’s, and the farm is told that the hole itself is not kept', () => {
  const hole = square(-0.9998, 52.0002, 0.0004).map(([lon, lat]) => [lon, 52.0002 + (lat - 52.0002) * 0.4] as const);
  const { farm, problems } = read([polygon('a', square(-1, 52), hole)], 'id\na\n');
  expect(problems).toMatchObject([{ code: 'holes-not-kept', gravity: 'look' }]);
  expect(farm?.plots[0]?.grossM2).toBeCloseTo(ringAreaM2(square(-1, 52)) - ringAreaM2(hole), 6);
});

test('what is no map is told, and so is a geometry we have no use for', () => {
  expect(
    read(
      [{ type: 'Feature', properties: { plot: 'a' }, geometry: { type: 'MultiPolygon', coordinates: [] } }],
      'id,gross_ha\na,1\n',
    ).problems,
  ).toMatchObject([{ code: 'wrong-geometry', found: 'MultiPolygon', nearest: ['Polygon', 'LineString'] }]);
  expect(read([], 'id,gross_ha\na,1\n', { 'ground.geojson': '{"type":"Topology"}' }).problems).toMatchObject([
    { code: 'wrong-geometry', file: 'ground.geojson' },
  ]);
  expect(read([], 'id,gross_ha\na,1\n', { 'ground.geojson': '{' }).problems).toMatchObject([
    { code: 'not-json', file: 'ground.geojson' },
  ]);
});
