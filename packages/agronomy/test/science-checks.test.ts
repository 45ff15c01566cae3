import { calcModels, runCheckTable } from '@leywright/agronomy';
import { describe, expect, test } from 'vitest';
import { readChecks } from './read-checks.ts';
import { noReferenceRuns, referenceRun } from './reference-runs.ts';

const rows = readChecks('science.csv').map((row) => ({
  id: '',
  inputs: '',
  expected: '',
  tolerance: '',
  source: '',
  how_known: '',
  ...row,
}));

describe('published values of the science', () => {
  test.for(rows)('$id agrees with $source ($how_known)', (row, { skip }) => {
    if (row.inputs.includes('"file"')) skip(noReferenceRuns !== null, noReferenceRuns ?? '');
    const [checked] = runCheckTable([row], referenceRun);
    expect(checked, JSON.stringify(checked)).toMatchObject({ status: 'met' });
  });

  test('every row was held, none passed over', () => {
    expect(runCheckTable(rows)).toHaveLength(66);
    expect(new Set(rows.map((row) => row.id)).size).toBe(66);
  });

  test('a figure is held in the decimals it is printed in, and no looser', () => {
    const held = (expected: string, tolerance: string) =>
      runCheckTable([{ id: 'x', inputs: '{"fn": "u2", "uz": 3.2, "z": 10}', expected, tolerance }])[0]?.status;
    expect(held('{"u2": 2.4}', '0.1')).toBe('met'); // 2.394
    expect(held('{"u2": 2.3}', '0.1')).toBe('met'); // printed 2.4
    expect(held('{"u2": 2.2}', '0.1')).toBe('missed');
    expect(held('{"u2": 2.4}', '0.001')).toBe('missed');
    expect(held('{"u2": 2.4}', '0')).toBe('missed');
  });

  test('every model has a title, a source, and a unit or a word for each thing that goes in and out', () => {
    for (const [name, model] of Object.entries(calcModels)) {
      expect(model.title, name).not.toBe('');
      expect(model.source, name).not.toBe('');
      for (const part of [...model.inputs, ...model.outputs]) expect(part.meaning, `${name}: ${part.key}`).not.toBe('');
    }
  });
});

describe('a table of checks', () => {
  const row = { id: 'a', inputs: '{"fn": "pressure", "z_m": 1800}', expected: '{"P_kPa": 81.8}', tolerance: '0.05' };

  test('says by how much a row was missed', () => {
    const [missed] = runCheckTable([{ ...row, expected: '{"P_kPa": 82}' }]);
    expect(missed?.status).toBe('missed');
    expect(missed?.off['P_kPa']).toBeCloseTo(0.2, 1);
  });

  test('a tolerance may be one number, one for each output, or a dash for exact', () => {
    expect(runCheckTable([{ ...row, tolerance: '{"P_kPa": 0.05}' }])[0]?.status).toBe('met');
    expect(runCheckTable([{ ...row, tolerance: '-' }])[0]?.status).toBe('missed');
    expect(runCheckTable([{ ...row, tolerance: '{"other": 9}' }])[0]?.status).toBe('missed');
  });

  test.each([
    ['an unknown model', { inputs: '{"fn": "constructor"}' }, 'there is no model'],
    ['an unknown input', { inputs: '{"fn": "pressure", "z_m": 1, "colour": 2}' }, 'colour: not-known'],
    ['a missing input', { inputs: '{"fn": "pressure"}' }, 'z_m: missing'],
    ['text where a number belongs', { inputs: '{"fn": "pressure", "z_m": "high"}' }, 'z_m: not-a-number'],
    ['lists of two lengths', { inputs: '{"fn": "es", "Tmax": [1, 2], "Tmin": [1]}' }, 'lists-differ-in-length'],
    ['an output it has not', { expected: '{"P_bar": 1}' }, 'gives no P_bar'],
    ['broken JSON', { inputs: '{' }, 'not a JSON object'],
  ])('%s is told as unknown, never passed over', (_, change, why) => {
    const [checked] = runCheckTable([{ ...row, ...change }]);
    expect(checked?.status).toBe('unknown');
    expect(checked?.why).toContain(why);
  });

  test('lists go element by element and single numbers are repeated', () => {
    const [checked] = runCheckTable([
      { id: 'b', inputs: '{"fn": "N", "lat": [0, 0], "J": 80}', expected: '{"N": [12, 12]}', tolerance: '0.01' },
    ]);
    expect(checked?.status).toBe('met');
  });
});
