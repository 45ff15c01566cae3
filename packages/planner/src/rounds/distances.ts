/** Distances between places when nobody has measured the roads: the great circle times a stated factor. */
import type { Legs } from './problem.ts';

/** Mean radius of the earth (IUGG). */
export const earthRadiusKm = 6371.0088;
/** Road over straight line: 1.2 to 1.4 is common practice; the farm sets its own. */
export const commonDetourFactor = 1.3;

export interface LatLonDeg {
  readonly latDeg: number;
  readonly lonDeg: number;
}

/** Great-circle distance by the haversine formula, km. */
export function greatCircleKm(from: LatLonDeg, to: LatLonDeg, radiusKm = earthRadiusKm): number {
  const rad = Math.PI / 180;
  const halfLat = Math.sin(((to.latDeg - from.latDeg) * rad) / 2);
  const halfLon = Math.sin(((to.lonDeg - from.lonDeg) * rad) / 2);
  const square = halfLat ** 2 + Math.cos(from.latDeg * rad) * Math.cos(to.latDeg * rad) * halfLon ** 2;
  return 2 * radiusKm * Math.asin(Math.min(1, Math.sqrt(square)));
}

export interface RoadGuess {
  readonly detourFactor: number;
  readonly radiusKm: number;
  /** Legs are rounded to this; null = not rounded. */
  readonly stepKm: number | null;
  readonly speedKmH: number;
}

export function legsByGreatCircle(places: readonly LatLonDeg[], guess: RoadGuess): Legs {
  const km = (from: number, to: number) => {
    const [one, other] = [places[from], places[to]];
    if (one === undefined || other === undefined) return 0;
    return rounded(greatCircleKm(one, other, guess.radiusKm) * guess.detourFactor, guess.stepKm);
  };
  return legsFrom(places.length, km, guess);
}

/** Legs from any distance between two places; the way back may be longer than the way there. */
export function legsFrom(
  placeCount: number,
  kmBetween: (from: number, to: number) => number,
  { stepKm, speedKmH }: Pick<RoadGuess, 'stepKm' | 'speedKmH'>,
): Legs {
  const km = new Float64Array(placeCount * placeCount);
  for (let from = 0; from < placeCount; from++)
    for (let to = 0; to < placeCount; to++) if (from !== to) km[from * placeCount + to] = kmBetween(from, to);
  return { placeCount, km, min: km.map((one) => (one / speedKmH) * 60), stepKm };
}

function rounded(lengthKm: number, stepKm: number | null): number {
  if (stepKm === null) return lengthKm;
  const inverse = Math.round(1 / stepKm);
  return Math.round(lengthKm * inverse) / inverse;
}

export function isSymmetric(legs: Legs): boolean {
  const { placeCount, km } = legs;
  for (let from = 0; from < placeCount; from++)
    for (let to = 0; to < from; to++)
      if (Math.abs((km[from * placeCount + to] ?? 0) - (km[to * placeCount + from] ?? 0)) > 1e-9) return false;
  return true;
}
