/** Beds made, crops drilled or planted. */
import { reference } from '@leywright/agronomy';
import { dayNumber } from '@leywright/measures';
import type { Job } from '../../plan/work.ts';
import { labourHours } from '../rates.ts';
import { freeFromDay, jobOf, type StandAt } from './job.ts';

/** Below this, and under cover, work is by hand (common practice). */
const byHandBelowM2 = 1000;
const bedsBeforeDays = 7;
/** With a false seedbed beds are made two to four weeks ahead (weeding table). */
const bedsBeforeFalseSeedbedDays = 24;

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
          fromDay: Math.min(
            from - 1,
            Math.max(freeFromDay(at), from - (hasFalseSeedbed(at) ? bedsBeforeFalseSeedbedDays : bedsBeforeDays)),
          ),
          rated: labourHours(isSmall ? 'bed-by-hand' : 'bed-making', measures),
        });
  const establishment = crop?.establishment ?? 'drill';
  if (establishment === 'drill') return [beds, drill(at, from, isSmall)];
  return [beds, plant(at, from, { establishment, isSmall })];
}

function hasFalseSeedbed({ run, stand }: StandAt): boolean {
  const crop = run.input.crops.cropOf(stand.what)?.reference?.id ?? null;
  return [...reference.weeds.values()].some((row) => row.id.startsWith('stale-') && row.cropIds.includes(crop ?? ''));
}

function drill(at: StandAt, fromDay: number, isSmall: boolean): Job | null {
  const rated = labourHours(isSmall && at.measures.rowM !== undefined ? 'drill-hand' : 'drill-precision', at.measures);
  return jobOf({ kind: 'sow', stand: at, fromDay, rated, rowM: at.measures.rowM ?? null });
}

function plant(at: StandAt, fromDay: number, how: { establishment: string; isSmall: boolean }): Job | null {
  const rated = labourHours(plantingRow(at, how), at.measures);
  const job = jobOf({
    kind: 'plant',
    stand: at,
    fromDay,
    rated,
    rowM: at.measures.rowM ?? null,
    amount: at.measures.plants ?? null,
    amountUnit: 'plants',
  });
  const isRaised = how.establishment === 'module' || how.establishment === 'bare-root';
  // Sets, tubers and crowns lie ready; only raised plants are waited for.
  return job === null || isRaised ? job : { ...job, waitsFor: job.waitsFor.filter((one) => one !== 'plants-ready') };
}

function plantingRow(at: StandAt, { establishment, isSmall }: { establishment: string; isSmall: boolean }): string {
  const group = at.run.input.crops.cropOf(at.stand.what)?.reference?.rotationGroup;
  if (establishment === 'bare-root') return 'leek-dibble';
  if (establishment === 'tuber' && group === 'potato') return 'plant-potato-auto';
  if (establishment === 'set' || establishment === 'tuber') return 'set-plant';
  return isSmall || establishment === 'crown' ? 'transplant-hand' : 'transplant-machine';
}
