/** Seed, sets and tubers the year's stands need: one line a stand, and for a mixture one line a kind in it. */
import { reference } from '@leywright/agronomy';
import type { Farm } from '@leywright/book';
import { type Day, dayAt, type IsoWeek, weekOf, yearOf } from '@leywright/measures';
import { cropBookOf } from '../crops/crop-book.ts';
import type { PlacedStand } from '../plan/ground.ts';
import type { CropBook } from '../plan/inputs.ts';
import type { Plan } from '../plan/plan.ts';
import { plantsFor } from '../promise/plants.ts';
import { raisedFromDay } from '../work/jobs/raise-jobs.ts';

export interface SeedLine {
  readonly stand: string;
  /** A crop, or a cover; of a mixture each kind in it. */
  readonly what: string;
  readonly kind: 'crop' | 'cover';
  readonly variety: string | null;
  readonly course: string | null;
  /** Day it is sown, or planted as a set or tuber. */
  readonly useOn: Day;
  readonly week: IsoWeek;
  readonly isRecorded: boolean;
  /** Seeds to have, margin in it; null for what is planted by weight. */
  readonly seeds: number | null;
  /** Mass to have, margin in it; null where the mass of a seed is not known. */
  readonly massKg: number | null;
}

/** Every line of the year in focus. */
export function seedLines(farm: Farm, plan: Plan): readonly SeedLine[] {
  const crops = cropBookOf(farm);
  const margin = farm.about.conventions.seedMarginShare;
  const stands = plan.ground.flatMap((plot) => plot.stands).filter((stand) => stand.endedBy !== 'lost');
  return stands
    .flatMap((stand) => (stand.kind === 'crop' ? cropLines(stand, crops) : coverLines(stand, margin)))
    .filter((line) => yearOf(line.useOn) === plan.year)
    .toSorted((a, b) => (a.useOn < b.useOn ? -1 : a.useOn > b.useOn ? 1 : 0));
}

function cropLines(stand: PlacedStand, crops: CropBook): readonly SeedLine[] {
  const crop = crops.cropOf(stand.what);
  if (crop === null) return [];
  const raised = raisedFromDay({ stand, crop: crop.reference });
  const useOn = raised === null ? (stand.plantedOn ?? stand.sownOn ?? stand.from) : dayAt(raised);
  const { seedsWithMargin, seeds, seedKg, setKg } = plantsFor(crop, stand.areaM2);
  const margin = 1 + (crop.seedMarginShare?.value ?? 0);
  return [
    {
      ...lineOf(stand, useOn),
      what: crop.id,
      kind: 'crop',
      seeds: setKg === null ? (seedsWithMargin ?? (seeds === null ? null : seeds * margin)) : null,
      massKg: setKg ?? (seedKg === null ? null : seedKg * margin),
    },
  ];
}

/** Middle of the rate of the cover or mixture, shared among its kinds by their shares. */
function coverLines(stand: PlacedStand, marginShare: number): readonly SeedLine[] {
  const cover = reference.covers.get(stand.what);
  if (cover === undefined || cover.seedRateLowKgHa === null || cover.seedRateHighKgHa === null) return [];
  const rateKgHa = (cover.seedRateLowKgHa + cover.seedRateHighKgHa) / 2;
  const massKg = (rateKgHa * stand.areaM2 * (1 + marginShare)) / 10_000;
  const parts = cover.mixOf.length === 0 ? [{ coverId: cover.id, share: 1 }] : cover.mixOf;
  return parts.map(({ coverId, share }) => ({
    ...lineOf(stand, stand.sownOn ?? stand.from),
    what: coverId,
    kind: 'cover' as const,
    variety: cover.mixOf.length === 0 ? stand.variety : null,
    seeds: null,
    massKg: massKg * share,
  }));
}

function lineOf(stand: PlacedStand, useOn: Day) {
  return {
    stand: stand.id,
    variety: stand.variety,
    course: stand.course,
    useOn,
    week: weekOf(useOn),
    isRecorded: stand.state === 'recorded',
  };
}
