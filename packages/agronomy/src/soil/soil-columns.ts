/** What the run tells of each step, column by column, and its form for readers. */

/** Where each column stands: sums over the step first, then what stands at its end. Written out, so that inner loops find them at no cost. */
export const columnAt = {
  rainMm: 0,
  irrigationMm: 1,
  runoffMm: 2,
  evaporationMm: 3,
  transpirationMm: 4,
  transpirationWantedMm: 5,
  belowRootsMm: 6,
  drainedMm: 7,
  depositedNKgHa: 8,
  broughtNKgHa: 9,
  fixedNKgHa: 10,
  residueReleaseNKgHa: 11,
  humusReleaseNKgHa: 12,
  uptakeNKgHa: 13,
  deepUptakeNKgHa: 14,
  belowRootsNKgHa: 15,
  leachedNKgHa: 16,
  denitrifiedNKgHa: 17,
  ammoniaNKgHa: 18,
  soldNKgHa: 19,
  movedNKgHa: 20,
  residueInCKgHa: 21,
  carbonDioxideCKgHa: 22,
  waterMm: 23,
  depletionMm: 24,
  readilyMm: 25,
  totalAvailableMm: 26,
  soilC: 27,
  coverShare: 28,
  rootDepthCm: 29,
  topMineralNKgHa: 30,
  mineralNKgHa: 31,
  plantNKgHa: 32,
  plantMassTHa: 33,
  residueNKgHa: 34,
  humusNKgHa: 35,
  residueCKgHa: 36,
  humusCKgHa: 37,
} as const;
export type SoilColumn = keyof typeof columnAt;
export const soilColumns = Object.keys(columnAt) as readonly SoilColumn[];
/** Columns before this one are sums. */
export const flowColumns: number = columnAt.waterMm;

/** Numbers to be read, not written. */
export type ReadonlyNumbers = ArrayLike<number> & Iterable<number>;

/** What one stand did, known on the day it ended. */
export interface StandOutcome {
  readonly standId: string;
  readonly endDayNumber: number;
  /** Why it ended: as planned, or killed by frost before. */
  readonly endedBy: 'plan' | 'frost';
  /** Shoot dry matter grown, what was cut off included. */
  readonly massTHa: number;
  /** What it would have been without want of water or nitrogen. */
  readonly unstressedMassTHa: number;
  readonly waterWantedMm: number;
  readonly waterGotMm: number;
  readonly nWantedKgHa: number;
  readonly nGotKgHa: number;
  readonly fixedNKgHa: number;
  readonly soldNKgHa: number;
}

/** Herbage taken to another part: in both accounts. */
export interface SoilTransfer {
  readonly dayNumber: number;
  readonly standId: string;
  readonly nKgHa: number;
  readonly carbonKgHa: number;
}

/** The run of a part: rows of `stepDays` days each, the last one may be short. */
export interface SoilRun {
  readonly partId: string;
  readonly startDayNumber: number;
  readonly stepDays: number;
  readonly steps: number;
  readonly column: (name: SoilColumn) => ReadonlyNumbers;
  readonly outcomes: readonly StandOutcome[];
  readonly transfers: readonly SoilTransfer[];
  /** States kept at the edges of stands, so that a change recomputes from its day on. */
  readonly kept: KeptStates;
}

/** For the run alone. */
export interface KeptStates {
  readonly days: readonly number[];
  readonly states: Float64Array;
  readonly numbersPerState: number;
  readonly standIds: readonly string[];
  readonly rows: Float64Array;
}
