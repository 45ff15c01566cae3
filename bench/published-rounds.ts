/**
 * Published problems of rounds in the forms they are told in, as our own: points with TSPLIB's distances, a lower triangle, points with
 * demands (Augerat; Christofides and Eilon), rows with windows (Solomon), each by its name in one JSON object.
 */
import { type RoundsProblem, rounds } from '@leywright/planner';

interface Told {
  readonly geo?: readonly (readonly [number, number])[];
  readonly xy?: readonly (readonly [number, number])[];
  readonly lower?: readonly number[];
  readonly n?: number;
  readonly q?: readonly number[];
  readonly Q?: number;
  readonly k?: number;
  /** x, y, boxes, opens, closes of each drop; the yard of the set is at 35, 35. */
  readonly sol?: readonly (readonly [number, number, number, number, number])[];
  readonly opt?: number;
}

export interface Published {
  readonly problem: RoundsProblem;
  readonly optimum: number | null;
}

/** Windows of published problems may not be missed, so a minute is dear. */
const strictKmPerMin = 1000;
const solomonYard = [35, 35] as const;
const solomonServiceMin = 10;
const solomonEndMin = 230;

export function publishedRounds(said: unknown): readonly Published[] {
  if (typeof said !== 'object' || said === null) return [];
  return Object.entries(said as Readonly<Record<string, Told>>).flatMap(([name, told]) => {
    const problem = problemOf(name, told);
    return problem === null ? [] : [{ problem, optimum: told.opt ?? null }];
  });
}

function problemOf(name: string, told: Told): RoundsProblem | null {
  if (told.sol !== undefined) return solomon(name, told.sol, told);
  const count = told.geo?.length ?? told.xy?.length ?? told.n;
  if (count === undefined) return null;
  const legs = rounds.legsFrom(count, distanceIn(told), { stepKm: 1, speedKmH: 60 });
  const boxes = told.q ?? Array.from({ length: count }, () => 0);
  return {
    name,
    drops: boxes.slice(1).map((one, before) => drop(String(before + 1), one)),
    vans: vans(told.k ?? 1, told.Q ?? 0),
    legs,
    yardOpensMin: 0,
    yardClosesMin: Number.POSITIVE_INFINITY,
    lateKmPerMin: strictKmPerMin,
  };
}

function drop(id: string, boxes: number) {
  return { id, boxes, kg: null, opensMin: 0, closesMin: Number.POSITIVE_INFINITY, serviceMin: 0, dayIndexes: [0] };
}

function vans(count: number, mostBoxes: number) {
  return Array.from({ length: count }, (_, at) => ({ id: `van ${at + 1}`, mostBoxes, mostKg: null, dayIndexes: [0] }));
}

/** As TSPLIB 95 defines EUC_2D, GEO and LOWER_DIAG_ROW. */
function distanceIn(told: Told): (from: number, to: number) => number {
  const { geo, xy, lower } = told;
  if (lower !== undefined)
    return (from, to) => {
      const [low, high] = from < to ? [from, to] : [to, from];
      return lower[(high * (high + 1)) / 2 + low] ?? 0;
    };
  if (geo !== undefined) return (from, to) => geoKm(geo[from] ?? [0, 0], geo[to] ?? [0, 0]);
  return (from, to) => {
    const [one, other] = [xy?.[from] ?? [0, 0], xy?.[to] ?? [0, 0]];
    return Math.round(Math.hypot(one[0] - other[0], one[1] - other[1]));
  };
}

/** Degrees and minutes as one number, the earth as TSPLIB takes it, whole kilometres. */
function geoKm(one: readonly [number, number], other: readonly [number, number]): number {
  // TSPLIB 95 takes 3.141592; the true figure would give other distances.
  const tsplibPi = 3141592 / 1e6;
  const radians = (told: number) => {
    const degrees = Math.trunc(told);
    return (tsplibPi * (degrees + (5 * (told - degrees)) / 3)) / 180;
  };
  const [lat1, lon1, lat2, lon2] = [radians(one[0]), radians(one[1]), radians(other[0]), radians(other[1])];
  const q1 = Math.cos(lon1 - lon2);
  const q2 = Math.cos(lat1 - lat2);
  const q3 = Math.cos(lat1 + lat2);
  return Math.trunc(6378.388 * Math.acos(0.5 * ((1 + q1) * q2 - (1 - q1) * q3)) + 1);
}

/** Distances cut to one decimal, as the optima of Solomon's problems are told; a unit of way takes a unit of time. */
function solomon(name: string, rows: NonNullable<Told['sol']>, told: Told): RoundsProblem {
  const points = [solomonYard, ...rows.map(([x, y]) => [x, y] as const)];
  const km = (from: number, to: number) => {
    const [one, other] = [points[from] ?? solomonYard, points[to] ?? solomonYard];
    return Math.floor(Math.hypot(one[0] - other[0], one[1] - other[1]) * 10 + 1e-9) / 10;
  };
  return {
    name,
    drops: rows.map(([, , boxes, opensMin, closesMin], before) => ({
      ...drop(String(before + 1), boxes),
      opensMin,
      closesMin,
      serviceMin: solomonServiceMin,
    })),
    vans: vans(told.k ?? 25, told.Q ?? 200),
    legs: rounds.legsFrom(points.length, km, { stepKm: 0.1, speedKmH: 60 }),
    yardOpensMin: 0,
    yardClosesMin: solomonEndMin,
    lateKmPerMin: strictKmPerMin,
  };
}
