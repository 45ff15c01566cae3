import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { httpShapes } from '@leywright/api';
import { describe, expect, test } from 'vitest';
import { leywright, newFolder } from './leywright.ts';

function checksFile(rows: readonly string[]): string {
  const path = join(newFolder(), 'checks.csv');
  writeFileSync(path, ['id,topic,inputs,expected,tolerance,source,how_known', ...rows].join('\n'));
  return path;
}

// FAO-56, example 2: 81.8 kPa at 1800 m.
const met = 'et-01,ETo,"{""fn"": ""pressure"", ""z_m"": 1800}","{""P_kPa"": 81.8}",0.05,FAO-56 Example 2,verified';
const missed = 'et-x,ETo,"{""fn"": ""pressure"", ""z_m"": 1800}","{""P_kPa"": 90}",0.05,invented,memory';
const unknown = 'et-y,ETo,"{""fn"": ""nothing"", ""z_m"": 1800}","{""P_kPa"": 90}",0.05,invented,memory';

describe('leywright calc', () => {
  // FAO-56, example 2.
  test('runs a model by name on JSON from standard input', async () => {
    const { code, out } = await leywright(['calc', 'pressure', '--json'], '{"z_m": 1800}');
    expect(code).toBe(0);
    const answer = httpShapes.calcAnswer.parse(JSON.parse(out));
    expect(Number(answer.outputs['P_kPa'])).toBeCloseTo(81.8, 1);
    expect(answer.units['P_kPa']).toBe('kPa');
  });

  test('prints outputs with their units for people', async () => {
    const { out } = await leywright(['calc', 'pressure'], '{"z_m": 1800}');
    expect(out).toMatch(/P_kPa +81\.\d+ +kPa/);
  });

  test('lists its models with inputs and outputs', async () => {
    const { out } = await leywright(['calc', '--list', '--json']);
    const { models } = httpShapes.calcModels.parse(JSON.parse(out));
    expect(models.map((model) => model.model)).toEqual(
      expect.arrayContaining(['pressure', 'N', 'ETo_day', 'canopy_cover']),
    );
    const table = (await leywright(['calc', '--list'])).out;
    expect(Math.max(...table.split('\n').map((line) => line.length))).toBeLessThanOrEqual(100);
  });

  test('tells what one model takes and gives, with units and source', async () => {
    const { code, out } = await leywright(['calc', 'Hargreaves', '--help']);
    expect(code).toBe(0);
    expect(out).toMatch(/Source: FAO-56/);
    expect(out).toMatch(/Tmax +C +number +highest temperature/);
    expect(out).toMatch(/Ra\? +MJ\/m2\/d/);
    expect(out).toMatch(/ETo +mm\/d/);
    expect(Math.max(...out.split('\n').map((line) => line.length))).toBeLessThanOrEqual(120);
    expect((await leywright(['calc', 'Hargreves', '--help'])).err).toContain('Did you mean Hargreaves?');
  });

  test('lists the models that have a word in their name or title', async () => {
    const { out } = await leywright(['calc', '--list', 'residue', '--json']);
    const { models } = httpShapes.calcModels.parse(JSON.parse(out));
    expect(models.map((model) => model.model)).toEqual(expect.arrayContaining(['nicolardot', 'fT_residue']));
    expect(models.map((model) => model.model)).not.toContain('pressure');
  });

  test.each([
    [['calc'], '', 'Say which model'],
    [['calc', 'presure'], '{}', 'Did you mean pressure?'],
    [['calc', 'pressure'], 'z_m = 3', 'not a JSON object'],
    [['calc', 'pressure'], '{}', 'z_m is missing.'],
    [['calc', 'pressure'], '{"z_m": "high"}', 'is not a number'],
    [['calc', 'constructor'], '{}', 'There is no model "constructor".'],
  ])('%j on "%s" is answered in words, with 2', async (words, input, sentence) => {
    const { code, err } = await leywright(words, input);
    expect(code).toBe(2);
    expect(err).toContain(sentence);
  });
});

describe('leywright calc --checks', () => {
  test('leaves with 0 when every published value is met', async () => {
    const { code, out } = await leywright(['calc', '--checks', checksFile([met]), '--json']);
    expect(code).toBe(0);
    expect(httpShapes.checkedRows.parse(JSON.parse(out)).rows).toMatchObject([{ id: 'et-01', status: 'met' }]);
  });

  test('leaves with 1 when one is missed or unknown, and passes none over', async () => {
    const { code, out } = await leywright(['calc', '--checks', checksFile([met, missed, unknown]), '--json']);
    expect(code).toBe(1);
    expect(httpShapes.checkedRows.parse(JSON.parse(out)).rows.map((row) => row.status)).toEqual([
      'met',
      'missed',
      'unknown',
    ]);
    expect((await leywright(['calc', '--checks', checksFile([met, missed, unknown])])).out).toContain(
      '1 met, 1 missed, 1 unknown, of 3.',
    );
  });

  test('leaves with 2 from a table that cannot be read', async () => {
    expect((await leywright(['calc', '--checks', 'no-such.csv'])).code).toBe(2);
    const path = join(newFolder(), 'other.csv');
    writeFileSync(path, 'name,value\nx,1\n');
    expect((await leywright(['calc', '--checks', path])).err).toContain(
      'it needs the columns id, inputs, expected and tolerance',
    );
  });
});
