/** Every scenario through the real importer and planner; one assertion a figure. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { judge } from '@leywright/farm-kit';
import { describe, expect, test } from 'vitest';
import { allScenarios } from './read-scenario.ts';

const scenarios = allScenarios();

describe.each(scenarios.map((scenario) => [scenario.name, scenario] as const))('%s', (_, scenario) => {
  test.each(scenario.figures.map((figure) => [figure.what, figure] as const))('%s', (_what, figure) => {
    const verdict = judge(scenario.outcome(), figure);
    const missed =
      verdict.kind === 'missed'
        ? `${figure.what} (${figure.at}): got ${JSON.stringify(verdict.got)}, expected ${verdict.expected}. Source: ${scenario.source}`
        : '';
    expect(missed, missed).toBe('');
  });
});

describe('every scenario is complete', () => {
  test.each([...new Set(scenarios.map((scenario) => scenario.folder))])(
    '%s asks its question in words and says where its figures come from',
    (folder) => {
      expect(readFileSync(join(folder, 'question.md'), 'utf8')).toMatch(/^# .+\?/);
      for (const scenario of scenarios.filter((one) => one.folder === folder)) {
        expect(scenario.source).not.toBe('');
        expect(scenario.figures.length).toBeGreaterThan(0);
      }
    },
  );
});
