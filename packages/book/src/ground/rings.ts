/** Outlines on the ground: their area on the ellipsoid, whether they cross themselves, how much two of them share. */
import geographic from 'geographiclib-geodesic';
import clipping from 'polygon-clipping';

/** Degrees, longitude first, as RFC 7946 writes them. */
export type Position = readonly [lonDeg: number, latDeg: number];
export type Ring = readonly Position[];

/**
 * Area inside a closed ring on the WGS 84 ellipsoid, m².
 *
 * Source  Karney 2013, Algorithms for geodesics, J. Geod. 87, 43-55, through geographiclib-geodesic.
 */
export function ringAreaM2(ring: Ring): number {
  const polygon = geographic.Geodesic.WGS84.Polygon(false);
  for (const [lonDeg, latDeg] of ring.slice(0, -1)) polygon.AddPoint(latDeg, lonDeg);
  return Math.abs(polygon.Compute(false, true).area ?? 0);
}

/** Most corners an outline is looked at with; more come from a machine, not a person. */
export const mostCorners = 5000;

/** Whether an outline crosses or touches itself so that inside and outside are not told apart. */
export function crossesItself(ring: Ring): boolean {
  try {
    const [only, ...more] = clipping.union([mutable(ring)]);
    if (only === undefined || more.length > 0 || only.length > 1) return true;
    return Math.abs(ringAreaM2(only[0] as Ring) - ringAreaM2(ring)) > 0.001 * ringAreaM2(ring) + 0.01;
  } catch {
    // The library gives up only on outlines that fold back on themselves within a hair's breadth.
    return true;
  }
}

/** Ground that two outlines share, m²; 0 when they only touch. */
export function sharedM2(a: Ring, b: Ring): number {
  if (!boxesMeet(a, b)) return 0;
  try {
    return clipping
      .intersection([mutable(a)], [mutable(b)])
      .reduce(
        (sum, [outer = [], ...holes]) =>
          sum + ringAreaM2(outer) - holes.reduce((lost, hole) => lost + ringAreaM2(hole), 0),
        0,
      );
  } catch {
    return 0;
  }
}

function mutable(ring: Ring): [number, number][] {
  return ring.map(([lonDeg, latDeg]) => [lonDeg, latDeg]);
}

function boxesMeet(a: Ring, b: Ring): boolean {
  return [0, 1].every((axis) => {
    const [fromA, toA] = extent(a, axis);
    const [fromB, toB] = extent(b, axis);
    return fromA <= toB && fromB <= toA;
  });
}

function extent(ring: Ring, axis: number): [number, number] {
  const values = ring.map((position) => position[axis] ?? 0);
  return [values.reduce((a, b) => Math.min(a, b)), values.reduce((a, b) => Math.max(a, b))];
}
