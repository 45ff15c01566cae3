/** What there is: ground of each course and tunnel in every week, room in the stores, hours of the hands. */
import { heldWeeks } from '../promise-problem/problem.ts';
import type { Term } from '../rotation-model/draft-model.ts';
import { type Building, loadsPerKg } from './building.ts';
import type { FieldTerms } from './field-rows.ts';

const anyLess = Number.NEGATIVE_INFINITY;
/** Widened only when it is asked what more would do. */
const shut = { low: 0, high: 0 };
/** Ground is limited in hundreds of square metres. */
const hundredM2 = 100;

export function limitRows(building: Building, field: FieldTerms): void {
  handsRows(building, field.hours);
  groundRows(building);
  storeLimitRows(building);
}

function handsRows({ problem, draft, places, ...rows }: Building, hours: readonly (readonly Term[])[]): void {
  const { hands } = problem;
  const isScaled = places.scaleIndex !== null;
  for (let week = 0; week < problem.weeks; week += 1) {
    const overtime = draft.column({
      high: hands.overtimeMostH,
      costWeight: isScaled ? 0 : hands.overtimeWagePerH - hands.wagePerH,
    });
    const worked = draft.column({ costWeight: isScaled ? 0 : hands.wagePerH });
    const more = draft.column(shut);
    const packH = (problem.households[week] ?? 0) * hands.packHoursPerBox;
    rows.exactly([[worked, 1], ...(hours[week] ?? []).map(([column, h]): Term => [column, -h])], packH);
    const limit = draft.row(anyLess, hands.hours[week] ?? 0, [
      [worked, 1],
      [overtime, -1],
      [more, -1],
    ]);
    places.overtimeColumns.push(overtime);
    places.moreHours.push(more);
    places.handsRows.push(limit);
  }
}

function groundRows({ problem, draft, places }: Building): void {
  for (const [ground, m2] of Object.entries(problem.groundM2)) {
    const byWeek = Array.from({ length: problem.weeks }, (): Term[] => []);
    problem.successions.forEach((one, at) => {
      if (problem.crops[one.cropIndex]?.ground !== ground) return;
      for (const [week, times] of heldWeeks(problem, one))
        byWeek[week]?.push([places.beds[at] ?? 0, (times * one.bedM2) / hundredM2]);
    });
    const more = draft.column(shut);
    places.moreGround.set(ground, more);
    places.groundRows.set(
      ground,
      byWeek.map((terms) => (terms.length === 0 ? -1 : draft.row(anyLess, m2 / hundredM2, [...terms, [more, -1]]))),
    );
  }
}

function storeLimitRows({ problem, draft, places }: Building): void {
  for (const [kind, capacityKg] of Object.entries(problem.storesKg)) {
    const crops = problem.crops.flatMap((crop, at) => (crop.store?.kind === kind ? [at] : []));
    const more = draft.column(shut);
    places.moreStore.set(kind, more);
    const limits = Array.from({ length: problem.weeks }, (_, week) => {
      const terms = crops.map((crop): Term => [places.stock.at(crop, week), 1]);
      return terms.length === 0 ? -1 : draft.row(anyLess, capacityKg * loadsPerKg, [...terms, [more, -1]]);
    });
    places.storeRows.set(kind, limits);
  }
}
