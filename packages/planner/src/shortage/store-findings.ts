/** Stores that run out, overflow, or are not there. */
import type { Finding } from '../plan/finding.ts';
import type { StoreRun } from '../plan/supply.ts';
import { marketableKgM2 } from '../promise/known.ts';
import { bestKind } from '../store/keeping.ts';
import { storeRuns } from '../store/store-run.ts';
import type { SupplyRun } from '../supply/supply-run.ts';
import type { Lack } from './causes.ts';
import { gravityOf, lacksByCrop } from './ground-findings.ts';
import { mend, supplyFinding } from './say.ts';
import { type WeekRun, weekRuns } from './week-runs.ts';

export function storeFindings(run: SupplyRun, lacks: readonly Lack[]): readonly Finding[] {
  const runs = storeRuns(run.typ, run.asked, { from: run.fromWeek, to: run.axis.weeks });
  return [
    ...lacksByCrop(lacks, 'store-runs-out').flatMap((group) => runsOut(run, group, runs)),
    ...lacksByCrop(lacks, 'no-store-for-crop').map((group) => noStore(run, group)),
    ...overFull(run),
  ];
}

function runsOut(run: SupplyRun, group: readonly Lack[], runs: readonly StoreRun[]): readonly Finding[] {
  const crop = group[0]?.crop;
  const out = runs.find((one) => one.crop === crop?.id && one.harvestYear === group[0]?.harvestYear);
  if (crop === undefined || out === undefined || out.firstShortWeek === null || out.lastFullWeek === null) return [];
  const asks = (run.asked.byCrop.get(crop.id) ?? []).filter((ask) => ask.harvestYear === out.harvestYear);
  const shortKg = asks.filter((ask) => ask.from === 'missing').reduce((sum, ask) => sum + ask.kg, 0);
  const allKg = asks.reduce((sum, ask) => sum + ask.kg, 0);
  const kgM2 = marketableKgM2(crop);
  return [
    supplyFinding('store-runs-out', {
      gravity: gravityOf(run, group),
      place: {
        crop: crop.id,
        year: run.input.year,
        week: out.firstShortWeek.week,
        ...(out.store === null ? {} : { store: out.store }),
      },
      figures: {
        crop: crop.id,
        lastFullWeek: out.lastFullWeek,
        gapWeeks: out.gapWeeks,
        stockKg: out.firstShortWeek.stockKg,
        boxesShare: out.firstShortWeek.boxesShare,
        shortKg,
        harvestYear: out.harvestYear,
      },
      mend: [
        mend('store-more', { crop: crop.id, kg: shortKg, areaM2: kgM2 === null ? null : shortKg / kgM2 }),
        mend('end-place-earlier', { crop: crop.id, week: out.lastFullWeek }),
        mend('smaller-portion', { crop: crop.id, portionShare: allKg === 0 ? 0 : 1 - shortKg / allKg }),
      ],
      why: out.why,
    }),
  ];
}

function noStore(run: SupplyRun, group: readonly Lack[]): Finding {
  const first = group[0];
  const crop = first?.crop.id ?? '';
  const best = first === undefined ? undefined : bestKind(first.crop)[0];
  const fromWeek = run.axis.nameOf(first?.week ?? 0);
  return supplyFinding('no-store-for-crop', {
    gravity: gravityOf(run, group),
    place: { crop, year: run.input.year, week: fromWeek },
    figures: { crop, fromWeek, weeks: new Set(group.map((lack) => lack.week)).size },
    mend: [
      ...(best === undefined ? [] : [mend('name-store', { crop, kind: best.store, lifeWeeks: best.lifeHighWeeks })]),
      mend('end-place-earlier', { crop, week: run.axis.nameOf(Math.max(0, (first?.week ?? 1) - 1)) }),
    ],
  });
}

/** Weeks in which what lies in a store, all crops together, is more than it holds. */
function overFull(run: SupplyRun): readonly Finding[] {
  return run.input.farm.stores.flatMap((store) => {
    const capacityKg = store.capacityKg;
    if (capacityKg === null) return [];
    const stocks = [...run.typ.flows.values()]
      .filter((flow) => flow.keeping?.store?.id === store.id)
      .flatMap((flow) => flow.stocks);
    const heldKg = new Float64Array(run.axis.weeks);
    for (const row of stocks.flatMap((stock) => stock.weeks)) heldKg[row.week] = (heldKg[row.week] ?? 0) + row.closeKg;
    const over: number[] = [];
    for (let week = run.fromWeek; week < run.toWeek; week += 1)
      if ((heldKg[week] ?? 0) > capacityKg * 1.001) over.push(week);
    return weekRuns(over, run.typ.calendar).map((weeks) => overFullFinding(run, { store, capacityKg, heldKg, weeks }));
  });
}

interface OverFull {
  readonly store: { readonly id: string };
  readonly capacityKg: number;
  readonly heldKg: Float64Array;
  readonly weeks: WeekRun;
}

function overFullFinding(run: SupplyRun, { store, capacityKg, heldKg, weeks }: OverFull): Finding {
  const worst = weeks.weeks.reduce((most, week) => ((heldKg[week] ?? 0) > (heldKg[most] ?? 0) ? week : most));
  const kg = heldKg[worst] ?? 0;
  const isOver = run.axis.textOf(run.axis.dayOf(weeks.lastWeek) + 6) < run.input.today;
  return supplyFinding('store-over-full', {
    gravity: isOver ? 'note' : 'put-right',
    place: { store: store.id, year: run.input.year, week: run.axis.nameOf(weeks.firstWeek) },
    figures: { store: store.id, kg, capacityKg, week: run.axis.nameOf(worst), weeks: weeks.weeks.length },
    mend: [
      mend('store-less', { store: store.id, kg: kg - capacityKg }),
      mend('give-store-room', { store: store.id, kg: kg - capacityKg }),
    ],
  });
}
