import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { findingShapes, planShapes, rotationShapes, toldShapes } from '@leywright/api';
import { describe, expect, test } from 'vitest';
import { farmFolder, leywright, on, project, smallFarm } from './leywright.ts';

const { covers: coversShape } = rotationShapes;
const demo = join(project, 'demo');
const badPlots = 'id,letter,name,gross_ha,status\na,A,Ash,x,organic\na,B,Brook,1,organik\n';

function widestLine(text: string): number {
  return Math.max(...text.split('\n').map((line) => line.length));
}

describe('leywright plan', () => {
  test('prints the whole chain as JSON of the shape in docs/schema', async () => {
    const { code, out } = await leywright(['plan', demo, '--json', ...on]);
    const plan = planShapes.plan.parse(JSON.parse(out));
    expect(code).toBe(0);
    expect(plan).toMatchObject({ today: '2027-06-08', year: 2027, farm: { sample: true } });
    expect(plan.ground.length).toBeGreaterThanOrEqual(7);
  });

  test('says the same twice, to the last digit', async () => {
    const [first, second] = await Promise.all([
      leywright(['plan', demo, '--json', ...on]),
      leywright(['plan', demo, '--json', ...on]),
    ]);
    expect(first.out).toBe(second.out);
  });

  test('follows the year and the day that are given', async () => {
    const { out } = await leywright(['plan', demo, '--json', '--year', '2029', '--today', '2028-01-05']);
    expect(JSON.parse(out)).toMatchObject({ today: '2028-01-05', year: 2029 });
  });

  test('is legible in a hundred columns', async () => {
    const { code, out } = await leywright(['plan', demo, ...on]);
    expect(code).toBe(0);
    expect(widestLine(out)).toBeLessThanOrEqual(100);
    expect(out).toContain('sample farm, invented');
    expect(out).toContain('Ash Piece');
    expect(out).not.toContain('undefined');
  });

  test('stops at findings only when it is asked to', async () => {
    expect((await leywright(['plan', demo, '--json', ...on, '--stop-at', 'note'])).code).toBe(1);
  });
});

describe('leywright check', () => {
  test('leaves with 1 when there is something to put right, and names it in its place', async () => {
    const { code, out } = await leywright(['check', demo, ...on]);
    expect(code).toBe(1);
    expect(out).toMatch(/^To put right \(\d+\)/);
    expect(out).toContain('Far Ridding');
    expect(widestLine(out)).toBeLessThanOrEqual(100);
  });

  test('prints findings with their sentences as JSON', async () => {
    const { out } = await leywright(['check', demo, '--json', ...on]);
    const told = toldShapes.findings.parse(JSON.parse(out));
    expect(told.toPutRight).toBe(told.findings.filter((finding) => finding.gravity === 'put-right').length);
    for (const finding of told.findings) {
      expect([finding.title, finding.sentence, finding.cause, ...finding.mends].join(' ')).not.toContain('…');
      expect(finding.mends.length, finding.code).toBeGreaterThan(0);
    }
  });

  test('leaves with 0 from a farm with nothing to put right', async () => {
    const { code, err } = await leywright(['check', farmFolder(smallFarm), ...on]);
    expect([code, err]).toEqual([0, '']);
  });

  test('says all that is wrong with a folder at once, reads nothing of it, and leaves with 2', async () => {
    const { code, out, err } = await leywright(['check', farmFolder({ ...smallFarm, 'plots.csv': badPlots }), ...on]);
    expect([code, out]).toEqual([2, '']);
    expect(err).toContain('plots.csv, line 2, gross_ha: "x" is not a number.');
    expect(err).toMatch(/plots\.csv, line 3, status: .*organic/);
  });

  test('prints what is wrong with a folder as JSON when it is asked for JSON', async () => {
    const { code, out } = await leywright([
      'check',
      farmFolder({ ...smallFarm, 'plots.csv': badPlots }),
      '--json',
      ...on,
    ]);
    expect(code).toBe(2);
    const { problems } = JSON.parse(out) as { problems: { file: string; line: number; sentence: string }[] };
    expect(problems.length).toBeGreaterThanOrEqual(2);
    expect(problems[0]).toMatchObject({ file: 'plots.csv' });
  });
});

describe('leywright why', () => {
  test('opens a figure to its sum, its inputs and their sources', async () => {
    const { code, out } = await leywright(['why', demo, 'net/c', ...on]);
    expect(code).toBe(0);
    expect(out).toContain('Cinder Hill');
    expect(widestLine(out)).toBeLessThanOrEqual(100);
  });

  test('gives the same as JSON of the shape in docs/schema', async () => {
    const why = findingShapes.toldWhy.parse(JSON.parse((await leywright(['why', demo, 'net/c', '--json', ...on])).out));
    expect(why.value).toBeGreaterThan(0);
    expect(why.inputs.length).toBeGreaterThan(0);
  });

  test('says which figure there is not', async () => {
    const { code, err } = await leywright(['why', demo, 'net/nowhere', ...on]);
    expect([code, err.trim()]).toEqual([2, 'There is no figure "net/nowhere" in this plan.']);
  });
});

describe('words that cannot be right', () => {
  test.each([
    [['plan'], 'Say which farm'],
    [['plan', 'no/such/folder'], 'There is no folder or zip "no/such/folder".'],
    [['plan', join(project, 'package.json')], 'not a zip'],
    [['plan', demo, '--year', 'soon'], '--year: "soon" is not a year.'],
    [['plan', demo, '--today', '2027-02-30'], '--today: "2027-02-30" is not a day'],
    [['check', demo, '--stop-at', 'red'], '--stop-at: "red" is not put-right, look or note.'],
    [['plan', demo, 'twice'], '"twice" is one word too many.'],
    [['why', demo], 'Say which figure'],
    [['plann', demo], 'There is no command "plann". Did you mean plan?'],
    [['plan', demo, '--colour'], '--colour'],
  ])('%j is answered in words, with 2', async (words, sentence) => {
    const { code, out, err } = await leywright(words);
    expect([code, out]).toEqual([2, '']);
    expect(err).toContain(sentence);
    expect(err).not.toMatch(/\n\s+at /);
  });

  test('all wrong options are told at once', async () => {
    const { err } = await leywright(['plan', demo, '--year', 'x', '--today', 'y', '--stop-at', 'z']);
    expect(err.trim().split('\n')).toHaveLength(3);
  });

  test('without words the help is shown, and every command in it is there', async () => {
    const { code, out } = await leywright([]);
    expect(code).toBe(2);
    expect((await leywright(['--help'])).code).toBe(0);
    const named = [...out.matchAll(/^ {2}leywright ([a-z-]+)/gm)].map((match) => match[1] ?? '');
    const docs = readFileSync(join(project, 'docs', 'cli.md'), 'utf8');
    for (const name of named) expect(docs, name).toContain(`leywright ${name}`);
  });
});

describe('leywright rotation', () => {
  test('proposes a rotation for the sample farm with what each cell would cost otherwise', async () => {
    const { code, out } = await leywright(['rotation', 'demo', '--years', '4', '--seconds', '5', '--json']);
    const told = JSON.parse(out) as { kind: string; status: string; plots: { years: { course: string }[] }[] };
    expect(code).toBe(0);
    expect(told.kind).toBe('proposal');
    expect(told.plots).toHaveLength(6);
    expect(rotationShapes.rotation.safeParse(told).error?.issues).toBeUndefined();
  }, 60_000);

  test('names the rules that conflict with a wish, and leaves with 1', async () => {
    const { code, out } = await leywright([
      'rotation',
      'demo',
      '--years',
      '4',
      '--seconds',
      '5',
      '--pin',
      'b:2027:potatoes',
    ]);
    expect(code).toBe(1);
    expect(out).toContain('Potatoes is to stand here in 2027');
    expect(out).toContain('Potatoes cannot stand here in 2027');
  }, 60_000);

  test('says everything wrong with its options at once', async () => {
    const { code, err } = await leywright(['rotation', 'demo', '--years', '40', '--pin', 'b-2027', '--today', 'soon']);
    expect(code).toBe(2);
    expect(err).toContain('--years: "40"');
    expect(err).toContain('--pin: write PLOT:YEAR:COURSE');
    expect(err).toContain('--today: "soon"');
    expect((await leywright(['rotation', 'demo', '--never', 'b:potatos'])).err).toContain('Did you mean potatoes');
  });
});

describe('leywright covers', () => {
  test('ranks covers for every gap, each with its reasons', async () => {
    const { code, out } = await leywright(['covers', demo, '--json', ...on]);
    const told = coversShape.parse(JSON.parse(out));
    expect(code).toBe(0);
    expect(told.gaps.length).toBeGreaterThan(3);
    for (const gap of told.gaps) for (const choice of gap.choices) expect(choice.reasons.length).toBeGreaterThan(3);
    expect(widestLine((await leywright(['covers', demo, ...on])).out)).toBeLessThanOrEqual(100);
  });
});
