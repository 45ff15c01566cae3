/** Entries about what stands on the ground: sown, planted, taken, ended. */
import { addDays, type Day, daysBetween, type StandId } from '@leywright/measures';
import type { EntryBody } from '../entry/entry.ts';
import type { Span } from '../farm/land.ts';
import type { Stand } from '../farm/stand.ts';
import type { InForce } from './amendments.ts';
import { type Draft, putStand, standsOn, tableOf } from './draft.ts';
import { bookFinding } from './findings.ts';
import { standByRotation } from './rotation-stand.ts';

export type Growing = Extract<EntryBody, { kind: 'sowing' | 'planting' | 'stand-ended' | 'establishment' }>;
type Starting = Extract<Growing, { kind: 'sowing' | 'planting' }>;

export function grow(draft: Draft, body: Growing, record: InForce): void {
  switch (body.kind) {
    case 'sowing':
    case 'planting':
      start(draft, body, record);
      return;
    case 'stand-ended':
      end(draft, body, record);
      return;
    case 'establishment': {
      const stand = standNamed(draft, body.stand);
      if (stand === null) tellNoStand(draft, record, { stand: body.stand });
      else putStand(draft, { ...stand, establishedShare: body.establishedShare });
    }
  }
}

/** An explicit stand, or the one the rotation proposes under that id. */
export function standNamed(draft: Draft, id: string): Stand | null {
  return tableOf(draft, 'stands').get(id) ?? standByRotation(draft, id);
}

function start(draft: Draft, body: Starting, record: InForce): void {
  const id = body.stand ?? `sown-${record.root.id}`;
  const stand = standNamed(draft, id);
  if (!tableOf(draft, 'plots').has(body.plot))
    draft.findings.push(
      bookFinding('record-without-plot', [record.entry.id], {
        plot: body.plot,
        stand: body.stand,
        figures: { what: body.what },
      }),
    );
  else if (stand !== null) putStand(draft, started(stand, body, record.entry.doneOn));
  else startNew(draft, id as StandId, { body, record });
}

/** A planned stand as it was really sown or planted. What was planned is kept beside it, and its end moves along. */
function started(stand: Stand, body: Starting, doneOn: Day): Stand {
  const said = {
    ...stand,
    plot: body.plot as Stand['plot'],
    span: body.span,
    what: body.what,
    variety: body.variety ?? stand.variety,
    ...(body.kind === 'sowing'
      ? { kind: body.standKind, sownOn: doneOn, undersownIn: (body.undersownIn as StandId | null) ?? stand.undersownIn }
      : { plantedOn: doneOn }),
  };
  // Sown in modules: it takes its ground on the day it is planted out.
  if (body.kind === 'sowing' && stand.plantedOn !== null) return said;
  const wasPlanned = stand.state !== 'recorded' && stand.plannedFrom === undefined;
  const movedTo = body.expectedTo ?? addDays(stand.to, daysBetween(stand.from, doneOn));
  return {
    ...said,
    state: 'recorded',
    from: doneOn,
    to: movedTo > doneOn ? movedTo : addDays(doneOn, 1),
    ...(wasPlanned ? { plannedFrom: stand.from, plannedTo: stand.to } : {}),
  };
}

/** Half a year: long enough to be looked at. */
const assumedDays = 182;

function startNew(
  draft: Draft,
  id: StandId,
  { body, record }: { readonly body: Starting; readonly record: InForce },
): void {
  const { doneOn } = record.entry;
  const host = body.kind === 'sowing' ? body.undersownIn : null;
  const blocking = standingOn(draft, body, doneOn, host);
  if (blocking !== null) {
    tellNoStand(draft, record, { stand: body.stand, plot: body.plot, what: body.what, standingThere: blocking.id });
    return;
  }
  const to = body.expectedTo !== null && body.expectedTo > doneOn ? body.expectedTo : addDays(doneOn, assumedDays);
  if (body.expectedTo === null)
    draft.findings.push(
      bookFinding('stand-end-assumed', [record.entry.id], {
        plot: body.plot,
        stand: id,
        figures: { what: body.what, to },
      }),
    );
  putStand(draft, {
    id,
    succession: null,
    plot: body.plot as Stand['plot'],
    span: body.span,
    what: body.what,
    kind: body.kind === 'sowing' ? body.standKind : 'crop',
    variety: body.variety,
    state: 'recorded',
    sownOn: body.kind === 'sowing' ? doneOn : null,
    plantedOn: body.kind === 'planting' ? doneOn : null,
    from: doneOn,
    to,
    undersownIn: host as StandId | null,
    course: null,
    courseYear: null,
    establishedShare: null,
    endedBy: null,
    reason: null,
    yieldTHa: null,
  });
}

/** A recorded stand on that ground on that day, other than the host. Planned ones give way to what was really done. */
function standingOn(draft: Draft, body: Starting, day: Day, host: string | null): Stand | null {
  for (const stand of standsOn(draft, body.plot).values()) {
    if (stand.to <= day || day < stand.from || stand.state !== 'recorded' || stand.id === host) continue;
    if (overlap(stand.span, body.span)) return stand;
  }
  return null;
}

/** Edges that only touch share no ground; a hair's breadth is rounding. */
function overlap(a: Span, b: Span): boolean {
  return a.fromShare < b.toShare - 1e-9 && b.fromShare < a.toShare - 1e-9;
}

function end(draft: Draft, body: Extract<Growing, { kind: 'stand-ended' }>, record: InForce): void {
  const stand = standNamed(draft, body.stand);
  const { doneOn } = record.entry;
  if (stand === null) {
    tellNoStand(draft, record, { stand: body.stand });
    return;
  }
  const to = doneOn > stand.from ? doneOn : addDays(stand.from, 1);
  const planned = to === stand.to || stand.plannedTo !== undefined ? {} : { plannedTo: stand.to };
  putStand(draft, { ...stand, state: 'recorded', to, endedBy: body.by, ...planned });
}

function tellNoStand(
  draft: Draft,
  record: InForce,
  about: {
    readonly stand: string | null;
    readonly plot?: string;
    readonly what?: string;
    readonly standingThere?: string;
  },
): void {
  const figures = { on: record.entry.doneOn, what: about.what ?? null, standingThere: about.standingThere ?? null };
  draft.findings.push(
    bookFinding('record-without-stand', [record.entry.id], { plot: about.plot ?? null, stand: about.stand, figures }),
  );
}
