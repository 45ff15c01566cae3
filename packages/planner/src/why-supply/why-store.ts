/** Why so much lies in store at the end of a week: what was there, less its loss, and what came in and went out. */

import type { StoreRun } from '../plan/supply.ts';
import type { Lever, Why, WhyInput } from '../plan/why.ts';
import { storeRuns } from '../store/store-run.ts';
import type { SupplyRun } from '../supply/supply-run.ts';
import { ofFarm, ofSums, ofTable, why, written } from '../why/terms.ts';
import { again, householdsTimes } from './supply-again.ts';

export function whyStore(cropId: string, week: string, run: SupplyRun): Why | null {
  const found = rowOf(run, cropId, week);
  if (found === null) return null;
  const { row, from } = found;
  const flow = run.typ.flows.get(cropId);
  const lossShare = row.openKg === 0 ? 0 : row.lossKg / row.openKg;
  return why(`store/${cropId}/${week}`, 'store', {
    figures: {
      crop: cropId,
      week,
      harvestYear: from.harvestYear,
      intoStoreKg: from.intoStoreKg,
      firstShortWeek: from.firstShortWeek?.week ?? null,
    },
    value: row.closeKg,
    low: rowOfFilled(run, 'low', cropId, week),
    high: rowOfFilled(run, 'high', cropId, week),
    unit: 'kg',
    formula: 'left = there at the start × (1 − loss) + put in − taken for the boxes',
    sum: `${written(row.openKg)} × (1 − ${written(lossShare)}) + ${written(row.inKg)} − ${written(row.outKg)} = ${written(row.closeKg)}`,
    inputs: [
      ofSums({ name: 'there at the start', value: row.openKg, unit: 'kg' }, before(from, week)),
      ...lossInputs(lossShare, flow?.keeping?.basis ?? 'reference', flow?.keeping?.row?.id ?? null),
      ofSums({ name: 'put in', value: row.inKg, unit: 'kg' }),
      ofSums({ name: 'taken for the boxes', value: row.outKg, unit: 'kg' }),
    ],
    doubt: [...(from.lossBasis === 'reference' ? ['store-loss-recalled'] : ['store-loss-own']), 'store-not-weighed'],
    levers: leversOf(run, cropId, week),
  });
}

function rowOf(run: SupplyRun, crop: string, week: string): { from: StoreRun; row: StoreRun['weeks'][number] } | null {
  const runs = storeRuns(run.typ, run.asked, { from: 0, to: run.axis.weeks }).filter((one) => one.crop === crop);
  for (const from of runs.toReversed()) {
    const row = from.weeks.find((one) => one.week === week);
    if (row !== undefined) return { from, row };
  }
  return null;
}

function rowOfFilled(run: SupplyRun, bounds: 'low' | 'high', crop: string, week: string): number | null {
  const stocks = run[bounds].flows.get(crop)?.stocks ?? [];
  const rows = stocks.flatMap((stock) => stock.weeks).filter((row) => run.axis.nameOf(row.week) === week);
  return rows.length === 0 ? null : rows.reduce((sum, row) => sum + row.closeKg, 0);
}

function before(from: StoreRun, week: string): string | null {
  const at = from.weeks.findIndex((one) => one.week === week);
  const last = from.weeks[at - 1];
  return last === undefined ? null : `store/${from.crop}/${last.week}`;
}

function lossInputs(lossShare: number, basis: 'own' | 'reference', row: string | null): readonly WhyInput[] {
  const amount = { name: 'loss', value: lossShare, unit: 'a week' };
  if (basis === 'own' || row === null) return [ofFarm(amount, 'store_losses.csv, loss_share_week')];
  return [ofTable(amount, 'storage', { row, column: 'loss_high_pct_month' })];
}

function leversOf(run: SupplyRun, crop: string, week: string): readonly Lever[] {
  const at = (changed: SupplyRun) => rowOf(changed, crop, week)?.row.closeKg ?? 0;
  const fewer = again(run, householdsTimes(0.9));
  const halved = again(run, (farm) => ({
    ...farm,
    storeLosses: farm.storeLosses.map((loss) =>
      loss.crop === crop ? { ...loss, lossShareWeek: loss.lossShareWeek / 2 } : loss,
    ),
  }));
  const smaller = again(run, (farm) =>
    farm.promise === null
      ? farm
      : {
          ...farm,
          promise: {
            ...farm.promise,
            slots: farm.promise.slots.map((slot) =>
              (slot.crops as readonly string[]).includes(crop)
                ? {
                    ...slot,
                    portions: Object.fromEntries(
                      Object.entries(slot.portions).map(([size, portion]) => [size, portion * 0.9]),
                    ),
                  }
                : slot,
            ),
          },
        },
  );
  const hasOwnLoss = run.input.farm.storeLosses.some((loss) => loss.crop === crop);
  return [
    { change: 'households', value: 0.9, unit: 'times', result: at(fewer) },
    { change: 'portion', value: 0.9, unit: 'times', result: at(smaller) },
    ...(hasOwnLoss ? [{ change: 'loss', value: 0.5, unit: 'times', result: at(halved) }] : []),
  ];
}
