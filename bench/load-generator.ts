/** Asks a server at a steady rate and times each answer from when it was due, so that a slow answer cannot hide those behind it. */
import { Agent, request } from 'node:http';

export interface Target {
  readonly origin: string;
  readonly farm: string;
  /** Of the book when the bench began. */
  lastSeq: number;
  readonly cookies: readonly string[];
  readonly password: string;
}

export interface Counted {
  readonly requests: number;
  readonly errors: number;
  readonly p50Ms: number;
  readonly p99Ms: number;
  readonly worstMs: number;
  /** p99 by kind, and how far plans were behind the book. */
  readonly p99ByKindMs: Readonly<Record<Kind, number>>;
  readonly plansBehindEntries: number;
  readonly firstError: string | null;
}

const kinds = ['pull', 'push', 'plan', 'sign-in'] as const;
export type Kind = (typeof kinds)[number];

/** 60 % pulls, 30 % pushes of one entry, 9 % plans read, 1 % sign-ins, in an order that repeats every hundred. */
const order: readonly Kind[] = Array.from({ length: 100 }, (_, at) => {
  const place = (at * 37) % 100;
  if (place < 60) return 'pull';
  if (place < 90) return 'push';
  return place < 99 ? 'plan' : 'sign-in';
});

interface Asked {
  readonly method: 'GET' | 'POST';
  readonly path: string;
  readonly body: string | null;
  readonly cookie: string | null;
}

export interface Answered {
  readonly status: number;
  readonly text: string;
  readonly headers: NodeJS.Dict<string | string[]>;
}

const agent = new Agent({ keepAlive: true, maxSockets: 64 });
let entryCount = 0;

/** One person of each weighs something. */
function pushOf({ farm }: Target, person: number): string {
  entryCount += 1;
  const entry = {
    v: 1,
    id: `01900000-0000-7000-${(8 + (process.pid % 4)).toString(16)}${String(Date.now() % 1000).padStart(3, '0')}-${String(entryCount).padStart(12, '0')}`,
    farm,
    doneOn: '2027-06-07',
    doneAt: '07:30',
    enteredAt: '2027-06-07T06:30:00Z',
    by: `hand-${person}`,
    device: `phone-${person}`,
    deviceSeq: entryCount,
    body: { kind: 'weighing', crop: 'carrot-maincrop', store: 'cold-store', kg: 100 + (entryCount % 300) },
    amends: null,
    reason: null,
  };
  return JSON.stringify({ entries: [entry] });
}

function askedOf(kind: Kind, target: Target, at: number): Asked {
  const person = at % target.cookies.length;
  const cookie = target.cookies[person] ?? null;
  const farm = `/api/farms/${target.farm}`;
  if (kind === 'pull') {
    // A phone that was out of signal for a while: up to twenty entries are new to it.
    const after = Math.max(0, target.lastSeq - (at % 20));
    return { method: 'GET', path: `${farm}/entries?after=${after}`, body: null, cookie };
  }
  if (kind === 'push') return { method: 'POST', path: `${farm}/entries`, body: pushOf(target, person), cookie };
  if (kind === 'plan') return { method: 'GET', path: `${farm}/plan?settled=true`, body: null, cookie };
  const body = JSON.stringify({ farm: target.farm, person: `hand-${person}`, password: target.password });
  return { method: 'POST', path: '/api/sign-in', body, cookie: null };
}

export function ask(origin: string, { method, path, body, cookie }: Asked): Promise<Answered> {
  return new Promise((resolve, reject) => {
    const sent = request(
      origin + path,
      {
        method,
        agent,
        headers: {
          'accept-encoding': 'gzip',
          ...(method === 'POST' ? { origin, 'content-type': 'application/json' } : {}),
          ...(cookie === null ? {} : { cookie }),
        },
      },
      (answer) => {
        const pieces: Buffer[] = [];
        // Two megabytes of plan are counted, not kept.
        const isKept = !path.includes('/plan');
        answer.on('data', (piece: Buffer) => isKept && pieces.push(piece));
        answer.on('end', () =>
          resolve({
            status: answer.statusCode ?? 0,
            text: Buffer.concat(pieces).toString('utf8'),
            headers: answer.headers,
          }),
        );
        answer.on('error', reject);
      },
    );
    sent.on('error', reject);
    sent.end(body ?? undefined);
  });
}

interface Tally {
  readonly timesMs: Record<Kind, number[]>;
  readonly behind: number[];
  errors: number;
  firstError: string | null;
}

async function one(target: Target, tally: Tally, { kind, at, dueMs }: { kind: Kind; at: number; dueMs: number }) {
  try {
    const { status, text, headers } = await ask(target.origin, askedOf(kind, target, at));
    tally.timesMs[kind].push(performance.now() - dueMs);
    if (status !== 200) throw new Error(`${kind}: ${status} ${text.slice(0, 200)}`);
    if (kind === 'push') target.lastSeq = Math.max(target.lastSeq, (JSON.parse(text) as { lastSeq: number }).lastSeq);
    if (kind === 'plan') tally.behind.push(Math.max(0, target.lastSeq - Number(headers['x-book-seq'])));
  } catch (error) {
    tally.errors += 1;
    tally.firstError ??= error instanceof Error ? error.message : String(error);
  }
}

const tickMs = 5;

/** Holds `ratePerSecond` for `seconds` and counts. */
export async function load(target: Target, ratePerSecond: number, seconds: number): Promise<Counted> {
  const tally: Tally = {
    timesMs: { pull: [], push: [], plan: [], 'sign-in': [] },
    behind: [],
    errors: 0,
    firstError: null,
  };
  const startMs = performance.now();
  const total = Math.round(ratePerSecond * seconds);
  const running: Promise<void>[] = [];
  for (let at = 0; at < total; ) {
    const dueCount = Math.min(total, Math.floor(((performance.now() - startMs) / 1000) * ratePerSecond) + 1);
    for (; at < dueCount; at += 1)
      running.push(
        one(target, tally, { kind: order[at % 100] ?? 'pull', at, dueMs: startMs + (at / ratePerSecond) * 1000 }),
      );
    await new Promise((next) => setTimeout(next, tickMs));
  }
  await Promise.all(running);
  const all = kinds.flatMap((kind) => tally.timesMs[kind]);
  return {
    requests: total,
    errors: tally.errors,
    p50Ms: share(all, 0.5),
    p99Ms: share(all, 0.99),
    worstMs: share(all, 1),
    p99ByKindMs: Object.fromEntries(kinds.map((kind) => [kind, share(tally.timesMs[kind], 0.99)])) as Record<
      Kind,
      number
    >,
    plansBehindEntries: share(tally.behind, 0.99),
    firstError: tally.firstError,
  };
}

function share(values: readonly number[], part: number): number {
  const sorted = [...values].sort((a, b) => a - b);
  const found = sorted[Math.max(0, Math.ceil(sorted.length * part) - 1)] ?? 0;
  return Math.round(found * 10) / 10;
}
