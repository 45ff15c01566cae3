/**
 * What the boxes ask of each crop's season: week by week, what it gives to the boxes and its part of what they go without.
 *
 * Where a slot names several crops, each is asked for what it fills in its turn. What nothing fills falls to the crop that was there last, for it
 * is that one's store or stand that did not reach; before any was there, to the first of the list that is grown at all.
 */
import type { PlannedCrop } from '../plan/inputs.ts';
import { seasonStart } from '../supply/crop-season.ts';
import type { CropFlow, Filled, SlotWeek } from '../supply/fill.ts';
import { unitKgOf } from './demand.ts';

export interface WeekAsk {
  readonly week: number;
  readonly slot: string;
  readonly units: number;
  readonly kg: number;
  readonly from: 'fresh' | 'store' | 'missing';
}

export interface SeasonAsk {
  readonly crop: PlannedCrop;
  readonly harvestYear: number;
  readonly weeks: readonly WeekAsk[];
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
  /** By crop and harvest year, `crop/year`. */
  readonly seasons: ReadonlyMap<string, SeasonAsk>;
  readonly missing: readonly Missing[];
}

export function seasonKey(crop: string, harvestYear: number): string {
  return `${crop}/${harvestYear}`;
}

export function askedOfSeasons(filled: Filled): Asked {
  const seasons = new Map<string, { crop: PlannedCrop; harvestYear: number; weeks: WeekAsk[] }>();
  const missing: Missing[] = [];
  const add = (crop: PlannedCrop, harvestYear: number, ask: WeekAsk) => {
    const key = seasonKey(crop.id, harvestYear);
    const season = seasons.get(key) ?? { crop, harvestYear, weeks: [] };
    season.weeks.push(ask);
    seasons.set(key, season);
  };
  filled.weeks.forEach((slots, week) => {
    for (const slotWeek of slots) {
      const { slot, units } = slotWeek.ask;
      for (const take of slotWeek.takes) {
        const from = take.from === 'store' ? 'store' : 'fresh';
        add(take.crop, take.harvestYear, { week, slot: slot.id, ...amount(take.crop, units * take.share, slot.unit), from });
      }
      if (slotWeek.missingShare === 0) continue;
      const whose = whoseLack(filled, slotWeek, week);
      if (whose === null) continue;
      add(whose.crop, whose.harvestYear, { week, slot: slot.id, ...amount(whose.crop, units * slotWeek.missingShare, slot.unit), from: 'missing' });
      missing.push({ week, slot: slot.id, ...whose, boxesShare: slotWeek.missingShare * slotWeek.ask.boxesShare });
    }
  });
  return { seasons, missing };
}

function amount(crop: PlannedCrop, units: number, unit: 'kg' | 'head' | 'bunch'): { units: number; kg: number } {
  return { units, kg: units * (unitKgOf(crop, unit) ?? 0) };
}

/** The crop of the slot whose season began last before the week; none has begun: the first that is grown, else the first of the list. */
function whoseLack(filled: Filled, slotWeek: SlotWeek, week: number): { crop: PlannedCrop; harvestYear: number } | null {
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
  return lot.recorded.length === 0 ? lot.window.readyFrom : Math.min(lot.window.readyFrom, ...lot.recorded.map((cut) => cut.day));
}

