/** One season's stock of a crop from the first kilo in to the last out: the weekly ledger, the full weeks, and when it runs out. */
import type { StoreRun } from '../plan/supply.ts';
import type { Asked } from '../promise/week-asks.ts';
import type { CropFlow, Filled } from '../supply/fill.ts';
import type { Stock } from './stock.ts';

/** Runs that have any week between two places of the axis, by crop and season. */
export function storeRuns(
  filled: Filled,
  asked: Asked,
  weeks: { readonly from: number; readonly to: number },
): readonly StoreRun[] {
  const runs: StoreRun[] = [];
  for (const flow of filled.flows.values()) {
    for (const stock of flow.stocks) {
      const first = stock.weeks[0]?.week;
      const last = stock.weeks.at(-1)?.week;
      if (first === undefined || last === undefined || last < weeks.from || first >= weeks.to) continue;
      runs.push(storeRun({ filled, asked, flow, stock }));
    }
  }
  return runs;
}

interface RunParts {
  readonly filled: Filled;
  readonly asked: Asked;
  readonly flow: CropFlow;
  readonly stock: Stock;
}

function storeRun({ filled, asked, flow, stock }: RunParts): StoreRun {
  const { axis } = filled;
  const full = stock.asks.filter((ask) => ask.gaveKg > 0 && ask.missingShare === 0);
  const lastFull = full.at(-1);
  const short = firstShort(asked, flow, stock);
  const weeks = stock.ledger(axis);
  return {
    crop: flow.crop.id,
    name: flow.crop.name,
    store: flow.keeping?.store?.id ?? null,
    harvestYear: stock.harvestYear,
    weeks,
    intoStoreKg: weeks.reduce((sum, week) => sum + week.inKg, 0),
    lossKg: weeks.reduce((sum, week) => sum + week.lossKg, 0),
    fullWeeks: new Set(full.map((ask) => ask.week)).size,
    lastFullWeek: lastFull === undefined ? null : axis.nameOf(lastFull.week),
    firstShortWeek:
      short === null ? null : { week: axis.nameOf(short.week), stockKg: short.gaveKg, boxesShare: short.boxesShare },
    gapWeeks: short === null ? 0 : gapWeeks(filled, short),
    lossBasis: flow.keeping?.basis ?? 'reference',
    why: `store/${flow.crop.id}/${weeks.at(-1)?.week ?? ''}`,
  };
}

interface Short {
  readonly week: number;
  readonly slot: string;
  readonly gaveKg: number;
  readonly boxesShare: number;
}

/** The first week in which boxes go without and it is this stock that did not reach. */
function firstShort(asked: Asked, flow: CropFlow, stock: Stock): Short | null {
  const start = stock.weeks[0]?.week ?? 0;
  const lack = asked.missing.find(
    (one) => one.week >= start && one.crop.id === flow.crop.id && one.harvestYear === stock.harvestYear,
  );
  if (lack === undefined) return null;
  const ask = stock.asks.find((one) => one.week === lack.week && one.slot === lack.slot);
  const share = ask === undefined || ask.askedKg === 0 ? 0 : ask.gaveKg / ask.askedKg;
  return { week: lack.week, slot: lack.slot, gaveKg: ask?.gaveKg ?? 0, boxesShare: share };
}

/** Weeks the slot goes short from the first short one, until it is filled again or its window ends. */
function gapWeeks(filled: Filled, short: Short): number {
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
