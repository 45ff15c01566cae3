/**
 * One day of nitrogen that residues and humus free or lock up, and that goes off as gas.
 *
 * Source  residues: Nicolardot, Recous & Mary 2001 (nitrogen/residue-release.ts); warmth, wetness and humus: Brisson et al. 2008 (nitrogen/release-factors.ts);
 *         denitrification: Hénault & Germon 2000 (nitrogen/denitrification.ts); ammonia: nitrogen/mulch-ammonia.ts.
 * Checks  test/run-soil.test.ts (nitrogen and carbon close every day to 1e-6; a batch in the ground is the plain model's)
 * Holds   mineral nitrogen is never negative: where it is short, poor residues decay only as fast as it lets them.
 * Leaves out  ammonium; what lies on the surface draws on the same 30 cm as what is in the ground. Batches under 2 kg nitrogen are closed into humus.
 */
import {
  denitrificationNitrateFactor,
  denitrificationWarmthFactor,
  denitrificationWetnessFactor,
  potentialKgHaDay,
} from '../nitrogen/denitrification.ts';
import { ammoniaPerDay } from '../nitrogen/mulch-ammonia.ts';
import { humusWarmthFactor, residueWarmthFactor, wetnessFactor } from '../nitrogen/release-factors.ts';
import { humusCnRatio, microbeDeathPerDay, microbeYieldFraction } from '../nitrogen/residue-release.ts';
import { columnAt } from './soil-columns.ts';
import { add, batch, get, type RunState, scalar, today } from './soil-state.ts';

/** Layers that are worked and hold the humus that turns over. */
export const workedLayers = 3;
const closedUnderNKgHa = 2;

/** Frees or locks up nitrogen in the worked layers. Closes batches that are nearly gone. */
export function releaseNitrogen(state: RunState): void {
  const { scalars, sums, waterLayersMm, constants, handedValues } = state;
  const fieldMm = constants.layerFieldCapacityMm;
  const surfaceWet = releaseWetness(waterLayersMm[0] ?? 0, fieldMm, constants.layerPoresMm);
  const deeperMm = ((waterLayersMm[0] ?? 0) + (waterLayersMm[1] ?? 0) + (waterLayersMm[2] ?? 0)) / workedLayers;
  const wet = releaseWetness(deeperMm, fieldMm, constants.layerPoresMm);
  const soilC = scalars[scalar.soilC] ?? 0;
  const humusN = scalars[scalar.humusN] ?? 0;
  const fromHumus = constants.humusPerDay * humusN * humusWarmthFactor(soilC) * wet;
  scalars[scalar.humusN] = humusN - fromHumus;
  sums[columnAt.humusReleaseNKgHa] = (sums[columnAt.humusReleaseNKgHa] ?? 0) + fromHumus;
  const warmth = residueWarmthFactor(soilC);
  let freedN = 0;
  if (warmth > 0 && get(scalars, scalar.batches) > 0) {
    handedValues[today.inGround] = warmth * wet;
    handedValues[today.onGround] = warmth * surfaceWet;
    handedValues[today.fromHumus] = fromHumus;
    decayBatches(state);
    freedN = get(handedValues, today.freedN);
  }
  changeTopNitrate(state, fromHumus + freedN);
  ammoniaOff(state);
}

/** Wetness with lack of air above field capacity. */
function releaseWetness(waterMm: number, fieldCapacityMm: number, poresMm: number): number {
  if (waterMm <= fieldCapacityMm) return wetnessFactor(waterMm / fieldCapacityMm);
  return Math.max(0, (poresMm - waterMm) / (poresMm - fieldCapacityMm));
}

/** All batches decay; hands over the nitrogen they free together (kg/ha), negative when they lock up. */
function decayBatches(state: RunState): void {
  const { batches, scalars, sums, handedValues } = state;
  const onGround = get(handedValues, today.onGround);
  const inGround = get(handedValues, today.inGround);
  const end = get(scalars, scalar.batches) * batch.size;
  const enough = enoughShare(state);
  let freed = 0;
  let humifiedC = 0;
  let breathedC = 0;
  let isSpent = false;
  for (let from = 0; from < end; from += batch.size) {
    const speed = get(batches, from + batch.surface) > 0 ? onGround : inGround;
    const residueC = get(batches, from + batch.residueC);
    const microbeC = get(batches, from + batch.microbeC);
    const gain = get(batches, from + batch.eatenGain);
    const eaten = get(batches, from + batch.decay) * speed * residueC * (gain < 0 ? enough : 1);
    const dying = microbeDeathPerDay * speed * microbeC;
    const humified = get(batches, from + batch.humified) * dying;
    const residueNow = residueC - eaten;
    const microbesNow = microbeC + microbeYieldFraction * eaten - dying;
    batches[from + batch.residueC] = residueNow;
    batches[from + batch.microbeC] = microbesNow;
    freed += eaten * gain + dying * get(batches, from + batch.dyingGain);
    humifiedC += humified;
    breathedC += (1 - microbeYieldFraction) * eaten + dying - humified;
    const leftN = residueNow * get(batches, from + batch.residueN) + microbesNow * get(batches, from + batch.microbeN);
    if (leftN < closedUnderNKgHa) isSpent = true;
  }
  add(scalars, scalar.humusN, humifiedC / humusCnRatio);
  add(scalars, scalar.humusC, humifiedC);
  add(sums, columnAt.carbonDioxideCKgHa, breathedC);
  add(sums, columnAt.residueReleaseNKgHa, freed);
  if (isSpent) closeSpent(state);
  surveyBatches(state);
  handedValues[today.freedN] = freed;
}

/** How much of what poor residues would lock up is there (0-1). What rich ones free today is left out: a day's grace on the safe side. */
function enoughShare({ scalars, nitrateLayersKgHa, handedValues }: RunState): number {
  const locked =
    get(scalars, scalar.lockInGround) * get(handedValues, today.inGround) +
    get(scalars, scalar.lockOnGround) * get(handedValues, today.onGround);
  if (locked <= 0) return 1;
  const there =
    get(nitrateLayersKgHa, 0) +
    get(nitrateLayersKgHa, 1) +
    get(nitrateLayersKgHa, 2) +
    get(handedValues, today.fromHumus);
  return locked > there ? Math.max(0, there / locked) : 1;
}

/** Sums over the batches that tomorrow needs before they decay again. */
export function surveyBatches(state: RunState): void {
  const { batches, scalars } = state;
  const end = get(scalars, scalar.batches) * batch.size;
  let lockInGround = 0;
  let lockOnGround = 0;
  let mulchC = 0;
  for (let from = 0; from < end; from += batch.size) {
    const residueC = get(batches, from + batch.residueC);
    const locks = Math.max(0, -get(batches, from + batch.eatenGain) * get(batches, from + batch.decay) * residueC);
    const surface = get(batches, from + batch.surface);
    mulchC += surface * residueC;
    lockOnGround += surface * locks;
    lockInGround += (1 - surface) * locks;
  }
  scalars[scalar.lockInGround] = lockInGround;
  scalars[scalar.lockOnGround] = lockOnGround;
  scalars[scalar.mulchC] = mulchC;
}

function closeSpent(state: RunState): void {
  for (let nth = get(state.scalars, scalar.batches) - 1; nth >= 0; nth--)
    if (nitrogenOfBatch(state, nth) < closedUnderNKgHa) closeBatch(state, nth);
}

/** Nitrogen still in a batch and its microbes (kg/ha). */
export function nitrogenOfBatch({ batches }: RunState, nth: number): number {
  const from = nth * batch.size;
  return (
    get(batches, from + batch.residueC) * get(batches, from + batch.residueN) +
    get(batches, from + batch.microbeC) * get(batches, from + batch.microbeN)
  );
}

/** Closes a batch into humus; the last one takes its place. */
export function closeBatch(state: RunState, nth: number): void {
  const { batches, scalars } = state;
  const from = nth * batch.size;
  add(scalars, scalar.humusN, nitrogenOfBatch(state, nth));
  add(scalars, scalar.humusC, get(batches, from + batch.residueC) + get(batches, from + batch.microbeC));
  const last = get(scalars, scalar.batches) - 1;
  if (nth !== last) batches.copyWithin(from, last * batch.size, (last + 1) * batch.size);
  scalars[scalar.batches] = last;
}

/** Adds to the worked layers alike, or takes from each in proportion to what it has. */
function changeTopNitrate(state: RunState, kgHa: number): void {
  const { nitrateLayersKgHa } = state;
  if (kgHa >= 0) {
    for (let at = 0; at < workedLayers; at++)
      nitrateLayersKgHa[at] = (nitrateLayersKgHa[at] ?? 0) + kgHa / workedLayers;
    return;
  }
  const there = (nitrateLayersKgHa[0] ?? 0) + (nitrateLayersKgHa[1] ?? 0) + (nitrateLayersKgHa[2] ?? 0);
  if (there <= 0) return;
  const left = Math.max(0, (there + kgHa) / there);
  for (let at = 0; at < workedLayers; at++) nitrateLayersKgHa[at] = (nitrateLayersKgHa[at] ?? 0) * left;
}

function ammoniaOff(state: RunState): void {
  const waiting = state.scalars[scalar.ammoniaN] ?? 0;
  if (waiting <= 0) return;
  // The tail of a halving never ends: the last grams go at once.
  const gone = waiting < 0.01 ? waiting : waiting * ammoniaPerDay;
  state.scalars[scalar.ammoniaN] = waiting - gone;
  state.sums[columnAt.ammoniaNKgHa] = (state.sums[columnAt.ammoniaNKgHa] ?? 0) + gone;
}

/** Nitrate of the top 20 cm lost to the air: the day's mean between its wettest and its drained state. */
export function denitrify(state: RunState): void {
  const { constants, tipping, waterLayersMm, nitrateLayersKgHa, sums } = state;
  let warmth = -1;
  for (let at = 0; at < 2; at++) {
    const meanMm = Math.min(constants.layerPoresMm, (waterLayersMm[at] ?? 0) + 0.5 * (tipping.belowMm[at] ?? 0));
    const wet = denitrificationWetnessFactor(meanMm / constants.layerPoresMm);
    if (wet <= 0) continue;
    if (warmth < 0) warmth = denitrificationWarmthFactor(state.scalars[scalar.soilC] ?? 0);
    const nitrate = nitrateLayersKgHa[at] ?? 0;
    const share = denitrificationNitrateFactor(nitrate * constants.mgKgPerKgHa);
    const lost = Math.min(nitrate, 0.5 * potentialKgHaDay.typ * share * wet * warmth);
    nitrateLayersKgHa[at] = nitrate - lost;
    sums[columnAt.denitrifiedNKgHa] = (sums[columnAt.denitrifiedNKgHa] ?? 0) + lost;
  }
}
