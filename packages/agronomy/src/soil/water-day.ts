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
import { type RunState, scalar, slot, today } from './soil-state.ts';

/** FAO-56 sets the most that crop and wet ground give off at 1.2 in the standard climate. */
const standardKcMax = 1.2;

/** Rain, irrigation and the fall of nitrogen with the rain, sent down through the layers. */
export function waterDown(state: RunState, dayIndex: number): void {
  const { constants, scalars, sums, waterLayersMm, nitrateLayersKgHa, tipping } = state;
  const rainMm = state.part.tunnel ? 0 : (state.weather.rainMm[dayIndex] as number);
  const irrigationMm = irrigationOf(state, dayIndex);
  const ranOffMm = runoffOf(state, rainMm);
  const inMm = rainMm + irrigationMm - ranOffMm;
  nitrateLayersKgHa[0] = (nitrateLayersKgHa[0] as number) + constants.depositedKgHaDay;
  sums[columnAt.depositedNKgHa] = (sums[columnAt.depositedNKgHa] as number) + constants.depositedKgHaDay;
  // Wetted at the start of the day, eq. 77.
  scalars[scalar.surfaceDepletionMm] = Math.max(0, (scalars[scalar.surfaceDepletionMm] as number) - inMm);
  tipping.belowMm[0] = 0;
  tipping.belowMm[1] = 0;
  if (rainMm + irrigationMm > 0) {
    sums[columnAt.rainMm] = (sums[columnAt.rainMm] as number) + rainMm;
    sums[columnAt.irrigationMm] = (sums[columnAt.irrigationMm] as number) + irrigationMm;
    sums[columnAt.runoffMm] = (sums[columnAt.runoffMm] as number) + ranOffMm;
  }
  if (inMm <= constants.layerFieldCapacityMm - (waterLayersMm[0] as number) && constants.drainingFraction === 1) {
    // All of it stays in the first layer.
    waterLayersMm[0] = (waterLayersMm[0] as number) + inMm;
    return;
  }
  tipThroughLayers(tipping, inMm, constants.drainingFraction);
  const last = state.layerCount - 1;
  const rooted = Math.min(last, Math.max(2, (scalars[scalar.rootedLayers] as number) - 1));
  sums[columnAt.belowRootsMm] = (sums[columnAt.belowRootsMm] as number) + (tipping.belowMm[rooted] as number);
  sums[columnAt.belowRootsNKgHa] = (sums[columnAt.belowRootsNKgHa] as number) + (tipping.belowNKgHa[rooted] as number);
  sums[columnAt.drainedMm] = (sums[columnAt.drainedMm] as number) + (tipping.belowMm[last] as number);
  sums[columnAt.leachedNKgHa] = (sums[columnAt.leachedNKgHa] as number) + (tipping.belowNKgHa[last] as number);
}

/** What the open ground and the stands give off. Dead residue on the ground hides its share. */
export function waterUp(state: RunState): void {
  const { scalars, slots, handedValues } = state;
  const stands = scalars[scalar.stands] as number;
  let open = 1;
  let kcb = 0;
  for (let nth = 0; nth < stands; nth++) {
    const from = nth * slot.size;
    // What grows under another has only the light the other leaves.
    const own = (slots[from + slot.kcb] as number) * open;
    slots[from + slot.kcb] = own;
    kcb += own;
    open *= 1 - (slots[from + slot.cover] as number);
  }
  scalars[scalar.coverShare] = 1 - open;
  const mulchC = scalars[scalar.mulchC] as number;
  const hiddenShare = mulchC > 0 ? residueCover(mulchC / carbonInDryMatterShare / 1000) : 0;
  handedValues[today.kcb] = kcb;
  handedValues[today.openShare] = open * (1 - hiddenShare);
  evaporate(state);
  for (let nth = 0; nth < stands; nth++) transpire(state, nth);
}

function evaporate(state: RunState): void {
  const { constants, scalars, waterLayersMm, handedValues } = state;
  const openShare = handedValues[today.openShare] as number;
  if (openShare <= 0.01) return;
  const kcb = handedValues[today.kcb] as number;
  const depletionMm = scalars[scalar.surfaceDepletionMm] as number;
  const kcMax = Math.max(standardKcMax, kcb + 0.05);
  const kr = reductionKr(depletionMm, constants.evaporableMm, constants.readilyEvaporatedMm);
  const ke = Math.max(0, Math.min(kr * (kcMax - kcb), openShare * kcMax)); // eq. 71
  const layerMm = waterLayersMm[0] as number;
  const spareMm = Math.max(0, layerMm - 0.5 * (state.wiltingLayersMm[0] as number));
  const takenMm = Math.min(ke * (handedValues[today.etoMm] as number), spareMm);
  waterLayersMm[0] = layerMm - takenMm;
  scalars[scalar.surfaceDepletionMm] = Math.min(constants.evaporableMm, depletionMm + takenMm / openShare); // eq. 77
  state.sums[columnAt.evaporationMm] = (state.sums[columnAt.evaporationMm] as number) + takenMm;
}

function transpire(state: RunState, nth: number): void {
  const { constants, scalars, slots, sums, waterLayersMm, wiltingLayersMm, pulls } = state;
  const from = nth * slot.size;
  const of = state.stands[slots[from + slot.stand] as number];
  if (of === undefined) return;
  const wantedMm = (slots[from + slot.kcb] as number) * (state.handedValues[today.etoMm] as number);
  const layers = rootedLayers(state, from, false);
  const slope = 0.75 / layers;
  let availableMm = 0;
  let weightSum = 0;
  for (let at = 0; at < layers; at++) {
    const spare = Math.max(0, (waterLayersMm[at] as number) - (wiltingLayersMm[at] as number));
    const weight = spare * (1 - slope * (at + 0.5));
    availableMm += spare;
    pulls[at] = weight;
    weightSum += weight;
  }
  const totalMm = layers * constants.layerAvailableMm;
  const p = Math.min(0.8, Math.max(0.1, of.habit.depletionFraction + 0.04 * (5 - wantedMm))); // note under Table 22
  const depletionMm = totalMm - Math.min(totalMm, availableMm);
  const ks = reductionKr(depletionMm, totalMm, p * totalMm); // eq. 84 has the form of eq. 74
  const scale = weightSum > 0 ? Math.min(1, (ks * wantedMm) / weightSum) : 0;
  const gotMm = scale * weightSum;
  for (let at = 0; at < layers; at++) waterLayersMm[at] = (waterLayersMm[at] as number) - scale * (pulls[at] as number);
  slots[from + slot.ks] = wantedMm > 0 ? Math.min(1, gotMm / wantedMm) : 1;
  slots[from + slot.waterWanted] = (slots[from + slot.waterWanted] as number) + wantedMm;
  slots[from + slot.waterGot] = (slots[from + slot.waterGot] as number) + gotMm;
  sums[columnAt.transpirationMm] = (sums[columnAt.transpirationMm] as number) + gotMm;
  sums[columnAt.transpirationWantedMm] = (sums[columnAt.transpirationWantedMm] as number) + wantedMm;
  if (nth > 0) return;
  scalars[scalar.depletionMm] = depletionMm;
  scalars[scalar.readilyMm] = p * totalMm;
  scalars[scalar.totalMm] = totalMm;
}

/** Layers a living stand's roots have reached, for water or for nitrogen; two at least, as seedlings have. */
export function rootedLayers(state: RunState, slotIndex: number, forNitrogen: boolean): number {
  const of = state.stands[state.slots[slotIndex + slot.stand] as number];
  if (of === undefined) return 2;
  const greatestM = forNitrogen ? of.habit.nitrogenRootM : of.habit.waterRootM;
  const down = Math.min(1, (state.slots[slotIndex + slot.growthCd] as number) / of.habit.rootsDownCd);
  return Math.min(state.layerCount, Math.max(2, Math.ceil((0.2 + (greatestM - 0.2) * down) * 10 - 1e-9)));
}

function irrigationOf(state: RunState, at: number): number {
  const { irrigation } = state.part;
  if (irrigation.kind === 'none') return 0;
  const { scalars } = state;
  if (irrigation.kind === 'rule') {
    const depletionMm = scalars[scalar.depletionMm] as number;
    if ((scalars[scalar.stands] as number) === 0 || depletionMm < (scalars[scalar.readilyMm] as number)) return 0;
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
  const wetness = 1 - (layerFieldCapacityMm - (state.waterLayersMm[0] as number)) / layerAvailableMm;
  return runoffMm(rainMm, curveNumberFor(curveNumber, wetness));
}
