/**
 * What is in the boxes: portions, kinds, weight, number of items, worth, and how many weeks running.
 *
 * Rule    a crop is in a share of the week's boxes; half means half of the boxes this week. Each that carries it has a portion within the limits.
 *         A kind, the weight, the items and the worth of a box may fall short, at a price; nothing else may.
 */
import { weekInYear } from '../promise-problem/problem.ts';
import type { Term } from '../rotation-model/draft-model.ts';
import { type Building, loadsPerKg, termOf } from './building.ts';

interface BoxWeek {
  readonly week: number;
  /** Hundreds of kilos for one kilo in every box. */
  readonly loads: number;
  /** Places of the crops that can be in the box. */
  readonly crops: readonly number[];
}

export function boxRows(building: Building): void {
  const { problem, draft, places } = building;
  const shortTerms: Term[] = [];
  problem.crops.forEach((_, crop) => {
    for (let week = 0; week < problem.weeks; week += 1) portionRows(building, crop, week);
  });
  for (let week = 0; week < problem.weeks; week += 1) {
    const households = problem.households[week] ?? 0;
    if (households <= 0) continue;
    const crops = problem.crops.flatMap((_, crop) => (places.boxed.at(crop, week) < 0 ? [] : [crop]));
    const at = { week, loads: households * loadsPerKg, crops };
    shortTerms.push(...slotRows(building, at));
    massRows(building, at);
    itemRows(building, at);
    worthRow(building, at);
  }
  places.shortSumRowIndex = draft.row(Number.NEGATIVE_INFINITY, Number.POSITIVE_INFINITY, shortTerms);
  problem.crops.forEach((_, crop) => {
    runRows(building, crop);
  });
}

function portionRows({ problem, draft, places }: Building, crop: number, week: number): void {
  const one = problem.crops[crop];
  const loads = (problem.households[week] ?? 0) * loadsPerKg;
  const fresh = places.boxedFresh.at(crop, week);
  const taken = places.taken.at(crop, week);
  if (one === undefined || loads <= 0 || (fresh < 0 && taken < 0)) return;
  const boxed = draft.column({});
  const costWeight = places.scaleIndex === null ? 1 - (one.likedShare[week] ?? 1) : 0;
  const carried = draft.column({ high: places.scaleIndex === null ? 1 : Number.POSITIVE_INFINITY, costWeight });
  places.boxed.set(crop, week, boxed);
  places.carried.set(crop, week, carried);
  draft.row(0, Number.POSITIVE_INFINITY, [
    [boxed, -1],
    ...termOf(fresh, 1),
    ...termOf(taken, 1 - problem.trimmedShare),
  ]);
  draft.row(0, Number.POSITIVE_INFINITY, [
    [boxed, 1],
    [carried, -one.portionLeastKg * loads],
  ]);
  draft.row(Number.NEGATIVE_INFINITY, 0, [
    [boxed, 1],
    [carried, -one.portionMostKg * loads],
  ]);
  if (places.scaleIndex !== null)
    draft.row(Number.NEGATIVE_INFINITY, 0, [
      [carried, 1],
      [places.scaleIndex, -1],
    ]);
}

function slotRows({ problem, draft, places, ...rows }: Building, { week, loads, crops }: BoxWeek): readonly Term[] {
  return problem.slots.flatMap((slot, at): readonly Term[] => {
    const needKg = slot.needKgHousehold[week] ?? 0;
    if (needKg <= 0) return [];
    const short = draft.column({ costWeight: priced(places.scaleIndex, problem.shortPrices.slotPerKg / loadsPerKg) });
    places.slotShort.set(at, week, short);
    const terms = crops
      .filter((crop) => problem.crops[crop]?.slot === slot.id)
      .map((crop): Term => [places.boxed.at(crop, week), 1]);
    places.slotRows.set(at, week, rows.atLeast([...terms, [short, 1]], needKg * loads));
    rows.atMost(terms, needKg * problem.slotMostFactor * loads);
    return [[short, 1]];
  });
}

function massRows({ problem, draft, places, ...rows }: Building, { week, loads, crops }: BoxWeek): void {
  const terms = crops.map((crop): Term => [places.boxed.at(crop, week), 1]);
  const short = draft.column({ costWeight: priced(places.scaleIndex, problem.shortPrices.boxPerKg / loadsPerKg) });
  places.massShortColumns[week] = short;
  rows.atLeast([...terms, [short, 1]], problem.box.leastKg * loads);
  rows.atMost(terms, problem.box.mostKg * loads);
}

function itemRows({ problem, draft, places, ...rows }: Building, { week, crops }: BoxWeek): void {
  const terms = crops.map((crop): Term => [places.carried.at(crop, week), 1]);
  const price = problem.shortPrices.missingPerItem * (problem.households[week] ?? 0);
  const short = draft.column({ costWeight: priced(places.scaleIndex, price) });
  places.itemsShortColumns[week] = short;
  rows.atLeast([...terms, [short, 1]], problem.box.leastItems);
  rows.atMost(terms, problem.box.mostItems);
}

function worthRow({ problem, draft, places, ...rows }: Building, { week, loads, crops }: BoxWeek): void {
  const short = draft.column({ costWeight: priced(places.scaleIndex, problem.shortPrices.worthWeight / loadsPerKg) });
  places.worthShortColumns[week] = short;
  const terms = crops.map((crop): Term => [places.boxed.at(crop, week), problem.crops[crop]?.worthPerKg ?? 0]);
  rows.atLeast([...terms, [short, 1]], problem.box.leastWorthPerBox * loads);
}

/** In any run of weeks one longer than allowed, at least one week's boxes go without. */
function runRows({ problem, draft, places }: Building, crop: number): void {
  const mostWeeks = problem.crops[crop]?.mostRunWeeks ?? problem.weeks;
  if (mostWeeks >= problem.weeks) return;
  for (let week = 0; week < problem.weeks; week += 1) {
    if (!problem.isCyclic && week + mostWeeks >= problem.weeks) break;
    const terms: Term[] = [];
    for (let step = 0; step <= mostWeeks; step += 1)
      terms.push(...termOf(places.carried.at(crop, weekInYear(problem, week + step)), 1));
    if (terms.length <= mostWeeks) continue;
    if (places.scaleIndex === null) draft.row(Number.NEGATIVE_INFINITY, mostWeeks, terms);
    else draft.row(Number.NEGATIVE_INFINITY, 0, [...terms, [places.scaleIndex, -mostWeeks]]);
  }
}

/** Where the most households are sought, shortfalls are limited and not priced. */
function priced(scale: number | null, price: number): number {
  return scale === null ? price : 0;
}
