/** farm.json: the farm's name, place and conventions; and back. */
import type { Day, FarmId } from '@leywright/measures';
import * as z from 'zod';
import { conventionsAt, defaultShows } from '../farm/defaults.ts';
import type { About, Conventions, Place } from '../farm/farm.ts';
import type { BoxPromise } from '../farm/promise.ts';
import type { Rotation } from '../farm/stand.ts';
import { nearest } from '../names/nearest.ts';
import { type PromiseHead, usualPackWeekday } from '../rows/promise.ts';
import { type FarmJson, farmJson } from './farm-json.ts';
import { type Fault, type ProblemCode, type ProblemList, problemCodes, quoteJson } from './problem.ts';

const file = 'farm.json';

/** farm.json with its unknown keys told and its faults told; null when it cannot be used. */
export function readFarmJson(text: string, problems: ProblemList): FarmJson | null {
  const json = readJson(text, file, problems);
  if (json === undefined) return null;
  const read = farmJson.safeParse(withoutUnknown(json, farmJson, { path: [], problems }));
  if (read.success) return read.data;
  for (const issue of read.error.issues) tellIssue(issue, json, problems);
  return null;
}

/** Undefined, told, when the text is no JSON. */
export function readJson(text: string, name: string, problems: ProblemList): unknown {
  try {
    return JSON.parse(text);
  } catch (error) {
    const at = /position (\d+)/.exec(String((error as Error).message))?.[1];
    const line = at === undefined ? null : text.slice(0, Number(at)).split(/\r\n|\r|\n/).length;
    problems.add('not-json', { file: name, line, column: null });
    return undefined;
  }
}

interface Within {
  readonly path: readonly string[];
  readonly problems: ProblemList;
}

function withoutUnknown(value: unknown, shape: unknown, within: Within): unknown {
  const inner = unwrapped(shape);
  if (!(inner instanceof z.ZodObject) || typeof value !== 'object' || value === null || Array.isArray(value))
    return value;
  const known = Object.keys(inner.shape);
  return Object.fromEntries(
    Object.entries(value).flatMap(([key, one]) => {
      if (known.includes(key))
        return [[key, withoutUnknown(one, inner.shape[key], { ...within, path: [...within.path, key] })]];
      const near = nearest(key, known);
      within.problems.add(
        'unknown-key',
        { file, line: null, column: [...within.path, key].join('.') },
        { found: key, nearest: near, gravity: near.length > 0 ? 'stops' : 'look' },
      );
      return [];
    }),
  );
}

function unwrapped(shape: unknown): unknown {
  return shape instanceof z.ZodOptional || shape instanceof z.ZodNullable ? unwrapped(shape.unwrap()) : shape;
}

function tellIssue(issue: z.core.$ZodIssue, json: unknown, problems: ProblemList): void {
  const value = issue.path.reduce<unknown>(
    (at, key) => (at as Record<PropertyKey, unknown> | null | undefined)?.[key],
    json,
  );
  const place = { file, line: null, column: issue.path.join('.') };
  const found = value === undefined ? null : quoteJson(value);
  if (value === undefined) problems.add('missing-value', place);
  else
    problems.add(codeOf(issue), place, {
      found,
      ...whatWouldDo(issue, typeof value === 'string' ? value : (found ?? '')),
    });
}

function codeOf(issue: z.core.$ZodIssue): ProblemCode {
  if (issue.code === 'invalid_value') return 'not-in-list';
  if (issue.code === 'too_small' || issue.code === 'too_big') return 'out-of-range';
  return problemCodes.find((code) => code === issue.message) ?? 'wrong-shape';
}

function whatWouldDo(issue: z.core.$ZodIssue, found: string): Fault {
  switch (issue.code) {
    case 'invalid_value': {
      const choices = issue.values.map(String);
      return { nearest: [...new Set([...nearest(found, choices), ...choices])] };
    }
    case 'too_small':
      return { figures: { least: Number(issue.minimum) } };
    case 'too_big':
      return { figures: { most: Number(issue.maximum) } };
    case 'invalid_type':
      return { figures: { expected: issue.expected } };
    default:
      return {};
  }
}

/** Lowland England, said aloud: weather and day length have to come from somewhere until the farm says where it lies. */
const assumedPlace = { latDeg: 52, lonDeg: -1 };

/** What the farm says about itself; what it leaves out and a plan cannot do without is assumed, and told. */
export function aboutOf(
  json: FarmJson,
  mapped: { readonly latDeg: number; readonly lonDeg: number } | null,
  problems: ProblemList,
): About {
  const assume = (column: string, value: string) =>
    problems.add('assumed', { file, line: null, column }, { gravity: 'look', nearest: [value] });
  if (json.name === undefined) assume('name', 'Our farm');
  const name = json.name ?? 'Our farm';
  const place = placeOf(json, mapped, assume);
  return {
    id: (json.id ?? idFromName(name)) as FarmId,
    name,
    sample: json.sample ?? false,
    sampleDay: (json.sample_day ?? null) as About['sampleDay'],
    place,
    conventions: { ...conventionsAt(place.latDeg), ...(camel(json.conventions ?? {}) as Partial<Conventions>) },
    shows: { ...defaultShows, ...(camel(json.shows ?? {}) as Partial<About['shows']>) },
  };
}

function placeOf(
  json: FarmJson,
  mapped: { readonly latDeg: number; readonly lonDeg: number } | null,
  assume: (column: string, value: string) => void,
): Place {
  const { place } = json;
  if (place === undefined && mapped === null) assume('place', `${assumedPlace.latDeg}, ${assumedPlace.lonDeg}`);
  const there = place === undefined ? (mapped ?? assumedPlace) : { latDeg: place.lat_deg, lonDeg: place.lon_deg };
  if (!place?.jurisdiction) assume('place.jurisdiction', 'general');
  return {
    ...there,
    elevationM: place?.elevation_m ?? null,
    near: place?.near ?? null,
    jurisdiction: place?.jurisdiction ?? 'general',
    timeZone: place?.time_zone ?? 'Europe/London',
  };
}

function idFromName(name: string): string {
  const plain = name
    .normalize('NFKD')
    .replace(/\p{M}/gu, '')
    .toLowerCase()
    .replace(/[^\p{L}\p{N}]+/gu, '-');
  return plain.slice(0, 60).replace(/^-|-$/g, '') || 'farm';
}

/** Null when farm.json says nothing of boxes. */
export function promiseHead(json: FarmJson): PromiseHead | null {
  const { promise } = json;
  if (promise === undefined) return null;
  return {
    itemsPerBox: promise.items_per_box ?? null,
    packWeekday: promise.pack_weekday ?? usualPackWeekday,
    from: promise.from ?? null,
    to: promise.to ?? null,
    closedEveryYear: promise.closed_every_year ?? [],
    boxWeeksPerYear: promise.box_weeks_per_year ?? null,
  };
}

/** Null when farm.json says nothing of a rotation. */
export function rotationHead(json: FarmJson): Omit<Rotation, 'courses'> | null {
  const { rotation } = json;
  if (rotation === undefined) return null;
  return {
    firstYear: rotation.first_year,
    state: rotation.state ?? 'agreed',
    agreedOn: (rotation.agreed_on ?? null) as Day | null,
  };
}

/** farm.json as written back: everything said, so that a later change of what we assume does not change the farm. */
export function writeFarmJson(about: About, rotation: Rotation | null, promise: BoxPromise | null): string {
  const { id, name, sample, sampleDay, place, shows, conventions } = about;
  const json = {
    id,
    name,
    sample,
    ...(sampleDay === null ? {} : { sample_day: sampleDay }),
    place: snake(place),
    shows: snake(shows),
    conventions: snake(conventions),
    ...(rotation === null
      ? {}
      : { rotation: snake({ firstYear: rotation.firstYear, state: rotation.state, agreedOn: rotation.agreedOn }) }),
    ...(promise === null
      ? {}
      : {
          promise: snake({
            itemsPerBox: promise.itemsPerBox,
            packWeekday: promise.packWeekday,
            from: promise.from,
            to: promise.to,
            closedEveryYear: promise.closedEveryYear,
            boxWeeksPerYear: promise.boxWeeksPerYear,
          }),
        }),
  };
  return `${JSON.stringify(json, null, 2)}\n`;
}

function camel(object: object): Record<string, unknown> {
  return Object.fromEntries(
    Object.entries(object).map(([key, value]) => [
      key.replace(/_([a-z])/g, (_, letter: string) => letter.toUpperCase()),
      value,
    ]),
  );
}

/** `packingHBox` is `packing_h_box`. */
function snake(object: object): Record<string, unknown> {
  return Object.fromEntries(
    Object.entries(object).map(([key, value]) => [
      key.replace(/[A-Z]/g, (letter) => `_${letter.toLowerCase()}`),
      value,
    ]),
  );
}
