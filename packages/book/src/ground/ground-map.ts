/** ground.geojson (RFC 7946): outlines of plots, and lines of hedges and other features. */
import * as z from 'zod';
import type { Feature, Plot } from '../farm/land.ts';
import { featureKinds } from '../farm/land.ts';
import { type Fault, type ProblemCode, type ProblemList, quoteJson } from '../folder/problem.ts';
import type { Names } from '../names/names.ts';
import { nearest } from '../names/nearest.ts';
import { crossesItself, mostCorners, type Position, type Ring, ringAreaM2 } from './rings.ts';

export const mapFile = 'ground.geojson';

export interface DrawnLine {
  readonly line: readonly Position[];
  readonly kind: Feature['kind'] | null;
  readonly name: string | null;
}

export interface GroundMap {
  /** By plot id; the area is that of the outline less its holes. */
  readonly outlines: ReadonlyMap<string, { readonly ring: Ring; readonly areaM2: number }>;
  readonly lines: ReadonlyMap<string, DrawnLine>;
}

export const noMap: GroundMap = { outlines: new Map(), lines: new Map() };

/** Where the farm lies, to tell a map whose longitudes and latitudes are the wrong way round. */
export type Somewhere = { readonly latDeg: number; readonly lonDeg: number } | null;

// Heights are allowed by the RFC and dropped.
const position = z
  .array(z.number())
  .min(2)
  .max(3)
  .transform(([lonDeg = 0, latDeg = 0]): Position => [lonDeg, latDeg]);
const collection = z.object({
  type: z.literal('FeatureCollection'),
  features: z.array(
    z.object({
      type: z.literal('Feature'),
      geometry: z.unknown(),
      properties: z.record(z.string(), z.unknown()).nullish(),
      id: z.unknown().optional(),
    }),
  ),
});
const polygon = z.object({ type: z.literal('Polygon'), coordinates: z.array(z.array(position)).min(1) });
const lineString = z.object({ type: z.literal('LineString'), coordinates: z.array(position).min(2) });

type Drawn = z.infer<typeof collection>['features'][number];

interface MapReading {
  readonly names: Names;
  readonly farm: Somewhere;
  readonly outlines: Map<string, { ring: Ring; areaM2: number }>;
  readonly lines: Map<string, DrawnLine>;
  readonly tell: (at: number, code: ProblemCode, fault?: Fault & { readonly column?: string }) => void;
}

/** Reads the map; every fault is told at `features[n]`. */
export function readGroundMap(
  json: unknown,
  given: { readonly names: Names; readonly problems: ProblemList; readonly farm: Somewhere },
): GroundMap {
  const read = collection.safeParse(json);
  if (!read.success) {
    const path = read.error.issues[0]?.path.join('.') ?? null;
    given.problems.add(
      'wrong-geometry',
      { file: mapFile, line: null, column: path },
      { nearest: ['FeatureCollection'] },
    );
    return noMap;
  }
  const tell: MapReading['tell'] = (at, code, { column, ...fault } = {}) =>
    given.problems.add(
      code,
      { file: mapFile, line: null, column: `features[${at}]${column === undefined ? '' : `.${column}`}` },
      fault,
    );
  const reading: MapReading = { names: given.names, farm: given.farm, outlines: new Map(), lines: new Map(), tell };
  for (const [at, drawn] of read.data.features.entries()) readDrawn(drawn, at, reading);
  return reading;
}

function readDrawn(drawn: Drawn, at: number, reading: MapReading): void {
  const outline = polygon.safeParse(drawn.geometry);
  const line = lineString.safeParse(drawn.geometry);
  const type = (drawn.geometry as { type?: unknown } | null)?.type;
  const found = typeof type === 'string' ? type : null;
  if (outline.success) readOutline(outline.data.coordinates, drawn, { at, reading });
  else if (line.success) readLine(line.data.coordinates, drawn, { at, reading });
  else reading.tell(at, 'wrong-geometry', { column: 'geometry', found, nearest: ['Polygon', 'LineString'] });
}

interface DrawnAt {
  readonly at: number;
  readonly reading: MapReading;
}

function readOutline(rings: readonly Ring[], drawn: Drawn, { at, reading }: DrawnAt): void {
  const id = plotNamed(drawn, { at, reading });
  const [ring = [], ...holes] = rings;
  if (!rings.every((one) => soundRing(one, at, reading)) || id === null) return;
  if (reading.outlines.has(id)) {
    reading.tell(at, 'id-twice', { column: 'properties.plot', found: id });
    return;
  }
  if (holes.length > 0)
    reading.tell(at, 'holes-not-kept', { gravity: 'look', found: id, figures: { holes: holes.length } });
  reading.outlines.set(id, { ring, areaM2: ringAreaM2(ring) - holes.reduce((sum, hole) => sum + ringAreaM2(hole), 0) });
}

function plotNamed(drawn: Drawn, { at, reading }: DrawnAt): string | null {
  const found = drawn.properties?.['plot'];
  if (typeof found !== 'string' && typeof found !== 'number') {
    reading.tell(at, 'missing-value', { column: 'properties.plot' });
    return null;
  }
  const named = reading.names.plot.find(String(found));
  if (named.kind === 'one') return named.id;
  const nearby = named.kind === 'several' ? named.ids : reading.names.plot.nearest(String(found));
  reading.tell(at, named.kind === 'several' ? 'ambiguous-name' : 'unknown-name', {
    column: 'properties.plot',
    found: String(found),
    nearest: nearby,
    figures: { of: 'plot' },
  });
  return null;
}

function soundRing(ring: Ring, at: number, reading: MapReading): boolean {
  const first = ring[0];
  const last = ring.at(-1);
  if (first === undefined || last === undefined || ring.length < 4)
    reading.tell(at, 'wrong-geometry', { column: 'geometry', figures: { leastCorners: 3 } });
  else if (ring.length > mostCorners)
    reading.tell(at, 'wrong-geometry', { column: 'geometry', figures: { mostCorners } });
  else if (!soundPositions(ring, at, reading)) return false;
  else if (first[0] !== last[0] || first[1] !== last[1])
    reading.tell(at, 'ring-open', { column: 'geometry', nearest: [JSON.stringify(first)] });
  else if (crossesItself(ring)) reading.tell(at, 'ring-crosses-itself', { column: 'geometry' });
  else return true;
  return false;
}

/** Degrees within this of each other are one place, for telling swapped coordinates. */
const nearDeg = 2;

function soundPositions(line: readonly Position[], at: number, reading: MapReading): boolean {
  const [lonDeg, latDeg] = line[0] ?? [0, 0];
  const near = (lon: number, lat: number) =>
    reading.farm !== null &&
    Math.abs(lon - reading.farm.lonDeg) <= nearDeg &&
    Math.abs(lat - reading.farm.latDeg) <= nearDeg;
  const inWorld = line.every(([lon, lat]) => Math.abs(lon) <= 180 && Math.abs(lat) <= 90);
  const swapped = !near(lonDeg, latDeg) && near(latDeg, lonDeg);
  if (inWorld && !swapped) return true;
  const turned = [JSON.stringify([latDeg, lonDeg])];
  const couldTurn = line.every(([lon, lat]) => Math.abs(lat) <= 180 && Math.abs(lon) <= 90);
  reading.tell(at, couldTurn ? 'lon-lat-swapped' : 'outside-the-world', {
    column: 'geometry',
    found: JSON.stringify([lonDeg, latDeg]),
    nearest: couldTurn ? turned : [],
  });
  return false;
}

function readLine(line: readonly Position[], drawn: Drawn, { at, reading }: DrawnAt): void {
  if (!soundPositions(line, at, reading)) return;
  const properties = drawn.properties ?? {};
  const id = [properties['feature'], properties['id'], properties['hedge'], drawn.id].find(
    (one) => typeof one === 'string' || typeof one === 'number',
  );
  const kind = properties['kind'] ?? null;
  if (kind !== null && !featureKinds.includes(kind as Feature['kind'])) {
    const found = typeof kind === 'string' ? kind : quoteJson(kind);
    reading.tell(at, 'not-in-list', { column: 'properties.kind', found, nearest: nearest(found, featureKinds) });
    return;
  }
  if (id !== undefined && reading.lines.has(String(id))) {
    reading.tell(at, 'id-twice', { column: 'properties.feature', found: String(id) });
    return;
  }
  const name = typeof properties['name'] === 'string' ? properties['name'] : null;
  reading.lines.set(id === undefined ? `line-${at + 1}` : String(id), {
    line,
    kind: kind as Feature['kind'] | null,
    name,
  });
}

/** The map as written back; empty when nothing is drawn. */
export function writeGroundMap(plots: readonly Plot[], features: readonly Feature[]): string | null {
  const drawn = [
    ...plots
      .filter((plot) => plot.ring !== null)
      .map((plot) => ({
        type: 'Feature',
        properties: { plot: plot.id },
        geometry: { type: 'Polygon', coordinates: [plot.ring] },
      })),
    ...features
      .filter((one) => one.line !== null)
      .map((one) => ({
        type: 'Feature',
        properties: { feature: one.id, kind: one.kind, name: one.name },
        geometry: { type: 'LineString', coordinates: one.line },
      })),
  ];
  if (drawn.length === 0) return null;
  return `{"type":"FeatureCollection","features":[\n${drawn.map((one) => JSON.stringify(one)).join(',\n')}\n]}\n`;
}
