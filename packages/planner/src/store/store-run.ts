/** One season's stock of a crop from the first kilo in to the last out: the weekly ledger, the full weeks, and when it runs out. */
import type { StoreRun } from '../plan/supply.ts';
import type { CropFlow, Filled } from '../supply/fill.ts';
import type { Stock, StoreAsk } from './stock.ts';

/** Runs that have any week between two places of the axis, by crop and season. */
export function storeRuns(filled: Filled, fromWeek: number, toWeek: number): readonly StoreRun[] {
  const runs: StoreRun[] = [];
  for (const flow of filled.flows.values()) {
    for (const stock of flow.stocks) {
      const first = stock.weeks[0]?.week;
      const last = stock.weeks.at(-1)?.week;
      if (first === undefined || last === undefined || last < fromWeek || first > toWeek) continue;
      runs.push(storeRun(filled, flow, stock));
    }
  }
  return runs;
}

function storeRun(filled: Filled, flow: CropFlow, stock: Stock): StoreRun {
  const { axis } = filled;
  const asks = stock.asks.filter((ask) => ask.week < nextHarvestWeek(flow, stock));
  const full = asks.filter((ask) => ask.gaveKg > 0 && ask.missingShare === 0);
  const lastFull = full.at(-1);
  const short = asks.find((ask) => ask.missingShare > 0);
  const weeks = stock.ledger(axis);
  return {
    crop: flow.crop.id, name: flow.crop.name, store: flow.keeping?.store?.id ?? null, harvestYear: stock.harvestYear, weeks,
    intoStoreKg: weeks.reduce((sum, week) => sum + week.inKg, 0),
    lossKg: weeks.reduce((sum, week) => sum + week.lossKg, 0),
    fullWeeks: new Set(full.map((ask) => ask.week)).size,
    lastFullWeek: lastFull === undefined ? null : axis.nameOf(lastFull.week),
    firstShortWeek: short === undefined ? null : { week: axis.nameOf(short.week), stockKg: short.gaveKg, boxesShare: short.askedKg === 0 ? 0 : short.gaveKg / short.askedKg },
    gapWeeks: short === undefined ? 0 : gapWeeks(filled, short),
    lossBasis: flow.keeping?.basis ?? 'reference',
    why: `store/${flow.crop.id}/${weeks.at(-1)?.week ?? ''}`,
  };
}

/** First week in which the next season's harvest is there. */
function nextHarvestWeek(flow: CropFlow, stock: Stock): number {
  return flow.lots.reduce((first, lot) => (lot.lot.harvestYear > stock.harvestYear ? Math.min(first, lot.lot.readyWeek) : first), Number.MAX_SAFE_INTEGER);
}

/** Weeks the slot goes short from the first short one, until it is filled again or its window ends. */
function gapWeeks(filled: Filled, short: StoreAsk): number {
  let weeks = 0;
  for (let week = short.week; week < filled.weeks.length; week += 1) {
    const slot = filled.weeks[week]?.find((one) => one.ask.slot.id === short.slot);
    if (slot === undefined) {
      if (slotHasEnded(filled, short.slot, week)) break;
      continue;
    }
    if (slot.missingShare === 0) break;
    weeks += 1;
  }
  return weeks;
}

/** A closed week or another slot's turn is a pause; half a quarter without the slot is the end of its window. */
const pauseWeeks = 6;
function slotHasEnded(filled: Filled, slot: string, week: number): boolean {
  for (let next = week; next < week + pauseWeeks; next += 1) {
    if (filled.weeks[next]?.some((one) => one.ask.slot.id === slot)) return false;
  }
  return true;
}
