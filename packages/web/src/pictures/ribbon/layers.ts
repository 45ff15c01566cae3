import type { PlacedStand } from '@leywright/planner';

/**
 * A stand's place in the pile of a plot's cover, week by week: shares of the plot's ground from 0 at the soil to 1 at full cover. A stand on half
 * a plot at full cover is half as thick as the strip is high, so the pile's outline is the plot's own cover.
 */
export interface Layer {
  readonly stand: PlacedStand;
  readonly fromWeek: number;
  readonly base: readonly number[];
  readonly top: readonly number[];
  /** Drawn over its host's foot until the host is off; from then on it lies in the pile itself. */
  readonly overUntilWeek: number | null;
}

/** While it grows under a crop, an undersown stand is drawn at this share of its height, so that both are seen. */
const underShare = 0.42;

/**
 * Piles the stands of a plot: the last side of the plot lies at the soil, the first on top. `endWeek` gives the week in which a stand leaves.
 * An undersown stand leans on the foot of its host while that stands.
 */
export function layersOf(stands: readonly PlacedStand[], endWeek: (stand: PlacedStand) => number): readonly Layer[] {
  const order = [...stands].sort(
    (a, b) => b.span.fromShare - a.span.fromShare || b.span.toShare - a.span.toShare || a.from.localeCompare(b.from),
  );
  const byId = new Map(stands.map((stand) => [stand.id, stand]));
  const hostEnd = (stand: PlacedStand) => hostEndWeek(stand, byId, endWeek);
  const isUnder = (stand: PlacedStand, week: number) => week < (hostEnd(stand) ?? Number.NEGATIVE_INFINITY);
  const baseAt = (stand: PlacedStand, week: number): number => {
    const host = isUnder(stand, week) && stand.undersownIn !== null ? byId.get(stand.undersownIn) : undefined;
    if (host !== undefined) return baseAt(host, week);
    let sum = 0;
    for (const other of order) {
      if (other === stand) break;
      if (!isUnder(other, week)) sum += thickness(other, week);
    }
    return sum;
  };
  return order.map((stand) => {
    const base = stand.coverShare.map((_, index) => baseAt(stand, stand.coverFromWeek + index));
    const top = base.map(
      (foot, index) =>
        foot +
        thickness(stand, stand.coverFromWeek + index) * (isUnder(stand, stand.coverFromWeek + index) ? underShare : 1),
    );
    return { stand, fromWeek: stand.coverFromWeek, base, top, overUntilWeek: hostEnd(stand) };
  });
}

function hostEndWeek(
  stand: PlacedStand,
  byId: ReadonlyMap<string, PlacedStand>,
  endWeek: (stand: PlacedStand) => number,
): number | null {
  const host = stand.undersownIn === null ? undefined : byId.get(stand.undersownIn);
  return host === undefined ? null : endWeek(host);
}

function thickness(stand: PlacedStand, week: number): number {
  return (stand.coverShare[week - stand.coverFromWeek] ?? 0) * (stand.span.toShare - stand.span.fromShare);
}
