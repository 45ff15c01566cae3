import { expect, test } from 'vitest';
import { type Entry, replay } from '../src/index.ts';
import { farm, record } from './records.ts';

function harvest(number: number, grossKg: number, more: Partial<Entry> = {}): Entry {
  return record(
    {
      kind: 'harvest',
      stand: null,
      plot: 'a',
      crop: 'kale',
      grossKg,
      count: null,
      unit: 'kg',
      gradedOutShare: null,
      into: 'box',
      store: null,
    },
    number,
    { doneOn: record(null, 1).doneOn, ...more },
  );
}

const others = { device: 'tablet' as Entry['device'], deviceSeq: 1, by: 'bea' as Entry['by'] };
const twice = (entries: readonly Entry[]) =>
  replay(farm(), entries).findings.filter(({ code }) => code === 'harvest-perhaps-twice');

test('a harvest that two people recorded is asked about, with both sides, and both are counted', () => {
  const entries = [harvest(1, 48), harvest(2, 46, others)];
  expect(twice(entries)).toMatchObject([
    {
      plot: 'a',
      entries: entries.map(({ id }) => id).sort(),
      figures: { what: 'kale', firstBy: 'ann', secondBy: 'bea' },
    },
  ]);
  expect(replay(farm(), entries).farm.harvests).toHaveLength(2);
  expect(twice([...entries].reverse())).toEqual(twice(entries));
});

test('two loads of one person, another crop, another day or another amount are no such thing', () => {
  expect(twice([harvest(1, 48), harvest(2, 48)])).toEqual([]);
  expect(twice([harvest(1, 48), harvest(2, 20, others)])).toEqual([]);
  expect(twice([harvest(1, 48), harvest(2, 48, { ...others, doneOn: record(null, 2).doneOn })])).toEqual([]);
});

test('it is settled by striking one out, or by a correction that says there were two loads', () => {
  const [one, other] = [harvest(1, 48), harvest(2, 48, others)];
  const strike = record({ kind: 'struck-out' }, 3, { amends: other.id, reason: 'recorded twice' });
  expect(twice([one, other, strike])).toEqual([]);
  expect(replay(farm(), [one, other, strike]).farm.harvests).toHaveLength(1);
  const kept = harvest(3, 48, { amends: other.id, reason: 'two loads' });
  expect(twice([one, other, kept])).toEqual([]);
  expect(replay(farm(), [one, other, kept]).farm.harvests).toHaveLength(2);
});
