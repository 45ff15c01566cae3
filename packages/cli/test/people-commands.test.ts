import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { farmFolder, leywright, newFolder, on, smallFarm } from './leywright.ts';

async function storeWithFarm(): Promise<readonly string[]> {
  const data = join(newFolder(), 'store');
  const { code, err } = await leywright(['import', farmFolder(smallFarm), '--data', data, ...on]);
  expect(code, err).toBe(0);
  return ['--data', data];
}

describe('leywright people', () => {
  test('invites the first grower by a link that is shown once, and lists without it', async () => {
    const at = await storeWithFarm();
    expect((await leywright(['people', 'list', 'small', ...at])).out).toContain('Nobody can sign in yet.');
    const invite = ['people', 'invite', 'small', 'ruth', '--role', 'grower', '--name', 'Ruth Ambler', '--json'];
    const { code, out, err } = await leywright([...invite, '--address', 'https://farm.example', ...at]);
    expect(code, err).toBe(0);
    const { link, role } = JSON.parse(out) as { link: string; role: string };
    expect(role).toBe('grower');
    expect(link).toMatch(/^https:\/\/farm\.example\/invitation#small~[\w-]{43}$/);
    const list = await leywright(['people', 'list', 'small', ...at]);
    expect(list.out).toContain('Ruth Ambler');
    expect(list.out).toContain('invited until');
    expect(list.out).not.toContain(link.split('~')[1]);
  });

  test('says everything that is wrong with an invitation at once', async () => {
    const at = await storeWithFarm();
    const wrong = ['--role', 'boss', '--as-known-on', '2027-02-30', '--days', '90'];
    const { code, err } = await leywright(['people', 'invite', 'small', 'ruth', ...wrong, ...at]);
    expect(code).toBe(2);
    expect(err.trim().split('\n')).toHaveLength(3);
  });

  test('refuses what it does not know, in words', async () => {
    const at = await storeWithFarm();
    expect((await leywright(['people', 'invit', 'small', 'ruth', ...at])).err).toContain('Did you mean invite?');
    expect((await leywright(['people', 'end', 'small', 'nobody', ...at])).err).toContain('There is no one "nobody"');
    expect((await leywright(['people', 'list', 'large', ...at])).err).toContain('It has: small.');
    const day = ['--role', 'hand', '--as-known-on', '2027-02-01'];
    expect((await leywright(['people', 'invite', 'small', 'ruth', ...day, ...at])).err).toContain('Only a looker');
  });
});

describe('leywright households', () => {
  test('lists, refuses a code that is not there, and erases what is over', async () => {
    const at = await storeWithFarm();
    expect((await leywright(['households', 'list', 'small', ...at])).out).toContain('No households are kept here.');
    for (const deed of ['export', 'erase']) {
      const { code, err } = await leywright(['households', deed, 'small', 'h-1', ...at]);
      expect([code, err.trim()]).toEqual([2, 'There is no household "h-1".']);
    }
    expect(JSON.parse((await leywright(['households', 'erase-over', 'small', '--json', ...at])).out)).toEqual({
      erased: 0,
    });
  });
});
