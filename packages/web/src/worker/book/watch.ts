/** Waits at the server for what others record, so that it is here within a second or two of being there. */

/** What the watcher needs of the world; handed in so that it can be tried without one. */
export interface Watching {
  /** The farm that is open and the last `seq` that is here; null while none is. */
  readonly standing: () => { readonly farm: string; readonly seq: number } | null;
  /** What came within the wait; null when the server was not reached. */
  readonly waitFor: (farm: string, seq: number) => Promise<News | null>;
  readonly lookAgain: () => Promise<void>;
  readonly sleep: (ms: number) => Promise<void>;
}

export interface News {
  readonly isNew: boolean;
  /** Where to wait on from: entries that are not for one's role are passed over. */
  readonly readTo: number;
}

const idleMs = 1000;
const afterFailureMs = 5000;

/** Goes on for as long as the page is open. */
export async function watch(watching: Watching): Promise<never> {
  let passed: { readonly farm: string; readonly seq: number } = { farm: '', seq: 0 };
  for (;;) {
    const at = watching.standing();
    if (at === null) {
      await watching.sleep(idleMs);
      continue;
    }
    const from = passed.farm === at.farm ? Math.max(passed.seq, at.seq) : at.seq;
    const news = await watching.waitFor(at.farm, from);
    if (news === null) {
      await watching.sleep(afterFailureMs);
      continue;
    }
    passed = { farm: at.farm, seq: news.readTo };
    if (news.isNew) {
      await watching.lookAgain();
    }
  }
}

/** The server's answer to a wait. */
export async function waitAtServer(farm: string, seq: number): Promise<News | null> {
  try {
    const response = await fetch(`/api/farms/${encodeURIComponent(farm)}/entries?after=${seq}&wait=20`);
    if (!response.ok) return null;
    const page = (await response.json()) as { readonly entries: readonly unknown[]; readonly readTo: number };
    return { isNew: page.entries.length > 0, readTo: page.readTo };
  } catch {
    return null;
  }
}
