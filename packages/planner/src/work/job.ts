/** One way to make a job, so that ids, weeks and what is done are alike for all. */
import { dayAt, weekOf } from '@leywright/measures';
import type { PlacedStand, PlotGround } from '../plan/ground.ts';
import type { Job, JobKind } from '../plan/work.ts';
import { plantsFor } from '../promise/plants.ts';
import type { SupplyRun } from '../supply/supply-run.ts';
import { isMachineWork, type Measures, type Rated } from './rates.ts';

export interface JobPieces {
  readonly kind: JobKind;
  /** Tells jobs of one kind on one stand apart: the pass, the cut, the week. */
  readonly nth?: string | number;
  readonly fromDay: number;
  readonly toDay?: number;
  readonly rated: Rated | null;
  readonly stand?: StandAt | null;
  readonly name?: string;
  readonly areaM2?: number | null;
  readonly rowM?: number | null;
  readonly amount?: number | null;
  readonly amountUnit?: Job['amountUnit'];
  readonly caution?: string | null;
}

/** A stand on its plot, with what its jobs are measured by. */
export interface StandAt {
  readonly run: SupplyRun;
  readonly plot: PlotGround;
  readonly stand: PlacedStand;
  readonly measures: Measures;
}

const hourlessBasis = 'unknown';
const usualBedM = 1.8;

export function standAt(run: SupplyRun, plot: PlotGround, stand: PlacedStand): StandAt {
  const crop = stand.kind === 'crop' ? run.input.crops.cropOf(stand.what) : null;
  const bedCentresM =
    crop?.bedCentresM?.value ?? run.input.farm.plots.find((one) => one.id === plot.plot)?.bedCentresM ?? usualBedM;
  const plants = crop === null ? null : plantsFor(crop, stand.areaM2);
  return {
    run,
    plot,
    stand,
    measures: {
      areaM2: stand.areaM2,
      bedM: stand.areaM2 / bedCentresM,
      ...(plants?.rowM == null ? {} : { rowM: plants.rowM }),
      ...(plants?.stations == null ? {} : { plants: plants.stations }),
      ...(plants?.trays == null ? {} : { trays: plants.trays }),
    },
  };
}

/** Null when it has no hours: nothing is said about work that cannot be reckoned. */
export function jobOf(pieces: JobPieces): Job | null {
  const { kind, rated, nth } = pieces;
  if (rated === null || rated.basis === hourlessBasis) return null;
  const from = dayAt(pieces.fromDay);
  const where = placeOf(pieces);
  return {
    id: [kind, where.stand ?? 'farm', ...(nth === undefined ? [] : [nth])].join('/'),
    kind,
    ...where,
    from,
    to: dayAt(pieces.toDay ?? pieces.fromDay),
    week: weekOf(from),
    rowM: pieces.rowM ?? null,
    amount: pieces.amount ?? null,
    amountUnit: pieces.amountUnit ?? null,
    hours: rated.hours,
    basis: rated.basis,
    doneShare: 0,
    caution: pieces.caution ?? cautionOf(rated.basis),
  };
}

/** Where a job is: on its stand's ground, or on the farm as a whole. */
function placeOf({
  stand,
  name,
  areaM2,
}: JobPieces): Pick<Job, 'plot' | 'letter' | 'stand' | 'crop' | 'name' | 'areaM2'> {
  if (stand === undefined || stand === null) {
    return { plot: null, letter: null, stand: null, crop: null, name: name ?? '', areaM2: areaM2 ?? null };
  }
  const { plot, stand: placed } = stand;
  return {
    plot: plot.plot,
    letter: plot.letter,
    stand: placed.id,
    crop: placed.kind === 'crop' ? placed.what : null,
    name: name ?? placed.name,
    areaM2: areaM2 === undefined ? placed.areaM2 : areaM2,
  };
}

function cautionOf(basis: string): string | null {
  const [table, row = ''] = basis.split('/');
  if (table === 'weeds') return row.startsWith('flame') ? 'open flame' : null;
  return table === 'labour' && isMachineWork(row) ? 'machinery' : null;
}
