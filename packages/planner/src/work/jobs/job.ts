/** One way to make a job, so that ids, weeks and what is done are alike for all. */
import type { JobKind, OwnJob } from '@leywright/book';
import { dayAt, dayNumber, weekOf } from '@leywright/measures';
import type { PlacedStand, PlotGround } from '../../plan/ground.ts';
import type { Job } from '../../plan/work.ts';
import { plantsFor } from '../../promise/plants.ts';
import type { SupplyRun } from '../../supply/supply-run.ts';
import { husbandry } from '../husbandry.ts';
import { onlyWhenSaid, ownWay } from '../own-ways.ts';
import { isMachineWork, type Measures, type Rated } from '../rates.ts';

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
  /** Where its window is not the usual one of its kind. */
  readonly window?: { readonly fromDay: number; readonly toDay: number };
  /** For jobs without a stand. */
  readonly run?: SupplyRun;
}

/** A stand on its plot, with what its jobs are measured by. */
export interface StandAt {
  readonly run: SupplyRun;
  readonly plot: PlotGround;
  readonly stand: PlacedStand;
  readonly measures: Measures;
  /** Tubers or sets it is planted with. */
  readonly setKg: number | null;
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
    setKg: plants?.setKg ?? null,
    measures: {
      areaM2: stand.areaM2,
      bedM: stand.areaM2 / bedCentresM,
      ...(plants?.rowM == null ? {} : { rowM: plants.rowM }),
      ...(plants?.stations == null ? {} : { plants: plants.stations }),
      ...(plants?.trays == null ? {} : { trays: plants.trays }),
    },
  };
}

/** Null when it has no hours, or when this farm does not do it: nothing is said about work that cannot be reckoned. */
export function jobOf(pieces: JobPieces): Job | null {
  const { kind, nth } = pieces;
  const own = ownOf(pieces);
  const rated = ownRate(pieces, own) ?? pieces.rated;
  if (rated === null || rated.basis === hourlessBasis) return null;
  if (own === null ? onlyWhenSaid.includes(kind) : !own.done) return null;
  const from = dayAt(pieces.fromDay);
  const where = placeOf(pieces);
  const { waitsFor, tools, skill } = husbandry[kind];
  return {
    id: [kind, where.stand ?? 'farm', ...(nth === undefined ? [] : [nth])].join('/'),
    kind,
    ...where,
    from,
    to: dayAt(pieces.toDay ?? pieces.fromDay),
    window: windowOf(pieces, own),
    week: weekOf(from),
    rowM: pieces.rowM ?? null,
    amount: pieces.amount ?? null,
    amountUnit: pieces.amountUnit ?? null,
    hours: rated.hours,
    basis: rated.basis,
    doneShare: 0,
    caution: pieces.caution ?? cautionOf(rated.basis),
    tools,
    skill: skill ?? (needsTractor(rated.basis, kind) ? 'tractor' : null),
    after: [],
    waitsFor,
  };
}

/** How this farm does the job, if it says so. */
export function ownOf({ kind, stand, run }: Pick<JobPieces, 'kind' | 'stand' | 'run'>): OwnJob | null {
  const input = stand?.run.input ?? run?.input;
  if (input === undefined) return null;
  const plant = stand == null ? null : { what: stand.stand.what, crops: input.crops };
  return ownWay(input.farm, kind, plant);
}

function ownRate({ kind, stand }: JobPieces, own: OwnJob | null): Rated | null {
  if (own === null || own.hoursPerHa === null || stand == null) return null;
  const hours = (own.hoursPerHa * stand.stand.areaM2) / 10_000;
  return { hours: { low: hours, typ: hours, high: hours }, basis: `jobs.csv/${own.what ?? 'all'}/${kind}` };
}

/** Days it may be done in: as usual for its kind, not before the ground is free, and in the field not after its stand is off. */
function windowOf(pieces: JobPieces, own: OwnJob | null): Job['window'] {
  if (pieces.window !== undefined) return { from: dayAt(pieces.window.fromDay), to: dayAt(pieces.window.toDay) };
  const { earlyDays, lateDays } = husbandry[pieces.kind];
  const early = pieces.fromDay - earlyDays;
  const last = pieces.toDay ?? pieces.fromDay;
  const late = Math.max(last, pieces.fromDay + (own?.windowDays ?? lateDays));
  const off = pieces.stand == null ? late : Math.max(last, dayNumber(pieces.stand.stand.to) - 1);
  const freeDay = pieces.stand == null ? early : freeFromDay(pieces.stand);
  return { from: dayAt(Math.min(pieces.fromDay, Math.max(early, freeDay))), to: dayAt(Math.min(late, off)) };
}

/** First day on which nothing that stood before is left on this ground. */
export function freeFromDay({ plot, stand }: StandAt): number {
  const before = plot.stands.filter(
    (one) =>
      one.id !== stand.id &&
      one.id !== stand.undersownIn &&
      one.to <= stand.from &&
      one.span.fromShare < stand.span.toShare &&
      one.span.toShare > stand.span.fromShare,
  );
  return Math.max(Number.NEGATIVE_INFINITY, ...before.map((one) => dayNumber(one.to)));
}

/** Beds, drills and modules made under cover ask for no tractor; the rest by the labour and weeding tables. */
function needsTractor(basis: string, kind: JobKind): boolean {
  const [table, row = ''] = basis.split('/');
  if (table === 'weeds') return kind !== 'hand-weed';
  return table === 'labour' && isMachineWork(row);
}

/** Where a job is: on its stand's ground, or on the farm as a whole. */
function placeOf({
  stand,
  name,
  areaM2,
}: JobPieces): Pick<Job, 'plot' | 'letter' | 'stand' | 'crop' | 'course' | 'name' | 'areaM2'> {
  if (stand === undefined || stand === null) {
    return {
      plot: null,
      letter: null,
      stand: null,
      crop: null,
      course: null,
      name: name ?? '',
      areaM2: areaM2 ?? null,
    };
  }
  const { plot, stand: placed } = stand;
  return {
    plot: plot.plot,
    letter: plot.letter,
    stand: placed.id,
    crop: placed.kind === 'crop' ? placed.what : null,
    course: placed.course,
    name: name ?? placed.name,
    areaM2: areaM2 === undefined ? placed.areaM2 : areaM2,
  };
}

function cautionOf(basis: string): string | null {
  const [table, row = ''] = basis.split('/');
  if (table === 'weeds') return row.startsWith('flame') ? 'open flame' : null;
  return table === 'labour' && isMachineWork(row) ? 'machinery' : null;
}
