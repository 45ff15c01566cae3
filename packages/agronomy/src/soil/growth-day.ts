/**
 * One day of a living stand: its cover, its growth and the nitrogen it takes from the ground and the air.
 *
 * Source  canopy: Raes et al. 2009; need of nitrogen: critical curves (nitrogen/critical-nitrogen.ts); fixation: nitrogen/fixation-fall.ts, below-ground factor as in
 *         Anglade et al. 2015. Growth in proportion to cover and warmth, held back by want of water (Ks) and of nitrogen (share of the critical content): own.
 * Checks  test/run-soil.test.ts (nitrogen closes every day; a legume in rich soil fixes less; deep roots bring nitrate up)
 * Holds   a stand never takes more nitrate than its roots reach; what legumes lack they fix.
 * Leaves out  light: mass follows warmth, so a cool bright spring is undervalued; leaves shed before the end.
 */
import { canopyCover } from '../cover/canopy-curve.ts';
import { criticalNPct } from '../nitrogen/critical-nitrogen.ts';
import { shareFromAir } from '../nitrogen/fixation-fall.ts';
import { coefficientAt } from '../water/crop-coefficient.ts';
import { columnAt } from './soil-columns.ts';
import { type RunState, scalar, slot, today } from './soil-state.ts';
import type { StandOfRun } from './stand-of-run.ts';
import { rootedLayers } from './water-day.ts';

/** What roots leave behind in each layer, and the depth from which a take counts as deep. */
const leftInLayerKgHa = 0.3;
const deepFromLayer = 6;
/** Most a stand takes up in a day (kg N/ha); full-grown brassicas have been seen at 4 to 6. Common practice. */
const mostADayKgHa = 6;
/** Stored a day at most, and what a stand leaves for its need before it stores. Common practice. */
const mostStoredADayKgHa = 1;
const notSpareKgHa = 30;

/** Cover and basal coefficient of every living stand this morning. */
export function coverOfStands(state: RunState): void {
  const { slots, scalars } = state;
  const count = scalars[scalar.stands] as number;
  let deepest = 0;
  for (let nth = 0; nth < count; nth++) {
    const from = nth * slot.size;
    const of = state.stands[slots[from + slot.stand] as number];
    if (of === undefined) continue;
    setCover(of, slots, from);
    deepest = Math.max(deepest, rootedLayers(state, from, true));
  }
  scalars[scalar.rootedLayers] = deepest;
}

/**
 * Writes a living stand's own cover (less what failed to come up) and basal coefficient of the morning into its slot: at its canopy's thermal time and its
 * stage of warmth, never more than its cover can give off. Numbers go in and come out through the slots: as arguments they would be boxed every day.
 */
function setCover(of: StandOfRun, slots: Float64Array, from: number): void {
  const { curve, habit } = of;
  const tCd = (slots[from + slot.canopyCd] as number) - (slots[from + slot.canopyFromCd] as number);
  let cover = 0;
  if (tCd > of.declineFromCd) cover = canopyCover(curve, tCd);
  else if (tCd <= of.fastToCd) cover = curve.startCoverShare * Math.exp(of.ratePerCd * tCd);
  else cover = curve.fullCoverShare - of.slowFactor * Math.exp(-of.ratePerCd * tCd);
  cover *= of.establishedShare;
  slots[from + slot.cover] = cover;
  slots[from + slot.kcb] =
    habit.stagesKc === null
      ? habit.fullKcb * (cover / curve.fullCoverShare)
      : coefficientAt(habit.stagesKc, slots[from + slot.growthCd] as number) * of.establishedShare;
}

/** Growth and nitrogen of every living stand. */
export function growStands(state: RunState, dayIndex: number): void {
  const { slots, handedValues } = state;
  const count = state.scalars[scalar.stands] as number;
  const isShort = (state.weather.shortDayCount[dayIndex] as number) > 0;
  for (let nth = 0; nth < count; nth++) {
    const from = nth * slot.size;
    const of = state.stands[slots[from + slot.stand] as number];
    if (of === undefined) continue;
    handedValues[today.dayShare] = isShort ? of.habit.shortDayShare : 1;
    growOne(state, of, from);
  }
}

function growOne(state: RunState, of: StandOfRun, from: number): void {
  const { slots, handedValues } = state;
  const { habit } = of;
  const days = slots[from + slot.days] as number;
  slots[from + slot.days] = days + 1;
  if (days < habit.checkDays) return;
  const airC = handedValues[today.airC] as number;
  const dayShare = handedValues[today.dayShare] as number;
  const growthCd = dayShare * Math.max(0, airC - habit.growthBaseC);
  slots[from + slot.canopyCd] = (slots[from + slot.canopyCd] as number) + dayShare * Math.max(0, airC - of.curve.baseC);
  const sinceStartCd = slots[from + slot.growthCd] as number;
  slots[from + slot.growthCd] = sinceStartCd + growthCd;
  if (growthCd <= 0 || sinceStartCd > of.matureCd) return;
  const ofAge = sinceStartCd < habit.youngCd ? habit.youngGainShare : 1;
  const gainT = ofAge * habit.gainPerCdTHa * (slots[from + slot.cover] as number) * growthCd;
  const grownT = gainT * (slots[from + slot.ks] as number) * (slots[from + slot.nourished] as number);
  const massT = (slots[from + slot.massT] as number) + grownT;
  slots[from + slot.massT] = massT;
  slots[from + slot.unstressedT] = (slots[from + slot.unstressedT] as number) + gainT;
  slots[from + slot.grownT] = (slots[from + slot.grownT] as number) + grownT;
  slots[from + slot.rootMassT] = (slots[from + slot.rootMassT] as number) + grownT * habit.rootMassShare;
  const { dilution } = habit;
  const isFlat = massT < dilution.flatBelowTHa;
  const criticalKgT = (isFlat ? of.flatNPct : criticalNPct(dilution, massT)) * 10;
  // What the day's unstressed growth needs: the slope of the critical curve.
  const slope = isFlat ? 1 : 1 - dilution.exponent;
  slots[from + slot.nWanted] =
    (slots[from + slot.nWanted] as number) + gainT * criticalKgT * slope * (1 + habit.rootNShare);
  handedValues[today.criticalN] = massT * criticalKgT;
  feed(state, of, from);
}

/** Brings the shoot to its critical content as far as ground and air give; roots get their share of all. */
function feed(state: RunState, of: StandOfRun, from: number): void {
  const { slots, sums, handedValues } = state;
  const { habit } = of;
  const criticalN = handedValues[today.criticalN] as number;
  const withRoots = 1 + habit.rootNShare;
  const shootN = slots[from + slot.shootN] as number;
  const wanted = Math.min(mostADayKgHa, Math.max(0, criticalN - shootN) * withRoots);
  if (wanted > 0) {
    const ofLegumes = wanted * habit.legumeShare;
    const layers = rootedLayers(state, from, true);
    handedValues[today.takenN] = 0;
    handedValues[today.wantedN] = wanted - ofLegumes;
    if (ofLegumes < wanted) takeNitrate(state, layers);
    let soilN = handedValues[today.takenN] as number;
    let airN = 0;
    if (ofLegumes > 0) {
      const share = shareFromAir(
        habit.airShare * (slots[from + slot.airFactor] as number),
        nitrateIn(state, Math.min(6, layers)),
      );
      handedValues[today.wantedN] = ofLegumes * (1 - share);
      takeNitrate(state, layers);
      airN = ofLegumes - (handedValues[today.takenN] as number);
      soilN += handedValues[today.takenN] as number;
    }
    const got = soilN + airN;
    slots[from + slot.shootN] = shootN + got / withRoots;
    slots[from + slot.rootN] = (slots[from + slot.rootN] as number) + got - got / withRoots;
    slots[from + slot.fixedN] = (slots[from + slot.fixedN] as number) + airN;
    slots[from + slot.nGot] = (slots[from + slot.nGot] as number) + got;
    sums[columnAt.fixedNKgHa] = (sums[columnAt.fixedNKgHa] as number) + airN;
    sums[columnAt.uptakeNKgHa] = (sums[columnAt.uptakeNKgHa] as number) + soilN;
  }
  storeUp(state, of, from);
  slots[from + slot.nourished] = criticalN > 0 ? Math.min(1, (slots[from + slot.shootN] as number) / criticalN) : 1;
}

/** Takes up what the ground has to spare beyond the need, never from the air: what lies in its top 60 cm over what is left to the next day's need. */
function storeUp(state: RunState, of: StandOfRun, from: number): void {
  const { slots, sums, handedValues } = state;
  const { habit } = of;
  const withRoots = 1 + habit.rootNShare;
  const shootN = slots[from + slot.shootN] as number;
  const layers = rootedLayers(state, from, true);
  const spare = nitrateIn(state, Math.min(6, layers)) - notSpareKgHa;
  const lacking = (habit.storesRatio * (handedValues[today.criticalN] as number) - shootN) * withRoots;
  if (lacking <= 0 || spare <= 0) return;
  handedValues[today.wantedN] = Math.min(mostStoredADayKgHa, lacking, spare);
  takeNitrate(state, layers);
  const got = handedValues[today.takenN] as number;
  slots[from + slot.shootN] = shootN + got / withRoots;
  slots[from + slot.rootN] = (slots[from + slot.rootN] as number) + got - got / withRoots;
  slots[from + slot.nGot] = (slots[from + slot.nGot] as number) + got;
  sums[columnAt.uptakeNKgHa] = (sums[columnAt.uptakeNKgHa] as number) + got;
}

/** Takes up to the nitrate wanted (kg/ha) from the rooted layers, more from the top and where there is more. Hands over what it got. */
function takeNitrate(state: RunState, layers: number): void {
  const { nitrateLayersKgHa, pulls, sums, handedValues } = state;
  const slope = 0.75 / layers;
  let weightSum = 0;
  for (let at = 0; at < layers; at++) {
    const weight = Math.max(0, (nitrateLayersKgHa[at] as number) - leftInLayerKgHa) * (1 - slope * (at + 0.5));
    pulls[at] = weight;
    weightSum += weight;
  }
  const scale = weightSum > 0 ? Math.min(1, (handedValues[today.wantedN] as number) / weightSum) : 0;
  let deep = 0;
  for (let at = 0; at < layers; at++) {
    const taken = scale * (pulls[at] as number);
    nitrateLayersKgHa[at] = (nitrateLayersKgHa[at] as number) - taken;
    if (at >= deepFromLayer) deep += taken;
  }
  sums[columnAt.deepUptakeNKgHa] = (sums[columnAt.deepUptakeNKgHa] as number) + deep;
  handedValues[today.takenN] = scale * weightSum;
}

function nitrateIn(state: RunState, layers: number): number {
  let sum = 0;
  for (let at = 0; at < layers; at++) sum += state.nitrateLayersKgHa[at] as number;
  return sum;
}
