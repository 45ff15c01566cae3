/**
 * How much one server bears: 60 % pulls, 30 % pushes of one entry, 9 % plans read, 1 % sign-ins, asked from this same machine. Seeks the highest
 * rate that is held for `--seconds` (60) with no error and p99 under 100 ms, on SQLite, and on PostgreSQL where one is to be had.
 * One JSON object a store with `--json`. `--rate N` holds one rate alone; `--store sqlite|postgres`.
 */
import { type ChildProcess, fork } from 'node:child_process';
import { join } from 'node:path';
import { parseArgs } from 'node:util';
import { build } from 'esbuild';
import { startPostgres } from '../packages/store/test/postgres-server.ts';
import { nodeBundle } from '../scripts/ready/build.mjs';
import { ask, type Counted, load, type Target } from './load-generator.ts';

const { values } = parseArgs({
  options: {
    seconds: { type: 'string', default: '60' },
    rate: { type: 'string' },
    store: { type: 'string' },
    json: { type: 'boolean' },
  },
});
const seconds = Number(values.seconds);
const onlyRate = values.rate === undefined ? null : Number(values.rate);
if (!(seconds > 0) || (onlyRate !== null && !(onlyRate > 0))) {
  console.error('--seconds and --rate are numbers above nought.');
  process.exit(2);
}

const program = await builtServer();
const longestP99Ms = 100;
const probeSeconds = Math.min(8, seconds);
const firstRate = 60;
const hands = 20;
const password = 'leeks under snow';

type Word = { readonly origin: string; readonly farm: string; readonly lastSeq: number } & { readonly rssMb: number };

function word(child: ChildProcess): Promise<Word> {
  return new Promise((resolve, reject) => {
    child.once('message', (said) => resolve(said as Word));
    child.once('exit', (code) => reject(new Error(`the server ended with ${code}`)));
  });
}

async function memoryMb(child: ChildProcess): Promise<number> {
  child.send('memory');
  return (await word(child)).rssMb;
}

function isHeld({ errors, p99Ms }: Counted): boolean {
  return errors === 0 && p99Ms < longestP99Ms;
}

async function signIn(origin: string, farm: string, person: number): Promise<string> {
  const body = JSON.stringify({ farm, person: `hand-${person}`, password });
  const { headers } = await ask(origin, { method: 'POST', path: '/api/sign-in', body, cookie: null });
  return String(headers['set-cookie']).split(';')[0] ?? '';
}

/** Doubles until a rate is not held, then halves the gap five times; each try is short. */
async function seekRate(target: Target): Promise<number> {
  let held = 0;
  let missed: number | null = null;
  for (let rate = firstRate; missed === null && rate <= 4000; rate *= 2) {
    if (isHeld(await load(target, rate, probeSeconds))) held = rate;
    else missed = rate;
  }
  for (let step = 0; missed !== null && step < 4; step += 1) {
    const rate: number = Math.round((held + missed) / 2);
    if (isHeld(await load(target, rate, probeSeconds))) held = rate;
    else missed = rate;
  }
  return held;
}

/** Bundled as the real server is, its thread beside it. */
async function builtServer(): Promise<string> {
  const project = join(import.meta.dirname, '..');
  const output = '.cache/bench/load-server.mjs';
  const product = {
    name: 'load bench',
    entry: 'bench/load-server.ts',
    output,
    sources: [],
    make: async () => undefined,
  };
  await build(nodeBundle(project, product));
  return join(project, output);
}

async function bench(store: string, url: string | null) {
  const child = fork(program, url === null ? [] : [url]);
  try {
    const { origin, farm, lastSeq } = await word(child);
    const cookies: string[] = [];
    for (let at = 0; at < hands; at += 1) cookies.push(await signIn(origin, farm, at));
    const target: Target = { origin, farm, lastSeq, cookies, password };
    await load(target, firstRate / 2, 3);
    let rate = onlyRate ?? (await seekRate(target));
    // What is held for some seconds may not be for a minute: then a tenth less, until it is.
    for (;;) {
      const rssBeforeMb = await memoryMb(child);
      const counted = await load(target, Math.max(1, rate), seconds);
      const { firstError, ...figures } = counted;
      const heldRate = isHeld(counted);
      if (heldRate || onlyRate !== null || rate <= 1)
        return {
          store,
          ratePerSecond: rate,
          held: heldRate,
          seconds,
          ...figures,
          rssBeforeMb,
          rssMb: await memoryMb(child),
          firstError,
        };
      rate = Math.floor(rate * 0.9);
    }
  } finally {
    child.send('stop');
  }
}

function tell(figures: Awaited<ReturnType<typeof bench>>): void {
  if (values.json === true) console.log(JSON.stringify(figures));
  else {
    const { store, ratePerSecond, held, p50Ms, p99Ms, errors, rssMb } = figures;
    console.log(
      `${store}: ${ratePerSecond} a second ${held ? 'held' : 'not held'} for ${seconds} s, p50 ${p50Ms} ms, p99 ${p99Ms} ms, ${errors} errors, ${rssMb} MB`,
    );
  }
}

if (values.store !== 'postgres') tell(await bench('sqlite', null));
if (values.store !== 'sqlite') {
  const postgres = await startPostgres();
  if (postgres.kind === 'none') console.error(`PostgreSQL is left out: ${postgres.why}`);
  else {
    const place = await postgres.newDatabase();
    try {
      tell(await bench('postgres', place.url));
    } finally {
      await postgres.stop();
    }
  }
}
process.exit(0);
