/**
 * Hedges cut and margins mown, each in its lawful window and in its turn of years.
 *
 * Rule    A hedge's turn comes every so many years (three in England): that share of its length each year, in the window in which it is managed. Banks and
 *         margins likewise by area. Laws are those of the habitat table for the farm's jurisdiction; where it has none, nothing is planned.
 */
import { type Habitat, hedgeWork, reference } from '@leywright/agronomy';
import type { Feature } from '@leywright/book';
import { dayAt, dayInYear, dayNumber, endOfWindow } from '@leywright/measures';
import type { Job } from '../../plan/work.ts';
import type { SupplyRun } from '../../supply/supply-run.ts';
import { labourHours } from '../rates.ts';
import { jobOf } from './job.ts';

const hedgeOf: Readonly<Record<string, string>> = {
  England: 'hedge-england',
  Wales: 'hedge-england',
  Ireland: 'hedge-ireland',
  Germany: 'hedge-germany',
  France: 'hedge-france',
};
const strips: Partial<Readonly<Record<Feature['kind'], string>>> = {
  'beetle-bank': 'beetle-bank',
  margin: 'grass-margin',
};

export function habitatJobs(run: SupplyRun): readonly (Job | null)[] {
  const { farm } = run.input;
  return farm.features.flatMap((feature) => {
    const hedge = reference.habitat.get(hedgeOf[farm.about.place.jurisdiction] ?? '') ?? null;
    if (feature.kind === 'hedge')
      return hedge === null || feature.lengthM === null ? [] : [cutHedge(run, feature, hedge)];
    const strip = reference.habitat.get(strips[feature.kind] ?? '');
    return strip === undefined || feature.areaM2 === null ? [] : [mowStrip(run, feature, strip)];
  });
}

function cutHedge(run: SupplyRun, feature: Feature, habitat: Habitat): Job | null {
  const lengthM = (feature.lengthM ?? 0) / habitat.manageEveryYears;
  const window = lawfulWindow(run.input.year, habitat);
  return jobOf({
    kind: 'cut-hedge',
    run,
    nth: `${feature.id}-${run.input.year}`,
    ...plannedIn(run, window),
    window,
    name: feature.name,
    rowM: lengthM,
    rated: labourHours('hedge-flail', { rowM: lengthM }),
  });
}

function mowStrip(run: SupplyRun, feature: Feature, habitat: Habitat): Job | null {
  const areaM2 = (feature.areaM2 ?? 0) / habitat.manageEveryYears;
  const window = lawfulWindow(run.input.year, habitat);
  return jobOf({
    kind: 'mow-margin',
    run,
    nth: `${feature.id}-${run.input.year}`,
    ...plannedIn(run, window),
    window,
    name: feature.name,
    areaM2,
    rated: labourHours('margin-mow', { areaM2 }),
  });
}

/** Meant for as early in its window as the year in focus has weeks. */
function plannedIn(run: SupplyRun, window: { readonly fromDay: number; readonly toDay: number }) {
  return {
    fromDay: Math.min(window.toDay, Math.max(window.fromDay, run.axis.dayOf(run.fromWeek))),
    toDay: window.toDay,
  };
}

/** The days of the year in which it is managed and no law forbids it; a window over new year counts in the year it begins in. */
function lawfulWindow(year: number, habitat: Habitat): { readonly fromDay: number; readonly toDay: number } {
  const from = dayNumber(dayInYear(habitat.manageFrom, year));
  const to = dayNumber(endOfWindow(habitat.manageTo, habitat.manageTo < habitat.manageFrom ? year + 1 : year));
  const isOpen = (day: number) => hedgeWork.hedgeWorkOn(habitat.id, 'trim', dayAt(day)).open;
  let fromDay = from;
  while (fromDay < to && !isOpen(fromDay)) fromDay++;
  let toDay = fromDay;
  while (toDay < to && isOpen(toDay + 1)) toDay++;
  return { fromDay, toDay };
}
