import type { Shows } from '@leywright/book';
import type { Day } from '@leywright/measures';
import type { Finding, Plan, Why } from '@leywright/planner';
import type { Sentence } from '../look/page/figure.tsx';
import type { Correction, RecordWish, ToldRecord } from './record/wish.ts';

/** A finding with the words it is told in. */
export interface ToldFinding {
  readonly finding: Finding;
  readonly lead: string;
  readonly body: Sentence;
  readonly mends: readonly Sentence[];
}

/** The plan in words: what each place says first, and each finding. */
export interface Told {
  readonly headline: {
    readonly ground: Sentence;
    readonly boxes: Sentence;
    readonly day: Sentence;
    readonly work: Sentence;
  };
  /** In the order of the plan's findings. */
  readonly findings: readonly ToldFinding[];
  /** "Agreed, 9 January". */
  readonly standing: string;
}

export interface HandsRow {
  readonly id: string;
  readonly name: string;
  readonly weeksH: readonly number[];
  /** Hours of a full week. */
  readonly fullH: number;
}

/** Everything the pages show of an open farm. */
export interface FarmView {
  readonly plan: Plan;
  readonly told: Told;
  readonly sizes: readonly { readonly id: string; readonly name: string; readonly households: number }[];
  readonly shows: Shows;
  /** People who work, with their hours in each week of the plan's work; below 0 outside their season. */
  readonly hands: readonly HandsRow[];
  /** The work levelled; null where no hands are known. */
  readonly levelled: {
    readonly overBeforeH: number;
    readonly overAfterH: number;
    readonly moves: number;
    readonly weeksH: readonly number[];
  } | null;
  readonly near: string | null;
  /** The records of the last days, newest first. */
  readonly records: readonly ToldRecord[];
  /** What was seen, and in which crop; the latest first. */
  readonly seenBefore: readonly { readonly what: string; readonly crop: string | null }[];
  /** Crops and covers to choose from in a record: those on the ground now first. */
  readonly plants: readonly { readonly id: string; readonly name: string; readonly plots: readonly string[] }[];
}

/** What there is to see. `old` and `failed` keep the last view; nothing on screen is ever taken away to wait. */
export type Seen =
  | { readonly kind: 'no-farm'; readonly today: Day | null }
  | { readonly kind: 'working'; readonly sentence: string }
  /** `offline` says that the server is not reached, and since when the book is as shown; null while it is. */
  | { readonly kind: 'ready'; readonly view: FarmView; readonly offline: string | null }
  | { readonly kind: 'old'; readonly view: FarmView; readonly sentence: string }
  | { readonly kind: 'failed'; readonly view: FarmView | null; readonly sentence: string };

export interface ToldWhy {
  readonly why: Why;
  readonly title: string;
  readonly about: Sentence;
}

/** One thing that is wrong with what was asked or sent, in words, at its place. */
export interface Problem {
  readonly id: string;
  readonly where: string;
  readonly sentence: string;
}

export interface FolderFile {
  readonly path: string;
  readonly bytes: ArrayBuffer;
}

/** Where in a folder something is mended: a cell, a value or a line; the whole of a small file; or not here. */
export type MendKind = 'cell' | 'file' | 'none';

/** One thing in a folder that stops it or is worth a look. */
export interface FolderProblem {
  readonly id: string;
  readonly file: string;
  readonly line: number | null;
  readonly column: string | null;
  readonly found: string | null;
  /** What would do, nearest first. */
  readonly nearest: readonly string[];
  /** What is wrong, without its place. */
  readonly sentence: string;
  readonly stops: boolean;
  readonly mend: MendKind;
  /** What is written there now: of the cell, or the whole file. */
  readonly written: string;
}

/** What was read of a folder. Nothing is kept until it is taken in. */
export interface FolderReading {
  readonly canBeTaken: boolean;
  readonly name: string | null;
  readonly problems: readonly FolderProblem[];
}

export interface FolderMend {
  readonly problem: string;
  readonly to: string;
}

export type FolderAnswer =
  | { readonly kind: 'read'; readonly reading: FolderReading }
  | { readonly kind: 'not-read'; readonly problems: readonly Problem[] };

/** The one sentence a new farm is begun with; null where a blank was left. */
export interface Beginning {
  readonly plots: number | null;
  readonly areaHa: number | null;
  readonly near: string | null;
  readonly items: number | null;
  readonly households: number | null;
  readonly weeks: number | null;
}

/** A farm that can be opened here. */
export interface FarmOnList {
  readonly id: string;
  readonly name: string;
  readonly sample: boolean;
  readonly isOpen: boolean;
}

/** Where the pages get the plan from: a worker that holds the farm's entries and works the plan out from them. */
export interface PlanSource {
  readonly subscribe: (listener: () => void) => () => void;
  readonly seen: () => Seen;
  /** Works the plan out for another year in focus. */
  readonly focusYear: (isoYear: number) => void;
  readonly why: (figureId: string) => Promise<ToldWhy | null>;
  /** How this farm writes areas, weights, weeks and money. */
  readonly setShows: (shows: Shows) => void;
  /** Records what was done or seen; gives the ids of its entries, for taking it back. */
  readonly record: (wish: RecordWish) => Promise<readonly string[]>;
  /** Takes a record back at once: an entry strikes it out. */
  readonly undo: (entries: readonly string[]) => Promise<void>;
  readonly correct: (entries: readonly string[], correction: Correction) => Promise<void>;
  readonly farms: () => Promise<readonly FarmOnList[]>;
  /** Names that the sentence's "near" knows. */
  readonly knownPlaces: () => Promise<readonly string[]>;
  /** Each answers with what to mend; an empty list means it is done and the plan follows. */
  readonly openFarm: (id: string) => Promise<readonly Problem[]>;
  readonly begin: (beginning: Beginning) => Promise<readonly Problem[]>;
  readonly openSample: () => Promise<readonly Problem[]>;
  /** Reads a folder or a zip and says everything that is wrong with it; it is held until it is taken in or another comes. */
  readonly readFolder: (files: readonly FolderFile[]) => Promise<FolderAnswer>;
  /** Mends the folder that is held, and reads it again. */
  readonly mendFolder: (mends: readonly FolderMend[]) => Promise<FolderAnswer>;
  readonly takeFolder: () => Promise<readonly Problem[]>;
}
