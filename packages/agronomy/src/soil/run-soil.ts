/**
 * The ground's account of one part, day by day: water and mineral nitrogen in layers, residues, humus, living stands, in one loop.
 *
 * Source  the models named in water-day.ts, residue-day.ts, growth-day.ts, stand-changes.ts and soil-temperature.ts.
 * Checks  test/run-soil.test.ts (water, nitrogen and carbon close every day to 1e-6 for random parts; a changed day recomputes bit for bit);
 *         test/soil-behaviour.test.ts (what fields have shown)
 * Holds   nothing is allocated per day; the same input gives the same numbers; the result is for reading.
 * Leaves out  neighbours: water and nitrate move down only, and herbage by transfers the caller carries over.
 */
import { coverOfStands, growStands } from './growth-day.ts';
import { denitrify, nitrogenOfBatch, releaseNitrogen, workedLayers } from './residue-day.ts';
import { columnAt, flowColumns, type SoilRun, soilColumns } from './soil-columns.ts';
import type { SoilPart, SoilWeather } from './soil-part.ts';
import { batch, mostStands, newRunState, type RunState, scalar, slot, today } from './soil-state.ts';
import { bareGroundFactor, dailyLagFactor } from './soil-temperature.ts';
import { beginStand, bringOn, cutStand, endStand } from './stand-changes.ts';
import { standOfRun } from './stand-of-run.ts';
import { waterDown, waterUp } from './water-day.ts';

export interface RunWish {
  /** Days in a row of the result: 1 or 7. */
  readonly stepDays: number;
  /** An earlier run of the same part under the same weather and steps, and the first day on which anything differs. */
  readonly after?: { readonly run: SoilRun; readonly changedDayNumber: number } | null;
}

/** Runs a part over all days of the weather. */
export function runSoil(part: SoilPart, weather: SoilWeather, wish: RunWish = { stepDays: 7 }): SoilRun {
  const stands = [...part.stands].sort((a, b) => a.startDayNumber - b.startDayNumber || (a.id < b.id ? -1 : 1));
  const state = newRunState(part, weather, stands.map(standOfRun));
  const happenings = happeningsOf(state);
  const steps = Math.ceil(weather.dayCount / wish.stepDays);
  const rows = new Float64Array(steps * soilColumns.length);
  const edges = [...new Set(happenings.map((one) => one.at))].filter((at) => at >= 0 && at < weather.dayCount);
  const keptStates = new Float64Array(edges.length * state.values.length);
  const standIds = stands.map((stand) => stand.id);
  const fromAt = takeUpAgain(state, { wish, rows, standIds, edges, keptStates });
  runDays(state, { happenings, edges, keptStates, rows, steps, stepDays: wish.stepDays, fromAt });
  return {
    partId: part.id,
    startDayNumber: weather.startDayNumber,
    stepDays: wish.stepDays,
    steps,
    column: (name) => rows.subarray(columnAt[name] * steps, (columnAt[name] + 1) * steps),
    outcomes: state.outcomes,
    transfers: state.transfers,
    kept: {
      days: edges.map((at) => at + weather.startDayNumber),
      states: keptStates,
      numbersPerState: state.values.length,
      standIds,
      rows,
    },
  };
}

interface Happening {
  readonly at: number;
  readonly order: number;
  readonly happens: () => void;
}

/** All that happens, by day: ends before cuts, what is brought on, beginnings. What lies before the weather begins on its first day. */
function happeningsOf(state: RunState): readonly Happening[] {
  const { part, weather } = state;
  const first = weather.startDayNumber;
  const all: Happening[] = [];
  state.stands.forEach(({ stand }, index) => {
    if (stand.endDayNumber <= first || stand.endDayNumber <= stand.startDayNumber) return;
    all.push({ at: Math.max(0, stand.startDayNumber - first), order: 3, happens: () => beginStand(state, index) });
    const end = { dayNumber: stand.endDayNumber, by: 'plan' } as const;
    all.push({ at: stand.endDayNumber - first, order: 0, happens: () => endStand(state, index, end) });
    for (const cut of stand.cuts)
      if (cut.dayNumber >= first)
        all.push({ at: cut.dayNumber - first, order: 1, happens: () => cutStand(state, index, cut) });
  });
  for (const brought of part.brought)
    if (brought.dayNumber >= first)
      all.push({ at: brought.dayNumber - first, order: 2, happens: () => bringOn(state, brought) });
  return all.sort((a, b) => a.at - b.at || a.order - b.order);
}

interface Running {
  readonly happenings: readonly Happening[];
  readonly edges: readonly number[];
  readonly keptStates: Float64Array;
  readonly rows: Float64Array;
  readonly steps: number;
  readonly stepDays: number;
  readonly fromAt: number;
}

function runDays(state: RunState, running: Running): void {
  const { happenings, edges, keptStates, stepDays, fromAt } = running;
  const { dayCount } = state.weather;
  let next = happenings.findIndex((one) => one.at >= fromAt);
  if (next < 0) next = happenings.length;
  let edge = edges.findIndex((at) => at >= fromAt);
  let row = Math.floor(fromAt / stepDays);
  for (let at = fromAt; at < dayCount; at++) {
    if (edges[edge] === at) keptStates.set(state.values, edge++ * state.values.length);
    for (let one = happenings[next]; one !== undefined && one.at === at; one = happenings[++next]) one.happens();
    runDay(state, at);
    const days = (state.scalars[scalar.daysInStep] as number) + 1;
    state.scalars[scalar.daysInStep] = days;
    if (days === stepDays || at === dayCount - 1) writeRow(state, running, row++);
  }
}

function runDay(state: RunState, at: number): void {
  const { scalars, weather, constants, handedValues } = state;
  const tMinC = (weather.tMinC[at] as number) + constants.warmerByC;
  const airC = ((weather.tMaxC[at] as number) + constants.warmerByC + tMinC) / 2;
  handedValues[today.etoMm] = weather.etoMm[at] as number;
  handedValues[today.airC] = airC;
  coverOfStands(state);
  waterDown(state, at);
  denitrify(state);
  waterUp(state);
  const soilC = scalars[scalar.soilC] as number;
  const swing = bareGroundFactor * (1 - (scalars[scalar.coverShare] as number));
  const surfaceC = airC + swing * (airC - weather.yearMeanC - constants.warmerByC);
  scalars[scalar.soilC] = soilC + dailyLagFactor * (surfaceC - soilC);
  releaseNitrogen(state);
  growStands(state, at);
  if (tMinC < 0) killByFrost(state, at);
}

function killByFrost(state: RunState, at: number): void {
  const tMinC = (state.weather.tMinC[at] as number) + state.constants.warmerByC;
  for (let nth = (state.scalars[scalar.stands] as number) - 1; nth >= 0; nth--) {
    const index = state.slots[nth * slot.size + slot.stand] as number;
    const of = state.stands[index];
    if (of !== undefined && tMinC < of.frostKillC)
      endStand(state, index, { dayNumber: state.weather.startDayNumber + at, by: 'frost' });
  }
}

function writeRow(state: RunState, into: { readonly rows: Float64Array; readonly steps: number }, row: number): void {
  const { sums, scalars, slots } = state;
  const { rows, steps } = into;
  for (let column = 0; column < flowColumns; column++) {
    rows[column * steps + row] = sums[column] as number;
    sums[column] = 0;
  }
  const stands = scalars[scalar.stands] as number;
  if (stands > 0) {
    rows[columnAt.depletionMm * steps + row] = scalars[scalar.depletionMm] as number;
    rows[columnAt.readilyMm * steps + row] = scalars[scalar.readilyMm] as number;
    rows[columnAt.totalAvailableMm * steps + row] = scalars[scalar.totalMm] as number;
  }
  rows[columnAt.waterMm * steps + row] = sumOf(state.waterLayersMm, state.layerCount);
  rows[columnAt.soilC * steps + row] = scalars[scalar.soilC] as number;
  rows[columnAt.coverShare * steps + row] = scalars[scalar.coverShare] as number;
  rows[columnAt.rootDepthCm * steps + row] = (scalars[scalar.rootedLayers] as number) * 10;
  rows[columnAt.topMineralNKgHa * steps + row] = sumOf(state.nitrateLayersKgHa, workedLayers);
  rows[columnAt.mineralNKgHa * steps + row] = sumOf(state.nitrateLayersKgHa, state.layerCount);
  rows[columnAt.humusNKgHa * steps + row] = scalars[scalar.humusN] as number;
  rows[columnAt.humusCKgHa * steps + row] = scalars[scalar.humusC] as number;
  const plantN = columnAt.plantNKgHa * steps + row;
  const plantMass = columnAt.plantMassTHa * steps + row;
  for (let from = 0; from < stands * slot.size; from += slot.size) {
    rows[plantN] =
      (rows[plantN] as number) + (slots[from + slot.shootN] as number) + (slots[from + slot.rootN] as number);
    rows[plantMass] = (rows[plantMass] as number) + (slots[from + slot.massT] as number);
  }
  writeResidue(state, into, row);
  scalars[scalar.daysInStep] = 0;
}

function writeResidue(
  state: RunState,
  { rows, steps }: { readonly rows: Float64Array; readonly steps: number },
  row: number,
): void {
  const { batches, scalars } = state;
  let nitrogen = scalars[scalar.ammoniaN] as number;
  let carbon = 0;
  for (let nth = 0; nth < (scalars[scalar.batches] as number); nth++) {
    const from = nth * batch.size;
    carbon += (batches[from + batch.residueC] as number) + (batches[from + batch.microbeC] as number);
    nitrogen += nitrogenOfBatch(state, nth);
  }
  rows[columnAt.residueNKgHa * steps + row] = nitrogen;
  rows[columnAt.residueCKgHa * steps + row] = carbon;
}

function sumOf(values: Float64Array, count: number): number {
  let sum = 0;
  for (let at = 0; at < count; at++) sum += values[at] as number;
  return sum;
}

/** Sets the state to the last one kept before anything changed, with all that was known by then. Returns the day to go on from. */
function takeUpAgain(
  state: RunState,
  run: {
    readonly wish: RunWish;
    readonly rows: Float64Array;
    readonly standIds: readonly string[];
    readonly edges: readonly number[];
    readonly keptStates: Float64Array;
  },
): number {
  const { after, stepDays } = run.wish;
  if (after === null || after === undefined || after.run.stepDays !== stepDays) return 0;
  const { kept } = after.run;
  const nth = kept.days.findLastIndex((day) => day <= after.changedDayNumber);
  const dayNumber = kept.days[nth];
  if (dayNumber === undefined || kept.numbersPerState !== state.values.length || kept.rows.length !== run.rows.length)
    return 0;
  const stateAt = (index: number) =>
    kept.states.subarray(index * kept.numbersPerState, (index + 1) * kept.numbersPerState);
  state.values.set(stateAt(nth));
  if (!renameStands(state, kept.standIds, run.standIds))
    throw new Error('A stand that stood before the changed day is gone.');
  const at = dayNumber - state.weather.startDayNumber;
  const steps = run.rows.length / soilColumns.length;
  const rowsBefore = Math.floor(at / stepDays);
  for (let column = 0; column < soilColumns.length; column++)
    run.rows.set(kept.rows.subarray(column * steps, column * steps + rowsBefore), column * steps);
  state.outcomes.push(...after.run.outcomes.filter((one) => one.endDayNumber < dayNumber));
  state.transfers.push(...after.run.transfers.filter((one) => one.dayNumber < dayNumber));
  run.edges.forEach((edge, index) => {
    const before = kept.days.indexOf(edge + state.weather.startDayNumber);
    if (edge >= at || before < 0) return;
    const values = state.values.slice();
    state.values.set(stateAt(before));
    renameStands(state, kept.standIds, run.standIds);
    run.keptStates.set(state.values, index * kept.numbersPerState);
    state.values.set(values);
  });
  return at;
}

/** Living stands are known by their place in the list; a changed list has other places. */
function renameStands(state: RunState, before: readonly string[], now: readonly string[]): boolean {
  const count = Math.min(mostStands, state.scalars[scalar.stands] as number);
  for (let nth = 0; nth < count; nth++) {
    const id = before[state.slots[nth * slot.size + slot.stand] ?? -1];
    const place = id === undefined ? -1 : now.indexOf(id);
    if (place < 0) return false;
    state.slots[nth * slot.size + slot.stand] = place;
  }
  return true;
}
