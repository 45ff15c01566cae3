/** Places on the ring of the year, from a radius and the number of weeks: week 1 begins at the top and the year runs clockwise. */
export interface Ring {
  readonly radius: number;
  readonly weeks: number;
}

export interface Point {
  readonly x: number;
  readonly y: number;
}

/** The middle of a week at a share of the radius, from the ring's centre. */
export function onRing(ring: Ring, week: number, share: number): Point {
  const turn = ((week - 0.5) / ring.weeks) * 2 * Math.PI;
  return { x: Math.sin(turn) * ring.radius * share, y: -Math.cos(turn) * ring.radius * share };
}

/** The week under a point given from the ring's centre. */
export function weekUnder(ring: Ring, point: Point): number {
  const turn = (Math.atan2(point.x, -point.y) / (2 * Math.PI) + 1) % 1;
  return Math.min(ring.weeks, Math.floor(turn * ring.weeks) + 1);
}

/** The slice of the ring between two weeks, both whole, from one share of the radius to another. */
export function ringSlice(
  ring: Ring,
  weeks: { readonly from: number; readonly to: number },
  shares: { readonly inner: number; readonly outer: number },
): string {
  const corner = (week: number, share: number) => {
    const { x, y } = onRing(ring, week + 0.5, share);
    return `${x.toFixed(2)} ${y.toFixed(2)}`;
  };
  const large = (weeks.to - weeks.from + 1) / ring.weeks > 0.5 ? 1 : 0;
  const outer = ring.radius * shares.outer;
  const inner = ring.radius * shares.inner;
  const start = weeks.from - 1;
  return `M${corner(start, shares.outer)}A${outer} ${outer} 0 ${large} 1 ${corner(weeks.to, shares.outer)}L${corner(weeks.to, shares.inner)}A${inner} ${inner} 0 ${large} 0 ${corner(start, shares.inner)}Z`;
}
