/** Recorded harvests: which stand each belongs to, and how many marketable kilos it was. */

import type { HarvestRecord } from '@leywright/book';
import { type Day, daysBetween } from '@leywright/measures';
import type { PlannedCrop, SupplyInput } from '../plan/inputs.ts';
import { unitKgOf } from '../promise/demand.ts';

/** Days a record may lie past the end of its stand: a crop lifted before the stand was said to have ended. */
const lateDays = 21;

/** Records by stand id; those without one are given to the stand of that crop on that plot at that time, and under null where there is none. */
export function recordsByStand(input: SupplyInput): ReadonlyMap<string | null, readonly HarvestRecord[]> {
  const stands = input.ground.flatMap((plot) => plot.stands);
  const known = new Set(stands.map((stand) => stand.id));
  const byStand = new Map<string | null, HarvestRecord[]>();
  for (const record of input.farm.harvests) {
    const stand = record.stand !== null && known.has(record.stand) ? record.stand : standAt(stands, record);
    byStand.set(stand, [...(byStand.get(stand) ?? []), record]);
  }
  return byStand;
}

function standAt(
  stands: readonly { id: string; plot: string; what: string; from: Day; to: Day }[],
  record: HarvestRecord,
): string | null {
  if (record.plot === null) return null;
  const here = stands.filter(
    (stand) => stand.plot === record.plot && stand.what === record.crop && stand.from <= record.on,
  );
  const standing = here.filter((stand) => record.on < stand.to).toSorted((a, b) => (a.from < b.from ? 1 : -1));
  const ended = here.filter((stand) => record.on >= stand.to && daysLate(stand.to, record.on) <= lateDays);
  return (standing[0] ?? ended.toSorted((a, b) => (a.to < b.to ? 1 : -1))[0])?.id ?? null;
}

function daysLate(to: Day, on: Day): number {
  return daysBetween(to, on);
}

/** Marketable kilos of a record: what was weighed or counted, less what was graded out (the farm's usual share where the record is silent). */
export function recordedKg(record: HarvestRecord, crop: PlannedCrop): number {
  const gross = record.grossKg ?? (record.count ?? 0) * (unitKgOf(crop, record.unit) ?? 0);
  return gross * (1 - (record.gradedOutShare ?? crop.gradingLossShare?.value ?? 0));
}
