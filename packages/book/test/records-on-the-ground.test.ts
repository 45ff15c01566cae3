import { asId, asMonthDay } from '@leywright/measures';
import { expect, test } from 'vitest';
import { type EntryBody, type Farm, type Rotation, replay, wholePlot } from '../src/index.ts';
import { day, farm, plot, record, stand } from './records.ts';

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
const planting = (pieces: Partial<Extract<EntryBody, { kind: 'planting' }>> = {}): EntryBody => ({
  kind: 'planting',
  stand: 's1',
  plot: 'a',
  span: wholePlot,
  what: 'kale',
  variety: null,
  plants: null,
  expectedTo: null,
  ...pieces,
});
const on = (body: EntryBody, doneOn: string, number = 1) => record(body, number, { doneOn: day(doneOn) });
/** One stand, sown 10 May to 20 October 2027 by plan. */
const planned = farm({ stands: [stand('s1', { sownOn: day('2027-05-10') })] });
const standsOf = (base: Farm, ...entries: readonly ReturnType<typeof record>[]) => replay(base, entries).farm.stands;

test('a sowing twelve days late makes the stand recorded, moves its end along, and keeps what was planned', () => {
  expect(standsOf(planned, on(sowing(), '2027-05-22'))).toMatchObject([
    {
      id: 's1',
      state: 'recorded',
      sownOn: '2027-05-22',
      from: '2027-05-22',
      to: '2027-11-01',
      plannedFrom: '2027-05-10',
      plannedTo: '2027-10-20',
    },
  ]);
});

test('an end said by the record wins over the moved one', () => {
  expect(standsOf(planned, on(sowing({ expectedTo: day('2027-12-15') }), '2027-05-22'))).toMatchObject([
    { to: '2027-12-15', plannedTo: '2027-10-20' },
  ]);
});

test('what was really sown replaces what was planned: other variety, other crop, other beds', () => {
  const half = { fromShare: 0, toShare: 0.5 };
  expect(
    standsOf(planned, on(sowing({ what: 'leek-mid', variety: 'Hannibal', span: half }), '2027-05-10')),
  ).toMatchObject([{ what: 'leek-mid', variety: 'Hannibal', span: half }]);
});

test('modules sown in the tunnel hold no ground: the stand is recorded on the day it is planted out', () => {
  const modules = farm({ stands: [stand('s1', { sownOn: day('2027-03-20'), plantedOn: day('2027-05-10') })] });
  const sown = on(sowing(), '2027-03-25', 1);
  expect(standsOf(modules, sown)).toMatchObject([{ state: 'agreed', sownOn: '2027-03-25', from: '2027-05-10' }]);
  expect(standsOf(modules, sown, on(planting(), '2027-05-14', 2))).toMatchObject([
    {
      state: 'recorded',
      sownOn: '2027-03-25',
      plantedOn: '2027-05-14',
      from: '2027-05-14',
      to: '2027-10-24',
      plannedFrom: '2027-05-10',
    },
  ]);
});

test('a stand that ended early frees its ground from that day, with how it ended', () => {
  const ended = on({ kind: 'stand-ended', stand: 's1', by: 'failed', why: 'slugs' }, '2027-06-30', 2);
  expect(standsOf(planned, on(sowing(), '2027-05-10', 1), ended)).toMatchObject([
    { from: '2027-05-10', to: '2027-06-30', endedBy: 'failed', plannedTo: '2027-10-20' },
  ]);
});

test('an early crop fails and another follows on the same ground: both stay, one after the other', () => {
  const { farm: after, findings } = replay(planned, [
    on(sowing(), '2027-05-10', 1),
    on({ kind: 'stand-ended', stand: 's1', by: 'failed', why: null }, '2027-06-30', 2),
    on(planting({ stand: null, what: 'leek-mid', expectedTo: day('2028-03-01') }), '2027-07-02', 3),
  ]);
  expect(after.stands).toMatchObject([
    { id: 's1', endedBy: 'failed', to: '2027-06-30' },
    { what: 'leek-mid', state: 'recorded', from: '2027-07-02', to: '2028-03-01' },
  ]);
  expect(findings).toEqual([]);
});

test('a sowing that names no stand makes one, where the ground is clear; without an end its end is assumed, and said', () => {
  const { farm: after, findings } = replay(farm(), [on(sowing({ stand: null }), '2027-05-10')]);
  expect(after.stands).toMatchObject([{ what: 'kale', state: 'recorded', from: '2027-05-10', to: '2027-11-08' }]);
  expect(findings).toMatchObject([{ code: 'stand-end-assumed', plot: 'a', figures: { to: '2027-11-08' } }]);
});

test('a sowing on ground where a recorded stand still stands is told, not guessed; undersown in that stand it is clear', () => {
  const standing = farm({ stands: [stand('s1', { state: 'recorded' })] });
  const over = sowing({ stand: null, what: 'white-mustard', standKind: 'cover', expectedTo: day('2027-12-01') });
  expect(replay(standing, [on(over, '2027-07-01')])).toMatchObject({
    farm: { stands: [{ id: 's1' }] },
    findings: [{ code: 'record-without-stand', plot: 'a', figures: { standingThere: 's1' } }],
  });
  const under = replay(standing, [on({ ...over, undersownIn: 's1' } as EntryBody, '2027-07-01')]);
  expect(under.findings).toEqual([]);
  expect(under.farm.stands).toMatchObject([{ id: 's1' }, { what: 'white-mustard', undersownIn: 's1' }]);
});

test('a stand only planned there gives way to what was really sown', () => {
  const { farm: after, findings } = replay(planned, [
    on(sowing({ stand: null, what: 'leek-mid', expectedTo: day('2027-12-01') }), '2027-06-01'),
  ]);
  expect(after.stands.map((one) => [one.what, one.state])).toEqual([
    ['kale', 'agreed'],
    ['leek-mid', 'recorded'],
  ]);
  expect(findings).toEqual([]);
});

test('records on a plot or a stand that nobody knows are told', () => {
  const { findings } = replay(farm(), [
    on(sowing({ plot: 'x' }), '2027-05-10', 1),
    on({ kind: 'establishment', stand: 'ghost', establishedShare: 0.5 }, '2027-05-11', 2),
    on({ kind: 'stand-ended', stand: 'ghost', by: 'cut', why: null }, '2027-05-12', 3),
  ]);
  expect(findings.map(({ code, plot: where, stand: which }) => [code, where, which])).toEqual([
    ['record-without-plot', 'x', 's1'],
    ['record-without-stand', null, 'ghost'],
    ['record-without-stand', null, 'ghost'],
  ]);
});

const rotation: Rotation = {
  firstYear: 2026,
  state: 'agreed',
  agreedOn: null,
  courses: [
    { id: asId('roots'), name: 'Roots', hoursPerHa: null, hoursFollow: 'ground', stands: [] },
    {
      id: asId('greens'),
      name: 'Greens',
      hoursPerHa: null,
      hoursFollow: 'ground',
      stands: [
        {
          key: 'kale',
          what: 'kale',
          kind: 'crop',
          variety: null,
          span: wholePlot,
          sow: asMonthDay('04-20'),
          plant: asMonthDay('06-10'),
          startYearOffset: 0,
          end: asMonthDay('03-15'),
          endYearOffset: 1,
          undersownIn: null,
        },
      ],
    },
  ],
};

test('a record may name a stand that only the rotation proposes: it becomes the farm’s own, with what was planned', () => {
  const base = farm({
    rotation,
    plots: [plot('top-1', { courseAtStart: asId('roots') }), plot('b', { courseAtStart: asId('greens') })],
  });
  const { farm: after, findings } = replay(base, [
    on(planting({ stand: 'top-1-2027-kale', plot: 'top-1' }), '2027-06-20'),
  ]);
  expect(findings).toEqual([]);
  expect(after.stands).toMatchObject([
    {
      id: 'top-1-2027-kale',
      state: 'recorded',
      course: 'greens',
      courseYear: 2027,
      sownOn: '2027-04-20',
      plantedOn: '2027-06-20',
      from: '2027-06-20',
      to: '2028-03-25',
      plannedFrom: '2027-06-10',
      plannedTo: '2028-03-15',
    },
  ]);
  // In 2027 plot b is on its roots course, so it has no such stand; the ground is clear, and a new one is made under the name given.
  expect(
    replay(base, [on(planting({ stand: 'b-2027-kale', plot: 'b', expectedTo: day('2028-03-01') }), '2027-06-20')]).farm
      .stands,
  ).toMatchObject([{ id: 'b-2027-kale', course: null }]);
});

test('a later description does not take back what was really done', () => {
  const sown = on(sowing(), '2027-05-22', 1);
  const redrawn = on(
    { kind: 'set', subject: 'stands', key: 's1', value: stand('s1', { to: day('2027-11-30') }) },
    '2027-06-01',
    2,
  );
  expect(standsOf(planned, sown, redrawn)).toMatchObject([{ state: 'recorded', from: '2027-05-22', to: '2027-12-12' }]);
  expect(
    standsOf(planned, sown, on({ kind: 'set', subject: 'stands', key: 's1', value: null }, '2027-06-01', 2)),
  ).toMatchObject([{ id: 's1', state: 'recorded', from: '2027-05-22' }]);
});

test('records made before the farm’s tables were taken into the book still count', () => {
  const imported = on({ kind: 'set', subject: 'stands', key: 's1', value: stand('s1') }, '2027-08-01', 2);
  expect(standsOf(farm(), on(sowing(), '2027-05-22', 1), imported)).toMatchObject([
    { state: 'recorded', from: '2027-05-22', plannedFrom: '2027-05-10' },
  ]);
});

test('how a ley took, what an organism infects and that the rotation is agreed are known from their records', () => {
  const base = farm({ stands: [stand('s1')], rotation: { ...rotation, state: 'pencil' } });
  const mark = {
    organism: 'clubroot',
    plot: asId<never>('a'),
    span: wholePlot,
    foundOn: day('2027-08-01'),
    clearedOn: null,
    note: null,
  };
  const { farm: after } = replay(base, [
    on({ kind: 'establishment', stand: 's1', establishedShare: 0.3 }, '2027-06-01', 1),
    on({ kind: 'organism-found', mark }, '2027-08-01', 2),
    on({ kind: 'rotation-agreed', reasons: { s1: 'no other ground' } }, '2027-01-09', 3),
  ]);
  expect(after).toMatchObject({
    stands: [{ establishedShare: 0.3, reason: 'no other ground' }],
    marks: [mark],
    rotation: { state: 'agreed', agreedOn: '2027-01-09' },
  });
  expect(replay(farm(), [on({ kind: 'rotation-agreed', reasons: {} }, '2027-01-09')]).findings).toMatchObject([
    { code: 'no-rotation-to-agree' },
  ]);
});

test('a bed cut over five weeks is five harvests of one stand, which stays until its end is recorded', () => {
  const cut = (doneOn: string, number: number) =>
    on(
      {
        kind: 'harvest',
        stand: 's1',
        plot: null,
        crop: 'kale',
        grossKg: 40,
        count: null,
        unit: 'kg',
        gradedOutShare: 0.3,
        into: 'box',
        store: null,
      },
      doneOn,
      number,
    );
  const { farm: after } = replay(
    planned,
    [1, 2, 3, 4, 5].map((week) => cut(`2027-07-0${week}`, week)),
  );
  expect(
    after.harvests.map(({ on: cutOn, plot: where, grossKg, gradedOutShare }) => [
      cutOn,
      where,
      grossKg,
      gradedOutShare,
    ]),
  ).toEqual([1, 2, 3, 4, 5].map((week) => [`2027-07-0${week}`, 'a', 40, 0.3]));
  expect(after.stands[0]?.to).toBe('2027-10-20');
});
