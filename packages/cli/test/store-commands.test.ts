import { spawn } from 'node:child_process';
import { mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { toldShapes } from '@leywright/api';
import { describe, expect, test } from 'vitest';
import { binary, farmFolder, leywright, newFolder, on, project, smallFarm } from './leywright.ts';

const demo = join(project, 'demo');

async function imported(farm: string): Promise<{ readonly data: string; readonly id: string }> {
  const data = join(newFolder(), 'store');
  const { code, out, err } = await leywright(['import', farm, '--data', data, '--json', ...on]);
  expect(code, err).toBe(0);
  return { data, id: toldShapes.imported.parse(JSON.parse(out)).farm };
}

describe('leywright import and export', () => {
  test('a farm that went through a store has the same plan', async () => {
    const { data, id } = await imported(demo);
    const before = JSON.parse((await leywright(['plan', demo, '--json', ...on])).out);
    const after = JSON.parse((await leywright(['plan', id, '--data', data, '--json', ...on])).out);
    expect(after).toEqual(before);
  });

  test('a farm goes out as a zip and as a folder, and comes back the same', async () => {
    const { data, id } = await imported(demo);
    const zip = join(newFolder(), 'farm.zip');
    const folder = join(newFolder(), 'farm');
    const said = toldShapes.exported.parse(
      JSON.parse((await leywright(['export', id, '--data', data, '--to', zip, '--json', ...on])).out),
    );
    expect(said.files).toContain('plots.csv');
    expect((await leywright(['export', id, '--data', data, '--to', folder, ...on])).code).toBe(0);
    const [ofZip, ofFolder, ofStore] = await Promise.all(
      [zip, folder]
        .map((path) => leywright(['plan', path, '--json', ...on]))
        .concat(leywright(['plan', id, '--data', data, '--json', ...on])),
    );
    expect(ofZip?.out).toBe(ofStore?.out);
    expect(ofFolder?.out).toBe(ofStore?.out);
    const again = await imported(zip);
    expect((await leywright(['verify-book', again.id, '--data', again.data])).code).toBe(0);
  });

  test('what is changed by hand in an exported folder counts, and the records stay', async () => {
    const { data, id } = await imported(demo);
    const folder = join(newFolder(), 'farm');
    await leywright(['export', id, '--data', data, '--to', folder, ...on]);
    const plots = readFileSync(join(folder, 'plots.csv'), 'utf8');
    writeFileSync(join(folder, 'plots.csv'), plots.replace('Cinder Hill', 'Cinder Top'));
    const names = (out: string) => (JSON.parse(out) as { ground: { name: string }[] }).ground.map((plot) => plot.name);
    expect(names((await leywright(['plan', folder, '--json', ...on])).out)).toContain('Cinder Top');
    const again = await imported(folder);
    const after = JSON.parse((await leywright(['plan', again.id, '--data', again.data, '--json', ...on])).out);
    const before = JSON.parse(
      (await leywright(['plan', demo, '--json', ...on])).out.replaceAll('Cinder Hill', 'Cinder Top'),
    );
    expect(after).toEqual(before);
  });

  test('nothing is written over', async () => {
    const folder = farmFolder(smallFarm);
    const { code, err } = await leywright(['export', demo, '--to', folder]);
    expect([code, err.trim()]).toEqual([
      2,
      `"${folder}" is there already and was left as it is. Name a new folder or file.`,
    ]);
    expect(readdirSync(folder).sort()).toEqual(['farm.json', 'plots.csv']);
  });

  test('the same farm is not taken in twice', async () => {
    const { data } = await imported(demo);
    const { code, err } = await leywright(['import', demo, '--data', data]);
    expect([code, err]).toEqual([2, expect.stringContaining('is here already')]);
  });

  test('a folder with a mistake leaves no farm behind', async () => {
    const data = join(newFolder(), 'store');
    expect(
      (
        await leywright([
          'import',
          farmFolder({ ...smallFarm, 'plots.csv': 'id,letter,gross_ha\na,A,-2\n' }),
          '--data',
          data,
        ])
      ).code,
    ).toBe(2);
    expect((await leywright(['plan', 'small', '--data', data])).err).toContain('It has none yet.');
  });

  test.each([
    [['import', demo], 'Say which store with --data DIR.'],
    [['export', demo], 'Say where to with --to PATH'],
    [['plan', 'none', '--data', '/dev/null/x'], 'cannot be opened'],
  ])('%j says what is missing', async (words, sentence) => {
    const { code, err } = await leywright(words);
    expect(code).toBe(2);
    expect(err).toContain(sentence);
  });
});

describe('leywright verify-book', () => {
  test('a book as it was written leaves with 0', async () => {
    const { code, out } = await leywright(['verify-book', demo, '--json']);
    expect(code).toBe(0);
    expect(toldShapes.verified.parse(JSON.parse(out))).toMatchObject({ ok: true, firstBad: null });
  });

  test('a book with one figure changed leaves with 1 and names the entry', async () => {
    const folder = join(newFolder(), 'farm');
    mkdirSync(folder);
    for (const name of readdirSync(demo)) writeFileSync(join(folder, name), readFileSync(join(demo, name)));
    const lines = readFileSync(join(folder, 'entries.jsonl'), 'utf8').split('\n');
    const at = lines.findIndex((line) => /"kg":\d/.test(line) || /"grossKg":\d/.test(line));
    lines[at] = (lines[at] ?? '').replace(
      /"(kg|grossKg)":(\d)/,
      (_all, key: string, digit: string) => `"${key}":${(Number(digit) % 9) + 1}`,
    );
    writeFileSync(join(folder, 'entries.jsonl'), lines.join('\n'));
    const { code, out } = await leywright(['verify-book', folder]);
    expect(code).toBe(1);
    expect(out).toContain(`The book is broken at entry ${at + 1}`);
  });
});

describe('leywright backup and restore', () => {
  test('a store that is backed up and put back has the same books', async () => {
    const { data, id } = await imported(demo);
    const file = join(newFolder(), 'backup.sqlite');
    const backed = await leywright(['backup', '--data', data, '--to', file, '--json']);
    expect(backed.code, backed.err).toBe(0);
    const { farms } = JSON.parse(backed.out) as { farms: { id: string; entries: number }[] };
    expect(farms.map((farm) => farm.id)).toEqual([id]);
    const other = join(newFolder(), 'store');
    expect((await leywright(['restore', file, '--data', other])).code).toBe(0);
    const said = await leywright(['verify-book', '--data', other, '--json']);
    expect(JSON.parse(said.out)).toMatchObject({ ok: true, entries: farms[0]?.entries });
    const again = await leywright(['restore', file, '--data', other]);
    expect([again.code, again.err]).toEqual([2, expect.stringContaining('There is a store already')]);
    const replaced = await leywright(['restore', file, '--data', other, '--replace']);
    expect([replaced.code, replaced.out]).toEqual([0, expect.stringContaining('The store that was there is now')]);
  });

  test('a backup with one figure changed is named as broken, and is not put back', async () => {
    const { data } = await imported(demo);
    const file = join(newFolder(), 'backup.sqlite');
    await leywright(['backup', '--data', data, '--to', file]);
    const bytes = readFileSync(file);
    const at = bytes.indexOf('"kind":"harvest"');
    const digit = bytes.indexOf('Kg":', at) + 4;
    bytes[digit] = bytes[digit] === 0x39 ? 0x38 : (bytes[digit] ?? 0x30) + 1;
    writeFileSync(file, bytes);
    const verified = await leywright(['verify-book', file, '--json']);
    expect([verified.code, JSON.parse(verified.out)]).toMatchObject([1, { ok: false, why: 'changed' }]);
    const { code, err } = await leywright(['restore', file, '--data', join(newFolder(), 'store')]);
    expect([code, err]).toEqual([2, expect.stringContaining('does not fit its seal')]);
  });
});

describe('leywright serve', () => {
  test('answers on this machine with the sample farm, and stops when it is told to', async () => {
    const server = spawn(
      process.execPath,
      [binary, 'serve', '--data', join(newFolder(), 'store'), '--port', '0', '--sample', ...on],
      { cwd: project },
    );
    try {
      const line = await firstLine(server.stdout);
      const address = /^Leywright is ready at (http:\/\/127\.0\.0\.1:\d+)$/.exec(line)?.[1];
      expect(address, line).toBeDefined();
      expect(await (await fetch(`${address}/api/today`)).json()).toMatchObject({ today: '2027-06-08' });
      const { farms } = (await (await fetch(`${address}/api/farms`)).json()) as { farms: { sample: boolean }[] };
      expect(farms).toMatchObject([{ sample: true }]);
    } finally {
      server.kill('SIGTERM');
    }
    expect(await new Promise((resolve) => server.once('close', resolve))).toBe(0);
  });

  test('refuses to answer to other machines', async () => {
    const { code, err } = await leywright(['serve', '--host', '0.0.0.0', '--data', newFolder()]);
    expect([code, err]).toEqual([2, expect.stringContaining('on this machine alone')]);
  });
});

function firstLine(stream: NodeJS.ReadableStream): Promise<string> {
  return new Promise((resolve, fail) => {
    let said = '';
    stream.on('data', (piece: Buffer) => {
      said += piece.toString();
      if (said.includes('\n')) resolve(said.split('\n')[0] ?? '');
    });
    stream.on('end', () => fail(new Error(`It ended after saying "${said}".`)));
  });
}
