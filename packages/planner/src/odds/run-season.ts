/**
 * Runs one drawn year through lots, stores and boxes: the rules of `supply/fill.ts` on plain arrays, without its ledger.
 *
 * Rule    a season is not seen ahead: each week's boxes are filled from what is ready then, in the same order as the plan fills them.
 * Checks  test/odds/run-season.test.ts (with nothing drawn it fills every slot of every week as `fillBoxes` does)
 */
import { readyWeekOf } from './ripening.ts';
import type { Season, SeasonCrop, SeasonDraw, SeasonKeeping, SeasonLot } from './season-lot.ts';

const dustKg = 1e-9;

/** By slot and week: share of what was asked for that nothing filled; 0 where the slot was not due. */
export function runSeason(season: Season, draw: SeasonDraw): readonly Float64Array[] {
  const crops = season.crops.map((crop) => startCrop(season, crop, draw));
  const missing = season.slots.map(() => new Float64Array(season.weeks));
  for (let week = 0; week < season.weeks; week += 1) {
    for (const crop of crops) openWeek(crop, week);
    const taken = new Set<number>();
    season.slots.forEach((slot, at) => {
      const ofSlot = missing[at];
      if (slot.dueWeeks[week] === 1 && ofSlot !== undefined)
        ofSlot[week] = fillSlot(slot.offers, { crops, week, taken });
    });
    for (const crop of crops) closeWeek(crop, week);
  }
  return missing;
}

interface LotState {
  readonly lot: SeasonLot;
  readonly readyWeek: number;
  readonly lastWeek: number;
  readonly aliveFromWeek: number;
  readonly aliveToWeek: number;
  readonly toComeKg: number;
  readonly readyKg: Float64Array;
  laidKg: number;
}

interface Bin {
  readonly harvestYear: number;
  readonly inWeek: number;
  kg: number;
}

interface CropState {
  readonly lots: readonly LotState[];
  /** Field before tunnel, each in its order. */
  readonly inTurn: readonly LotState[];
  readonly lossShare: Float64Array | null;
  readonly lifeWeeks: number | null;
  readonly weighings: SeasonCrop['weighings'];
  /** Whether anything of it was recorded as cut for the boxes. */
  readonly mayBeLaid: boolean;
  bins: Bin[];
}

function startCrop(season: Season, crop: SeasonCrop, draw: SeasonDraw): CropState {
  const score = draw.keepScore(crop);
  const lots = crop.lots.map((lot) => startLot(season, lot, { draw, factor: draw.yieldFactor(crop, lot) }));
  return {
    lots,
    inTurn: [...lots.filter(({ lot }) => lot.under === 'field'), ...lots.filter(({ lot }) => lot.under === 'tunnel')],
    lossShare: crop.keeps === null ? null : drawnLoss(crop.keeps, score),
    lifeWeeks: crop.keeps === null ? null : drawnLife(crop.keeps, score),
    weighings: crop.weighings,
    mayBeLaid: crop.lots.some((lot) => lot.recorded.length > 0),
    bins: [],
  };
}

function startLot(
  season: Season,
  lot: SeasonLot,
  at: { readonly draw: SeasonDraw; readonly factor: number },
): LotState {
  const readyWeek = readyWeekOf(season, lot, at.draw.warmerC);
  const later = readyWeek - lot.readyWeek;
  const cutWeeks = lot.recorded.map((cut) => cut.week);
  return {
    lot,
    readyWeek,
    lastWeek: lot.lastWeek + later,
    aliveFromWeek: Math.min(readyWeek, ...cutWeeks),
    aliveToWeek: Math.max(readyWeek + lot.readyShare.length + lot.standingWeeks, ...cutWeeks),
    toComeKg: lot.toComeKg * at.factor,
    readyKg: new Float64Array(lot.readyShare.length),
    laidKg: 0,
  };
}

/** 1.28 deviations: one year in ten is worse than that, one in ten better. */
const tenthScore = 1.2816;

function drawnLoss(keeps: SeasonKeeping, score: number): Float64Array {
  if (score === 0) return keeps.lossShare;
  const end = score > 0 ? keeps.lossShareBest : keeps.lossShareWorst;
  const part = Math.abs(score) / tenthScore;
  return keeps.lossShare.map((typical, week) =>
    Math.min(1, Math.max(0, typical + part * ((end[week] ?? 0) - typical))),
  );
}

function drawnLife(keeps: SeasonKeeping, score: number): number | null {
  const typical = keeps.lifeWeeks;
  const end = score > 0 ? keeps.lifeWeeksBest : keeps.lifeWeeksWorst;
  if (typical === null || end === null || score === 0) return typical;
  return Math.max(1, Math.round(typical + (Math.abs(score) / tenthScore) * (end - typical)));
}

function openWeek(crop: CropState, week: number): void {
  if (crop.bins.length > 0) openStore(crop, week);
  for (const state of crop.lots) if (week >= state.aliveFromWeek && week <= state.aliveToWeek) ripen(crop, state, week);
}

function ripen(crop: CropState, state: LotState, week: number): void {
  const step = week - state.readyWeek;
  if (step >= 0 && step < state.readyKg.length)
    state.readyKg[step] = (state.lot.readyShare[step] ?? 0) * state.toComeKg;
  for (const cut of state.lot.recorded) {
    if (cut.week !== week) continue;
    if (cut.into === 'box') state.laidKg += cut.kg;
    else if (cut.into === 'store') putIn(crop, state.lot.harvestYear, { inWeek: week, kg: cut.kg });
  }
}

function openStore(crop: CropState, week: number): void {
  let newest = 0;
  for (const state of crop.lots)
    if (state.readyWeek <= week && state.lot.harvestYear > newest) newest = state.lot.harvestYear;
  const keep = 1 - (crop.lossShare?.[week] ?? 0);
  const life = crop.lifeWeeks;
  crop.bins = crop.bins.filter((bin) => bin.harvestYear >= newest && (life === null || week - bin.inWeek <= life));
  for (const bin of crop.bins) bin.kg *= keep;
}

/** Bins lie by season, and within one in the order they came in. */
function putIn(crop: CropState, harvestYear: number, bin: { readonly inWeek: number; readonly kg: number }): void {
  if (bin.kg <= 0) return;
  let at = crop.bins.length;
  while (at > 0 && (crop.bins[at - 1]?.harvestYear ?? 0) > harvestYear) at -= 1;
  crop.bins.splice(at, 0, { harvestYear, ...bin });
}

interface Filling {
  readonly crops: readonly CropState[];
  readonly week: number;
  readonly taken: Set<number>;
}

/** What is laid for this week's boxes first, then in the order of the list; what is in the boxes already comes last. */
function fillSlot(offers: Season['slots'][number]['offers'], filling: Filling): number {
  const { crops, taken } = filling;
  const gave: number[] = [];
  let missing = 1;
  const hasLaid = offers.some((offer) => isLaid(crops[offer.cropIndex]));
  const rankOf = (crop: number) => (taken.has(crop) ? 2 : hasLaid && isLaid(crops[crop]) ? 0 : 1);
  for (const turn of hasLaid ? laidFirst : listOrder) {
    for (const offer of offers) {
      if (missing > 1e-9 && rankOf(offer.cropIndex) === turn) missing -= shareFrom(offer, missing, { filling, gave });
    }
  }
  for (const crop of gave) taken.add(crop);
  return missing > 1e-9 ? missing : 0;
}

const laidFirst = [0, 1, 2] as const;
const listOrder = [1, 2] as const;

function isLaid(crop: CropState | undefined): boolean {
  return crop?.mayBeLaid === true && crop.lots.some((state) => state.laidKg > dustKg);
}

function shareFrom(
  { cropIndex, drawKg }: { readonly cropIndex: number; readonly drawKg: number },
  missing: number,
  { filling, gave }: { readonly filling: Filling; readonly gave: number[] },
): number {
  const state = filling.crops[cropIndex];
  if (state === undefined) return 0;
  const given = takeFrom(state, filling.week, missing * drawKg);
  if (given > dustKg) gave.push(cropIndex);
  return given / drawKg;
}

function takeFrom(crop: CropState, week: number, wantedKg: number): number {
  let leftKg = wantedKg;
  for (const state of crop.inTurn) {
    if (leftKg <= dustKg) break;
    if (week >= state.aliveFromWeek && week <= state.aliveToWeek) leftKg -= takeFresh(state, week, leftKg);
  }
  if (leftKg <= dustKg) return wantedKg - Math.max(0, leftKg);
  for (const bin of crop.bins) {
    const part = Math.min(bin.kg, leftKg);
    bin.kg -= part;
    leftKg -= part;
    if (leftKg <= dustKg) break;
  }
  if (crop.bins.length > 0) crop.bins = crop.bins.filter((bin) => bin.kg > dustKg);
  return wantedKg - leftKg;
}

function takeFresh(state: LotState, week: number, wantedKg: number): number {
  const laid = Math.min(state.laidKg, wantedKg);
  state.laidKg -= laid;
  let leftKg = wantedKg - laid;
  const last = Math.min(state.readyKg.length - 1, week - state.readyWeek);
  for (let step = 0; step <= last && leftKg > 0; step += 1) {
    const part = Math.min(state.readyKg[step] ?? 0, leftKg);
    state.readyKg[step] = (state.readyKg[step] ?? 0) - part;
    leftKg -= part;
  }
  return wantedKg - leftKg;
}

function closeWeek(crop: CropState, week: number): void {
  for (const state of crop.lots) {
    if (week < state.aliveFromWeek || week > state.aliveToWeek) continue;
    const leavesKg = leavesGround(state, week);
    if (crop.lossShare !== null) putIn(crop, state.lot.harvestYear, { inWeek: week, kg: leavesKg });
  }
  for (const weighing of crop.weighings) if (weighing.week === week) weigh(crop, weighing);
}

/** What has stood its time, or has to leave with the stand. */
function leavesGround(state: LotState, week: number): number {
  let leavesKg = state.laidKg;
  state.laidKg = 0;
  const ends = week >= state.lastWeek;
  const last = Math.min(state.readyKg.length - 1, week - state.readyWeek);
  for (let step = 0; step <= last; step += 1) {
    if (!ends && week - state.readyWeek - step < state.lot.standingWeeks) break;
    leavesKg += state.readyKg[step] ?? 0;
    state.readyKg[step] = 0;
  }
  return leavesKg;
}

/** The newest season takes the difference; what is left of older ones stays as reckoned. */
function weigh(crop: CropState, { week, kg }: { readonly week: number; readonly kg: number }): void {
  const harvestYear = crop.bins.at(-1)?.harvestYear ?? newestYear(crop, week);
  if (harvestYear === null) return;
  const older = crop.bins.filter((bin) => bin.harvestYear < harvestYear).reduce((sum, bin) => sum + bin.kg, 0);
  const newest = crop.bins.filter((bin) => bin.harvestYear === harvestYear);
  const before = newest.reduce((sum, bin) => sum + bin.kg, 0);
  const after = Math.max(0, kg - older);
  if (before > 0) for (const bin of newest) bin.kg *= after / before;
  else putIn(crop, harvestYear, { inWeek: week, kg: after });
}

/** The last season begun; null before any. */
function newestYear(crop: CropState, week: number): number | null {
  const years = crop.lots.filter((state) => state.readyWeek <= week).map((state) => state.lot.harvestYear);
  return years.length === 0 ? null : Math.max(...years);
}
