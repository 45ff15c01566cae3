/**
 * The sample farm's map: two fields with a track between them, cut into plots of the areas that were typed.
 *
 * Drawn in metres east and north of a corner, then laid on the ellipsoid by its two radii of curvature at each point's latitude, which
 * keeps areas of a few hectares to about one part in a hundred thousand.
 */
type Point = readonly [eastM: number, northM: number];
type Degrees = readonly [lonDeg: number, latDeg: number];

export const corner = { latDeg: 52.6031, lonDeg: 0.9042 };

const equatorM = 6_378_137;
const eccentricitySquared = 0.006_694_379_990_14;
const radians = Math.PI / 180;

/** Degrees of a point of the drawing, to about a centimetre. */
export function onEarth([eastM, northM]: Point): Degrees {
  const meridianM =
    (equatorM * (1 - eccentricitySquared)) / (1 - eccentricitySquared * Math.sin(corner.latDeg * radians) ** 2) ** 1.5;
  const latDeg = corner.latDeg + northM / meridianM / radians;
  const crossM = equatorM / Math.sqrt(1 - eccentricitySquared * Math.sin(latDeg * radians) ** 2);
  const lonDeg = corner.lonDeg + eastM / (crossM * Math.cos(latDeg * radians)) / radians;
  return [rounded(lonDeg), rounded(latDeg)];
}

function rounded(degrees: number): number {
  return Math.round(degrees * 1e7) / 1e7;
}

/** A row of plots between a lower and an upper line, each as wide as its area asks; the lines between them lean a little. */
export function rowOfPlots(
  lower: (eastM: number) => number,
  upper: (eastM: number) => number,
  areasM2: readonly number[],
): readonly (readonly Degrees[])[] {
  let left = 0;
  return areasM2.map((areaM2, place) => {
    const leftLean = lean(place);
    const rightLean = lean(place + 1);
    const right = widthOf((eastM) => areaOf(corners(left, eastM)), left, areaM2);
    const ring = corners(left, right).map(onEarth);
    left = right;
    return [...ring, ring[0] as Degrees];

    function corners(westM: number, eastM: number): readonly Point[] {
      const at = (foot: number, slope: number, line: (eastM: number) => number): Point => [
        foot + slope * line(foot),
        line(foot),
      ];
      return [
        at(westM, leftLean, lower),
        at(eastM, rightLean, lower),
        at(eastM, rightLean, upper),
        at(westM, leftLean, upper),
      ];
    }
  });
}

/** How far a line between two plots leans east for each metre north: no two alike, as ground is. */
function lean(place: number): number {
  return [0.02, -0.035, 0.03, -0.02, 0.04][place % 5] ?? 0;
}

function widthOf(areaAt: (eastM: number) => number, left: number, areaM2: number): number {
  let low = left;
  let high = left + 1000;
  for (let step = 0; step < 60; step += 1) {
    const middle = (low + high) / 2;
    if (areaAt(middle) < areaM2) low = middle;
    else high = middle;
  }
  return high;
}

function areaOf(points: readonly Point[]): number {
  return (
    Math.abs(
      points.reduce((sum, [x, y], at) => {
        const [nextX, nextY] = points[(at + 1) % points.length] as Point;
        return sum + x * nextY - nextX * y;
      }, 0),
    ) / 2
  );
}
