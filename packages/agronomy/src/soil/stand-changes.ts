/**
 * What happens to stands on a day: they begin, are cut, end; compost and carried mulch come on.
 *
 * Source  carbon in dry matter 0.42 (docs/science/nitrogen.md); ammonia: nitrogen/mulch-ammonia.ts; what a cut leaves and what roots die of it: common practice.
 * Checks  test/run-soil.test.ts (nitrogen and carbon close on every such day; a cut taken is in both accounts)
 * Holds   nitrogen that leaves a stand is in residue, sold, moved or in the ground the same day.
 * Leaves out  losses of leaves before harvest.
 */

import { mulchedShareFactor } from '../nitrogen/fixation-fall.ts';
import { ammoniaLossShare, type MulchWay } from '../nitrogen/mulch-ammonia.ts';
import {
  carbonInDryMatterShare,
  humusCnRatio,
  microbeYieldFraction,
  residueRates,
} from '../nitrogen/residue-release.ts';
import { closeBatch, nitrogenOfBatch, surveyBatches } from './residue-day.ts';
import { columnAt, type StandOutcome } from './soil-columns.ts';
import type { CutUse, SoilBrought, StandEnding } from './soil-part.ts';
import { add, batch, get, mostBatches, mostStands, type RunState, scalar, slot } from './soil-state.ts';

/** A cut leaves a quarter of the mass as stubble; a fifth of the roots die of it. Common practice. */
const stubbleShare = 0.25;
const rootsDyingShare = 0.2;
/** Microbes cannot eat faster than all in a day; nothing that grows is richer than this. */
const leastCnRatio = 8;
/** A seedling's shoot (t dry matter/ha). */
const seedlingMassTHa = 0.01;

/** Begins a stand. Throws where more stand at once than a part can hold. */
export function beginStand(state: RunState, standIndex: number): void {
  const { scalars, slots } = state;
  const of = state.stands[standIndex];
  const nth = scalars[scalar.stands] ?? 0;
  if (of === undefined) return;
  if (nth >= mostStands) throw new Error(`More than ${mostStands} stands at once on "${state.part.id}".`);
  if (of.stand.groundWorked) workGround(state);
  const from = nth * slot.size;
  slots.fill(0, from, from + slot.size);
  slots[from + slot.stand] = standIndex;
  slots[from + slot.massT] = seedlingMassTHa;
  slots[from + slot.unstressedT] = seedlingMassTHa;
  slots[from + slot.grownT] = seedlingMassTHa;
  slots[from + slot.shootN] = of.stand.seedNKgHa;
  slots[from + slot.nourished] = 1;
  slots[from + slot.airFactor] = 1;
  slots[from + slot.ks] = 1;
  scalars[scalar.stands] = nth + 1;
  add(state.sums, columnAt.broughtNKgHa, of.stand.seedNKgHa);
}

/** Working the ground takes in what lies on it; ammonia still to go stays in the ground. */
function workGround(state: RunState): void {
  const { scalars, batches, nitrateLayersKgHa } = state;
  const count = scalars[scalar.batches] ?? 0;
  for (let nth = 0; nth < count; nth++) batches[nth * batch.size + batch.surface] = 0;
  nitrateLayersKgHa[0] = (nitrateLayersKgHa[0] ?? 0) + (scalars[scalar.ammoniaN] ?? 0);
  scalars[scalar.ammoniaN] = 0;
  surveyBatches(state);
}

/** Cuts a stand; a cut of what is no longer there does nothing. */
export function cutStand(
  state: RunState,
  standIndex: number,
  cut: { readonly dayNumber: number; readonly use: CutUse },
): void {
  const from = slotOf(state, standIndex) * slot.size;
  const of = state.stands[standIndex];
  if (from < 0 || of === undefined) return;
  const { slots } = state;
  const off = 1 - stubbleShare;
  const cutT = get(slots, from + slot.massT) * off;
  const cutN = get(slots, from + slot.shootN) * off;
  slots[from + slot.massT] = get(slots, from + slot.massT) * stubbleShare;
  slots[from + slot.shootN] = get(slots, from + slot.shootN) * stubbleShare;
  const canopyCd = get(slots, from + slot.canopyCd) - get(slots, from + slot.canopyFromCd);
  if (canopyCd > of.afterMowCd) add(slots, from + slot.canopyFromCd, canopyCd - of.afterMowCd);
  const rootT = get(slots, from + slot.rootMassT) * rootsDyingShare;
  const rootN = get(slots, from + slot.rootN) * rootsDyingShare;
  slots[from + slot.rootMassT] = get(slots, from + slot.rootMassT) - rootT;
  slots[from + slot.rootN] = get(slots, from + slot.rootN) - rootN;
  layDown(state, { nKgHa: rootN, carbonKgHa: carbonOf(rootT), way: 'worked in' });
  if (cut.use === 'taken') {
    add(state.sums, columnAt.movedNKgHa, cutN);
    state.transfers.push({ dayNumber: cut.dayNumber, standId: of.stand.id, nKgHa: cutN, carbonKgHa: carbonOf(cutT) });
    return;
  }
  slots[from + slot.airFactor] = mulchedShareFactor;
  layDown(state, { nKgHa: cutN, carbonKgHa: carbonOf(cutT), way: 'in place' });
}

/** Ends a stand, by plan or by frost. One that is gone already stays gone. */
export function endStand(
  state: RunState,
  standIndex: number,
  end: { readonly dayNumber: number; readonly by: StandOutcome['endedBy'] },
): void {
  const nth = slotOf(state, standIndex);
  const of = state.stands[standIndex];
  if (nth < 0 || of === undefined) return;
  const { slots, scalars } = state;
  const from = nth * slot.size;
  const ending: StandEnding = end.by === 'frost' ? 'left' : of.stand.ending;
  const isSold = ending === 'sold' || ending === 'sold-residue-worked-in';
  const soldN = isSold ? get(slots, from + slot.shootN) * of.habit.soldNShare : 0;
  const leftN = get(slots, from + slot.shootN) - soldN;
  const leftT = get(slots, from + slot.massT) * (isSold ? 1 - of.habit.soldMassShare : 1);
  if (ending === 'turned-in' || ending === 'sold-residue-worked-in') workGround(state);
  const way: MulchWay = ending === 'turned-in' || ending === 'sold-residue-worked-in' ? 'worked in' : 'in place';
  layDown(state, { nKgHa: leftN, carbonKgHa: carbonOf(leftT), way });
  layDown(state, {
    nKgHa: get(slots, from + slot.rootN),
    carbonKgHa: carbonOf(get(slots, from + slot.rootMassT)),
    way: 'worked in',
  });
  add(state.sums, columnAt.soldNKgHa, soldN);
  state.outcomes.push(outcomeOf(state, from, { ...end, standId: of.stand.id, soldN }));
  const last = (scalars[scalar.stands] ?? 1) - 1;
  // Those sown later move up and keep their order.
  slots.copyWithin(from, from + slot.size, (last + 1) * slot.size);
  scalars[scalar.stands] = last;
}

function outcomeOf(
  state: RunState,
  from: number,
  end: {
    readonly dayNumber: number;
    readonly by: StandOutcome['endedBy'];
    readonly standId: string;
    readonly soldN: number;
  },
): StandOutcome {
  const of = (name: Exclude<keyof typeof slot, 'size'>) => state.slots[from + slot[name]] ?? 0;
  return {
    standId: end.standId,
    endDayNumber: end.dayNumber,
    endedBy: end.by,
    massTHa: of('grownT'),
    unstressedMassTHa: of('unstressedT'),
    waterWantedMm: of('waterWanted'),
    waterGotMm: of('waterGot'),
    nWantedKgHa: of('nWanted'),
    nGotKgHa: of('nGot'),
    fixedNKgHa: of('fixedN'),
    soldNKgHa: end.soldN,
  };
}

/** Brings compost, mulch or seed residue on: its nitrogen counts as brought. */
export function bringOn(state: RunState, brought: SoilBrought): void {
  add(state.sums, columnAt.broughtNKgHa, brought.nKgHa);
  layDown(state, brought);
}

/** Lays a batch down. What is richer than microbes can use is mineral at once; a batch too small to follow goes to humus. */
function layDown(
  state: RunState,
  what: { readonly nKgHa: number; readonly carbonKgHa: number; readonly way: MulchWay },
): void {
  const { scalars, batches, nitrateLayersKgHa, sums } = state;
  if (what.nKgHa <= 0 && what.carbonKgHa <= 0) return;
  add(sums, columnAt.residueInCKgHa, what.carbonKgHa);
  const nPct = what.carbonKgHa > 0 ? (what.nKgHa / what.carbonKgHa) * carbonInDryMatterShare * 100 : 0;
  const toAir = what.nKgHa * ammoniaLossShare(nPct, what.way).typ;
  scalars[scalar.ammoniaN] = (scalars[scalar.ammoniaN] ?? 0) + toAir;
  const bound = Math.min(what.nKgHa - toAir, what.carbonKgHa / leastCnRatio);
  nitrateLayersKgHa[0] = (nitrateLayersKgHa[0] ?? 0) + what.nKgHa - toAir - bound;
  if (bound < 0.5) {
    scalars[scalar.humusN] = (scalars[scalar.humusN] ?? 0) + bound;
    scalars[scalar.humusC] = (scalars[scalar.humusC] ?? 0) + what.carbonKgHa;
    return;
  }
  if ((scalars[scalar.batches] ?? 0) >= mostBatches) closeBatch(state, smallestBatch(state));
  const nth = scalars[scalar.batches] ?? 0;
  const from = nth * batch.size;
  const cn = what.carbonKgHa / bound;
  const rates = residueRates(cn);
  batches[from + batch.residueC] = what.carbonKgHa;
  batches[from + batch.microbeC] = 0;
  batches[from + batch.decay] = rates.decayPerDay;
  batches[from + batch.eatenGain] = 1 / cn - microbeYieldFraction / rates.microbeCnRatio;
  batches[from + batch.dyingGain] = 1 / rates.microbeCnRatio - rates.humifiedFraction / humusCnRatio;
  batches[from + batch.residueN] = 1 / cn;
  batches[from + batch.microbeN] = 1 / rates.microbeCnRatio;
  batches[from + batch.humified] = rates.humifiedFraction;
  batches[from + batch.surface] = what.way === 'worked in' ? 0 : 1;
  scalars[scalar.batches] = nth + 1;
  surveyBatches(state);
}

function smallestBatch(state: RunState): number {
  let found = 0;
  for (let nth = 1; nth < get(state.scalars, scalar.batches); nth++)
    if (nitrogenOfBatch(state, nth) < nitrogenOfBatch(state, found)) found = nth;
  return found;
}

function slotOf(state: RunState, standIndex: number): number {
  const count = state.scalars[scalar.stands] ?? 0;
  for (let nth = 0; nth < count; nth++) if (state.slots[nth * slot.size + slot.stand] === standIndex) return nth;
  return -1;
}

function carbonOf(massTHa: number): number {
  return massTHa * 1000 * carbonInDryMatterShare;
}
