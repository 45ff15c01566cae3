/**
 * Plans rotations from instance files and prints a JSON line for each: id, status, objective, bound, gap, seconds.
 * `npm run --silent bench:rotation -- FILES [--json] [--seconds 60] [--gap 0] [--formulation flow|assignment]`
 */
import { readFileSync } from 'node:fs';
import { parseArgs } from 'node:util';
import { type PlotRule, type RotationAnswer, type RotationProblem, rotations } from '@leywright/planner';
import { highsSolver } from '@leywright/server';

const { values, positionals } = parseArgs({
  allowPositionals: true,
  options: {
    json: { type: 'boolean' }, // what is printed is JSON either way
    seconds: { type: 'string', default: '60' },
    gap: { type: 'string', default: '0' },
    formulation: { type: 'string', default: 'flow' },
  },
});

const finite = (value: number) => (Number.isFinite(value) ? Number(value.toFixed(9)) : null);

function lineOf(problem: RotationProblem, answer: RotationAnswer) {
  const id = problem.name;
  const seconds = Number(answer.elapsedS.toFixed(2));
  if (answer.kind === 'no-plan') {
    const conflicts = answer.plots.map((plotIndex) => ({
      plot: problem.plots[plotIndex]?.id,
      rules: (rotations.conflictOf(problem, plotIndex)?.rules ?? []).map(wordsOf),
    }));
    return { id, status: 'infeasible', objective: null, bound: null, gap: null, seconds, conflicts };
  }
  return {
    id,
    status: answer.status,
    objective: finite(answer.totalScore),
    bound: finite(answer.boundScore),
    gap: finite(answer.gapShare),
    seconds,
  };
}

/** A rule in as few words as a line bears. */
function wordsOf(rule: PlotRule): string {
  switch (rule.kind) {
    case 'follows':
      return `${rule.course} only after ${rule.after.join(' ')}`;
    case 'followed-by':
      return `${rule.course} followed by ${rule.next}`;
    case 'since-ley':
      return `${rule.course} at most ${rule.mostYears} years after the ley`;
    case 'never':
      return `never ${rule.course}`;
    case 'barred':
      return `${rule.course} not in years ${rule.years.join(' ')}`;
    case 'rest':
      return `rest of ${rule.organism} ${rule.restYears} years`;
    case 'pin':
      return `pin year ${rule.year} ${rule.course}`;
  }
}

const solver = highsSolver();
let faultCount = 0;
for (const file of positionals) {
  const read = rotations.readRotationProblem(JSON.parse(readFileSync(file, 'utf8')));
  if (read.kind === 'faults') {
    faultCount += read.faults.length;
    console.log(JSON.stringify({ id: file, status: 'faults', faults: read.faults }));
    continue;
  }
  const { problem } = read;
  const ask = {
    timeLimitS: Number(values.seconds),
    gapShare: Number(values.gap),
    formulation: values.formulation === 'assignment' ? ('assignment' as const) : ('flow' as const),
  };
  const answer = await rotations.solveRotation(problem, ask, solver);
  console.log(JSON.stringify(lineOf(problem, answer)));
  if (answer.kind === 'plan' && answer.failure !== null) console.error(answer.failure);
}
await solver.close();
process.exitCode = faultCount > 0 ? 1 : 0;
