/** Plants raised on the bench or in a seedbed: sown, pricked out, tended week by week, hardened off; tubers set up to sprout. */
import type { Crop } from '@leywright/agronomy';
import { dayNumber } from '@leywright/measures';
import type { PlacedStand } from '../../plan/ground.ts';
import type { Job } from '../../plan/work.ts';
import { labourHours } from '../rates.ts';
import { jobOf, type StandAt } from './job.ts';

/** Crops potted on once into a larger cell (common practice). */
const pottedOn = new Set(['tunnel-solanum', 'cucurbit']);
const pottedOnAfterDays = 14;
/** Plants in a metre of seedbed row (common practice, leeks). */
export const seedbedPlantsPerM = 60;
const chitBeforeDays = 42;

export function raiseJobs(at: StandAt): readonly (Job | null)[] {
  const { stand, run } = at;
  if (stand.kind !== 'crop') return [];
  const crop = run.input.crops.cropOf(stand.what)?.reference ?? null;
  if (crop === null) return [];
  const plantedOn = dayNumber(stand.plantedOn ?? stand.from);
  if (crop.establishment === 'tuber' && run.input.crops.cropOf(stand.what)?.reference?.rotationGroup === 'potato')
    return [chit(at, plantedOn)];
  const sownOn = raisedFromDay({ stand, crop });
  if (sownOn === null) return [];
  if (crop.establishment === 'bare-root') return [sowSeedbed(at, sownOn)];
  if (crop.establishment !== 'module') return [];
  const isPotted = pottedOn.has(crop.rotationGroup);
  return [
    sowModules(at, sownOn),
    ...(isPotted ? [prickOut(at, Math.min(sownOn + pottedOnAfterDays, plantedOn - 1))] : []),
    ...tend(at, sownOn, plantedOn),
  ];
}

/** Day its plants are sown: as said, else the middle of the table's weeks of raising before planting. Null for crops that are not raised. */
export function raisedFromDay({
  stand,
  crop,
}: {
  readonly stand: PlacedStand;
  readonly crop: Crop | null;
}): number | null {
  if (crop === null || (crop.establishment !== 'module' && crop.establishment !== 'bare-root')) return null;
  if (stand.sownOn !== null) return stand.sownOn < stand.from ? dayNumber(stand.sownOn) : null;
  const { raiseLowWeeks, raiseHighWeeks } = crop;
  if (raiseLowWeeks === null || raiseHighWeeks === null) return null;
  return dayNumber(stand.plantedOn ?? stand.from) - Math.round(((raiseLowWeeks + raiseHighWeeks) / 2) * 7);
}

function chit(at: StandAt, plantedOn: number): Job | null {
  const { setKg } = at;
  if (setKg === null) return null;
  return jobOf({
    kind: 'chit',
    stand: at,
    fromDay: plantedOn - chitBeforeDays,
    rated: isEarly(at) ? labourHours('chit-potato', { kg: setKg }) : null,
    areaM2: null,
    amount: setKg,
    amountUnit: 'kg',
  });
}

/** The table sets up only early potatoes to sprout. */
function isEarly({ run, stand }: StandAt): boolean {
  return /early/.test(run.input.crops.cropOf(stand.what)?.reference?.id ?? '');
}

function sowSeedbed(at: StandAt, sownOn: number): Job | null {
  const { plants } = at.measures;
  if (plants === undefined) return null;
  const rowM = plants / seedbedPlantsPerM;
  return jobOf({
    kind: 'sow-seedbed',
    stand: at,
    fromDay: sownOn,
    rated: labourHours('drill-hand', { rowM }),
    areaM2: null,
    rowM,
  });
}

function sowModules(at: StandAt, sownOn: number): Job | null {
  return jobOf({
    kind: 'sow-modules',
    stand: at,
    fromDay: sownOn,
    rated: labourHours('sow-modules', at.measures),
    areaM2: null,
    amount: at.measures.trays ?? null,
    amountUnit: 'trays',
  });
}

function prickOut(at: StandAt, day: number): Job | null {
  return jobOf({
    kind: 'prick-out',
    stand: at,
    fromDay: day,
    rated: labourHours('pot-on', at.measures),
    areaM2: null,
    amount: at.measures.plants ?? null,
    amountUnit: 'plants',
  });
}

/** One job a week while the plants stand on the bench; the last is to harden them off. */
function tend(at: StandAt, sownOn: number, plantedOn: number): (Job | null)[] {
  const weeks = Math.max(1, Math.round((plantedOn - sownOn) / 7));
  return Array.from({ length: weeks }, (_, week) => {
    const isLast = week === weeks - 1;
    return jobOf({
      kind: isLast ? 'harden-off' : 'tend-plants',
      stand: at,
      ...(isLast ? {} : { nth: week + 1 }),
      fromDay: isLast ? Math.max(sownOn + 1, plantedOn - 7) : sownOn + 7 * week + 1,
      rated: labourHours('care-modules', at.measures),
      areaM2: null,
      amount: at.measures.trays ?? null,
      amountUnit: 'trays',
    });
  });
}
