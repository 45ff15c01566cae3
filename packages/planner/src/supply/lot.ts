/**
 * A lot: what one stand gives in one harvest, before anybody has cut it. Kilos become ready week by week, stand for a while, and are cut into a
 * box or a store, or are not cut at all. Recorded harvests take the place of what was expected.
 */

import type { HarvestRecord } from '@leywright/book';
import { dayNumber } from '@leywright/measures';
import type { PlacedStand, PlotGround } from '../plan/ground.ts';
import type { PlannedCrop, SupplyInput } from '../plan/inputs.ts';
import { harvestYearOf } from './crop-season.ts';
import { expectedKg, type KgRange } from './expected.ts';
import { type HarvestWindow, harvestWindows } from './harvest-window.ts';
import { recordedKg, recordsByStand } from './recorded.ts';
import type { WeekAxis } from './week-axis.ts';

export type Bounds = 'low' | 'typ' | 'high';

export interface RecordedCut {
  readonly day: number;
  readonly week: number;
  readonly kg: number;
  readonly into: HarvestRecord['into'];
}

export interface Lot {
  readonly stand: string;
  readonly crop: PlannedCrop;
  readonly plot: string;
  readonly under: 'field' | 'tunnel';
  /** Year in which its harvest season begins. */
  readonly harvestYear: number;
  readonly window: HarvestWindow;
  readonly areaM2: number;
  /** Marketable kilos in all: recorded plus still expected. */
  readonly kg: KgRange;
  /** Still expected, to become ready in the weeks of `readyShare`. */
  readonly toComeKg: KgRange;
  readonly recordedKg: number | null;
  readonly recorded: readonly RecordedCut[];
  readonly basis: 'own' | 'reference' | 'recorded' | 'unknown';
  /** Share of `toComeKg` that becomes ready, from `readyWeek` on; less than one in all where the stand ends first. */
  readonly readyWeek: number;
  readonly readyShare: readonly number[];
  readonly standingWeeks: number;
  /** Last week in which it can be cut. */
  readonly lastWeek: number;
  /** Weeks outside of which nothing happens to it. */
  readonly aliveFromWeek: number;
  readonly aliveToWeek: number;
}

/** All lots of the ground whose harvest touches the axis, and recorded harvests that belong to no stand. */
export function lotsOf(input: SupplyInput, axis: WeekAxis): readonly Lot[] {
  const records = recordsByStand(input);
  const ownYields = new Map(
    input.farm.stands.flatMap((stand) =>
      stand.yieldTHa === null ? [] : [[stand.id as string, stand.yieldTHa] as const],
    ),
  );
  const lots = input.ground.flatMap((plot) =>
    plot.stands.flatMap((stand) => lotsOfStand({ input, axis, plot, stand, ownYields }, records.get(stand.id) ?? [])),
  );
  const orphans = records.get(null) ?? [];
  return [...lots, ...orphans.flatMap((record) => orphanLot(input, axis, record))];
}

interface StandPlace {
  readonly input: SupplyInput;
  readonly axis: WeekAxis;
  readonly plot: PlotGround;
  readonly stand: PlacedStand;
  readonly ownYields: ReadonlyMap<string, number>;
}

function lotsOfStand(place: StandPlace, records: readonly HarvestRecord[]): readonly Lot[] {
  const { input, axis, plot, stand } = place;
  if (stand.kind !== 'crop' || dayNumber(stand.to) <= axis.firstDay || dayNumber(stand.from) >= axis.endDay) return [];
  const crop = input.crops.cropOf(stand.what);
  if (crop === null) return [];
  const windows = harvestWindows(stand, crop.reference, input.climate, plot.kind === 'tunnel');
  return windows.flatMap((window, at) => {
    if (window.standsUntil < axis.firstDay || window.readyFromDay >= axis.endDay) return [];
    const own = records.filter((record) => windows.length === 1 || at === nearestWindow(windows, dayNumber(record.on)));
    return [lotOf(place, { crop, window, records: own })];
  });
}

function lotOf(
  place: StandPlace,
  harvest: { crop: PlannedCrop; window: HarvestWindow; records: readonly HarvestRecord[] },
): Lot {
  const { input, axis, plot, stand } = place;
  const { crop, window, records } = harvest;
  const today = dayNumber(input.today);
  const expected = expectedKg(place.ownYields, stand, crop);
  const cut = records.map((record) => ({
    day: dayNumber(record.on),
    week: axis.weekOf(dayNumber(record.on)),
    kg: recordedKg(record, crop),
    into: record.into,
  }));
  const cutKg = records.length === 0 ? null : cut.reduce((sum, one) => sum + one.kg, 0);
  const isClosed = stand.endedBy !== null || dayNumber(stand.to) <= today;
  const toComeKg = stillToCome(expected.kg, cutKg, isClosed);
  return {
    stand: stand.id,
    crop,
    plot: stand.plot,
    under: plot.kind === 'tunnel' ? 'tunnel' : 'field',
    window,
    areaM2: stand.areaM2,
    harvestYear: harvestYearOf(crop, window.readyFromDay),
    kg: plus(toComeKg, cutKg ?? 0),
    toComeKg,
    recordedKg: cutKg,
    recorded: cut,
    basis: cutKg === null ? expected.basis : 'recorded',
    ...alive(cut, readyWeeks(axis, window, { end: dayNumber(stand.to), notBefore: cutKg === null ? null : today })),
  };
}

interface ReadyWeeks {
  readonly readyWeek: number;
  readonly readyShare: readonly number[];
  readonly standingWeeks: number;
  readonly lastWeek: number;
}

function alive(
  cut: readonly RecordedCut[],
  ready: ReadyWeeks,
): ReadyWeeks & Pick<Lot, 'aliveFromWeek' | 'aliveToWeek'> {
  const weeks = cut.map((one) => one.week);
  return {
    ...ready,
    aliveFromWeek: Math.min(ready.readyWeek, ...weeks),
    aliveToWeek: Math.max(ready.readyWeek + ready.readyShare.length + ready.standingWeeks, ...weeks),
  };
}

/** A closed stand gave what was recorded; an open one still has the rest of what was expected. */
function stillToCome(expected: KgRange, cutKg: number | null, isClosed: boolean): KgRange {
  if (cutKg === null) return expected;
  if (isClosed) return { low: 0, typ: 0, high: 0 };
  return {
    low: Math.max(0, expected.low - cutKg),
    typ: Math.max(0, expected.typ - cutKg),
    high: Math.max(0, expected.high - cutKg),
  };
}

/** Kilos ripen evenly over the days of the window; what would ripen after the stand's end is left out of the shares. */
function readyWeeks(
  axis: WeekAxis,
  window: HarvestWindow,
  limits: { end: number; notBefore: number | null },
): ReadyWeeks {
  const from = Math.max(window.readyFromDay, limits.notBefore ?? window.readyFromDay);
  const to = Math.max(window.readyToDay, from + 1);
  const until = Math.min(to, limits.end);
  const readyWeek = axis.weekOf(from);
  const readyShare: number[] = [];
  for (let week = readyWeek; axis.dayOf(week) < until; week += 1) {
    const days = Math.min(until, axis.dayOf(week + 1)) - Math.max(from, axis.dayOf(week));
    readyShare.push(days / (to - from));
  }
  const standingWeeks = Math.max(0, Math.floor((window.standsUntil - window.readyToDay) / 7));
  return { readyWeek, readyShare, standingWeeks, lastWeek: axis.weekOf(limits.end - 1) };
}

function orphanLot(input: SupplyInput, axis: WeekAxis, record: HarvestRecord): readonly Lot[] {
  const crop = input.crops.cropOf(record.crop);
  const on = dayNumber(record.on);
  if (crop === null || on < axis.firstDay || on >= axis.endDay) return [];
  const kg = recordedKg(record, crop);
  const none = { low: 0, typ: 0, high: 0 };
  const plot = input.ground.find((one) => one.plot === record.plot);
  return [
    {
      stand: `record/${record.entry}`,
      crop,
      plot: record.plot ?? '',
      under: plot?.kind === 'tunnel' ? 'tunnel' : 'field',
      areaM2: 0,
      window: { readyFromDay: on, readyToDay: on + 1, standsUntil: on + 1, by: 'stand-end' },
      harvestYear: harvestYearOf(crop, on),
      kg: plus(none, kg),
      toComeKg: none,
      recordedKg: kg,
      recorded: [{ day: on, week: axis.weekOf(on), kg, into: record.into }],
      basis: 'recorded',
      ...alive([], { readyWeek: axis.weekOf(on), readyShare: [], standingWeeks: 0, lastWeek: axis.weekOf(on) }),
    },
  ];
}

function nearestWindow(windows: readonly HarvestWindow[], day: number): number {
  const distance = (window: HarvestWindow) => Math.max(window.readyFromDay - day, day - window.standsUntil, 0);
  return windows.reduce((best, window, at) => (distance(window) < distance(windows[best] ?? window) ? at : best), 0);
}

function plus(kg: KgRange, more: number): KgRange {
  return { low: kg.low + more, typ: kg.typ + more, high: kg.high + more };
}
