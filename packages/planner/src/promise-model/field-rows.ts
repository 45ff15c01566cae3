/**
 * What is sown, becomes ready, stands and is cut.
 *
 * Rule    what still stands at the end of a week, less what spoils, and what becomes ready, is cut or goes on standing; the rest may rot. That
 *         one equation holds for a crop lifted at once as for one picked over many weeks. Nothing stands past the last week of a harvest.
 */
import { weekInYear } from '../promise-problem/problem.ts';
import type { Term } from '../rotation-model/draft-model.ts';
import { type Building, loadsPerKg } from './building.ts';

/** What each part of a harvest brings, by crop and week, and the hours it takes, by week: for the rows that follow. */
export interface FieldTerms {
  readonly cut: readonly (readonly Term[][])[];
  readonly hours: readonly Term[][];
}

export function fieldRows(building: Building): FieldTerms {
  const { problem, draft, places } = building;
  const cutTerms = problem.crops.map(() => Array.from({ length: problem.weeks }, (): Term[] => []));
  const hours = Array.from({ length: problem.weeks }, (): Term[] => []);
  for (const one of problem.successions) {
    const pinned = one.pinnedM2 === null ? {} : { low: one.pinnedM2 / one.bedM2, high: one.pinnedM2 / one.bedM2 };
    const costWeight = one.costPerM2 * one.bedM2 * problem.groundCostWeight;
    places.beds.push(draft.column({ ...pinned, costWeight }));
  }
  problem.successions.forEach((one, at) => {
    const crop = problem.crops[one.cropIndex];
    const beds = places.beds[at] ?? 0;
    const cut: number[] = [];
    let stood: number | null = null;
    one.readyKgM2.forEach((readyKgM2, step) => {
      const week = weekInYear(problem, one.harvestFromWeek + step);
      const column = draft.column({});
      const terms: Term[] = [
        [beds, readyKgM2 * one.bedM2 * loadsPerKg],
        [column, -1],
      ];
      if (stood !== null) terms.push([stood, one.keepShare]);
      stood = step < one.readyKgM2.length - 1 ? draft.column({}) : null;
      if (stood !== null) terms.push([stood, -1]);
      draft.row(0, Number.POSITIVE_INFINITY, terms);
      cutTerms[one.cropIndex]?.[week]?.push([column, 1 - problem.gradedOutShare]);
      hours[week]?.push([column, (crop?.harvestHoursPerKg ?? 0) / loadsPerKg]);
      cut.push(column);
    });
    places.cutColumns.push(cut);
    hours[weekInYear(problem, one.groundFromWeek)]?.push([beds, one.plantHoursPerM2 * one.bedM2]);
  });
  return { cut: cutTerms, hours };
}
