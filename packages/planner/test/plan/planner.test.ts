import type { Farm } from '@leywright/book';
import {
  anyEdit,
  anyFarm,
  course,
  courseStand,
  day,
  edited,
  farmWith,
  ownCrop,
  part,
  plot,
  rotation,
  sampleFarm,
  sampleToday,
  span,
  stand,
} from '@leywright/farm-kit';
import { area } from '@leywright/measures';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { makePlanner, planFarm } from '../../src/index.ts';

const today = day('2027-01-14');
const textOf = (farm: Farm, wish = { today }) => JSON.stringify(planFarm(farm, wish));

describe('a plan with memory equals a plan from nothing, bit for bit', () => {
  test('after any edits of any farm', () => {
    fc.assert(
      fc.property(anyFarm(), fc.array(anyEdit(), { minLength: 1, maxLength: 4 }), (first, edits) => {
        const planner = makePlanner();
        let farm = first;
        planner.plan(farm, { today });
        for (const edit of edits) {
          farm = edited(farm, edit);
          expect(JSON.stringify(planner.plan(farm, { today }))).toBe(textOf(farm));
        }
      }),
      { numRuns: 25 },
    );
  });

  const changes: readonly (readonly [string, (farm: Farm) => Farm])[] = [
    ['the day', (farm) => farm],
    [
      'a course of the rotation',
      (farm) => ({
        ...farm,
        rotation: rotation(2027, [
          course('roots', [courseStand('c', 'carrot-maincrop', { sow: '05-20', end: '11-01' })]),
        ]),
      }),
    ],
    ['the rotation taken away', (farm) => ({ ...farm, rotation: null })],
    [
      'a laid-out stand moved to another plot',
      (farm) => ({
        ...farm,
        stands: [...farm.stands, stand('b', 'swede', ['2027-05-20', '2027-10-20'], { id: 'a-2027-c' })],
      }),
    ],
    ['a hedge’s age', (farm) => ({ ...farm, fields: [{ ...farm.fields[0], hedgesOver5Years: false } as never] })],
    [
      'a mark',
      (farm) => ({
        ...farm,
        marks: [
          {
            organism: 'clubroot',
            plot: 'b' as never,
            span: span(),
            foundOn: day('2023-01-01'),
            clearedOn: null,
            note: null,
          },
        ],
      }),
    ],
    [
      'an own rest',
      (farm) => ({
        ...farm,
        rests: [
          {
            id: 'x',
            name: 'X',
            family: 'Apiaceae',
            hosts: [],
            years: 9,
            force: 'hard',
            countsCovers: true,
            countsUndersown: true,
          },
        ],
      }),
    ],
    [
      'a convention',
      (farm) => ({
        ...farm,
        about: { ...farm.about, conventions: { ...farm.about.conventions, bareCoverShare: 0.4 } },
      }),
    ],
    [
      'a plot’s parent',
      (farm) => ({
        ...farm,
        parts: [
          part('p', 'b', {
            span: span(),
            from: day('2026-12-01'),
            parents: [{ plot: 'a' as never, span: span(), share: 1 }],
          }),
        ],
      }),
    ],
    [
      'a day’s weather',
      (farm) => ({
        ...farm,
        weather: [
          {
            day: day('2026-06-01'),
            tMaxC: 35,
            tMinC: 20,
            rainMm: 0,
            sunH: null,
            radiationMjM2: null,
            windMS: null,
            humidityPct: null,
          },
        ],
      }),
    ],
    ['an own yield', (farm) => ({ ...farm, crops: [ownCrop('carrot-maincrop', { yieldMarketableTHa: 20 })] })],
    [
      'a harvest',
      (farm) => ({
        ...farm,
        harvests: [
          {
            entry: 'e',
            crop: 'swede' as never,
            plot: 'b' as never,
            stand: 's',
            on: day('2026-10-01'),
            grossKg: 900,
            count: null,
            unit: 'kg',
            gradedOutShare: null,
            into: 'box',
            store: null,
          },
        ],
      }),
    ],
    ['a tunnel', (farm) => ({ ...farm, plots: [...farm.plots, plot('T', { kind: 'tunnel' })] })],
    [
      'the name of a course',
      (farm) => ({
        ...farm,
        rotation: farm.rotation && {
          ...farm.rotation,
          courses: farm.rotation.courses.map((one) => ({ ...one, name: 'Other' })),
        },
      }),
    ],
    ['the order of plots', (farm) => ({ ...farm, plots: farm.plots.toReversed() })],
    ['a stand’s reason', (farm) => ({ ...farm, stands: farm.stands.map((one) => ({ ...one, reason: 'So.' })) })],
    [
      'a stand on no plot',
      (farm) => ({ ...farm, stands: [...farm.stands, stand('zz', 'swede', ['2027-05-20', '2027-10-20'])] }),
    ],
  ];
  const farm = farmWith({
    fields: [{ id: 'f' as never, name: 'F', areaM2: 40_000, hedgesOver5Years: true }],
    plots: [plot('A', { courseAtStart: 'roots', hedgeM: 100, field: 'f' }), plot('B', { hedgeM: 50, field: 'f' })],
    stands: [
      stand('b', 'swede', ['2026-05-20', '2026-11-20'], { id: 's', state: 'recorded' }),
      stand('b', 'cabbage-autumn', ['2027-06-20', '2027-11-20'], { id: 'k' }),
    ],
    rotation: rotation(2027, [course('roots', [courseStand('c', 'carrot-maincrop', { sow: '05-10', end: '11-20' })])]),
  });
  test.each(changes)('after a change of %s', (what, change) => {
    const planner = makePlanner();
    planner.plan(farm, { today });
    const wish = what === 'the day' ? { today: day('2027-08-01') } : { today };
    expect(JSON.stringify(planner.plan(change(farm), wish))).toBe(textOf(change(farm), wish));
    if (what !== 'a harvest') expect(textOf(change(farm), wish)).not.toBe(textOf(farm));
  });
});

describe('what must hold for every farm', () => {
  test('renaming plots changes nothing but names', () => {
    const plan = (rename: (text: string) => string) => {
      const farm = farmWith({
        plots: [
          plot('A', { id: rename('a'), name: rename('Ash') }),
          plot('B', { id: rename('b'), name: rename('Brook') }),
        ],
        stands: [
          stand(rename('a'), 'carrot-maincrop', ['2027-05-10', '2027-11-20'], { id: 'one' }),
          stand(rename('b'), 'kale-curly', ['2027-06-10', '2028-03-20'], { id: 'two' }),
        ],
      });
      return JSON.stringify(planFarm(farm, { today }));
    };
    const names = [
      ['x1', 'a'],
      ['x2', 'b'],
      ['Xa', 'Ash'],
      ['Xb', 'Brook'],
    ] as const;
    const renamed = plan((text) => names.find(([, old]) => old === text)?.[0] ?? text);
    const back = names.reduce(
      (text, [from, to]) =>
        text.replaceAll(`"${from}"`, `"${to}"`).replaceAll(`/${from}"`, `/${to}"`).replaceAll(`/${from}/`, `/${to}/`),
      renamed,
    );
    expect(back).toBe(plan((text) => text));
  });

  test('scaling all areas by k scales all areas by k, and nothing else of the ground', () => {
    fc.assert(
      fc.property(anyFarm(), fc.constantFrom(2, 4, 8), (farm, k) => {
        const larger = {
          ...farm,
          promise: null,
          plots: farm.plots.map((one) => ({
            ...one,
            grossM2: one.grossM2 * k,
            hedgeM: one.hedgeM * k,
            bankM2: one.bankM2 * k,
          })),
        };
        const [small, large] = [planFarm({ ...farm, promise: null }, { today }), planFarm(larger, { today })];
        small.ground.forEach((one, at) => {
          const other = large.ground[at];
          expect(other?.area.netM2).toBeCloseTo(one.area.netM2 * k, 4);
          expect(other?.coverShare).toEqual(one.coverShare);
          expect(other?.bareCounts).toEqual(one.bareCounts);
          expect(other?.visits).toEqual(one.visits);
          for (const [index, stand_] of one.stands.entries())
            expect(other?.stands[index]?.areaM2).toBeCloseTo(stand_.areaM2 * k, 4);
        });
      }),
      { numRuns: 20 },
    );
  });

  test('a plot given in hectares, acres or square metres gives the same plan (edge 86)', () => {
    const of = (grossM2: number) =>
      textOf(
        farmWith({ plots: [plot('A', { grossM2 })], stands: [stand('a', 'swede', ['2027-05-20', '2027-11-20'])] }),
      );
    expect(of(area.toM2(0.6, 'ha'))).toBe(of(6000));
    expect(area.toM2(area.fromM2(6000, 'acre'), 'acre')).toBeCloseTo(6000, 9);
  });

  test('a plan is plain data: no undefined, no infinity, no not-a-number', () => {
    const walk = (value: unknown): void => {
      expect(value === undefined || (typeof value === 'number' && !Number.isFinite(value))).toBe(false);
      if (typeof value === 'object' && value !== null) for (const one of Object.values(value)) walk(one);
    };
    fc.assert(
      fc.property(anyFarm(), (farm) => walk(planFarm(farm, { today }))),
      { numRuns: 10 },
    );
  });

  test('an empty farm has a plan, and so have farms at both poles and on the equator (edges 45, 46)', () => {
    for (const latDeg of [90, 78, 0, -45, -90]) {
      const about = farmWith({
        about: { place: { latDeg, lonDeg: 10, elevationM: null, near: null, jurisdiction: 'none', timeZone: 'UTC' } },
      }).about;
      const plan = planFarm(
        farmWith({
          about: about as never,
          plots: [plot('A')],
          stands: [
            stand('a', 'lettuce-head', ['2027-03-01', '2027-05-01']),
            stand('a', 'kale-curly', ['2027-06-01', '2028-02-01']),
          ],
        }),
        { today },
      );
      expect(plan.ground).toHaveLength(1);
    }
    expect(planFarm(farmWith(), { today }).ground).toEqual([]);
  });

  test('years of 53 weeks have their week (edge 40)', () => {
    const plan = planFarm(farmWith({ plots: [plot('A')] }), { today: day('2026-05-01'), fromYear: 2020, toYear: 2032 });
    expect(plan.horizon).toMatchObject({ firstMonday: '2019-12-30', weeks: 679 });
  });
});

describe('the sample farm', () => {
  const plan = planFarm(sampleFarm(sampleToday), { today: sampleToday });
  test('is planned over ten years', () => {
    expect(plan.horizon).toMatchObject({ fromYear: 2022, toYear: 2031 });
    expect(plan.year).toBe(2027);
  });
  test('breaks no hard rest from the agreed rotation on, and overlaps nowhere', () => {
    expect(
      plan.ground
        .flatMap((one) => one.visits)
        .filter((visit) => !visit.kept && visit.force === 'hard' && visit.year >= 2027),
    ).toEqual([]);
    expect(plan.findings.filter((one) => one.code === 'stands-overlap')).toEqual([]);
  });
  test('lies bare for one winter: 2029, on Far Ridding', () => {
    expect(plan.headline.bareWinters).toEqual([{ plot: 'f', name: 'Far Ridding', winter: 2029 }]);
  });
  test('each stand’s area is its share of its plot’s net', () => {
    for (const {
      area: { netM2 },
      stands,
    } of plan.ground)
      for (const one of stands) expect(one.areaM2).toBeCloseTo(netM2 * (one.span.toShare - one.span.fromShare), 6);
  });
});
