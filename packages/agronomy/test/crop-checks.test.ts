import { readFileSync } from 'node:fs';
import { reference } from '@leywright/agronomy';
import { describe, expect, test } from 'vitest';
import { answerTo } from './crop-check-answers.ts';
import { readChecks } from './read-checks.ts';

const rows = readChecks('crops.csv').map((row) => ({
  id: '',
  question: '',
  source: '',
  how_known: '',
  expected: '',
  tolerance: '',
  unit: '',
  ...row,
}));
const page = readFileSync(new URL('../../../docs/science/crop-checks.md', import.meta.url), 'utf8');
/** First column of the page's table: the rows that are not met, each with its reason. */
const excused = [...page.matchAll(/^\| `([a-z0-9-]+)` *\|/gm)].map((match) => match[1] ?? '');

function agrees(row: (typeof rows)[number]): boolean {
  const got = answerTo(row);
  return got !== null && Math.abs(got - Number(row.expected)) <= Number(row.tolerance) + 1e-9;
}

describe('published figures of the trade', () => {
  test.each(rows.filter((row) => !excused.includes(row.id)))(
    '$question: $expected $unit ($source, $how_known)',
    (row) => {
      const got = answerTo(row);
      expect(got, 'our code has no answer; give it one or list the row with its reason').not.toBeNull();
      expect(
        Math.abs((got ?? 0) - Number(row.expected)),
        `${got} where ${row.expected} ± ${row.tolerance} ${row.unit} is published`,
      ).toBeLessThanOrEqual(Number(row.tolerance) + 1e-9);
    },
  );

  test('the page of exceptions lists exactly the rows that are not met, each with a reason', () => {
    expect([...excused].sort()).toEqual(
      rows
        .filter((row) => !agrees(row))
        .map((row) => row.id)
        .sort(),
    );
    for (const line of page.split('\n').filter((text) => /^\| `/.test(text)))
      expect(line.split('|')[3]?.trim().length, line).toBeGreaterThan(20);
  });

  test('all rows were held, none passed over', () => {
    expect(rows).toHaveLength(152);
    expect(new Set(rows.map((row) => row.id)).size).toBe(152);
  });

  test('a leek as sold weighs less than the whole plant that was measured (Benjamin 1984 as quoted by Brewster 2008)', () => {
    expect(reference.crops.get('leek-mid')?.massPerPlantTypG).toBeLessThan(261);
  });

  test('the derived thermal time of peas lies within the published band (University of Delaware)', () => {
    const pea = reference.crops.get('pea');
    expect(pea?.ttDerivedCd).toBeGreaterThanOrEqual(pea?.ttLowCd ?? Number.NaN);
    expect(pea?.ttDerivedCd).toBeLessThanOrEqual(pea?.ttHighCd ?? Number.NaN);
  });
});
