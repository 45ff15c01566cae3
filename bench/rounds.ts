/**
 * Plans delivery rounds from instance files and prints a JSON line for each: id, status, objective, bound, gap, seconds.
 * `npm run --silent bench:rounds -- FILES [--seconds 60] [--seed 1] [--seeds 3] [--tries 40000] [--only NAME]`
 * A file is one problem in our form `o3-1`, or an object of published problems by name. The best of the seeds counts; each is in `bySeed`.
 */
import { readFileSync } from 'node:fs';
import { basename } from 'node:path';
import { parseArgs } from 'node:util';
import { type RoundsProblem, rounds } from '@leywright/planner';
import { highsSolver } from '@leywright/server';
import { publishedRounds } from './published-rounds.ts';

const { values, positionals } = parseArgs({
  allowPositionals: true,
  options: {
    json: { type: 'boolean' }, // what is printed is JSON either way
    seconds: { type: 'string', default: '60' },
    seed: { type: 'string', default: '1' },
    seeds: { type: 'string', default: '3' },
    tries: { type: 'string', default: '' },
    only: { type: 'string', default: '' },
  },
});

const plain = (value: number | null) => (value === null ? null : Number(value.toFixed(6)));
const firstSeed = Number(values.seed);
const seeds = Array.from({ length: Number(values.seeds) }, (_, at) => firstSeed + at);
const solver = highsSolver();

async function line(problem: RoundsProblem, recorded: number | null): Promise<void> {
  const tries = values.tries === '' ? {} : { tries: Number(values.tries) };
  const ask = { seeds, ...tries, proofLimitS: Number(values.seconds) };
  const answer = await rounds.solveRounds(problem, ask, solver);
  const check = rounds.checkRounds(problem, answer.plan);
  const lateMin = check.late.reduce((sum, one) => sum + one.lateMin, 0);
  console.log(
    JSON.stringify({
      id: problem.name,
      status: answer.status,
      objective: plain(answer.figures.totalKm),
      bound: plain(answer.boundKm),
      gap: plain(answer.gapShare),
      seconds: Number(answer.elapsedS.toFixed(2)),
      recorded,
      bySeed: answer.bySeedKm.map(plain),
      lateMin: plain(lateMin),
      unserved: answer.plan.unserved.map((place) => problem.drops[place - 1]?.id),
      noProof: answer.whyNoProof,
      checked:
        check.faults.length === 0 && Math.abs(check.totalKm - answer.figures.totalKm) < 1e-6 ? 'agrees' : check.faults,
    }),
  );
}

let faultCount = 0;
for (const file of positionals) {
  const said: unknown = JSON.parse(readFileSync(file, 'utf8'));
  const published = typeof said === 'object' && said !== null && !('schema' in said) ? publishedRounds(said) : [];
  for (const { problem, optimum } of published)
    if (problem.name.startsWith(values.only ?? '')) await line(problem, optimum);
  if (published.length > 0) continue;
  const read = rounds.readRoundsProblem(said);
  if (read.kind === 'faults') {
    faultCount += read.faults.length;
    console.log(JSON.stringify({ id: file, status: 'faults', faults: read.faults }));
    continue;
  }
  const isNamed = typeof said === 'object' && said !== null && 'name' in said;
  const problem = isNamed ? read.problem : { ...read.problem, name: basename(file, '.json') };
  const expected = (said as { readonly expected?: { readonly bestKnownKm?: number | null } }).expected;
  await line(problem, expected?.bestKnownKm ?? null);
}
await solver.close();
process.exitCode = faultCount > 0 ? 1 : 0;
