/**
 * What the boxes ask of each crop: week by week, what it gives to the boxes and its part of what they go without.
 *
 * Where a slot names several crops, each is asked for what it fills in its turn. What nothing fills falls to the crop that was there last, for it
 * is that one's store or stand that did not reach; before any was there, to the first of the list that is grown at all.
 */
import { yearOf } from '@leywright/measures';
import type { PlannedCrop } from '../plan/inputs.ts';
import { seasonStart } from '../supply/crop-season.ts';
import type { CropFlow, Filled, SlotWeek } from '../supply/fill.ts';
import { windowStartOf } from './box-weeks.ts';
import { unitKgOf } from './demand.ts';

export interface WeekAsk {
  readonly week: number;
  readonly slot: string;
  readonly units: number;
  readonly kg: number;
  readonly from: 'fresh' | 'store' | 'missing';
  /** Season it is, or would have been, harvested in. */
  readonly harvestYear: number;
  /** Year in which this run of the slot's window began: its box year. */
  readonly boxYear: number;
}

/** The part of a slot's week that went without, and whose it was. */
export interface Missing {
  readonly week: number;
  readonly slot: string;
  readonly crop: PlannedCrop;
  readonly harvestYear: number;
  /** Share of all boxes. */
  readonly boxesShare: number;
}

export interface Asked {
  readonly byCrop: ReadonlyMap<string, readonly WeekAsk[]>;
  readonly missing: readonly Missing[];
}

export function askedOfCrops(filled: Filled): Asked {
  const byCrop = new Map<string, WeekAsk[]>();
  const missing: Missing[] = [];
  filled.weeks.forEach((slots, week) => {
    for (const slotWeek of slots) {
      const { ask, missingShare } = slotWeek;
      const whose = missingShare === 0 ? null : whoseLack(filled, slotWeek, week);
      for (const part of partsOf(slotWeek, whose)) {
        const asks = byCrop.get(part.crop.id) ?? [];
        asks.push(weekAsk(filled, slotWeek, week, part));
        byCrop.set(part.crop.id, asks);
      }
      if (whose !== null) {
        missing.push({ week, slot: ask.slot.id, ...whose, boxesShare: missingShare * ask.boxesShare });
      }
    }
  });
  return { byCrop, missing };
}

interface AskPart {
  readonly crop: PlannedCrop;
  readonly harvestYear: number;
  readonly share: number;
  readonly from: WeekAsk['from'];
}

/** What filled the slot that week, and what nothing filled, as one list. */
function partsOf(slotWeek: SlotWeek, whose: Pick<AskPart, 'crop' | 'harvestYear'> | null): readonly AskPart[] {
  const taken = slotWeek.takes.map((take): AskPart => ({ ...take, from: take.from === 'store' ? 'store' : 'fresh' }));
  return whose === null ? taken : [...taken, { ...whose, share: slotWeek.missingShare, from: 'missing' }];
}

function weekAsk(filled: Filled, slotWeek: SlotWeek, week: number, part: AskPart): WeekAsk {
  const { slot, units } = slotWeek.ask;
  return {
    week,
    slot: slot.id,
    units: units * part.share,
    kg: units * part.share * (unitKgOf(part.crop, slot.unit) ?? 0),
    from: part.from,
    harvestYear: part.harvestYear,
    boxYear: boxYearOf(filled, slotWeek, week),
  };
}

function boxYearOf(filled: Filled, { ask }: SlotWeek, week: number): number {
  const day = filled.calendar[week]?.usualDay;
  const start = day === undefined ? null : windowStartOf(ask.slot.window, day);
  return start === null ? Number(filled.axis.nameOf(week).slice(0, 4)) : yearOf(start);
}

/** The crop of the slot whose season began last before the week; none has begun: the first that is grown, else the first of the list. */
function whoseLack(
  filled: Filled,
  slotWeek: SlotWeek,
  week: number,
): { crop: PlannedCrop; harvestYear: number } | null {
  const flows = slotWeek.ask.slot.crops.flatMap((id) => filled.flows.get(id) ?? []);
  const grown = flows.filter((flow) => flow.lots.length > 0);
  const day = filled.axis.dayOf(week) + 6;
  const candidates = (grown.length > 0 ? grown : flows).map((flow) => ({ flow, ...seasonAt(filled, flow, day) }));
  const begun = candidates.toSorted((a, b) => b.start - a.start)[0];
  return begun === undefined ? null : { crop: begun.flow.crop, harvestYear: begun.harvestYear };
}

/** The season a day falls into: the last whose harvest has begun, by the stands there are, else by the table. */
function seasonAt(filled: Filled, flow: CropFlow, day: number): { harvestYear: number; start: number } {
  const first = Number(filled.axis.nameOf(0).slice(0, 4)) - 1;
  let found = { harvestYear: first, start: seasonStart(flow.crop, first) };
  for (let year = first + 1; year <= first + 4; year += 1) {
    const start = startOfSeason(flow, year);
    if (start <= day && start >= found.start) found = { harvestYear: year, start };
  }
  return found;
}

function startOfSeason(flow: CropFlow, year: number): number {
  const own = flow.lots.filter((lot) => lot.lot.harvestYear === year).map((lot) => firstDay(lot.lot));
  return own.length === 0 ? seasonStart(flow.crop, year) : Math.min(...own);
}

function firstDay(lot: CropFlow['lots'][number]['lot']): number {
  return lot.recorded.length === 0
    ? lot.window.readyFromDay
    : Math.min(lot.window.readyFromDay, ...lot.recorded.map((cut) => cut.day));
}
