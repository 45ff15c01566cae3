/**
 * Nitrate washed down by drainage: the share of one event, and the day-by-day form in layers that the run uses.
 *
 * Source  Burns 1975, J. agric. Sci. 85:443 (variables read in the abstract, algebra recalled; agrees with Scotter et al. 1993).
 * Checks  test/checks/soil.csv n-15, n-17; test/leaching.test.ts (layers of 1 cm and one event are Burns' equation to 1e-9)
 * Holds   0 ≤ share ≤ 1; more drainage never leaches less; no nitrate is made or lost on the way.
 * Leaves out  cracks and worm channels, ammonium, and water that stands still in crumbs.
 */

/** Share of nitrate at the surface washed below a depth by drainage (cm) through soil of a water content at field capacity (% of volume). */
export function burnsLeachedShare(drainageCm: number, fieldCapacityPct: number, depthCm: number): number {
  return (drainageCm / (drainageCm + fieldCapacityPct / 100)) ** depthCm;
}

/** The same for nitrate mixed through a depth: half of it counts (Burns 1976, recalled). */
export function burnsLeachedMixedShare(drainageCm: number, fieldCapacityPct: number, depthCm: number): number {
  return burnsLeachedShare(drainageCm, fieldCapacityPct, depthCm / 2);
}

/**
 * Sends one day's water through layers in place, each draining `drainingFraction` of what stands over its field capacity (and all over saturation), with its
 * share of the layer's nitrate. Fills `belowMm` and `belowNKgHa` with what left each layer downward. Returns nothing: layers are moved where they lie.
 */
export function tipThroughLayers(
  layers: {
    readonly waterMm: Float64Array;
    readonly nitrateKgHa: Float64Array;
    readonly fieldCapacityMm: Float64Array;
    readonly saturationMm: Float64Array;
    readonly belowMm: Float64Array;
    readonly belowNKgHa: Float64Array;
  },
  wateredMm: number,
  drainingFraction: number,
): void {
  const { waterMm, nitrateKgHa, fieldCapacityMm, saturationMm, belowMm, belowNKgHa } = layers;
  let flowMm = wateredMm;
  let flowNKgHa = 0;
  for (let at = 0; at < waterMm.length; at++) {
    const standing = (waterMm[at] ?? 0) + flowMm;
    const nitrate = (nitrateKgHa[at] ?? 0) + flowNKgHa;
    const over = standing - (fieldCapacityMm[at] ?? 0);
    flowMm = over > 0 ? Math.max(drainingFraction * over, standing - (saturationMm[at] ?? 0)) : 0;
    flowNKgHa = flowMm > 0 ? (nitrate * flowMm) / standing : 0;
    waterMm[at] = standing - flowMm;
    nitrateKgHa[at] = nitrate - flowNKgHa;
    belowMm[at] = flowMm;
    belowNKgHa[at] = flowNKgHa;
  }
}
