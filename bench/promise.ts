/**
 * Plans promises from instance files and prints a JSON line for each: id, status, objective, bound, gap, seconds are of the linear plan;
 * `wholeBeds` has the same of the plan in whole beds, and `breaches` what the plain checker finds in both.
 * `npm run --silent bench:promise -- FILES [--seconds 120] [--proof 60] [--gap 0.01] [--no-beds]`
 */
import { readFileSync } from 'node:fs';
import { parseArgs } from 'node:util';
import { type PromiseAnswer, type PromiseProblem, promises } from '@leywright/planner';
import { highsKeeper, highsSolver } from '@leywright/server';

const { values, positionals } = parseArgs({
  allowPositionals: true,
  options: {
    json: { type: 'boolean' }, // what is printed is JSON either way
    seconds: { type: 'string', default: '120' },
    proof: { type: 'string', default: '60' },
    gap: { type: 'string', default: '0.01' },
    'no-beds': { type: 'boolean', default: false },
  },
});

const finite = (value: number) => (Number.isFinite(value) ? Number(value.toFixed(6)) : null);

function wholeBedsLine(problem: PromiseProblem, { wholeBeds }: PromiseAnswer) {
  if (wholeBeds === null) return null;
  return {
    objective: finite(wholeBeds.totalScore),
    bound: finite(wholeBeds.boundScore),
    gap: finite(wholeBeds.gapShare),
    seconds: finite(wholeBeds.elapsedS),
    provenSeconds: finite(wholeBeds.provenS),
    breaches: promises.promiseBreaches(problem, wholeBeds.plan).length,
  };
}

const solver = highsSolver();
const machine = { solver, keeper: highsKeeper() };
let faultCount = 0;
for (const file of positionals) {
  const read = promises.readPromiseProblem(JSON.parse(readFileSync(file, 'utf8')));
  if (read.kind === 'faults') {
    faultCount += read.faults.length;
    console.log(JSON.stringify({ id: file, status: 'faults', faults: read.faults }));
    continue;
  }
  const { problem } = read;
  const ask = {
    timeLimitS: Number(values.seconds),
    wholeBeds: !values['no-beds'],
    proofS: Number(values.proof),
    proofGapShare: Number(values.gap),
  };
  const before = process.cpuUsage();
  const answer = await promises.solvePromise(problem, ask, machine);
  const spent = process.cpuUsage(before);
  console.log(
    JSON.stringify({
      id: problem.name,
      status: answer.status,
      objective: finite(answer.totalScore),
      bound: finite(answer.boundScore),
      gap: finite(answer.gapShare),
      seconds: finite(answer.elapsedS),
      breaches: answer.plan === null ? null : promises.promiseBreaches(problem, answer.plan).length,
      wholeBeds: wholeBedsLine(problem, answer),
      cpuSeconds: finite((spent.user + spent.system) / 1e6),
    }),
  );
  if (answer.failure !== null) console.error(answer.failure);
}
await solver.close();
process.exitCode = faultCount > 0 ? 1 : 0;
