/**
 * Plans kept as they were last worked out. Whoever asks gets the plan of the book as it is; who can do with the last one (`settled`) gets that
 * at once, while the next is worked out behind it, and never one that has been behind the book for more than two seconds.
 */
import type { Store } from '@leywright/store';
import type { PlanAsked, PlanText } from './plan-text.ts';

export interface Plans {
  readonly answer: (asked: PlanAsked, how: 'fresh' | 'settled') => Promise<PlanText>;
  readonly close: () => Promise<void>;
}

export interface PlanMaker {
  readonly make: (asked: PlanAsked) => Promise<PlanText>;
  readonly close: () => Promise<void>;
}

/** Two megabytes each for a farm of seven plots. */
const mostKept = 16;
/** So that one busy farm does not take a whole core: the next plan is begun no sooner after the last. */
const restMs = 700;
const longestBehindMs = 2_000;

interface Kept {
  last: PlanText | null;
  /** When `last` was found to be behind the book; null while it was not. */
  behindSinceMs: number | null;
  endedMs: number;
  /** The run that is going on, and the `seq` it will hold at least. */
  running: { readonly fromSeq: number; readonly plan: Promise<PlanText> } | null;
}

export function keptPlans(store: Store, maker: PlanMaker, nowMs: () => number = () => performance.now()): Plans {
  const all = new Map<string, Kept>();

  const keptOf = (name: string): Kept => {
    const kept = all.get(name) ?? { last: null, behindSinceMs: null, endedMs: 0, running: null };
    all.delete(name);
    all.set(name, kept);
    const [oldest] = all.keys();
    if (all.size > mostKept && oldest !== undefined) all.delete(oldest);
    return kept;
  };

  const run = (kept: Kept, asked: PlanAsked, fromSeq: number): Promise<PlanText> => {
    const plan = maker.make(asked).then(
      (made) => {
        Object.assign(kept, { last: made, behindSinceMs: null, endedMs: nowMs(), running: null });
        return made;
      },
      (error: unknown) => {
        kept.running = null;
        throw error;
      },
    );
    kept.running = { fromSeq, plan };
    return plan;
  };

  /** A plan that holds the book up to `seq`. A run that began before it is waited for, then another begun. */
  const fresh = async (kept: Kept, asked: PlanAsked, seq: number): Promise<PlanText> => {
    if (kept.last !== null && kept.last.seq >= seq) return kept.last;
    if (kept.running === null) return run(kept, asked, seq);
    if (kept.running.fromSeq >= seq) return kept.running.plan;
    await kept.running.plan.catch(() => undefined);
    return fresh(kept, asked, seq);
  };

  const settled = (kept: Kept, asked: PlanAsked, seq: number): Promise<PlanText> => {
    if (kept.last === null || kept.last.seq >= seq) return fresh(kept, asked, seq);
    kept.behindSinceMs ??= nowMs();
    if (nowMs() - kept.behindSinceMs > longestBehindMs) return fresh(kept, asked, seq);
    if (kept.running === null && nowMs() - kept.endedMs > restMs) run(kept, asked, seq).catch(() => undefined);
    return Promise.resolve(kept.last);
  };

  return {
    answer: async (asked, how) => {
      const stored = await store.farm(asked.farm);
      if (stored === null) return maker.make(asked);
      const kept = keptOf(JSON.stringify(asked));
      return how === 'settled' ? settled(kept, asked, stored.lastSeq) : fresh(kept, asked, stored.lastSeq);
    },
    close: () => maker.close(),
  };
}
