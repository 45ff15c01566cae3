import { course, courseStand, day, farmWith, plot, rotation, stand } from '@leywright/farm-kit';
import { describe, expect, test } from 'vitest';
import { planFarm } from '../../src/index.ts';
import { courseOf } from '../../src/rotation/lay-out.ts';

const courses = [
  course('ley', []),
  course('potatoes', [
    courseStand('main', 'potato-maincrop', { plant: '04-28', end: '09-20' }),
    courseStand('rye', 'mix-rye-vetch', { kind: 'cover', sow: '09-22', end: '03-12', endYearOffset: 1 }),
  ]),
  course('squash', [
    courseStand('squash', 'squash-maxima', { plant: '05-27', end: '09-28' }),
    courseStand('ley', 'mix-undersow-ley', {
      kind: 'ley',
      sow: '06-28',
      end: '04-10',
      endYearOffset: 2,
      undersownIn: 'squash',
    }),
  ]),
];
const farm = farmWith({
  plots: [plot('A', { courseAtStart: 'squash' }), plot('B', { courseAtStart: 'ley' })],
  rotation: rotation(2027, courses),
});
const plan = planFarm(farm, { today: day('2027-01-14') });
const standsOf = (id: string) => plan.ground.find((one) => one.plot === id)?.stands ?? [];
const standAt = (id: string) => standsOf(id.slice(0, 1)).find((one) => one.id === id);

describe('a rotation laid out', () => {
  test('every year each plot goes one course on, round and round', () => {
    const of = (year: number) => courseOf(farm.rotation, farm.plots[0] as never, year)?.id;
    expect([2027, 2028, 2029, 2030].map(of)).toEqual(['squash', 'ley', 'potatoes', 'squash']);
    expect(of(2026)).toBeUndefined();
  });

  test('a placement puts a plot on another course in one year, and the order goes on as before', () => {
    const placed = [
      { plot: 'a', year: 2028, course: 'potatoes', state: 'pencil', reason: null },
      { plot: 'a', year: 2030, course: null, state: 'agreed', reason: null },
    ] as never;
    const moved = { ...farm, rotation: { ...rotation(2027, courses), placed } };
    const of = (year: number) => courseOf(moved.rotation, farm.plots[0] as never, year)?.id ?? null;
    expect([2027, 2028, 2029, 2030, 2031].map(of)).toEqual(['squash', 'potatoes', 'potatoes', null, 'ley']);
    const stands = planFarm(moved, { today: day('2027-01-14') }).ground[0]?.stands ?? [];
    expect(stands.find((one) => one.id === 'a-2028-main')?.state).toBe('pencil');
    expect(stands.filter((one) => one.courseYear === 2030)).toEqual([]);
  });

  test('a ley undersown in one course stands through the next, under one id', () => {
    expect(standAt('a-2027-ley')).toMatchObject({
      from: '2027-06-28',
      to: '2029-04-10',
      undersownIn: 'a-2027-squash',
      course: 'squash',
      courseYear: 2027,
      origin: 'rotation',
      kind: 'ley',
    });
    expect(standsOf('a').filter((one) => one.courseYear === 2028)).toEqual([]);
  });

  test('a winter cover crosses new year', () => {
    expect(standAt('a-2029-rye')).toMatchObject({ from: '2029-09-22', to: '2030-03-12' });
  });

  test('a stand that is said takes the place of the laid-out one of its id', () => {
    const said = stand('a', 'potato-second-early', ['2029-04-10', '2029-08-20'], {
      id: 'a-2029-main',
      course: 'potatoes',
      courseYear: 2029,
    });
    const changed = planFarm({ ...farm, stands: [said] }, { today: day('2027-01-14') });
    const stands = changed.ground[0]?.stands.filter((one) => one.id === 'a-2029-main');
    expect(stands?.map((one) => [one.what, one.origin])).toEqual([['potato-second-early', 'said']]);
  });

  test('a plot outside the rotation is given nothing', () => {
    const tunnel = planFarm(
      { ...farm, plots: [...farm.plots, plot('T', { kind: 'tunnel', courseAtStart: 'squash' })] },
      { today: day('2027-01-14') },
    );
    expect(tunnel.ground.find((one) => one.plot === 't')?.stands).toEqual([]);
  });

  test('29 February is the 28th in a common year (edge 41)', () => {
    const leap = rotation(2027, [
      course('beans', [courseStand('bean', 'broad-bean-spring', { sow: '02-29', end: '07-20' })]),
    ]);
    const beans = planFarm(farmWith({ plots: [plot('A', { courseAtStart: 'beans' })], rotation: leap }), {
      today: day('2027-01-14'),
    }).ground[0]?.stands.map((one) => one.from);
    expect(beans?.slice(0, 2)).toEqual(['2027-02-28', '2028-02-29']);
  });
});

describe('drift', () => {
  const late = (to: string, plannedTo: string) =>
    stand('a', 'potato-maincrop', ['2027-04-28', to], {
      id: 'potatoes',
      state: 'recorded',
      ...({ plannedTo: day(plannedTo) } as object),
    });
  const next = stand('a', 'mix-rye-vetch', ['2027-09-22', '2028-03-12'], { id: 'rye', kind: 'cover' });
  const planWith = (first: ReturnType<typeof stand>, today = '2027-09-20') =>
    planFarm(farmWith({ plots: [plot('A')], stands: [first, next] }), { today: day(today) });

  test('potatoes lifted six days late push the rye sown after them by six days', () => {
    const stands = planWith(late('2027-09-28', '2027-09-20')).ground[0]?.stands;
    expect(stands?.find((one) => one.id === 'rye')).toMatchObject({
      from: '2027-09-28',
      to: '2028-03-12',
      driftDays: 6,
    });
  });

  test('potatoes lifted after the season of the rye leave it where it was, and that is an overlap', () => {
    const plan = planWith(late('2027-11-20', '2027-09-20'));
    expect(plan.ground[0]?.stands.find((one) => one.id === 'rye')?.driftDays).toBe(0);
    expect(plan.findings.map((one) => one.code)).toContain('stands-overlap');
  });

  test('potatoes lifted early let the rye be sown as much earlier, but not before today', () => {
    const stands = planWith(late('2027-09-12', '2027-09-20'), '2027-09-17').ground[0]?.stands;
    expect(stands?.find((one) => one.id === 'rye')).toMatchObject({ from: '2027-09-17', driftDays: -5 });
  });

  test('a record never moves for another', () => {
    const recorded = { ...next, state: 'recorded' as const };
    const plan = planFarm(farmWith({ plots: [plot('A')], stands: [late('2027-09-28', '2027-09-20'), recorded] }), {
      today: day('2027-10-20'),
    });
    expect(plan.ground[0]?.stands.find((one) => one.id === 'rye')).toMatchObject({ from: '2027-09-22', driftDays: 0 });
    expect(plan.findings.filter((one) => one.code === 'stands-overlap')).toHaveLength(1);
  });
});
