/**
 * `npm run scenarios`: works every scenario out and, where figures are no longer what was expected, writes a page beside it
 * (`expected-changed.md`) with the old figure, the new one and the difference. It never changes what is expected: a person does.
 */
import { rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { type ExpectedFigure, judge, type Verdict } from '@leywright/farm-kit';
import { allScenarios, type Scenario } from '../scenarios/read-scenario.ts';

type Missed = readonly [figure: ExpectedFigure, verdict: Extract<Verdict, { kind: 'missed' }>];

function missedOf(scenario: Scenario): readonly Missed[] {
  return scenario.figures.flatMap((figure) => {
    const verdict = judge(scenario.outcome(), figure);
    return verdict.kind === 'missed' ? [[figure, verdict] as const] : [];
  });
}

function pageOf(changed: readonly (readonly [Scenario, readonly Missed[]])[]): string {
  return changed
    .map(([scenario, missed]) =>
      [
        `# ${scenario.name}: ${missed.length} of ${scenario.figures.length} figures are not as expected`,
        '',
        `Expected figures: ${scenario.source}. If the new figure is right, say why under *Numbers that change* in CHANGELOG.md and change expected.json by hand.`,
        '',
        '| Figure | Expected | Now | Difference | Where |',
        '| --- | --- | --- | --- | --- |',
        ...missed.map(
          ([figure, verdict]) =>
            `| ${figure.what} | ${verdict.expected} | ${JSON.stringify(verdict.got)} | ${verdict.off === null ? '' : Number(verdict.off.toPrecision(4))} | \`${figure.at}\` |`,
        ),
        '',
      ].join('\n'),
    )
    .join('\n');
}

const byFolder = new Map<string, (readonly [Scenario, readonly Missed[]])[]>();
for (const scenario of allScenarios()) {
  byFolder.set(scenario.folder, [...(byFolder.get(scenario.folder) ?? []), [scenario, missedOf(scenario)]]);
}

let changedFigures = 0;
for (const [folder, results] of byFolder) {
  const changed = results.filter(([, missed]) => missed.length > 0);
  const page = join(folder, 'expected-changed.md');
  rmSync(page, { force: true });
  if (changed.length === 0) continue;
  changedFigures += changed.reduce((sum, [, missed]) => sum + missed.length, 0);
  writeFileSync(page, pageOf(changed));
  console.log(`Changed: ${page}`);
}
console.log(
  changedFigures === 0
    ? `${byFolder.size} scenarios, every figure as expected.`
    : `${changedFigures === 1 ? '1 figure is' : `${changedFigures} figures are`} not as expected; the pages say which.`,
);
process.exitCode = changedFigures === 0 ? 0 : 1;
