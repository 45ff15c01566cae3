/** Stands out of the rows of history.csv and agreed.csv, and back into them. */
import { addDays, type Day, longestIdChars, type StandId, yearOf } from '@leywright/measures';
import { wholePlot } from '../farm/land.ts';
import type { Stand, StandKind } from '../farm/stand.ts';
import { nearest } from '../names/nearest.ts';
import type { Placed } from '../table/read-table.ts';
import { asWish, settledSpan } from '../table/span-columns.ts';
import type { BedCounts } from './land.ts';
import { freeStretch } from './lay-out.ts';
import type { StandRow } from './stand-tables.ts';

export interface StandReading {
  readonly beds: BedCounts;
  readonly kindOf: (what: string) => StandKind;
  readonly lastDayCounts: boolean;
}

type Laying = { readonly stand: Stand; readonly row: Placed<StandRow> };

/** All stands of both files, in the order of their days. */
export function standsOf(
  history: readonly Placed<StandRow>[],
  agreed: readonly Placed<StandRow>[],
  reading: StandReading,
): Stand[] {
  const taken = new Map<string, number>();
  const read = (rows: readonly Placed<StandRow>[], recorded: boolean) =>
    rows.flatMap((row) => standOf(row, { recorded, reading, taken }) ?? []);
  const laid = laidOut([...read(history, true), ...read(agreed, false)], reading.beds);
  tellHosts(laid);
  return laid.map(({ stand }) => stand).sort(byDays);
}

/** Stands stand in files and lists in the order of their days. */
export function byDays(a: Stand, b: Stand): number {
  return compare(a.from, b.from) || compare(a.id, b.id);
}

function compare(a: string, b: string): number {
  return a < b ? -1 : a > b ? 1 : 0;
}

interface StandMaking {
  readonly recorded: boolean;
  readonly reading: StandReading;
  readonly taken: Map<string, number>;
}

function standOf(row: Placed<StandRow>, { recorded, reading, taken }: StandMaking): Laying | null {
  const { span: _, plannedFrom, plannedTo, ...value } = row.value;
  const days = daysOf(row, reading.lastDayCounts);
  if (days === null) return null;
  const id = value.id ?? freeId(`${value.plot}-${value.courseYear ?? yearOf(days.from)}-${value.what}`, taken);
  const firstLine = taken.get(id);
  if (firstLine !== undefined) row.fault('id-twice', 'id', { found: id, figures: { firstLine } });
  taken.set(id, row.line);
  const planned = { ...(plannedFrom === null ? {} : { plannedFrom }), ...(plannedTo === null ? {} : { plannedTo }) };
  const state = recorded ? 'recorded' : (value.state ?? 'agreed');
  const kind = value.kind ?? reading.kindOf(value.what);
  return { row, stand: { ...value, ...days, ...planned, id, span: wholePlot, kind, state } };
}

/** First day on the ground and first free day; null, told, when no first day is given. */
function daysOf({ value, fault }: Placed<StandRow>, lastDayCounts: boolean): Pick<Stand, 'from' | 'to'> | null {
  const from = value.from ?? value.plantedOn ?? value.sownOn;
  const to = lastDayCounts ? addDays(value.to, 1) : value.to;
  if (value.sownOn !== null && value.plantedOn !== null && value.plantedOn < value.sownOn)
    fault('ends-before-start', 'planted_on', { found: value.plantedOn, figures: { from: value.sownOn } });
  if (from === null) fault('one-of', 'from', { nearest: ['from', 'planted_on', 'sown_on'] });
  else if (to <= from) fault('ends-before-start', 'to', { found: value.to, figures: { from } });
  return from === null ? null : { from, to };
}

function freeId(wanted: string, taken: ReadonlyMap<string, number>): StandId {
  const short = wanted.slice(0, longestIdChars - 4).replace(/[-._:]+$/, '');
  let id = short;
  for (let next = 2; taken.has(id); next += 1) id = `${short}-${next}`;
  return id as StandId;
}

/** Spans and beds as said; bare shares left to right beside what stands there on the same days; undersown ones on their host's ground. */
function laidOut(all: readonly Laying[], beds: BedCounts): Laying[] {
  const laid: Laying[] = [];
  const busy = new Map<string, { from: Day; to: Day; fromShare: number; toShare: number }[]>();
  const occupy = ({ plot, from, to, span, undersownIn }: Stand) => {
    if (undersownIn === null && span !== wholePlot) busy.set(plot, [...(busy.get(plot) ?? []), { from, to, ...span }]);
  };
  for (const one of all) {
    const span = settledSpan(one.row.value.span, beds.get(one.stand.plot) ?? null) ?? wholePlot;
    laid.push({ ...one, stand: { ...one.stand, span } });
    occupy(laid.at(-1)?.stand ?? one.stand);
  }
  return laid
    .map((one) => {
      const wish = one.row.value.span;
      if (wish.kind !== 'share') return one;
      const beside = (busy.get(one.stand.plot) ?? []).filter(
        (other) => other.from < one.stand.to && one.stand.from < other.to,
      );
      const span = freeStretch(wish.share, beside);
      if (span === null) wish.cell.fault('shares-over-whole', { figures: { share: wish.share } });
      const stand = { ...one.stand, span: span ?? wholePlot };
      occupy(stand);
      return { ...one, stand };
    })
    .map((one, _, others) =>
      one.row.value.span.kind === 'not-said' && one.stand.undersownIn !== null ? onHost(one, others) : one,
    );
}

function onHost(one: Laying, others: readonly Laying[]): Laying {
  const host = others.find((other) => other.stand.id === one.stand.undersownIn && other.stand.plot === one.stand.plot);
  return host === undefined ? one : { ...one, stand: { ...one.stand, span: host.stand.span } };
}

/** A host may stand in the rotation alone, so one that is in no file is only worth a look. */
function tellHosts(laid: readonly Laying[]): void {
  const ids = new Set(laid.map(({ stand }) => stand.id));
  for (const { stand, row } of laid) {
    if (stand.undersownIn === null || ids.has(stand.undersownIn)) continue;
    row.fault('unknown-name', 'undersown_in', {
      gravity: 'look',
      found: stand.undersownIn,
      nearest: nearest(stand.undersownIn, ids),
      figures: { of: 'stand' },
    });
  }
}

/** A stand as its file writes it. */
export function rowOfStand(stand: Stand, lastDayCounts: boolean): StandRow {
  const {
    id,
    succession,
    plot,
    what,
    kind,
    variety,
    sownOn,
    plantedOn,
    from,
    undersownIn,
    course,
    courseYear,
    establishedShare,
    endedBy,
    reason,
    yieldTHa,
  } = stand;
  return {
    id,
    succession,
    plot,
    what,
    kind,
    variety,
    sownOn,
    plantedOn,
    from,
    undersownIn,
    course,
    courseYear,
    establishedShare,
    endedBy,
    reason,
    yieldTHa,
    span: asWish(stand.span, undersownIn !== null),
    state: stand.state === 'recorded' ? null : stand.state,
    to: lastDayCounts ? addDays(stand.to, -1) : stand.to,
    plannedFrom: stand.plannedFrom ?? null,
    plannedTo: stand.plannedTo ?? null,
  };
}
