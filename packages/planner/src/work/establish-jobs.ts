/** Beds made, modules sown, crops drilled or planted. */
import { dayNumber } from '@leywright/measures';
import type { Job } from '../plan/work.ts';
import { jobOf, type StandAt } from './job.ts';
import { labourHours } from './rates.ts';

/** Below this, and under cover, work is by hand (common practice). */
const byHandBelowM2 = 1000;
const bedsBeforeDays = 7;

export function establishJobs(at: StandAt): readonly (Job | null)[] {
  const { stand, measures, run } = at;
  if (stand.kind !== 'crop') return [];
  const crop = run.input.crops.cropOf(stand.what)?.reference ?? null;
  const from = dayNumber(stand.plantedOn ?? stand.from);
  const isSmall = at.plot.kind === 'tunnel' || stand.areaM2 < byHandBelowM2;
  const beds =
    stand.undersownIn !== null
      ? null
      : jobOf({
          kind: 'make-beds',
          stand: at,
          fromDay: from - bedsBeforeDays,
          rated: labourHours(isSmall ? 'bed-by-hand' : 'bed-making', measures),
        });
  const establishment = crop?.establishment ?? 'drill';
  if (establishment === 'drill') return [beds, drill(at, from, isSmall)];
  return [
    beds,
    ...(establishment === 'module' && stand.sownOn !== null && stand.sownOn < stand.from
      ? [sowModules(at, dayNumber(stand.sownOn))]
      : []),
    plant(at, from, { establishment, isSmall }),
  ];
}

function drill(at: StandAt, fromDay: number, isSmall: boolean): Job | null {
  const rated = labourHours(isSmall && at.measures.rowM !== undefined ? 'drill-hand' : 'drill-precision', at.measures);
  return jobOf({ kind: 'sow', stand: at, fromDay, rated, rowM: at.measures.rowM ?? null });
}

function sowModules(at: StandAt, fromDay: number): Job | null {
  return jobOf({
    kind: 'sow-modules',
    stand: at,
    fromDay,
    rated: labourHours('sow-modules', at.measures),
    areaM2: null,
    amount: at.measures.trays ?? null,
    amountUnit: 'trays',
  });
}

function plant(at: StandAt, fromDay: number, how: { establishment: string; isSmall: boolean }): Job | null {
  const rated = labourHours(plantingRow(at, how), at.measures);
  return jobOf({
    kind: 'plant',
    stand: at,
    fromDay,
    rated,
    rowM: at.measures.rowM ?? null,
    amount: at.measures.plants ?? null,
    amountUnit: 'plants',
  });
}

function plantingRow(at: StandAt, { establishment, isSmall }: { establishment: string; isSmall: boolean }): string {
  const group = at.run.input.crops.cropOf(at.stand.what)?.reference?.rotationGroup;
  if (establishment === 'bare-root') return 'leek-dibble';
  if (establishment === 'tuber' && group === 'potato') return 'plant-potato-auto';
  if (establishment === 'set' || establishment === 'tuber') return 'set-plant';
  return isSmall || establishment === 'crown' ? 'transplant-hand' : 'transplant-machine';
}
