/** A round thing the plough goes round: the dial, the dot under the current place, the letter of a plot. */
export interface Obstacle {
  readonly at: number;
  readonly radius: number;
}

/** Distances of the three furrows each side of the middle line where nothing stands in their way, px. */
export const furrowDistances = [2, 5.2, 8.4] as const;

/**
 * How far from the middle line a furrow runs at `x`: the streamline of flow past circles whose centres lie on the middle line,
 * y (1 - sum R²/((x - xi)² + y²)) = distance.
 */
export function furrowOffset(x: number, distance: number, obstacles: readonly Obstacle[]): number {
  let low = distance;
  for (const { at, radius } of obstacles) {
    const across = radius * radius - (x - at) ** 2;
    if (across > 0) low = Math.max(low, Math.sqrt(across));
  }
  let high = low + distance + obstacles.reduce((sum, { radius }) => sum + radius, 0);
  for (let step = 0; step < 22; step += 1) {
    const middle = (low + high) / 2;
    if (flow(x, middle, obstacles) < distance) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}

/** SVG paths of all six furrows along a level line at `y`, from 0 to `length`. */
export function furrowPaths(length: number, y: number, obstacles: readonly Obstacle[]): readonly string[] {
  const stops = stopsAlong(length, obstacles);
  return furrowDistances.flatMap((distance) => {
    const offsets = stops.map((x) => furrowOffset(x, distance, obstacles));
    return [1, -1].map((side) =>
      stops
        .map((x, index) => `${index === 0 ? 'M' : 'L'}${x} ${(y + side * (offsets[index] ?? distance)).toFixed(2)}`)
        .join(''),
    );
  });
}

function flow(x: number, y: number, obstacles: readonly Obstacle[]): number {
  let share = 1;
  for (const { at, radius } of obstacles) share -= (radius * radius) / ((x - at) ** 2 + y * y);
  return y * share;
}

/** Close stops near an obstacle, where the furrows bend, and far ones where they run straight. */
function stopsAlong(length: number, obstacles: readonly Obstacle[]): readonly number[] {
  const stops: number[] = [];
  let x = 0;
  while (x < length) {
    stops.push(Math.round(x * 10) / 10);
    const nearest = Math.min(...obstacles.map(({ at, radius }) => Math.abs(x - at) / radius), 40);
    x += nearest < 1.6 ? 1.5 : nearest < 5 ? 4 : 24;
  }
  stops.push(length);
  return stops;
}
