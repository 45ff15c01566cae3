/** How long a household's personal facts are kept: until a year after its last box, for questions and money still owed; then they are erased. */
import { addMonths, type Day, type FarmId } from '@leywright/measures';
import type { Household, Store } from '@leywright/store';

export const keptMonths = 12;
export const keptFor = `While the household has a box, and ${keptMonths} months after its last one.`;

/** Last day its personal facts are kept; null while it has a box, and once they are gone. */
export function keptUntil({ to, person }: Household): Day | null {
  return to === null || person === null ? null : addMonths(to, keptMonths);
}

/** Erases those of every farm here that are not needed any more. Answers how many. */
export async function eraseWhatIsOver(store: Store, today: Day, now: string): Promise<number> {
  let erased = 0;
  for (const { id } of await store.farms()) erased += await eraseOverOf(store, id, { today, now });
  return erased;
}

export function eraseOverOf(
  store: Store,
  farm: FarmId,
  { today, now }: { readonly today: Day; readonly now: string },
): Promise<number> {
  return store.households.eraseLeftBefore(farm, addMonths(today, -keptMonths), now);
}

/** Households that have a box on a day, by size; those that were erased count on. */
export function countBySize(households: readonly Household[], today: Day): Readonly<Record<string, number>> {
  const counts = new Map<string, number>();
  for (const { size, from, to } of households)
    if (from <= today && (to === null || to >= today)) counts.set(size, (counts.get(size) ?? 0) + 1);
  return Object.fromEntries(counts);
}
