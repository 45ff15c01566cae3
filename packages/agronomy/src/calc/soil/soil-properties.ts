/** Rules of water and nitrate that must hold, run over a fixed grid: each gives the greatest error found. */
import { burnsLeachedShare, tipThroughLayers } from '../../nitrogen/leaching.ts';
import { stepRootZone } from '../../water/available-water.ts';

/** Rain and irrigation less use and drainage against the change of depletion, day by day (mm). */
export function waterBalanceErrorMm(): number {
  let worst = 0;
  let depletionMm = 30;
  for (let day = 0; day < 400; day++) {
    const rainMm = (day * 7919) % 23 < 7 ? ((day * 31) % 17) * 1.7 : 0;
    const irrigationMm = day % 41 === 0 ? 12 : 0;
    // Never more than is there: the caller's stress coefficient sees to that.
    const usedMm = Math.min((day % 9) * 0.61, 120 - depletionMm);
    const step = stepRootZone(depletionMm, { rainMm, irrigationMm, usedMm }, 120);
    const error = rainMm + irrigationMm - usedMm - step.drainedMm - (depletionMm - step.depletionMm);
    worst = Math.max(worst, Math.abs(error));
    depletionMm = step.depletionMm;
  }
  return worst;
}

/** One event through layers of 1 cm at field capacity against Burns' equation: the greatest difference in the share leached. */
export function layersAgainstBurns(): number {
  let worst = 0;
  for (const drainageCm of [0.5, 2, 10, 35]) {
    for (const fieldCapacityPct of [12, 30, 42]) {
      for (const depthCm of [10, 30, 90])
        worst = Math.max(
          worst,
          Math.abs(
            tippedShare(drainageCm, fieldCapacityPct, depthCm) -
              burnsLeachedShare(drainageCm, fieldCapacityPct, depthCm),
          ),
        );
    }
  }
  return worst;
}

/** Share of nitrate on the surface that one event washes out of so many layers of 1 cm. */
function tippedShare(drainageCm: number, fieldCapacityPct: number, depthCm: number): number {
  const layer = () => new Float64Array(depthCm);
  const fieldCapacityMm = layer().fill(fieldCapacityPct / 10);
  const nitrateKgHa = layer();
  // Burns' nitrate lies in the first centimetre and is mixed with the event there.
  nitrateKgHa[0] = 1;
  const layers = {
    waterMm: fieldCapacityMm.slice(),
    nitrateKgHa,
    fieldCapacityMm,
    saturationMm: layer().fill(Number.POSITIVE_INFINITY),
    belowMm: layer(),
    belowNKgHa: layer(),
  };
  tipThroughLayers(layers, drainageCm * 10, 1);
  return layers.belowNKgHa[depthCm - 1] ?? 0;
}
