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
import { batch, type RunState, scalar, today } from './soil-state.ts';

/** Layers that are worked and hold the humus that turns over. */
export const workedLayers = 3;
const closedUnderNKgHa = 2;

/** Frees or locks up nitrogen in the worked layers. Closes batches that are nearly gone. */
export function releaseNitrogen(state: RunState): void {
  const { scalars, sums, constants, handedValues } = state;
  setWetness(state);
  const wet = handedValues[today.inGround] as number;
  const soilC = scalars[scalar.soilC] as number;
  const humusN = scalars[scalar.humusN] as number;
  const fromHumus = constants.humusPerDay * humusN * humusWarmthFactor(soilC) * wet;
  scalars[scalar.humusN] = humusN - fromHumus;
  sums[columnAt.humusReleaseNKgHa] = (sums[columnAt.humusReleaseNKgHa] as number) + fromHumus;
  const warmth = residueWarmthFactor(soilC);
  handedValues[today.freedN] = 0;
  if (warmth > 0 && (scalars[scalar.batches] as number) > 0) {
    handedValues[today.inGround] = warmth * wet;
    handedValues[today.onGround] = warmth * (handedValues[today.onGround] as number);
    handedValues[today.fromHumus] = fromHumus;
    decayBatches(state);
  }
  handedValues[today.freedN] = (handedValues[today.freedN] as number) + fromHumus;
  changeTopNitrate(state);
  ammoniaOff(state);
}

/** Wetness of the worked layers and of the surface (0-1), with lack of air above field capacity; handed over in numbers' places. */
function setWetness({ waterLayersMm, constants, handedValues }: RunState): void {
  const fieldMm = constants.layerFieldCapacityMm;
  const roomMm = constants.layerPoresMm - fieldMm;
  const surfaceMm = waterLayersMm[0] as number;
  const meanMm = (surfaceMm + (waterLayersMm[1] as number) + (waterLayersMm[2] as number)) / workedLayers;
  handedValues[today.onGround] =
    surfaceMm <= fieldMm
      ? wetnessFactor(surfaceMm / fieldMm)
      : Math.max(0, (constants.layerPoresMm - surfaceMm) / roomMm);
  handedValues[today.inGround] =
    meanMm <= fieldMm ? wetnessFactor(meanMm / fieldMm) : Math.max(0, (constants.layerPoresMm - meanMm) / roomMm);
}

/** All batches decay; hands over the nitrogen they free together (kg/ha), negative when they lock up. */
function decayBatches(state: RunState): void {
  const { batches, scalars, sums, handedValues } = state;
  const onGround = handedValues[today.onGround] as number;
  const inGround = handedValues[today.inGround] as number;
  const end = (scalars[scalar.batches] as number) * batch.size;
  const enough = enoughShare(state);
  let freed = 0;
  let humifiedC = 0;
  let breathedC = 0;
  let isSpent = false;
  let lockInGround = 0;
  let lockOnGround = 0;
  let mulchC = 0;
  for (let from = 0; from < end; from += batch.size) {
    const isOnGround = (batches[from + batch.surface] as number) > 0;
    const speed = isOnGround ? onGround : inGround;
    const residueC = batches[from + batch.residueC] as number;
    const microbeC = batches[from + batch.microbeC] as number;
    const gain = batches[from + batch.eatenGain] as number;
    const decay = batches[from + batch.decay] as number;
    const eaten = decay * speed * residueC * (gain < 0 ? enough : 1);
    const dying = microbeDeathPerDay * speed * microbeC;
    const humified = (batches[from + batch.humified] as number) * dying;
    const residueNow = residueC - eaten;
    const microbesNow = microbeC + microbeYieldFraction * eaten - dying;
    batches[from + batch.residueC] = residueNow;
    batches[from + batch.microbeC] = microbesNow;
    freed += eaten * gain + dying * (batches[from + batch.dyingGain] as number);
    humifiedC += humified;
    breathedC += (1 - microbeYieldFraction) * eaten + dying - humified;
    const leftN =
      residueNow * (batches[from + batch.residueN] as number) +
      microbesNow * (batches[from + batch.microbeN] as number);
    if (leftN < closedUnderNKgHa) isSpent = true;
    const locks = gain < 0 ? -gain * decay * residueNow : 0;
    if (isOnGround) {
      mulchC += residueNow;
      lockOnGround += locks;
    } else lockInGround += locks;
  }
  scalars[scalar.lockInGround] = lockInGround;
  scalars[scalar.lockOnGround] = lockOnGround;
  scalars[scalar.mulchC] = mulchC;
  scalars[scalar.humusN] = (scalars[scalar.humusN] as number) + humifiedC / humusCnRatio;
  scalars[scalar.humusC] = (scalars[scalar.humusC] as number) + humifiedC;
  sums[columnAt.carbonDioxideCKgHa] = (sums[columnAt.carbonDioxideCKgHa] as number) + breathedC;
  sums[columnAt.residueReleaseNKgHa] = (sums[columnAt.residueReleaseNKgHa] as number) + freed;
  if (isSpent) closeSpent(state);
  handedValues[today.freedN] = freed;
}

/** How much of what poor residues would lock up is there (0-1). What rich ones free today is left out: a day's grace on the safe side. */
function enoughShare({ scalars, nitrateLayersKgHa, handedValues }: RunState): number {
  const locked =
    (scalars[scalar.lockInGround] as number) * (handedValues[today.inGround] as number) +
    (scalars[scalar.lockOnGround] as number) * (handedValues[today.onGround] as number);
  if (locked <= 0) return 1;
  const there =
    (nitrateLayersKgHa[0] as number) +
    (nitrateLayersKgHa[1] as number) +
    (nitrateLayersKgHa[2] as number) +
    (handedValues[today.fromHumus] as number);
  return locked > there ? Math.max(0, there / locked) : 1;
}

/** Sums over the batches that tomorrow needs before they decay again; `decayBatches` keeps them as it goes, this is for when batches come or go. */
export function surveyBatches(state: RunState): void {
  const { batches, scalars } = state;
  const end = (scalars[scalar.batches] as number) * batch.size;
  let lockInGround = 0;
  let lockOnGround = 0;
  let mulchC = 0;
  for (let from = 0; from < end; from += batch.size) {
    const residueC = batches[from + batch.residueC] as number;
    const locks = Math.max(
      0,
      -(batches[from + batch.eatenGain] as number) * (batches[from + batch.decay] as number) * residueC,
    );
    const surface = batches[from + batch.surface] as number;
    mulchC += surface * residueC;
    lockOnGround += surface * locks;
    lockInGround += (1 - surface) * locks;
  }
  scalars[scalar.lockInGround] = lockInGround;
  scalars[scalar.lockOnGround] = lockOnGround;
  scalars[scalar.mulchC] = mulchC;
}

function closeSpent(state: RunState): void {
  for (let nth = (state.scalars[scalar.batches] as number) - 1; nth >= 0; nth--)
    if (nitrogenOfBatch(state, nth) < closedUnderNKgHa) closeBatch(state, nth);
  surveyBatches(state);
}

/** Nitrogen still in a batch and its microbes (kg/ha). */
export function nitrogenOfBatch({ batches }: RunState, nth: number): number {
  const from = nth * batch.size;
  return (
    (batches[from + batch.residueC] as number) * (batches[from + batch.residueN] as number) +
    (batches[from + batch.microbeC] as number) * (batches[from + batch.microbeN] as number)
  );
}

/** Closes a batch into humus; the last one takes its place. */
export function closeBatch(state: RunState, nth: number): void {
  const { batches, scalars } = state;
  const from = nth * batch.size;
  scalars[scalar.humusN] = (scalars[scalar.humusN] as number) + nitrogenOfBatch(state, nth);
  scalars[scalar.humusC] =
    (scalars[scalar.humusC] as number) +
    (batches[from + batch.residueC] as number) +
    (batches[from + batch.microbeC] as number);
  const last = (scalars[scalar.batches] as number) - 1;
  if (nth !== last) batches.copyWithin(from, last * batch.size, (last + 1) * batch.size);
  scalars[scalar.batches] = last;
}

/** Adds what was freed to the worked layers alike, or takes what was locked up from each in proportion to what it has. */
function changeTopNitrate(state: RunState): void {
  const { nitrateLayersKgHa, handedValues } = state;
  const kgHa = handedValues[today.freedN] as number;
  if (kgHa >= 0) {
    for (let at = 0; at < workedLayers; at++)
      nitrateLayersKgHa[at] = (nitrateLayersKgHa[at] as number) + kgHa / workedLayers;
    return;
  }
  const there = (nitrateLayersKgHa[0] as number) + (nitrateLayersKgHa[1] as number) + (nitrateLayersKgHa[2] as number);
  if (there <= 0) return;
  const left = Math.max(0, (there + kgHa) / there);
  for (let at = 0; at < workedLayers; at++) nitrateLayersKgHa[at] = (nitrateLayersKgHa[at] as number) * left;
}

function ammoniaOff(state: RunState): void {
  const waiting = state.scalars[scalar.ammoniaN] as number;
  if (waiting <= 0) return;
  // The tail of a halving never ends: the last grams go at once.
  const gone = waiting < 0.01 ? waiting : waiting * ammoniaPerDay;
  state.scalars[scalar.ammoniaN] = waiting - gone;
  state.sums[columnAt.ammoniaNKgHa] = (state.sums[columnAt.ammoniaNKgHa] as number) + gone;
}

/** Nitrate of the top 20 cm lost to the air: the day's mean between its wettest and its drained state. */
export function denitrify(state: RunState): void {
  const { constants, tipping, waterLayersMm, nitrateLayersKgHa, sums } = state;
  let warmth = -1;
  for (let at = 0; at < 2; at++) {
    const meanMm = Math.min(
      constants.layerPoresMm,
      (waterLayersMm[at] as number) + 0.5 * (tipping.belowMm[at] as number),
    );
    const wet = denitrificationWetnessFactor(meanMm / constants.layerPoresMm);
    if (wet <= 0) continue;
    if (warmth < 0) warmth = denitrificationWarmthFactor(state.scalars[scalar.soilC] as number);
    const nitrate = nitrateLayersKgHa[at] as number;
    const share = denitrificationNitrateFactor(nitrate * constants.mgKgPerKgHa);
    const lost = Math.min(nitrate, 0.5 * potentialKgHaDay.typ * share * wet * warmth);
    nitrateLayersKgHa[at] = nitrate - lost;
    sums[columnAt.denitrifiedNKgHa] = (sums[columnAt.denitrifiedNKgHa] as number) + lost;
  }
}
