/**
 * Fills the boxes, week by week, from what is ready in the ground and what lies in store.
 *
 * Rule    In each week: the stores lose their share of what they held; what ripens joins what stands; the slots are filled in their order, each
 *         from the first crop of its list that has any, fresh before stored, then from the next; what the book says was cut for a week's
 *         boxes goes before all. A crop already in this week's boxes is passed
 *         over while another of the list has any: a second portion is not a second thing. What has stood its time goes to the store.
 *         When the next season's harvest begins, what is left of the old one is no longer put in boxes.
 * Checks  test/supply/fill.test.ts (kilos in = kilos out + loss + left, for every crop and week)
 */

import type { BoxPromise, WeighingRecord } from '@leywright/book';
import { dayNumber } from '@leywright/measures';
import type { PlannedCrop, SupplyInput } from '../plan/inputs.ts';
import { type BoxCalendarWeek, boxCalendar, slotTurns } from '../promise/box-weeks.ts';
import { type SlotAsk, slotAsk, unitKgOf } from '../promise/demand.ts';
import { packingKeep } from '../promise/known.ts';
import { type Keeping, keepingOf } from '../store/keeping.ts';
import { dustKg, Stock } from '../store/stock.ts';
import type { Bounds, Lot } from './lot.ts';
import { StandingLot } from './standing.ts';
import type { WeekAxis } from './week-axis.ts';

/** One crop's part in a slot in a week. */
export interface Take {
  readonly crop: PlannedCrop;
  readonly from: 'field' | 'tunnel' | 'store';
  readonly plots: readonly string[];
  /** Season it was harvested in. */
  readonly harvestYear: number;
  /** Share of what the slot asked for. */
  readonly share: number;
  /** Kilos taken, before packing waste. */
  readonly kg: number;
}

export interface SlotWeek {
  readonly ask: SlotAsk;
  readonly takes: readonly Take[];
  /** Share of what the slot asked for that nothing filled. */
  readonly missingShare: number;
}

/** One crop in the filling: its lots in the ground, its stocks by season, how it keeps. */
export interface CropFlow {
  readonly crop: PlannedCrop;
  readonly lots: readonly StandingLot[];
  readonly stocks: Stock[];
  readonly keeping: Keeping | null;
}

export interface Filled {
  readonly axis: WeekAxis;
  readonly calendar: readonly BoxCalendarWeek[];
  readonly weeks: readonly (readonly SlotWeek[])[];
  readonly flows: ReadonlyMap<string, CropFlow>;
  /** Weighings by crop: week and kilos. */
  readonly weighings: ReadonlyMap<string, readonly { readonly week: number; readonly kg: number }[]>;
}

export interface FillInput {
  readonly input: SupplyInput;
  readonly promise: BoxPromise;
  readonly axis: WeekAxis;
  readonly lots: readonly Lot[];
  readonly bounds: Bounds;
}

interface WorkingFlow extends CropFlow {
  /** Worked out when something first goes into store. */
  lossShare: Float64Array | null;
  readonly bounds: Bounds;
  readonly lifeWeeks: number | null;
  readonly weighings: readonly { readonly week: number; readonly kg: number }[];
}

export function fillBoxes(given: FillInput): Filled {
  const { promise, axis } = given;
  const calendar = boxCalendar(promise, axis.firstMonday, axis.weeks);
  const flows = flowsOf(given);
  const slots = promise.slots.map((slot) => ({
    ask: slotAsk(promise, slot),
    due: slotTurns(promise, slot, calendar),
    offers: slot.crops.flatMap((id) => {
      const flow = flows.get(id);
      const unitKg = flow === undefined ? null : unitKgOf(flow.crop, slot.unit);
      return flow === undefined || unitKg === null
        ? []
        : [{ flow, drawKg: (slotAsk(promise, slot).units * unitKg) / packingKeep(flow.crop) }];
    }),
  }));
  const weeks: SlotWeek[][] = [];
  for (let week = 0; week < axis.weeks; week += 1) {
    for (const flow of flows.values()) openWeek(flow, week);
    const taken = new Set<string>();
    const due = slots.filter((slot) => slot.due[week] === 1 && slot.ask.units > 0);
    weeks.push(due.map((slot) => fillSlot(slot, week, taken)));
    for (const flow of flows.values()) closeWeek(flow, week);
  }
  const weighings = new Map([...flows].map(([id, flow]) => [id, flow.weighings]));
  return { axis, calendar, weeks, flows, weighings };
}

interface Offer {
  readonly flow: WorkingFlow;
  /** Kilos for all the boxes of the slot, packing waste on top. */
  readonly drawKg: number;
}

function fillSlot(slot: { ask: SlotAsk; offers: readonly Offer[] }, week: number, taken: Set<string>): SlotWeek {
  const takes: Take[] = [];
  let missing = 1;
  const asks: StockAsk[] = [];
  for (const offer of inTurn(slot.offers, taken)) {
    if (missing <= 1e-9) break;
    for (const take of freshTakes(offer, week, missing)) {
      takes.push(take);
      missing -= take.share;
    }
    missing -= fromStocks(offer, missing, takes, asks);
  }
  for (const take of takes) taken.add(take.crop.id);
  const missingShare = missing > 1e-9 ? missing : 0;
  for (const { stock, askedKg, gaveKg } of asks)
    stock.asks.push({ week, askedKg, gaveKg, missingShare, slot: slot.ask.slot.id });
  return { ask: slot.ask, takes, missingShare };
}

interface StockAsk {
  readonly stock: Stock;
  readonly askedKg: number;
  readonly gaveKg: number;
}

/** Share of the slot that the stores fill; what they were asked for is kept, to say later what ran out. */
function fromStocks({ flow, drawKg }: Offer, wanted: number, takes: Take[], asks: StockAsk[]): number {
  let missing = wanted;
  for (const stock of stocksToAsk(flow)) {
    if (missing <= 1e-9) break;
    const askedKg = missing * drawKg;
    const gaveKg = stock.give(askedKg);
    const share = gaveKg / drawKg;
    asks.push({ stock, askedKg, gaveKg });
    if (gaveKg > dustKg) {
      takes.push({ crop: flow.crop, from: 'store', plots: [], harvestYear: stock.harvestYear, share, kg: gaveKg });
    }
    missing -= share;
  }
  return wanted - missing;
}

/** What is recorded as cut for this week's boxes first, then in the order of the list; what is in the boxes already comes last. */
function inTurn(offers: readonly Offer[], taken: ReadonlySet<string>): readonly Offer[] {
  const rank = (offer: Offer) =>
    taken.has(offer.flow.crop.id) ? 2 : offer.flow.lots.some((lot) => lot.hasLaid) ? 0 : 1;
  return offers.toSorted((a, b) => rank(a) - rank(b));
}

/** Old stock first; one that is used up is asked no more once there is a newer one. */
function stocksToAsk(flow: CropFlow): readonly Stock[] {
  const newest = flow.stocks.at(-1);
  return flow.stocks.filter((stock) => stock === newest || stock.kg > dustKg);
}

function freshTakes(offer: Offer, week: number, missing: number): Take[] {
  const takes: Take[] = [];
  let left = missing;
  for (const under of ['field', 'tunnel'] as const) {
    let kg = 0;
    let harvestYear = 0;
    const plots: string[] = [];
    for (const lot of offer.flow.lots) {
      if (lot.lot.under !== under || left <= 1e-9 || week < lot.lot.aliveFromWeek || week > lot.lot.aliveToWeek)
        continue;
      const given = lot.give(week, left * offer.drawKg);
      if (given <= dustKg) continue;
      kg += given;
      left -= given / offer.drawKg;
      harvestYear = lot.lot.harvestYear;
      if (!plots.includes(lot.lot.plot)) plots.push(lot.lot.plot);
    }
    if (kg > 0) takes.push({ crop: offer.flow.crop, from: under, plots, harvestYear, share: kg / offer.drawKg, kg });
  }
  return takes;
}

function openWeek(flow: WorkingFlow, week: number): void {
  if (flow.stocks.length > 0) openStocks(flow, week);
  for (const lot of flow.lots) {
    if (week < lot.lot.aliveFromWeek || week > lot.lot.aliveToWeek) continue;
    lot.ripen(week);
    takeRecorded(flow, lot, week);
  }
}

function takeRecorded(flow: WorkingFlow, lot: WorkingFlow['lots'][number], week: number): void {
  for (const cut of lot.lot.recorded) {
    if (cut.week !== week) continue;
    if (cut.into === 'box') lot.lay(week, cut.kg);
    else lot.note(week, cut.kg);
    if (cut.into === 'store') stockOf(flow, lot.lot.harvestYear, week).take(week, cut.kg);
  }
}

function openStocks(flow: WorkingFlow, week: number): void {
  const newest = flow.lots.reduce(
    (year, lot) => (lot.lot.readyWeek <= week ? Math.max(year, lot.lot.harvestYear) : year),
    0,
  );
  flow.lossShare ??= flow.keeping?.lossShare(flow.bounds) ?? null;
  for (const stock of flow.stocks) {
    if (stock.harvestYear < newest) stock.clearOut();
    stock.open(week, flow.lossShare?.[week] ?? 0, flow.lifeWeeks);
  }
}

function closeWeek(flow: WorkingFlow, week: number): void {
  for (const lot of flow.lots) {
    if (week < lot.lot.aliveFromWeek || week > lot.lot.aliveToWeek) continue;
    const kg = lot.clear(week, flow.keeping !== null);
    if (kg > 0) stockOf(flow, lot.lot.harvestYear, week).take(week, kg);
  }
  for (const weighing of flow.weighings) if (weighing.week === week) weigh(flow, weighing.kg);
  for (const stock of flow.stocks) stock.close(week);
}

/** The newest season takes the difference; what is left of older ones stays as reckoned. */
function weigh(flow: WorkingFlow, kg: number): void {
  const newest = flow.stocks.at(-1);
  if (newest === undefined) return;
  const older = flow.stocks.slice(0, -1).reduce((sum, stock) => sum + stock.kg, 0);
  newest.weigh(Math.max(0, kg - older));
}

function stockOf(flow: WorkingFlow, harvestYear: number, week: number): Stock {
  const known = flow.stocks.find((stock) => stock.harvestYear === harvestYear);
  if (known !== undefined) return known;
  const stock = new Stock(harvestYear);
  stock.open(week, 0, null);
  flow.stocks.push(stock);
  flow.stocks.sort((a, b) => a.harvestYear - b.harvestYear);
  return stock;
}

/** Every crop that stands or is promised, in the order of first mention, so that equal farms are filled alike. */
function flowsOf(given: FillInput): ReadonlyMap<string, WorkingFlow> {
  const { input, promise, axis, lots, bounds } = given;
  const ids = new Set([
    ...promise.slots.flatMap((slot) => slot.crops as readonly string[]),
    ...lots.map((lot) => lot.crop.id),
  ]);
  const flows = new Map<string, WorkingFlow>();
  for (const id of ids) {
    const crop = input.crops.cropOf(id);
    if (crop === null) continue;
    const keeping = keepingOf(input.farm, crop, axis, input.crops.idsOf);
    flows.set(id, {
      crop,
      keeping,
      stocks: [],
      lots: lots.filter((lot) => lot.crop.id === id).map((lot) => new StandingLot(lot, bounds)),
      lossShare: null,
      bounds,
      lifeWeeks: keeping?.lifeWeeks(bounds) ?? null,
      weighings: weighingsOf(input, id, axis),
    });
  }
  return flows;
}

/** Weighings up to today, all stores of a crop together where a week has several. */
function weighingsOf(input: SupplyInput, id: string, axis: WeekAxis): readonly { week: number; kg: number }[] {
  const byWeek = new Map<number, WeighingRecord[]>();
  for (const weighing of input.farm.weighings) {
    if (weighing.crop !== id || weighing.on > input.today) continue;
    const week = axis.weekOf(dayNumber(weighing.on));
    byWeek.set(week, [...(byWeek.get(week) ?? []), weighing]);
  }
  return [...byWeek].map(([week, all]) => ({ week, kg: latestByStore(all).reduce((sum, one) => sum + one.kg, 0) }));
}

/** The last weighing of each store in the week. */
function latestByStore(all: readonly WeighingRecord[]): readonly WeighingRecord[] {
  const latest = new Map<string | null, WeighingRecord>();
  for (const one of all.toSorted((a, b) => (a.on < b.on ? -1 : 1))) latest.set(one.store, one);
  return [...latest.values()];
}
