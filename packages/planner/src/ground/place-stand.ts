/** A stand as the plan shows it: with its area, harvest, look and weekly cover. */

import type { HarvestRecord } from '@leywright/book';
import { type Day, dayAt } from '@leywright/measures';
import { type StandCover, weeklyCover } from '../cover/stand-cover.ts';
import { standLook } from '../crops/plant.ts';
import type { PlacedStand } from '../plan/ground.ts';
import type { ClimateDays } from '../plan/inputs.ts';
import { harvestWindows } from '../supply/harvest-window.ts';
import type { GroundStand } from './ground-stand.ts';
import { widthOf } from './history.ts';

export interface HarvestDays {
  readonly fromDay: number;
  readonly toDay: number;
}

/** First and last day of harvest: as recorded, else as the crop ripens here. Null for covers, leys, and crops that failed. */
export function harvestDaysOf(one: GroundStand, climate: ClimateDays, isTunnel: boolean): HarvestDays | null {
  if (one.stand.kind !== 'crop' || one.stand.endedBy === 'failed' || one.stand.endedBy === 'lost') return null;
  const windows = harvestWindows(one.stand, one.plant.crop, climate, isTunnel);
  const first = windows[0];
  const last = windows.at(-1);
  if (first === undefined || last === undefined) return null;
  const fromDay = Math.min(Math.max(first.readyFromDay, one.fromDay), one.toDay - 1);
  return { fromDay, toDay: Math.max(fromDay, Math.min(last.standsUntil, one.toDay) - 1) };
}

export interface RecordedHarvest {
  readonly from: Day;
  readonly to: Day;
  /** Kilos after grading out; null when one was counted, not weighed. */
  readonly kg: number | null;
}

/** First and last recorded harvest of each stand, and the kilos. */
export function recordedHarvests(harvests: readonly HarvestRecord[]): ReadonlyMap<string, RecordedHarvest> {
  const byStand = new Map<string, RecordedHarvest>();
  for (const { stand, on, grossKg, gradedOutShare } of harvests) {
    if (stand === null) continue;
    const kg = grossKg === null ? null : grossKg * (1 - (gradedOutShare ?? 0));
    const known = byStand.get(stand);
    byStand.set(stand, known === undefined ? { from: on, to: on, kg } : together(known, { from: on, to: on, kg }));
  }
  return byStand;
}

function together(a: RecordedHarvest, b: RecordedHarvest): RecordedHarvest {
  const [from = a.from, , , to = a.to] = [a.from, b.from, a.to, b.to].toSorted();
  return { from, to, kg: a.kg === null || b.kg === null ? null : a.kg + b.kg };
}

export interface StandPlace {
  readonly netM2: number;
  readonly planFirstDay: number;
  readonly cover: StandCover;
  readonly harvest: HarvestDays | null;
  readonly recorded: { readonly from: Day; readonly to: Day } | undefined;
}

export function placedStand(one: GroundStand, at: StandPlace): PlacedStand {
  const { stand, plant } = one;
  return {
    id: stand.id,
    succession: stand.succession,
    plot: stand.plot,
    span: stand.span,
    areaM2: at.netM2 * widthOf(stand.span),
    what: stand.what,
    kind: stand.kind,
    look: standLook(plant, stand.kind, stand.undersownIn !== null),
    family: plant.family,
    name: plant.name,
    variety: stand.variety,
    state: stand.state,
    origin: one.origin,
    from: stand.from,
    to: stand.to,
    sownOn: stand.sownOn,
    plantedOn: stand.plantedOn,
    harvestFrom: at.recorded?.from ?? (at.harvest === null ? null : dayAt(at.harvest.fromDay)),
    harvestTo: lastHarvest(one, at),
    driftDays: one.driftDays,
    undersownIn: stand.undersownIn,
    course: stand.course,
    courseYear: stand.courseYear,
    endedBy: stand.endedBy,
    establishedShare: stand.establishedShare,
    reason: stand.reason,
    ...weeklyCover(at.cover, at.planFirstDay),
    coverBasis: at.cover.basis,
  };
}

/** Recorded harvests close a stand only when it has ended; one still standing is cut on. */
function lastHarvest(one: GroundStand, at: StandPlace): Day | null {
  const expected = at.harvest === null ? null : dayAt(at.harvest.toDay);
  if (at.recorded === undefined) return expected;
  if (one.stand.endedBy !== null || expected === null) return at.recorded.to;
  return [expected, at.recorded.to].toSorted().at(-1) ?? expected;
}
