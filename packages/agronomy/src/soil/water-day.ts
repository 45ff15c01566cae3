/**
 * One day of water in the layers: what comes in, what runs through with its nitrate, what the open ground and the roots take.
 *
 * Source  FAO-56 (Allen et al. 1998) dual coefficient, eqs 69, 71-79, 82-84 with p of Table 22 for the day's demand; cover instead of eq. 76; tipping layers of
 *         10 cm; runoff: water/runoff.ts. Roots take more near the top (four to one from top to tip) and where there is more to take: engineering choice.
 * Checks  test/run-soil.test.ts (water closes every day to 1e-6; a tunnel has no rain; mulch and undersowing), test/soil-water.test.ts
 * Holds   no layer under half its wilting point nor over its pores; evaporation and transpiration never more than is there.
 * Leaves out  capillary rise, snow, water held on leaves.
 */
import { residueCover } from '../cover/ground-cover.ts';
import { tipThroughLayers } from '../nitrogen/leaching.ts';
import { carbonInDryMatterShare } from '../nitrogen/residue-release.ts';
import { curveNumberFor, runoffMm } from '../water/runoff.ts';
import { reductionKr } from '../water/surface-evaporation.ts';
import { columnAt } from './soil-columns.ts';
import { add, get, type RunState, scalar, slot, today } from './soil-state.ts';

/** FAO-56 sets the most that crop and wet ground give off at 1.2 in the standard climate. */
const standardKcMax = 1.2;

/** Rain, irrigation and the fall of nitrogen with the rain, sent down through the layers. */
export function waterDown(state: RunState, at: number): void {
  const { constants, scalars, sums, waterLayersMm, nitrateLayersKgHa, tipping } = state;
  const rainMm = state.part.tunnel ? 0 : (state.weather.rainMm[at] ?? 0);
  const irrigationMm = irrigationOf(state, at);
  const ranOffMm = runoffOf(state, rainMm);
  const inMm = rainMm + irrigationMm - ranOffMm;
  nitrateLayersKgHa[0] = get(nitrateLayersKgHa, 0) + constants.depositedKgHaDay;
  add(sums, columnAt.depositedNKgHa, constants.depositedKgHaDay);
  // Wetted at the start of the day, eq. 77.
  scalars[scalar.surfaceDepletionMm] = Math.max(0, get(scalars, scalar.surfaceDepletionMm) - inMm);
  tipping.belowMm[0] = 0;
  tipping.belowMm[1] = 0;
  if (rainMm + irrigationMm > 0) {
    add(sums, columnAt.rainMm, rainMm);
    add(sums, columnAt.irrigationMm, irrigationMm);
    add(sums, columnAt.runoffMm, ranOffMm);
  }
  if (inMm <= constants.layerFieldCapacityMm - get(waterLayersMm, 0) && constants.drainingFraction === 1) {
    // All of it stays in the first layer.
    waterLayersMm[0] = get(waterLayersMm, 0) + inMm;
    return;
  }
  tipThroughLayers(tipping, inMm, constants.drainingFraction);
  const last = state.layerCount - 1;
  const rooted = Math.min(last, Math.max(2, get(scalars, scalar.rootedLayers) - 1));
  add(sums, columnAt.belowRootsMm, tipping.belowMm[rooted] ?? 0);
  add(sums, columnAt.belowRootsNKgHa, tipping.belowNKgHa[rooted] ?? 0);
  add(sums, columnAt.drainedMm, tipping.belowMm[last] ?? 0);
  add(sums, columnAt.leachedNKgHa, tipping.belowNKgHa[last] ?? 0);
}

/** What the open ground and the stands give off. Dead residue on the ground hides its share. */
export function waterUp(state: RunState): void {
  const { scalars, slots, handedValues } = state;
  const stands = get(scalars, scalar.stands);
  let open = 1;
  let kcb = 0;
  for (let nth = 0; nth < stands; nth++) {
    const from = nth * slot.size;
    // What grows under another has only the light the other leaves.
    const own = get(slots, from + slot.kcb) * open;
    slots[from + slot.kcb] = own;
    kcb += own;
    open *= 1 - get(slots, from + slot.cover);
  }
  scalars[scalar.coverShare] = 1 - open;
  const mulchC = get(scalars, scalar.mulchC);
  const hiddenShare = mulchC > 0 ? residueCover(mulchC / carbonInDryMatterShare / 1000) : 0;
  handedValues[today.kcb] = kcb;
  handedValues[today.openShare] = open * (1 - hiddenShare);
  evaporate(state);
  for (let nth = 0; nth < stands; nth++) transpire(state, nth);
}

function evaporate(state: RunState): void {
  const { constants, scalars, waterLayersMm, handedValues } = state;
  const openShare = get(handedValues, today.openShare);
  if (openShare <= 0.01) return;
  const kcb = get(handedValues, today.kcb);
  const depletionMm = get(scalars, scalar.surfaceDepletionMm);
  const kcMax = Math.max(standardKcMax, kcb + 0.05);
  const kr = reductionKr(depletionMm, constants.evaporableMm, constants.readilyEvaporatedMm);
  const ke = Math.max(0, Math.min(kr * (kcMax - kcb), openShare * kcMax)); // eq. 71
  const layerMm = get(waterLayersMm, 0);
  const spareMm = Math.max(0, layerMm - 0.5 * get(state.wiltingLayersMm, 0));
  const takenMm = Math.min(ke * get(handedValues, today.etoMm), spareMm);
  waterLayersMm[0] = layerMm - takenMm;
  scalars[scalar.surfaceDepletionMm] = Math.min(constants.evaporableMm, depletionMm + takenMm / openShare); // eq. 77
  add(state.sums, columnAt.evaporationMm, takenMm);
}

function transpire(state: RunState, nth: number): void {
  const { constants, scalars, slots, sums, waterLayersMm, wiltingLayersMm, weights } = state;
  const from = nth * slot.size;
  const of = state.stands[get(slots, from + slot.stand)];
  if (of === undefined) return;
  const wantedMm = get(slots, from + slot.kcb) * get(state.handedValues, today.etoMm);
  const layers = rootedLayers(state, from, false);
  const slope = 0.75 / layers;
  let availableMm = 0;
  let weightSum = 0;
  for (let at = 0; at < layers; at++) {
    const spare = Math.max(0, get(waterLayersMm, at) - get(wiltingLayersMm, at));
    const weight = spare * (1 - slope * (at + 0.5));
    availableMm += spare;
    weights[at] = weight;
    weightSum += weight;
  }
  const totalMm = layers * constants.layerAvailableMm;
  const p = Math.min(0.8, Math.max(0.1, of.habit.depletionFraction + 0.04 * (5 - wantedMm))); // note under Table 22
  const depletionMm = totalMm - Math.min(totalMm, availableMm);
  const ks = reductionKr(depletionMm, totalMm, p * totalMm); // eq. 84 has the form of eq. 74
  const scale = weightSum > 0 ? Math.min(1, (ks * wantedMm) / weightSum) : 0;
  const gotMm = scale * weightSum;
  for (let at = 0; at < layers; at++) waterLayersMm[at] = get(waterLayersMm, at) - scale * get(weights, at);
  slots[from + slot.ks] = wantedMm > 0 ? Math.min(1, gotMm / wantedMm) : 1;
  add(slots, from + slot.waterWanted, wantedMm);
  add(slots, from + slot.waterGot, gotMm);
  add(sums, columnAt.transpirationMm, gotMm);
  add(sums, columnAt.transpirationWantedMm, wantedMm);
  if (nth > 0) return;
  scalars[scalar.depletionMm] = depletionMm;
  scalars[scalar.readilyMm] = p * totalMm;
  scalars[scalar.totalMm] = totalMm;
}

/** Layers a living stand's roots have reached, for water or for nitrogen; two at least, as seedlings have. */
export function rootedLayers(state: RunState, from: number, forNitrogen: boolean): number {
  const of = state.stands[get(state.slots, from + slot.stand)];
  if (of === undefined) return 2;
  const greatestM = forNitrogen ? of.habit.nitrogenRootM : of.habit.waterRootM;
  const down = Math.min(1, get(state.slots, from + slot.growthCd) / of.habit.rootsDownCd);
  return Math.min(state.layerCount, Math.max(2, Math.ceil((0.2 + (greatestM - 0.2) * down) * 10 - 1e-9)));
}

function irrigationOf(state: RunState, at: number): number {
  const { irrigation } = state.part;
  if (irrigation.kind === 'none') return 0;
  const { scalars } = state;
  if (irrigation.kind === 'rule') {
    const depletionMm = scalars[scalar.depletionMm] ?? 0;
    if (get(scalars, scalar.stands) === 0 || depletionMm < get(scalars, scalar.readilyMm)) return 0;
    return Math.min(irrigation.mostADayMm, Math.max(0, depletionMm - irrigation.roomForRainMm));
  }
  const day = state.weather.startDayNumber + at;
  let mm = 0;
  for (const amount of irrigation.amounts) if (amount.dayNumber === day) mm += amount.waterMm;
  return mm;
}

function runoffOf(state: RunState, rainMm: number): number {
  const { curveNumber } = state.part.profile;
  if (curveNumber === null || rainMm <= 0) return 0;
  const { layerFieldCapacityMm, layerAvailableMm } = state.constants;
  const wetness = 1 - (layerFieldCapacityMm - get(state.waterLayersMm, 0)) / layerAvailableMm;
  return runoffMm(rainMm, curveNumberFor(curveNumber, wetness));
}
