/**
 * One day of a living stand: its cover, its growth and the nitrogen it takes from the ground and the air.
 *
 * Source  canopy: Raes et al. 2009; need of nitrogen: critical curves (nitrogen/critical-nitrogen.ts); fixation: nitrogen/fixation-fall.ts, below-ground factor as in
 *         Anglade et al. 2015. Growth in proportion to cover and warmth, held back by want of water (Ks) and of nitrogen (share of the critical content): own.
 * Checks  test/run-soil.test.ts (nitrogen closes every day; a legume in rich soil fixes less; deep roots bring nitrate up)
 * Holds   a stand never takes more nitrate than its roots reach; what legumes lack they fix.
 * Leaves out  light: mass follows warmth, so a cool bright spring is undervalued; luxury uptake; leaves shed before the end.
 */
import { criticalNPct } from '../nitrogen/critical-nitrogen.ts';
import { shareFromAir } from '../nitrogen/fixation-fall.ts';
import { columnAt } from './soil-columns.ts';
import { add, get, type RunState, scalar, slot, today } from './soil-state.ts';
import { basalKcb, ownCoverShare, type StandOfRun } from './stand-of-run.ts';
import { rootedLayers } from './water-day.ts';

/** What roots leave behind in each layer, and the depth from which a take counts as deep. */
const leftInLayerKgHa = 0.3;
const deepFromLayer = 6;
/** Most a stand takes up in a day (kg N/ha); full-grown brassicas have been seen at 4 to 6. Common practice. */
const mostADayKgHa = 6;

/** Cover and basal coefficient of every living stand this morning. */
export function coverOfStands(state: RunState): void {
  const { slots, scalars } = state;
  const count = scalars[scalar.stands] ?? 0;
  let deepest = 0;
  for (let nth = 0; nth < count; nth++) {
    const from = nth * slot.size;
    const of = state.stands[slots[from + slot.stand] ?? 0];
    if (of === undefined) continue;
    const canopyCd = get(slots, from + slot.canopyCd) - get(slots, from + slot.canopyFromCd);
    const cover = ownCoverShare(of, canopyCd) * of.stand.establishedShare;
    slots[from + slot.cover] = cover;
    slots[from + slot.kcb] = basalKcb(of, slots[from + slot.growthCd] ?? 0, cover);
    deepest = Math.max(deepest, rootedLayers(state, from, true));
  }
  scalars[scalar.rootedLayers] = deepest;
}

/** Growth and nitrogen of every living stand. */
export function growStands(state: RunState, at: number): void {
  const { slots, handedValues } = state;
  const count = get(state.scalars, scalar.stands);
  const isShort = (state.weather.shortDayCount[at] ?? 0) > 0;
  for (let nth = 0; nth < count; nth++) {
    const from = nth * slot.size;
    const of = state.stands[get(slots, from + slot.stand)];
    if (of === undefined) continue;
    handedValues[today.dayShare] = isShort ? of.habit.shortDayShare : 1;
    growOne(state, of, from);
  }
}

function growOne(state: RunState, of: StandOfRun, from: number): void {
  const { slots, handedValues } = state;
  const { habit } = of;
  const days = get(slots, from + slot.days);
  slots[from + slot.days] = days + 1;
  if (days < habit.checkDays) return;
  const airC = get(handedValues, today.airC);
  const dayShare = get(handedValues, today.dayShare);
  const growthCd = dayShare * Math.max(0, airC - habit.growthBaseC);
  add(slots, from + slot.canopyCd, dayShare * Math.max(0, airC - of.curve.baseC));
  const sinceStartCd = get(slots, from + slot.growthCd);
  slots[from + slot.growthCd] = sinceStartCd + growthCd;
  if (growthCd <= 0 || sinceStartCd > of.matureCd) return;
  const ofAge = sinceStartCd < habit.youngCd ? habit.youngGainShare : 1;
  const gainT = ofAge * habit.gainPerCdTHa * get(slots, from + slot.cover) * growthCd;
  const grownT = gainT * get(slots, from + slot.ks) * get(slots, from + slot.nourished);
  const massT = get(slots, from + slot.massT) + grownT;
  slots[from + slot.massT] = massT;
  add(slots, from + slot.unstressedT, gainT);
  add(slots, from + slot.grownT, grownT);
  add(slots, from + slot.rootMassT, grownT * habit.rootMassShare);
  const { dilution } = habit;
  const isFlat = massT < dilution.flatBelowTHa;
  const criticalKgT = (isFlat ? of.flatNPct : criticalNPct(dilution, massT)) * 10;
  // What the day's unstressed growth needs: the slope of the critical curve.
  const slope = isFlat ? 1 : 1 - dilution.exponent;
  add(slots, from + slot.nWanted, gainT * criticalKgT * slope * (1 + habit.rootNShare));
  handedValues[today.criticalN] = massT * criticalKgT;
  feed(state, of, from);
}

/** Brings the shoot to its critical content as far as ground and air give; roots get their share of all. */
function feed(state: RunState, of: StandOfRun, from: number): void {
  const { slots, sums, handedValues } = state;
  const { habit } = of;
  const criticalN = get(handedValues, today.criticalN);
  const withRoots = 1 + habit.rootNShare;
  const shootN = get(slots, from + slot.shootN);
  const wanted = Math.min(mostADayKgHa, Math.max(0, criticalN - shootN) * withRoots);
  if (wanted > 0) {
    const ofLegumes = wanted * habit.legumeShare;
    const layers = rootedLayers(state, from, true);
    handedValues[today.takenN] = 0;
    if (ofLegumes < wanted) takeNitrate(state, layers, wanted - ofLegumes);
    let soilN = get(handedValues, today.takenN);
    let airN = 0;
    if (ofLegumes > 0) {
      const share = shareFromAir(
        habit.airShare * get(slots, from + slot.airFactor),
        nitrateIn(state, Math.min(6, layers)),
      );
      takeNitrate(state, layers, ofLegumes * (1 - share));
      airN = ofLegumes - get(handedValues, today.takenN);
      soilN += get(handedValues, today.takenN);
    }
    const got = soilN + airN;
    slots[from + slot.shootN] = shootN + got / withRoots;
    add(slots, from + slot.rootN, got - got / withRoots);
    add(slots, from + slot.fixedN, airN);
    add(slots, from + slot.nGot, got);
    add(sums, columnAt.fixedNKgHa, airN);
    add(sums, columnAt.uptakeNKgHa, soilN);
  }
  slots[from + slot.nourished] = criticalN > 0 ? Math.min(1, get(slots, from + slot.shootN) / criticalN) : 1;
}

/** Takes up to so much nitrate (kg/ha) from the rooted layers, more from the top and where there is more. Hands over what it got. */
function takeNitrate(state: RunState, layers: number, wantedKgHa: number): void {
  const { nitrateLayersKgHa, weights, sums, handedValues } = state;
  const slope = 0.75 / layers;
  let weightSum = 0;
  for (let at = 0; at < layers; at++) {
    const weight = Math.max(0, get(nitrateLayersKgHa, at) - leftInLayerKgHa) * (1 - slope * (at + 0.5));
    weights[at] = weight;
    weightSum += weight;
  }
  const scale = weightSum > 0 ? Math.min(1, wantedKgHa / weightSum) : 0;
  let deep = 0;
  for (let at = 0; at < layers; at++) {
    const taken = scale * get(weights, at);
    nitrateLayersKgHa[at] = get(nitrateLayersKgHa, at) - taken;
    if (at >= deepFromLayer) deep += taken;
  }
  add(sums, columnAt.deepUptakeNKgHa, deep);
  handedValues[today.takenN] = scale * weightSum;
}

function nitrateIn(state: RunState, layers: number): number {
  let sum = 0;
  for (let at = 0; at < layers; at++) sum += state.nitrateLayersKgHa[at] ?? 0;
  return sum;
}
