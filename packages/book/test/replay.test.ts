import { asId } from '@leywright/measures';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import {
  asKnownOn,
  type Entry,
  type EntryBody,
  emptyFarm,
  type Farm,
  replay,
  wholePlot,
  withdrawBody,
} from '../src/index.ts';
import { day, entriesArbitrary, farm, plot, record, sealed, stand } from './records.ts';

const sowing = (pieces: Partial<Extract<EntryBody, { kind: 'sowing' }>> = {}): EntryBody => ({
  kind: 'sowing',
  stand: 's1',
  plot: 'a',
  span: wholePlot,
  what: 'kale',
  standKind: 'crop',
  variety: null,
  seedLot: null,
  seedKg: null,
  undersownIn: null,
  expectedTo: null,
  ...pieces,
});
const weighing = (kg: number): EntryBody => ({ kind: 'weighing', crop: 'kale', store: null, kg });
const codes = (base: Farm, entries: readonly Entry[]) => replay(base, entries).findings.map((finding) => finding.code);
const planned = farm({ stands: [stand('s1')] });

test('replay does not hang on the order in which entries came, nor on how often', () => {
  fc.assert(
    fc.property(entriesArbitrary, fc.nat(), (entries, salt) => {
      const once = replay(planned, entries);
      const jumbled = [...entries, ...entries.filter((_, at) => (at + salt) % 3 === 0)]
        .map((entry, at) => ({ entry, key: (at * 7919 + salt) % 101 }))
        .sort((a, b) => a.key - b.key)
        .map((one) => one.entry);
      expect(replay(planned, jumbled)).toEqual(once);
      expect(replay(planned, [...entries].reverse())).toEqual(once);
    }),
    { numRuns: 300 },
  );
});

test('copies of an entry, with and without its receipt, count once', () => {
  fc.assert(
    fc.property(entriesArbitrary, (entries) => {
      const book = sealed(entries);
      expect(replay(planned, [...entries, ...book]).farm).toEqual(replay(planned, book).farm);
    }),
    { numRuns: 50 },
  );
});

test('what describes the farm may be written into tables and the whole book replayed over them: it is the same farm', () => {
  fc.assert(
    fc.property(entriesArbitrary, (entries) => {
      const described = replay(planned, entries, { only: 'descriptions' }).farm;
      expect(replay(described, entries).farm).toEqual(replay(planned, entries).farm);
    }),
    { numRuns: 300 },
  );
});

test('what was known on a day is the replay of what had been received by then', () => {
  fc.assert(
    fc.property(entriesArbitrary, fc.nat(45), (entries, days) => {
      const book = sealed(
        entries
          .map((entry, at) => ({ ...entry, enteredAt: `2027-04-${String((at % 28) + 1).padStart(2, '0')}T08:00:00Z` }))
          .sort((a, b) => (a.enteredAt < b.enteredAt ? -1 : 1)),
      );
      const on = `2027-04-${String((days % 28) + 1).padStart(2, '0')}`;
      const prefix = book.filter((entry) => entry.receivedAt.slice(0, 10) <= on);
      expect(asKnownOn(book, day(on))).toEqual(prefix);
      expect(replay(planned, asKnownOn(book, day(on)))).toEqual(replay(planned, book.slice(0, prefix.length)));
    }),
    { numRuns: 50 },
  );
});

test('a day ends at the farm’s own midnight: an entry received at half past eleven at night in London in summer belongs to that day', () => {
  const [late] = sealed([record(weighing(1), 1)]).map((entry) => ({ ...entry, receivedAt: '2027-07-01T23:30:00Z' }));
  expect(asKnownOn([late as never], day('2027-07-01'))).toHaveLength(1);
  expect(asKnownOn([late as never], day('2027-07-01'), 'Europe/London')).toHaveLength(0);
  expect(asKnownOn([late as never], day('2027-07-02'), 'Europe/London')).toHaveLength(1);
});

test('an amendment takes out exactly one entry: the rest of the farm is as if that one had never been made', () => {
  fc.assert(
    fc.property(entriesArbitrary, fc.nat(), (made, which) => {
      const entries = made.map((entry) => ({
        ...entry,
        amends: null,
        body: entry.body?.kind === 'struck-out' ? weighing(7) : entry.body,
      }));
      const target = entries[which % Math.max(1, entries.length)];
      if (target === undefined) return;
      const strike = record({ kind: 'struck-out' }, 99, { amends: target.id, device: asId('office'), deviceSeq: 1 });
      const without = entries.filter((entry) => entry !== target);
      expect(replay(planned, [...entries, strike]).farm).toEqual(replay(planned, without).farm);
    }),
    { numRuns: 200 },
  );
});

test('a correction stands in the place of what it corrects, and of its own correction in turn', () => {
  const first = record(weighing(100), 1);
  const second = record(weighing(120), 2, { amends: first.id });
  const third = record(weighing(125), 3, { amends: second.id });
  expect(replay(farm(), [first]).farm.weighings).toMatchObject([{ kg: 100, entry: first.id }]);
  expect(replay(farm(), [second, first]).farm.weighings).toMatchObject([{ kg: 120, entry: second.id }]);
  expect(replay(farm(), [third, second, first])).toMatchObject({
    farm: { weighings: [{ kg: 125, entry: third.id }] },
    findings: [],
  });
});

test('a correction of an older description does not take back a newer one', () => {
  const set = (grossM2: number): EntryBody => ({
    kind: 'set',
    subject: 'plots',
    key: 'a',
    value: plot('a', { grossM2 }),
  });
  const first = record(set(5000), 1);
  const later = record(set(5200), 2, { doneOn: first.doneOn });
  const correction = record(set(5100), 3, { amends: first.id, doneOn: first.doneOn });
  expect(replay(farm(), [first, later, correction]).farm.plots[0]?.grossM2).toBe(5200);
});

test('rival corrections are both kept and neither applied, until one of them is struck out', () => {
  const first = record(weighing(100), 1);
  const ann = record(weighing(120), 2, { amends: first.id });
  const ben = record(weighing(90), 3, { amends: first.id });
  const rivals = replay(farm(), [first, ann, ben]);
  expect(rivals.farm.weighings).toMatchObject([{ kg: 100 }]);
  expect(rivals.findings).toMatchObject([
    { code: 'rival-amendments', entries: [first.id, ...[ann.id, ben.id].sort()] },
  ]);
  const settled = replay(farm(), [first, ann, ben, record({ kind: 'struck-out' }, 4, { amends: ann.id })]);
  expect(settled).toMatchObject({ farm: { weighings: [{ kg: 90 }] }, findings: [] });
});

test('what was struck out comes back when the strike is struck out', () => {
  const first = record(weighing(100), 1);
  const strike = record({ kind: 'struck-out' }, 2, { amends: first.id });
  expect(replay(farm(), [first, strike]).farm.weighings).toEqual([]);
  expect(
    replay(farm(), [first, strike, record({ kind: 'struck-out' }, 3, { amends: strike.id })]).farm.weighings,
  ).toMatchObject([{ kg: 100 }]);
});

test('a correction that comes before its original holds, and says so; the original changes nothing when it comes', () => {
  const first = record(weighing(100), 1);
  const correction = record(weighing(120), 2, { amends: first.id });
  expect(replay(farm(), [correction])).toMatchObject({
    farm: { weighings: [{ kg: 120 }] },
    findings: [
      { code: 'original-not-received', entries: [first.id, correction.id] },
      { code: 'records-not-received', figures: { from: 1, to: 1 } },
    ],
  });
  expect(replay(farm(), [correction, first])).toMatchObject({ farm: { weighings: [{ kg: 120 }] }, findings: [] });
});

test('entries that correct each other in a ring count for nothing, and are told', () => {
  const a = record(weighing(1), 1);
  const b = record(weighing(2), 2, { amends: a.id });
  expect(replay(farm(), [{ ...a, amends: b.id }, b])).toMatchObject({
    farm: { weighings: [] },
    findings: [{ code: 'amendments-in-a-ring', entries: [a.id, b.id] }],
  });
});

test('a withdrawn body counts for nothing, whether it is gone already or not', () => {
  const first = record(weighing(100), 1);
  const withdrawal = record({ kind: 'withdrawn', entry: first.id }, 2);
  const [received] = sealed([first]);
  expect(replay(farm(), [first, withdrawal]).farm.weighings).toEqual([]);
  expect(replay(farm(), [withdrawBody(received as never), withdrawal]).farm.weighings).toEqual([]);
  expect(replay(farm(), [first, withdrawBody(received as never), withdrawal])).toEqual(
    replay(farm(), [withdrawBody(received as never), first, withdrawal]),
  );
});

test('numbers that a phone left out are records not yet received', () => {
  const entries = [1, 2, 5, 9].map((number) => record(weighing(number), number));
  expect(replay(farm(), entries).findings).toMatchObject([
    { code: 'records-not-received', figures: { device: 'phone', from: 3, to: 4, count: 2 } },
    { code: 'records-not-received', figures: { from: 6, to: 8, count: 3 } },
  ]);
});

test('one number given to two entries is a copied phone; one id with two contents is told, and settled the same way round', () => {
  expect(codes(farm(), [record(weighing(1), 1), record(weighing(2), 2, { deviceSeq: 1 })])).toEqual([
    'device-number-twice',
  ]);
  const a = record(weighing(1), 1);
  const b = { ...a, body: weighing(2) };
  expect(replay(farm(), [a, b])).toEqual(replay(farm(), [b, a]));
  expect(codes(farm(), [a, b])).toEqual(['one-id-two-entries']);
});

test.each([
  ['three hours fast', '2027-03-02T21:00:00Z', '2027-03-02T18:00:00Z'],
  ['set to 2016', '2016-01-01T00:10:00Z', '2027-03-02T18:00:00Z'],
])('a phone clock %s is told, and the time of receipt orders its entries', (_, enteredAt, receivedAt) => {
  const set = (grossM2: number): EntryBody => ({
    kind: 'set',
    subject: 'plots',
    key: 'a',
    value: plot('a', { grossM2 }),
  });
  const [wrong, right] = sealed([
    record(set(1000), 1, { enteredAt, doneOn: day('2027-03-02') }),
    record(set(2000), 1, {
      enteredAt: '2027-03-02T19:00:00Z',
      doneOn: day('2027-03-02'),
      device: asId('desk'),
      id: asId('desk-1'),
    }),
  ]);
  const { farm: after, findings } = replay(farm(), [
    { ...wrong, receivedAt } as never,
    { ...right, receivedAt: '2027-03-02T19:01:00Z' } as never,
  ]);
  expect(findings).toMatchObject([{ code: 'device-clock-wrong', figures: { device: 'phone', entries: 1 } }]);
  expect(after.plots[0]?.grossM2).toBe(2000);
});

test('two weeks without a signal is no wrong clock', () => {
  const [entry] = sealed([record(weighing(1), 1)]).map((one) => ({ ...one, receivedAt: '2027-03-20T12:00:00Z' }));
  expect(replay(farm(), [entry as never]).findings).toEqual([]);
});

test('a plot taken away is archived from that day, not deleted; one entered by mistake is struck out', () => {
  const set = record({ kind: 'set', subject: 'plots', key: 'c', value: plot('c') }, 1);
  const gone = record({ kind: 'set', subject: 'plots', key: 'c', value: null }, 2);
  expect(replay(farm(), [set, gone]).farm.plots.find((one) => one.id === 'c')).toMatchObject({ to: gone.doneOn });
  expect(
    replay(farm(), [set, record({ kind: 'struck-out' }, 2, { amends: set.id })]).farm.plots.map((one) => one.id),
  ).toEqual(['a', 'b']);
});

test('tables that no entry touches are handed on as they are', () => {
  const after = replay(planned, [record(weighing(1), 1)]).farm;
  expect(after.plots).toBe(planned.plots);
  expect(after.stands).toBe(planned.stands);
});

test('only descriptions: what the tables of a folder hold, without records', () => {
  const entries = [
    record({ kind: 'set', subject: 'stands', key: 's1', value: stand('s1') }, 1),
    record(sowing(), 2),
    record(weighing(4), 3),
  ];
  expect(replay(emptyFarm(farm().about), entries, { only: 'descriptions' }).farm).toMatchObject({
    stands: [{ id: 's1', state: 'agreed' }],
    weighings: [],
  });
});
