import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { workShapes } from '@leywright/api';
import { describe, expect, test } from 'vitest';
import { leywright, newFolder, on, project } from './leywright.ts';

const demo = join(project, 'demo');
const widestLine = (text: string) => Math.max(...text.split('\n').map((line) => line.length));

describe('leywright work, day and order', () => {
  test('print JSON of the shapes in docs/schema', async () => {
    const [work, day, order] = await Promise.all(
      ['work', 'day', 'order'].map((name) => leywright([name, demo, '--json', ...on])),
    );
    expect(workShapes.work.parse(JSON.parse(work?.out ?? '')).year).toBe(2027);
    expect(workShapes.dayOfWork.parse(JSON.parse(day?.out ?? '')).week).toBe('2027-w23');
    expect(workShapes.orders.parse(JSON.parse(order?.out ?? '')).orders.length).toBeGreaterThan(10);
  });

  test('are legible in a hundred columns', async () => {
    for (const name of ['work', 'day', 'order']) {
      const { code, out } = await leywright([name, demo, ...on]);
      expect(code, name).toBe(0);
      expect(widestLine(out), name).toBeLessThanOrEqual(100);
      expect(out).not.toContain('undefined');
    }
  });

  test('write a calendar and order sheets, never over what is there', async () => {
    const folder = newFolder();
    for (const [name, file] of [
      ['day', 'ruth.ics'],
      ['order', 'orders.csv'],
      ['order', 'orders.xlsx'],
    ] as const) {
      const path = join(folder, file);
      expect((await leywright([name, demo, '--to', path, ...on])).code).toBe(0);
      expect(existsSync(path)).toBe(true);
      expect((await leywright([name, demo, '--to', path, ...on])).code).toBe(2);
    }
    expect(readFileSync(join(folder, 'ruth.ics'), 'utf8')).toMatch(/^BEGIN:VCALENDAR\r\n/);
  });

  test('somebody who is not there, and a sheet of no known kind, are refused in words', async () => {
    const nobody = await leywright(['day', demo, '--person', 'rut', ...on]);
    expect(nobody.code).toBe(2);
    expect(nobody.err).toContain('Did you mean ruth?');
    expect((await leywright(['order', demo, '--to', 'orders.doc', ...on])).err).toContain('.csv or .xlsx');
  });
});
