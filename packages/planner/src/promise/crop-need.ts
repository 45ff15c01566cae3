/**
 * From what the boxes ask of a crop's season to ground and seed. Losses follow one another, so the kilos are divided by what each step keeps;
 * percentages are never added.
 *
 * Source  arithmetic of agronomy/seed; the farm's own shares, else its conventions and the storage table.
 * Checks  test/supply/carrots-worked.test.ts (carrots for the winter box, worked by hand), test/supply/published-farm.test.ts
 * Holds   twice the households need twice the ground and seed (seed in packs and trays apart: those are whole).
 */
import { areaNeeded } from '@leywright/agronomy';
import type { YearNeed } from '@leywright/book';
import { cropLook, plantOf } from '../crops/plant.ts';
import type { PlannedCrop, SupplyInput } from '../plan/inputs.ts';
import type { CropNeed, Keep } from '../plan/supply.ts';
import type { CropFlow, Filled } from '../supply/fill.ts';
import { householdsOf, unitKgOf } from './demand.ts';
import { keptShare, marketableKgM2, yieldSaid } from './known.ts';
import { noPlants, plantsFor } from './plants.ts';
import { storeKeepOf } from './store-keep.ts';
import type { Asked, WeekAsk } from './week-asks.ts';

/** What a crop is asked for, whichever way the farm counts: by the week's boxes, or by the household's year. */
interface Demand {
  readonly boxWeeks: number;
  readonly units: number;
  readonly kg: number | null;
  readonly storeKeep: Keep | null;
  /** Ground said outright. */
  readonly areaM2: number | null;
  /** Season whose stands have to bring it. */
  readonly harvestYear: number;
}

/**
 * Needs of the box year: the runs of slot windows that begin in the year, whole (a window from November to March is the November's). In the order in
 * which the promise names the crops.
 */
export function cropNeeds(input: SupplyInput, filled: Filled, asked: Asked, year: number): readonly CropNeed[] {
  const promise = input.farm.promise;
  if (promise === null) return [];
  const inSlots = promise.slots.flatMap((slot) => slot.crops as readonly string[]);
  const ids = [...new Set([...inSlots, ...promise.needs.map((need) => need.crop as string)])];
  return ids.flatMap((id) => {
    const crop = input.crops.cropOf(id);
    if (crop === null) return [];
    const flow = filled.flows.get(id);
    const yearNeed = promise.needs.find((need) => need.crop === id && !inSlots.includes(id));
    const asks = (asked.byCrop.get(id) ?? []).filter((ask) => ask.boxYear === year);
    const demand =
      yearNeed !== undefined
        ? needOfYear(input, crop, yearNeed)
        : flow === undefined || asks.length === 0
          ? null
          : needOfWeeks(filled, flow, asks);
    return demand === null ? [] : [cropNeed(input, crop, { flow, demand, year })];
  });
}

function needOfYear(input: SupplyInput, crop: PlannedCrop, need: YearNeed): Demand {
  const promise = input.farm.promise;
  const households = promise === null ? 0 : householdsOf(promise);
  const areaM2 = need.m2Household === null ? null : need.m2Household * households;
  const kgM2 = packedKgM2(crop);
  const kg =
    need.kgHousehold !== null ? need.kgHousehold * households : areaM2 !== null && kgM2 !== null ? areaM2 * kgM2 : null;
  const unitKg = unitKgOf(crop, crop.unit);
  return {
    boxWeeks: promise?.boxWeeksPerYear ?? 0,
    units: kg === null || unitKg === null ? 0 : kg / unitKg,
    kg,
    storeKeep: wholeWinterKeep(crop),
    areaM2,
    harvestYear: input.year,
  };
}

function needOfWeeks(filled: Filled, flow: CropFlow, asks: readonly WeekAsk[]): Demand {
  return {
    boxWeeks: new Set(asks.map((ask) => ask.week)).size,
    units: asks.reduce((sum, ask) => sum + ask.units, 0),
    kg: asks.reduce((sum, ask) => sum + ask.kg, 0),
    storeKeep: wholeWinterKeep(flow.crop) ?? storeKeepOf(filled, flow, asks),
    areaM2: null,
    harvestYear: Math.max(...asks.map((ask) => ask.harvestYear)),
  };
}

function wholeWinterKeep(crop: PlannedCrop): Keep | null {
  const loss = crop.storeLossTotalShare;
  return loss === null ? null : { step: 'store', keepShare: keptShare(loss), source: loss.where };
}

/** Packed kilos from a square metre where nothing is lost in store. */
function packedKgM2(crop: PlannedCrop): number | null {
  const kgM2 = marketableKgM2(crop);
  if (kgM2 === null) return null;
  return yieldSaid(crop)?.measure === 'packed'
    ? kgM2
    : kgM2 * keptShare(crop.packingLossShare) * keptShare(crop.storeLossTotalShare);
}

function cropNeed(
  input: SupplyInput,
  crop: PlannedCrop,
  { flow, demand, year }: { flow: CropFlow | undefined; demand: Demand; year: number },
): CropNeed {
  const said = yieldSaid(crop);
  const keeps = said?.measure === 'packed' ? [] : keepsOf(crop, demand.storeKeep);
  const keepShare = keeps.reduce((share, keep) => share * keep.keepShare, 1);
  const needM2 = demand.areaM2 ?? areaFor(crop, demand.kg, keeps);
  const lots = (flow?.lots ?? [])
    .map((lot) => lot.lot)
    .filter((lot) => lot.harvestYear === demand.harvestYear && lot.areaM2 > 0);
  const kgM2 = said?.measure === 'gross' ? said.kgM2 : marketableKgM2(crop);
  return {
    crop: crop.id,
    name: crop.name,
    look: cropLook(plantOf(crop.id, input.crops)),
    unit: crop.unit,
    boxWeeks: demand.boxWeeks,
    demandUnits: demand.units,
    demandKg: demand.kg,
    keeps,
    keepShare,
    liftKg: demand.kg === null ? null : areaNeeded.liftKg(demand.kg, keepShare),
    yieldKgM2: kgM2,
    yieldBasis: said?.basis ?? 'unknown',
    needM2,
    ...(needM2 === null ? noPlants : plantsFor(crop, needM2)),
    harvestYear: demand.harvestYear,
    plannedM2: lots.reduce((sum, lot) => sum + lot.areaM2, 0),
    plots: [...new Set(lots.map((lot) => lot.plot))],
    why: { area: `area/${crop.id}/${year}`, seed: `seed/${crop.id}/${year}` },
  };
}

/** From the box back to the ground. */
function keepsOf(crop: PlannedCrop, storeKeep: Keep | null): readonly Keep[] {
  const keeps: Keep[] = [];
  const { packingLossShare, gradingLossShare } = crop;
  if (packingLossShare !== null)
    keeps.push({ step: 'packing', keepShare: keptShare(packingLossShare), source: packingLossShare.where });
  if (storeKeep !== null) keeps.push(storeKeep);
  if (gradingLossShare !== null)
    keeps.push({ step: 'grading', keepShare: keptShare(gradingLossShare), source: gradingLossShare.where });
  return keeps;
}

/** A gross yield is met by what is lifted, a marketable one by what is left after grading, a packed one by what goes into the boxes. */
export function areaFor(crop: PlannedCrop, demandKg: number | null, keeps: readonly Keep[]): number | null {
  const said = yieldSaid(crop);
  const kgM2 = said?.measure === 'gross' ? said.kgM2 : marketableKgM2(crop);
  if (said === null || kgM2 === null || kgM2 <= 0 || demandKg === null) return null;
  const counted = keeps.filter((keep) => said.measure === 'gross' || keep.step !== 'grading');
  const kept = counted.reduce((share, keep) => share * keep.keepShare, 1);
  return areaNeeded.areaForMassM2(areaNeeded.liftKg(demandKg, kept), kgM2 * 10);
}
