import type { Shows } from '@leywright/book';
import type { Finding, Plan, Why } from '@leywright/planner';
import type { Sentence } from '../look/page/figure.tsx';

/** A finding with the words it is told in. */
export interface ToldFinding {
  readonly finding: Finding;
  readonly lead: string;
  readonly body: Sentence;
  readonly mends: readonly Sentence[];
}

/** The plan in words: what each place says first, and each finding. */
export interface Told {
  readonly headline: { readonly ground: Sentence; readonly boxes: Sentence; readonly day: Sentence };
  /** In the order of the plan's findings. */
  readonly findings: readonly ToldFinding[];
  /** "Agreed, 9 January". */
  readonly standing: string;
}

/** Everything the pages show of an open farm. */
export interface FarmView {
  readonly plan: Plan;
  readonly told: Told;
  readonly sizes: readonly { readonly id: string; readonly name: string; readonly households: number }[];
  readonly shows: Shows;
  readonly near: string | null;
}

/** What there is to see. `old` and `failed` keep the last view; nothing on screen is ever taken away to wait. */
export type Seen =
  | { readonly kind: 'no-farm' }
  | { readonly kind: 'working'; readonly sentence: string }
  | { readonly kind: 'ready'; readonly view: FarmView }
  | { readonly kind: 'old'; readonly view: FarmView; readonly sentence: string }
  | { readonly kind: 'failed'; readonly view: FarmView | null; readonly sentence: string };

export interface ToldWhy {
  readonly why: Why;
  readonly title: string;
  readonly about: Sentence;
}

/** One thing that is wrong with a folder or a blank, in words, at its place. */
export interface Problem {
  readonly id: string;
  readonly where: string;
  readonly sentence: string;
}

export interface FolderFile {
  readonly path: string;
  readonly bytes: ArrayBuffer;
}

/** The one sentence a new farm is begun with; null where a blank was left. */
export interface Beginning {
  readonly plots: number | null;
  readonly areaHa: number | null;
  readonly near: string | null;
  readonly items: number | null;
  readonly households: number | null;
  readonly weeks: number | null;
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
  /** Each answers with what to mend; an empty list means it is done and the plan follows. */
  readonly begin: (beginning: Beginning) => Promise<readonly Problem[]>;
  readonly openFolder: (files: readonly FolderFile[]) => Promise<readonly Problem[]>;
  readonly openSample: () => Promise<readonly Problem[]>;
}
