/** What a store keeps of what it is asked for: each week's kilos, taken back to the week they were put in. */
import type { Keep } from '../plan/supply.ts';
import type { CropFlow, Filled } from '../supply/fill.ts';
import { seasonDays } from '../supply/harvest-window.ts';
import type { WeekAsk } from './week-asks.ts';

/** Null where the asks are all met fresh, or nothing is known of how it keeps. */
export function storeKeepOf(filled: Filled, flow: CropFlow, asks: readonly WeekAsk[]): Keep | null {
  if (flow.keeping === null) return null;
  const loss = flow.keeping.lossShare('typ');
  const inWeeks = new Map(
    [...new Set(asks.map((ask) => ask.harvestYear))].map((year) => [year, weekIn(filled, flow, year)]),
  );
  let wantedKg = 0;
  let putInKg = 0;
  let isStored = false;
  for (const ask of asks) {
    const inWeek = inWeeks.get(ask.harvestYear) ?? ask.week;
    const fromStore = ask.from === 'store' || (ask.from === 'missing' && ask.week > inWeek);
    wantedKg += ask.kg;
    putInKg += fromStore ? ask.kg / keptBetween(loss, inWeek, ask.week) : ask.kg;
    isStored ||= fromStore;
  }
  if (!isStored || putInKg === 0) return null;
  const { row, basis } = flow.keeping;
  return {
    step: 'store',
    keepShare: wantedKg / putInKg,
    source:
      basis === 'own' ? 'store_losses.csv' : `storage, ${row?.id ?? ''}, loss_low_pct_month and loss_high_pct_month`,
  };
}

/** Mean week of coming in, by mass; the end of the table's harvest where nothing has come in. */
function weekIn(filled: Filled, flow: CropFlow, harvestYear: number): number {
  const stock = flow.stocks.find((one) => one.harvestYear === harvestYear);
  const ins = (stock?.weeks ?? []).filter((week) => week.inKg > 0);
  const kg = ins.reduce((sum, week) => sum + week.inKg, 0);
  if (kg > 0) return Math.round(ins.reduce((sum, week) => sum + week.week * week.inKg, 0) / kg);
  const table = flow.crop.reference;
  return table === null
    ? filled.axis.weeks
    : filled.axis.weekOf(seasonDays(table.harvestFrom, table.harvestTo, harvestYear).to);
}

function keptBetween(loss: Float64Array, inWeek: number, week: number): number {
  let kept = 1;
  for (let at = Math.max(0, inWeek + 1); at <= week && at < loss.length; at += 1) kept *= 1 - (loss[at] ?? 0);
  return kept;
}
