/** Weeks in which the box is short for want of time: nothing of what was promised is ready then. */
import { addDays } from '@leywright/measures';
import type { Finding, Mend } from '../plan/finding.ts';
import { marketableKgM2, packingKeep } from '../promise/known.ts';
import { boxWeek, shortLimitShare } from '../supply/box-year.ts';
import type { SupplyRun } from '../supply/supply-run.ts';
import type { Lack } from './causes.ts';
import { mend, supplyFinding, tenth } from './say.ts';
import { type WeekRun, weekRuns } from './week-runs.ts';

export function boxFindings(run: SupplyRun, lacks: readonly Lack[]): readonly Finding[] {
  const told = new Map<number, number>();
  for (const lack of lacks)
    if (lack.cause !== 'box-short') told.set(lack.week, (told.get(lack.week) ?? 0) + lack.boxesShare);
  const short: number[] = [];
  for (let week = run.fromWeek; week < run.toWeek; week += 1) {
    if (boxWeek(run, week).shortItems - (told.get(week) ?? 0) >= shortLimitShare) short.push(week);
  }
  return weekRuns(short, run.typ.calendar).map((weeks) =>
    boxShort(
      run,
      weeks,
      lacks.filter((lack) => lack.cause === 'box-short' && weeks.weeks.includes(lack.week)),
    ),
  );
}

function boxShort(run: SupplyRun, weeks: WeekRun, lacks: readonly Lack[]): Finding {
  const boxes = weeks.weeks.map((week) => boxWeek(run, week));
  const worst = boxes.reduce((least, box) =>
    box.promised - box.itemsPerBox > least.promised - least.itemsPerBox ? box : least,
  );
  const { axis } = run;
  const from = axis.textOf(axis.dayOf(weeks.firstWeek));
  const to = addDays(axis.textOf(axis.dayOf(weeks.lastWeek)), 6);
  return supplyFinding('box-short', {
    gravity: to < run.input.today ? 'note' : 'put-right',
    place: { week: axis.nameOf(weeks.firstWeek), year: run.input.year, from, to },
    figures: {
      weeks: weeks.weeks.length,
      fromWeek: axis.nameOf(weeks.firstWeek),
      toWeek: axis.nameOf(weeks.lastWeek),
      items: tenth(worst.itemsPerBox),
      promisedItems: tenth(worst.promised),
      missing: [...new Set(lacks.map((lack) => lack.slot))].join(';'),
    },
    mend: mendsOf(run, weeks, lacks),
    why: worst.why,
  });
}

function mendsOf(run: SupplyRun, weeks: WeekRun, lacks: readonly Lack[]): readonly Mend[] {
  const span = { fromWeek: run.axis.nameOf(weeks.firstWeek), toWeek: run.axis.nameOf(weeks.lastWeek) };
  const worst = worstCrop(run, weeks, lacks);
  if (worst === null) return [mend('fill-more-places', span), mend('promise-fewer-items', span)];
  const plenty = cropWithPlenty(run, weeks, worst.slot);
  return [
    mend('grow-more', { crop: worst.crop, kg: worst.kg, areaM2: worst.areaM2, ...span }),
    plenty === null
      ? mend('name-another-crop', { crop: worst.crop })
      : mend('name-crop-with-plenty', { crop: worst.crop, other: plenty.crop, kg: plenty.kg }),
    mend('promise-fewer-items', span),
  ];
}

/** What is missing most by weight, and the ground that would bring it. */
function worstCrop(
  run: SupplyRun,
  weeks: WeekRun,
  lacks: readonly Lack[],
): { crop: string; slot: string; kg: number; areaM2: number | null } | null {
  const byCrop = new Map<string, { lack: Lack; kg: number }>();
  for (const lack of lacks) {
    const asks = (run.asked.byCrop.get(lack.crop.id) ?? []).filter(
      (ask) => ask.from === 'missing' && ask.week === lack.week && ask.slot === lack.slot,
    );
    const kg = asks.reduce((sum, ask) => sum + ask.kg, 0);
    byCrop.set(lack.crop.id, { lack, kg: (byCrop.get(lack.crop.id)?.kg ?? 0) + kg });
  }
  const most = [...byCrop.values()].toSorted((a, b) => b.kg - a.kg)[0];
  if (most === undefined || weeks.weeks.length === 0) return null;
  const kgM2 = marketableKgM2(most.lack.crop);
  const areaM2 = kgM2 === null || kgM2 === 0 ? null : most.kg / packingKeep(most.lack.crop) / kgM2;
  return { crop: most.lack.crop.id, slot: most.lack.slot, kg: most.kg, areaM2 };
}

/** A crop that is ready in those weeks with kilos nobody takes, and that the slot does not name. */
function cropWithPlenty(run: SupplyRun, weeks: WeekRun, slotId: string): { crop: string; kg: number } | null {
  const slot = run.promise.slots.find((one) => one.id === slotId);
  const named = new Set<string>(slot?.crops ?? []);
  const idle = [...run.typ.flows.values()]
    .filter((flow) => !named.has(flow.crop.id))
    .flatMap((flow) => {
      const lots = flow.lots.filter(
        ({ lot, uncutKg }) =>
          uncutKg > 1 &&
          lot.readyWeek <= weeks.lastWeek &&
          lot.readyWeek + lot.readyShare.length + lot.standingWeeks >= weeks.firstWeek,
      );
      const kg = lots.reduce((sum, lot) => sum + lot.uncutKg, 0);
      return kg > 0 ? [{ crop: flow.crop.id, kg }] : [];
    });
  return idle.toSorted((a, b) => b.kg - a.kg)[0] ?? null;
}
