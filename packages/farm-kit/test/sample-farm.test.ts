import { readFarmFolder, writeFarmFolder } from '@leywright/book';
import { addDays, yearOf } from '@leywright/measures';
import { knownNames } from '@leywright/planner';
import { describe, expect, test } from 'vitest';
import { sampleBook, sampleFarm, sampleToday } from '../src/index.ts';

const farm = sampleFarm(sampleToday);

describe('the sample farm', () => {
  test('comes back from its folder as it went in', () => {
    const reading = readFarmFolder(writeFarmFolder(farm, []), knownNames());
    expect(reading.problems).toEqual([]);
    const byId = (list: readonly { readonly id: string }[]) => [...list].sort((a, b) => (a.id < b.id ? -1 : 1));
    expect({ ...reading.farm, stands: byId(reading.farm?.stands ?? []) }).toEqual({
      ...farm,
      stands: byId(farm.stands),
    });
  });

  test('is drawn on the ellipsoid as large as it was typed, to a tenth of a per cent', () => {
    const files = writeFarmFolder(farm, []);
    const rows = (files.get('plots.csv') ?? '')
      .trim()
      .split('\n')
      .map((line) => line.split(','));
    const drop = ['gross_m2', 'measured_by'].map((name) => rows[0]?.indexOf(name));
    files.set(
      'plots.csv',
      rows
        .map((cells) => cells.filter((_, at) => !drop.includes(at)).join(','))
        .filter((line) => !/tunnel|rhubarb/.test(line))
        .join('\n'),
    );
    files.set('history.csv', 'plot,what,to,sown_on\n');
    files.delete('agreed.csv');
    files.delete('parts.csv');
    const reading = readFarmFolder(files, knownNames());
    expect(reading.problems).toEqual([]);
    for (const plot of reading.farm?.plots ?? []) {
      const typed = farm.plots.find((one) => one.id === plot.id)?.grossM2 ?? 0;
      expect(plot.measuredBy).toBe('geometry');
      expect(Math.abs(plot.grossM2 / typed - 1), plot.name).toBeLessThan(0.001);
    }
  });

  test('never leaves a stretch of its past to two crops at once, but for what is undersown', () => {
    for (const one of farm.stands) {
      for (const other of farm.stands) {
        if (
          one.id >= other.id ||
          one.plot !== other.plot ||
          one.undersownIn === other.id ||
          other.undersownIn === one.id
        )
          continue;
        const overlaps =
          one.from < other.to &&
          other.from < one.to &&
          one.span.fromShare < other.span.toShare - 1e-9 &&
          other.span.fromShare < one.span.toShare - 1e-9;
        expect(overlaps, `${one.id} and ${other.id}`).toBe(false);
      }
    }
  });

  test('has a book of the last two years only, none of it later than the day it is looked at', () => {
    const book = sampleBook(farm, sampleToday);
    for (const one of book) {
      expect(one.doneOn <= sampleToday).toBe(true);
      expect(yearOf(one.doneOn)).toBeGreaterThanOrEqual(2025);
      expect(one.enteredAt.slice(0, 10) >= one.doneOn).toBe(true);
      expect(one.enteredAt.slice(0, 10) <= addDays(one.doneOn, 6)).toBe(true);
    }
  });
});
