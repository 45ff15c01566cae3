/**
 * Runs of parts, kept: what was run before is taken up again from the first day on which anything differs.
 *
 * Rule    A run is known by what it was given, never by an id alone: the same part under the same weather is the same run; a part whose stands changed is run
 *         from the first changed day; any other change runs it from the start. Either way the figures are those of a run from the start, bit for bit.
 */
import { type SoilPart, type SoilRun, type SoilStand, type SoilWeather, soilAccount } from '@leywright/agronomy';

export const stepDays = 7;

export interface PartRuns {
  readonly runOf: (part: SoilPart, weather: SoilWeather) => SoilRun;
}

interface KeptRun {
  readonly part: SoilPart;
  readonly weather: SoilWeather;
  readonly run: SoilRun;
}

/** Keeps the last run of each of so many parts. */
export function makePartRuns(mostParts: number): PartRuns {
  const kept = new Map<string, KeptRun>();
  return {
    runOf: (part, weather) => {
      const before = kept.get(part.id);
      const run = runAfter(part, weather, before);
      kept.delete(part.id);
      kept.set(part.id, { part, weather, run });
      const oldest = kept.size > mostParts ? kept.keys().next().value : undefined;
      if (oldest !== undefined) kept.delete(oldest);
      return run;
    },
  };
}

function runAfter(part: SoilPart, weather: SoilWeather, before: KeptRun | undefined): SoilRun {
  if (before === undefined || before.weather !== weather || groundKey(before.part) !== groundKey(part))
    return soilAccount.runSoil(part, weather, { stepDays });
  const changedDayNumber = firstChangedDay(before.part.stands, part.stands);
  if (changedDayNumber === null) return before.run;
  return soilAccount.runSoil(part, weather, { stepDays, after: { run: before.run, changedDayNumber } });
}

function groundKey(part: SoilPart): string {
  return JSON.stringify({ ...part, stands: null });
}

/** First day on which two lists of stands differ in what they do to the ground; null when they do the same. */
export function firstChangedDay(before: readonly SoilStand[], now: readonly SoilStand[]): number | null {
  const byId = new Map(before.map((stand) => [stand.id, stand]));
  let first = Number.POSITIVE_INFINITY;
  for (const stand of now) {
    const other = byId.get(stand.id);
    byId.delete(stand.id);
    first = Math.min(first, other === undefined ? stand.startDayNumber : changedFrom(other, stand));
  }
  for (const gone of byId.values()) first = Math.min(first, gone.startDayNumber);
  return Number.isFinite(first) ? first : null;
}

function changedFrom(a: SoilStand, b: SoilStand): number {
  const beginning = (one: SoilStand) => JSON.stringify({ ...one, endDayNumber: 0, ending: null, cuts: null });
  if (beginning(a) !== beginning(b)) return Math.min(a.startDayNumber, b.startDayNumber);
  let first = Number.POSITIVE_INFINITY;
  if (a.endDayNumber !== b.endDayNumber || a.ending !== b.ending) first = Math.min(a.endDayNumber, b.endDayNumber);
  const cutKeys = (one: SoilStand) => new Set(one.cuts.map((cut) => `${cut.dayNumber}/${cut.use}`));
  const [ofA, ofB] = [cutKeys(a), cutKeys(b)];
  for (const cut of [...a.cuts, ...b.cuts]) {
    const key = `${cut.dayNumber}/${cut.use}`;
    if (!ofA.has(key) || !ofB.has(key)) first = Math.min(first, cut.dayNumber);
  }
  return first;
}
