/** The server as the worker asks it. It may be out of reach at any time; then what is kept here goes on. */
import type { Entry, ReceivedEntry } from '@leywright/book';
import type { Day } from '@leywright/measures';
import type { Who } from './keep.ts';

export type Answer<T> =
  | { readonly kind: 'answered'; readonly value: T }
  | { readonly kind: 'refused'; readonly status: number; readonly problems: readonly ServerProblem[] }
  | { readonly kind: 'unreachable' };

/** A problem as the server words it: of a field of what was sent, or of a place in a folder. */
export interface ServerProblem {
  readonly code: string;
  readonly sentence: string;
  readonly file: string | null;
  readonly line: number | null;
  readonly column: string | null;
  readonly found: string | null;
  readonly nearest: readonly string[];
  readonly gravity: 'stops' | 'look';
}

export interface FarmInStore {
  readonly id: string;
  readonly name: string;
  readonly sample: boolean;
  readonly createdAt: string;
  readonly lastSeq: number;
}

export interface FolderChecked {
  readonly wouldImport: boolean;
  readonly name: string | null;
  readonly problems: readonly ServerProblem[];
}

export interface SentenceSent {
  readonly plots: number;
  readonly areaHa: number;
  readonly near: string | null;
  readonly latDeg: number | null;
  readonly items: number;
  readonly households: number;
  readonly weeks: number;
}

export interface EntriesPage {
  readonly entries: readonly ReceivedEntry[];
  /** Where to ask on while there is `more`: entries that are not for one's role are left out. */
  readonly readTo: number;
  readonly more: boolean;
}

export interface Server {
  readonly today: () => Promise<Answer<{ readonly today: Day; readonly isDaySaid: boolean }>>;
  readonly me: () => Promise<Answer<{ readonly visitor: Who | null }>>;
  readonly farms: () => Promise<Answer<{ readonly farms: readonly FarmInStore[] }>>;
  readonly entriesAfter: (farm: string, seq: number) => Promise<Answer<EntriesPage>>;
  readonly addEntries: (farm: string, entries: readonly Entry[]) => Promise<Answer<unknown>>;
  readonly begin: (sentence: SentenceSent) => Promise<Answer<{ readonly farm: FarmInStore }>>;
  readonly openSample: () => Promise<Answer<{ readonly farm: FarmInStore }>>;
  readonly checkFolder: (zip: Uint8Array) => Promise<Answer<FolderChecked>>;
  readonly takeFolder: (zip: Uint8Array) => Promise<Answer<{ readonly farm: FarmInStore }>>;
}

/** The server that the page came from. */
export function ownServer(): Server {
  return {
    today: () => ask('/api/today'),
    me: () => ask('/api/me'),
    farms: () => ask('/api/farms'),
    entriesAfter: (farm, seq) => ask(`/api/farms/${encodeURIComponent(farm)}/entries?after=${seq}`),
    addEntries: (farm, entries) => ask(`/api/farms/${encodeURIComponent(farm)}/entries`, json({ entries })),
    begin: (sentence) => ask('/api/farms', json(sentence)),
    openSample: () => ask('/api/farms', json({ sample: true })),
    checkFolder: (zip) => ask('/api/folder/check', zipped(zip)),
    takeFolder: (zip) => ask('/api/farms', zipped(zip)),
  };
}

function json(body: unknown): RequestInit {
  return { method: 'POST', headers: { 'content-type': 'application/json' }, body: JSON.stringify(body) };
}

function zipped(bytes: Uint8Array): RequestInit {
  return { method: 'POST', headers: { 'content-type': 'application/zip' }, body: bytes as BodyInit };
}

/** A fault of the server's own counts as out of reach: what is kept here is still good. */
async function ask<T>(path: string, init: RequestInit = {}): Promise<Answer<T>> {
  try {
    const response = await fetch(path, init);
    if (response.ok) return { kind: 'answered', value: (await response.json()) as T };
    const { problems } = (await response.json()) as { readonly problems: readonly ServerProblem[] };
    return { kind: 'refused', status: response.status, problems };
  } catch {
    return { kind: 'unreachable' };
  }
}
