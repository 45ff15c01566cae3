/** Reads a problem of delivery rounds from its JSON form `o3-1`, and says everything that is wrong with it at once. */
import { type Fields, type ProblemFault, readFields } from '../rotation-problem/read-fields.ts';
import { commonDetourFactor, earthRadiusKm, type LatLonDeg, legsByGreatCircle, legsFrom } from './distances.ts';
import type { Legs, RoundDrop, RoundsProblem, Van } from './problem.ts';

export type ReadRounds =
  | { readonly kind: 'problem'; readonly problem: RoundsProblem }
  | { readonly kind: 'faults'; readonly faults: readonly ProblemFault[] };

export const roundsSchema = 'o3-1';
/** More drops than any farm's week; a guard against files that are something else. */
export const mostDrops = 1000;
/** Kilometres one drives to save a minute of coming late, unless the file says: a default of ours. */
export const commonLateKmPerMin = 2;

/** What was said, as a problem; or all faults, each with its place and what was found there. */
export function readRoundsProblem(said: unknown): ReadRounds {
  const faults: ProblemFault[] = [];
  const root = readFields(said, '', faults);
  const schema = root.text('schema', roundsSchema);
  if (schema !== roundsSchema) faults.push({ place: 'schema', found: schema, need: `"${roundsSchema}"` });
  const boxes = numbers(root, 'boxes', { least: 0 }, faults);
  if (boxes.length < 2 || boxes.length > mostDrops + 1)
    faults.push({ place: 'boxes', found: `${boxes.length} places`, need: `the yard and 1 to ${mostDrops} drops` });
  if (faults.length > 0 && boxes.length === 0) return { kind: 'faults', faults };
  const legs = readLegs(root, boxes.length, faults);
  const hours = readHours(root, boxes.length, faults);
  const vans = readVans(root, faults);
  const dayCount = 1 + Math.max(0, ...vans.flatMap((van) => van.dayIndexes));
  const problem: RoundsProblem = {
    name: root.text('name', 'rounds'),
    drops: readDrops(root, { boxes, hours, dayCount }, faults),
    vans,
    legs,
    yardOpensMin: hours.opensMin[0] ?? 0,
    yardClosesMin: hours.closesMin[0] ?? Number.POSITIVE_INFINITY,
    lateKmPerMin: root.number('lateKmPerMin', { least: 0, absent: commonLateKmPerMin }),
  };
  return faults.length === 0 ? { kind: 'problem', problem } : { kind: 'faults', faults };
}

interface Range {
  readonly least: number;
  readonly count?: number;
}

function numbers(fields: Fields, name: string, range: Range, faults: ProblemFault[]): readonly number[] {
  const list = fields.list(name);
  const { least, count = list.length } = range;
  if (list.length !== count)
    faults.push({ place: name, found: `${list.length} numbers`, need: `${count}, yard first` });
  return list.map((one, at) => {
    if (typeof one === 'number' && Number.isFinite(one) && one >= least) return one;
    faults.push({
      place: `${name}.${at}`,
      found: JSON.stringify(one) ?? 'nothing',
      need: `a number of at least ${least}`,
    });
    return least;
  });
}

/** The farm's own distances where it has them, else the great circle times the detour. */
function readLegs(root: Fields, placeCount: number, faults: ProblemFault[]): Legs {
  const stepKm =
    root.has('distRound') && root.raw('distRound') !== null ? root.number('distRound', { least: 1e-6 }) : null;
  const speedKmH = root.number('speedKmh', { least: 0.1, absent: 30 });
  if (root.has('distancesKm')) {
    const rows = root.list('distancesKm').map((row, at) => {
      const isRow =
        Array.isArray(row) && row.length === placeCount && row.every((one) => typeof one === 'number' && one >= 0);
      if (!isRow)
        faults.push({ place: `distancesKm.${at}`, found: JSON.stringify(row), need: `${placeCount} distances` });
      return isRow ? (row as readonly number[]) : [];
    });
    if (rows.length !== placeCount)
      faults.push({ place: 'distancesKm', found: `${rows.length} rows`, need: `${placeCount}, yard first` });
    return legsFrom(placeCount, (from, to) => rows[from]?.[to] ?? 0, { stepKm, speedKmH });
  }
  const places = root.list('pts').map((one, at) => readPlace(one, `pts.${at}`, faults));
  if (places.length !== placeCount)
    faults.push({
      place: 'pts',
      found: `${places.length} places`,
      need: `${placeCount}, one for each number of boxes`,
    });
  return legsByGreatCircle(places, {
    detourFactor: root.number('detour', { least: 1, absent: commonDetourFactor }),
    radiusKm: root.number('earthKm', { least: 1, absent: earthRadiusKm }),
    stepKm,
    speedKmH,
  });
}

function readPlace(said: unknown, place: string, faults: ProblemFault[]): LatLonDeg {
  const [latDeg, lonDeg] = Array.isArray(said) ? (said as readonly unknown[]) : [];
  if (typeof latDeg === 'number' && typeof lonDeg === 'number' && Math.abs(latDeg) <= 90 && Math.abs(lonDeg) <= 180)
    return { latDeg, lonDeg };
  faults.push({ place, found: JSON.stringify(said) ?? 'nothing', need: '[latitude, longitude] in degrees' });
  return { latDeg: 0, lonDeg: 0 };
}

interface Hours {
  readonly opensMin: readonly number[];
  readonly closesMin: readonly number[];
  readonly serviceMin: readonly number[];
}

function readHours(root: Fields, placeCount: number, faults: ProblemFault[]): Hours {
  const said = root.raw('tw');
  if (said === undefined || said === null) return { opensMin: [], closesMin: [], serviceMin: [] };
  const hoursFaults: ProblemFault[] = [];
  const fields = readFields(said, 'tw', hoursFaults);
  const range = { least: 0, count: placeCount };
  const opensMin = numbers(fields, 'earliest', range, hoursFaults);
  const closesMin = numbers(fields, 'latest', range, hoursFaults);
  const serviceMin = fields.has('serviceMin') ? numbers(fields, 'serviceMin', range, hoursFaults) : [];
  faults.push(
    ...hoursFaults.map((fault) => (fault.place.startsWith('tw') ? fault : { ...fault, place: `tw.${fault.place}` })),
  );
  for (const [at, closes] of closesMin.entries())
    if (closes < (opensMin[at] ?? 0))
      faults.push({ place: `tw.latest.${at}`, found: String(closes), need: `not before it opens, ${opensMin[at]}` });
  return { opensMin, closesMin, serviceMin };
}

function readVans(root: Fields, faults: ProblemFault[]): readonly Van[] {
  const dayCount = root.whole('days', { least: 1, most: 7, absent: 1 });
  const allDays = Array.from({ length: dayCount }, (_, day) => day);
  const said = root.raw('vans');
  if (!Array.isArray(said)) {
    const count = root.whole('vans', { least: 1, most: 200, absent: 1 });
    const mostBoxes = root.number('vanCapacity', { least: 0 });
    return Array.from({ length: count }, (_, at) => ({
      id: `van ${at + 1}`,
      mostBoxes,
      mostKg: null,
      dayIndexes: allDays,
    }));
  }
  return said.map((one, at) => {
    const fields = readFields(one, `vans.${at}`, faults);
    return {
      id: fields.text('id', `van ${at + 1}`),
      mostBoxes: fields.number('boxes', { least: 0 }),
      mostKg: fields.has('kg') ? fields.number('kg', { least: 0 }) : null,
      dayIndexes: fields.has('days')
        ? daysOf(fields.raw('days'), { place: `vans.${at}.days`, dayCount }, faults)
        : allDays,
    };
  });
}

interface DropParts {
  readonly boxes: readonly number[];
  readonly hours: Hours;
  readonly dayCount: number;
}

function readDrops(root: Fields, { boxes, hours, dayCount }: DropParts, faults: ProblemFault[]): readonly RoundDrop[] {
  const allDays = Array.from({ length: dayCount }, (_, day) => day);
  const ids = root.list('ids', true);
  const kg = root.has('kg') ? numbers(root, 'kg', { least: 0, count: boxes.length }, faults) : [];
  const days = root.list('dropDays', true);
  return boxes.slice(1).map((count, before) => {
    const at = before + 1;
    const id = ids[at];
    return {
      id: typeof id === 'string' ? id : String(at),
      boxes: count,
      kg: kg[at] ?? null,
      opensMin: hours.opensMin[at] ?? 0,
      closesMin: hours.closesMin[at] ?? Number.POSITIVE_INFINITY,
      serviceMin: hours.serviceMin[at] ?? 0,
      dayIndexes:
        days[at] === undefined || days[at] === null
          ? allDays
          : daysOf(days[at], { place: `dropDays.${at}`, dayCount }, faults),
    };
  });
}

function daysOf(
  said: unknown,
  at: { readonly place: string; readonly dayCount: number },
  faults: ProblemFault[],
): readonly number[] {
  const isDay = (one: unknown): one is number => Number.isInteger(one) && Number(one) >= 0 && Number(one) < at.dayCount;
  if (Array.isArray(said) && said.length > 0 && said.every(isDay)) return said;
  faults.push({ place: at.place, found: JSON.stringify(said), need: `days from 0 to ${at.dayCount - 1}` });
  return [];
}
