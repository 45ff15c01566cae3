/** From the field into boxes or into store, and out of store again: what goes in comes out or is lost. */
import { weekInYear } from '../promise-problem/problem.ts';
import type { Term } from '../rotation-model/draft-model.ts';
import { type Building, loadsPerKg, termOf } from './building.ts';
import type { FieldTerms } from './field-rows.ts';

const anyMore = Number.POSITIVE_INFINITY;

export function storeRows(building: Building, field: FieldTerms): void {
  const { problem } = building;
  problem.crops.forEach((_, crop) => {
    for (let week = 0; week < problem.weeks; week += 1) cutRow(building, { crop, week }, field.cut[crop]?.[week] ?? []);
  });
  problem.crops.forEach((crop, at) => {
    if (crop.store === null) return;
    for (let week = 0; week < problem.weeks; week += 1) stockRow(building, { crop: at, week }, crop.store.lossShare);
  });
}

interface Cell {
  readonly crop: number;
  readonly week: number;
}

function cutRow({ problem, draft, places }: Building, { crop, week }: Cell, cut: readonly Term[]): void {
  const isStored = problem.crops[crop]?.store != null;
  if (cut.length > 0) {
    const boxed = draft.column({});
    places.boxedFresh.set(crop, week, boxed);
    const terms: Term[] = [...cut, [boxed, -1]];
    if (isStored) {
      const stored = draft.column({});
      places.stored.set(crop, week, stored);
      terms.push([stored, -1]);
    }
    draft.row(0, anyMore, terms);
  }
  if (!isStored) return;
  places.stock.set(crop, week, draft.column({}));
  places.taken.set(crop, week, draft.column({}));
}

function stockRow({ problem, draft, places }: Building, { crop, week }: Cell, lossShare: number): void {
  const isFirst = week === 0 && !problem.isCyclic;
  const before = isFirst ? -1 : places.stock.at(crop, weekInYear(problem, week - 1));
  const openingKg = isFirst ? (problem.crops[crop]?.openingStoreKg ?? 0) : 0;
  draft.row(-openingKg * (1 - lossShare) * loadsPerKg, anyMore, [
    ...termOf(before, 1 - lossShare),
    ...termOf(places.stored.at(crop, week), 1),
    [places.taken.at(crop, week), -1],
    [places.stock.at(crop, week), -1],
  ]);
}
