/** What can be proved, on the command line: traced both ways, weighed up, as known on a day. */
import { describe, expect, test } from 'vitest';
import { leywright, on } from './leywright.ts';

describe('trace and balance on the sample farm', () => {
  test('a lot of carrots leads forward, and says what is still here', async () => {
    const balance = await leywright([
      'balance',
      'demo',
      '--crop',
      'carrot-maincrop',
      '--year',
      '2026',
      '--json',
      ...on,
    ]);
    const told = JSON.parse(balance.out) as {
      balances: {
        termsKg: { harvested: number };
        entries: { harvested: string[] };
        openingKg: number;
        closingKg: number;
      }[];
    };
    const carrots = told.balances[0];
    expect(carrots?.termsKg.harvested).toBeGreaterThan(0);
    const ran = await leywright(['trace', 'demo', `lot/${carrots?.entries.harvested[0]}`, '--json', ...on]);
    expect(ran.code).toBe(0);
    const trace = JSON.parse(ran.out) as { direction: string; kg: number; lots: { lot: { label: string } }[] };
    expect(trace.direction).toBe('forward');
    expect(trace.lots[0]?.lot.label).toMatch(/^2026-\d+$/);
    expect(trace.kg).toBeGreaterThan(0);
  });

  test('as known on a day before a harvest was recorded, the balance does not have it', async () => {
    const known = [
      'balance',
      'demo',
      '--crop',
      'carrot-maincrop',
      '--from',
      '2026-01-01',
      '--until',
      '2026-12-31',
      '--json',
      ...on,
    ];
    const before = await leywright([...known, '--known-on', '2026-06-01']);
    const after = await leywright(known);
    const harvestedKg = (text: string) =>
      (JSON.parse(text) as { balances: { termsKg: { harvested: number } }[] }).balances[0]?.termsKg.harvested;
    expect(harvestedKg(before.out)).toBe(0);
    expect(harvestedKg(after.out)).toBeGreaterThan(0);
  });

  test('what cannot be traced is said, with what can', async () => {
    const ran = await leywright(['trace', 'demo', 'carrots', ...on]);
    expect(ran.code).toBe(2);
    expect(ran.err).toContain('run/ID');
    const unknown = await leywright(['trace', 'demo', 'lot/1999-001', '--known-on', 'yesterday', ...on]);
    expect(unknown.code).toBe(2);
    expect(unknown.err).toContain('--known-on');
  });
});
