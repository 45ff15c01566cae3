import type { Farm, Stand } from '@leywright/book';
import { cover, day, farmWith, plot, span, stand } from '@leywright/farm-kit';
import { addDays, dayNumber, weekIndex, weekOf } from '@leywright/measures';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type Plan, planFarm } from '../../src/index.ts';

const today = day('2027-01-14');
const planOf = (stands: readonly Stand[], rest: Partial<Farm> = {}) =>
  planFarm(farmWith({ plots: [plot('A')], stands, ...rest }), { today });
const on = (plan: Plan, of: readonly number[], date: string, fromWeek = 0) =>
  of[weekIndex(weekOf(plan.horizon.firstMonday), day(date)) - fromWeek] ?? 0;
const coverOf = (plan: Plan, id: string, date: string) => {
  const one = plan.ground[0]?.stands.find((placed) => placed.id === id);
  return one === undefined ? 0 : on(plan, one.coverShare, date, one.coverFromWeek);
};

describe('cover of a stand', () => {
  test('rye sown at the end of September covers most of the ground by the middle of November', () => {
    const plan = planOf([cover('a', 'grazing-rye', ['2027-09-25', '2028-04-20'], { id: 'rye' })]);
    expect(coverOf(plan, 'rye', '2027-10-01')).toBeLessThan(0.1);
    expect(coverOf(plan, 'rye', '2027-11-15')).toBeGreaterThan(0.6);
  });

  test('nothing grows on days under ten hours (common practice): December’s cover is January’s', () => {
    const plan = planOf([cover('a', 'grazing-rye', ['2027-10-14', '2028-04-20'], { id: 'rye' })]);
    expect(coverOf(plan, 'rye', '2028-01-20')).toBeCloseTo(coverOf(plan, 'rye', '2027-12-02'), 6);
    expect(coverOf(plan, 'rye', '2028-03-20')).toBeGreaterThan(coverOf(plan, 'rye', '2028-01-20'));
  });

  test('a ley dips when it is mown, and grows again', () => {
    const plan = planOf([cover('a', 'mix-ley-clover-grass', ['2026-04-10', '2028-04-10'], { id: 'ley', kind: 'ley' })]);
    const summer = Array.from({ length: 26 }, (_, week) => coverOf(plan, 'ley', addDays(day('2027-04-05'), 7 * week)));
    const dips = summer.filter(
      (share, at) => at > 0 && at < 25 && share < (summer[at - 1] ?? 0) && share < (summer[at + 1] ?? 0),
    );
    expect(dips.length).toBeGreaterThanOrEqual(3);
    expect(Math.min(...summer)).toBeGreaterThan(0.3);
  });

  test('buckwheat is dead before winter and its litter rots, rye is not', () => {
    const plan = planOf([
      cover('a', 'buckwheat', ['2027-07-20', '2028-03-01'], { id: 'b', span: span(0, 0.5) }),
      cover('a', 'grazing-rye', ['2027-09-10', '2028-03-01'], { id: 'r', span: span(0.5, 1) }),
    ]);
    expect(coverOf(plan, 'b', '2028-01-20')).toBeLessThan(0.5 * coverOf(plan, 'b', '2027-09-20'));
    expect(coverOf(plan, 'r', '2028-01-20')).toBeGreaterThan(0.6);
  });

  test('a recorded frost kills when it came, whatever the climate says', () => {
    const night = {
      day: day('2027-08-25'),
      tMaxC: 12,
      tMinC: -2,
      rainMm: 0,
      sunH: null,
      radiationMjM2: null,
      windMS: null,
      humidityPct: null,
    };
    const buckwheat = [cover('a', 'buckwheat', ['2027-07-20', '2027-12-01'], { id: 'b' })];
    expect(coverOf(planOf(buckwheat, { weather: [night] }), 'b', '2027-09-25')).toBeLessThan(
      coverOf(planOf(buckwheat), 'b', '2027-09-25'),
    );
  });

  test('where no night is cold no cover is killed (edge 46)', () => {
    const about = farmWith({
      about: {
        place: {
          latDeg: -1,
          lonDeg: 37,
          elevationM: null,
          near: null,
          jurisdiction: 'none',
          timeZone: 'Africa/Nairobi',
        },
      },
    }).about;
    const weather = Array.from({ length: 400 }, (_, at) => ({
      day: addDays(day('2027-01-01'), at),
      tMaxC: 27,
      tMinC: 15,
      rainMm: 2,
      sunH: null,
      radiationMjM2: null,
      windMS: null,
      humidityPct: null,
    }));
    const plan = planOf([cover('a', 'buckwheat', ['2027-03-01', '2027-12-01'], { id: 'b' })], { about, weather });
    expect(coverOf(plan, 'b', '2027-11-15')).toBeGreaterThan(0.85);
  });

  test('half a stand that took covers half', () => {
    const rye = (took: number) =>
      coverOf(
        planOf([cover('a', 'grazing-rye', ['2027-09-10', '2028-04-20'], { id: 'rye', establishedShare: took })]),
        'rye',
        '2028-03-20',
      );
    expect(rye(0.5)).toBeCloseTo(rye(1) / 2, 9);
  });

  test('potatoes are drawn by published figures, cabbages by common practice, and what no table knows says so', () => {
    const basis = (what: string) =>
      planOf([stand('a', what, ['2027-05-01', '2027-09-20'], { id: 's' })]).ground[0]?.stands[0]?.coverBasis;
    expect([basis('potato-maincrop'), basis('cabbage-autumn'), basis('rhubarb'), basis('skirret')]).toEqual([
      'published',
      'common-practice',
      'derived',
      'unknown',
    ]);
  });
});

describe('cover of a plot', () => {
  const onions = stand('a', 'onion-set', ['2027-04-10', '2027-08-24'], { id: 'onions' });
  const trefoil = cover('a', 'trefoil', ['2027-06-12', '2028-03-22'], { id: 'trefoil', undersownIn: 'onions' });

  test('a crop and what is undersown in it cover 1 - (1 - a)(1 - b) and count once (edge 9)', () => {
    const plan = planOf([onions, trefoil]);
    const [a, b] = [coverOf(plan, 'onions', '2027-07-19'), coverOf(plan, 'trefoil', '2027-07-19')];
    expect(on(plan, plan.ground[0]?.coverShare ?? [], '2027-07-19')).toBeCloseTo(1 - (1 - a) * (1 - b), 2);
    expect(plan.findings.filter((one) => one.code === 'stands-overlap')).toEqual([]);
  });

  test('a stand on a quarter of the plot counts a quarter', () => {
    const plan = planOf([{ ...trefoil, undersownIn: null, span: span(0.25, 0.5) }]);
    expect(on(plan, plan.ground[0]?.coverShare ?? [], '2027-09-06')).toBeCloseTo(
      coverOf(plan, 'trefoil', '2027-09-06') / 4,
      9,
    );
  });
});

describe('bare ground', () => {
  const carrots = stand('a', 'carrot-maincrop', ['2027-05-10', '2027-10-20'], { id: 'carrots' });
  const onions = stand('a', 'onion-set', ['2028-03-20', '2028-08-20'], { id: 'onions' });
  const bare = (plan: Plan) => plan.findings.filter((one) => one.code === 'bare-in-leaching-season');

  test('carrots lifted in October and nothing before onions in March: to put right, with the winter, the days and what to sow', () => {
    const [first] = bare(planOf([carrots, onions]));
    expect(first).toMatchObject({
      gravity: 'put-right',
      place: { plot: 'a', from: '2027-10-20', year: 2028 },
      figures: { winter: 2028, areaM2: 10_000, before: 'carrots', after: 'onions', leachingDays: 158 },
    });
    expect(first?.mend.map((one) => one.code)).toContain('undersow-crop');
  });

  test('the spell is named in the headline', () => {
    expect(planOf([carrots, onions]).headline.bareWinters).toEqual([{ plot: 'a', name: 'Plot A', winter: 2028 }]);
  });

  test('half a plot bare from October, the other half from November: all of it is said to be bare from November alone', () => {
    const until = (id: string, to: string, from: number) =>
      stand('a', 'carrot-maincrop', ['2027-05-10', to], { id, span: span(from, from + 0.5) });
    const [first, ...others] = bare(planOf([until('west', '2027-10-06', 0), until('east', '2027-11-10', 0.5), onions]));
    expect(others).toEqual([]);
    expect(first).toMatchObject({
      place: { from: '2027-11-10' },
      figures: { areaM2: 10_000, from: '2027-11-10', leachingDays: 137 },
    });
  });

  test('halves that are bare at different times are not added up', () => {
    const west = stand('a', 'carrot-maincrop', ['2027-05-10', '2027-10-06'], { id: 'west', span: span(0, 0.6) });
    const garlic = stand('a', 'garlic', ['2027-11-25', '2028-07-20'], { id: 'garlic', span: span(0, 0.6) });
    const east = stand('a', 'leek-mid', ['2027-06-10', '2028-01-31'], { id: 'east', span: span(0.6, 1) });
    for (const one of bare(planOf([west, garlic, east])).filter((finding) => finding.place.year === 2028)) {
      const { from, to, areaM2 } = one.figures;
      const spells = planOf([west, garlic, east]).ground[0]?.bare ?? [];
      const through = spells.filter((spell) => spell.from <= String(from) && spell.to >= String(to));
      expect(through.reduce((sum, spell) => sum + spell.areaM2, 0)).toBeCloseTo(Number(areaM2), 6);
    }
  });

  test('ground the book shows bare over two winters counts the wet days of both', () => {
    const lifted = stand('a', 'onion-set', ['2024-03-20', '2024-08-10'], { id: 'then', state: 'recorded' });
    const [first] = bare(planOf([lifted, stand('a', 'onion-set', ['2026-04-20', '2026-08-20'], { id: 'now' })]));
    // 1 October to 25 March, twice: 176 days each.
    expect(first?.figures['leachingDays']).toBe(352);
  });

  test('rye in time closes it', () => {
    expect(
      bare(
        planOf([
          { ...carrots, to: day('2027-09-20') },
          cover('a', 'grazing-rye', ['2027-09-22', '2028-02-20'], { id: 'rye' }),
          onions,
        ]),
      ),
    ).toEqual([]);
  });

  test('a winter gone by is worth a look until the book gives the reason, then a note', () => {
    const past = (reason: string | null) =>
      bare(
        planOf([
          { ...carrots, from: day('2023-05-10'), to: day('2023-11-06'), state: 'recorded', reason },
          stand('a', 'onion-set', ['2024-03-20', '2024-08-20'], { state: 'recorded' }),
        ]),
      )[0];
    expect(past(null)).toMatchObject({ gravity: 'look', reason: null });
    expect(past('Too wet to drill.')).toMatchObject({ gravity: 'note', reason: 'Too wet to drill.' });
  });

  test('what was never planned is not bare: nothing is said of the years after the last stand, nor of those before the first', () => {
    const plan = planOf([onions]);
    // Sown on 20 March: the last six days of that winter are known.
    expect(plan.ground[0]?.bareCounts.filter((one) => one.bareDays > 0)).toEqual([
      { plot: 'a', winter: 2028, bareDays: 6 },
    ]);
  });

  test('a season of the south is counted within one year (edge 45)', () => {
    const about = farmWith({
      about: {
        place: {
          latDeg: -43.5,
          lonDeg: 172.5,
          elevationM: 20,
          near: null,
          jurisdiction: 'none',
          timeZone: 'Pacific/Auckland',
        },
        conventions: { leachingFrom: '04-01' as never, leachingTo: '09-25' as never },
      },
    }).about;
    const plan = planOf(
      [
        stand('a', 'carrot-maincrop', ['2026-11-10', '2027-04-10'], { id: 'c' }),
        stand('a', 'onion-set', ['2027-10-01', '2028-02-01']),
      ],
      { about },
    );
    expect(bare(plan)[0]).toMatchObject({ place: { year: 2027 }, figures: { leachingDays: 169 } });
  });

  test('another cover on ground already known never makes more bare days', () => {
    const known = [
      stand('a', 'potato-maincrop', ['2024-04-20', '2024-09-10'], { id: 'first' }),
      stand('a', 'potato-maincrop', ['2030-04-20', '2030-09-10'], { id: 'last' }),
    ];
    const days = (plan: Plan) => plan.ground[0]?.bareCounts.map((one) => one.bareDays) ?? [];
    const anyCover = fc.record({
      what: fc.constantFrom('grazing-rye', 'phacelia', 'trefoil', 'white-mustard'),
      start: fc.integer({ min: 0, max: 1800 }),
      length: fc.integer({ min: 5, max: 300 }),
      at: fc.integer({ min: 0, max: 9 }),
    });
    const asStand = (one: { what: string; start: number; length: number; at: number }, id: string) =>
      cover(
        'a',
        one.what,
        [addDays(day('2024-10-01'), one.start), addDays(day('2024-10-01'), Math.min(one.start + one.length, 2150))],
        { id, span: span(one.at / 10, (one.at + 1) / 10) },
      );
    fc.assert(
      fc.property(fc.array(anyCover, { maxLength: 5 }), anyCover, (covers, more) => {
        const before = days(planOf([...known, ...covers.map((one, at) => asStand(one, `c${at}`))]));
        const after = days(
          planOf([...known, ...covers.map((one, at) => asStand(one, `c${at}`)), asStand(more, 'more')]),
        );
        for (const [at, count] of after.entries()) expect(count).toBeLessThanOrEqual((before[at] ?? 0) + 1e-9);
      }),
      { numRuns: 25 },
    );
  });
});

test('weeks of a stand lie inside the weeks of the plan', () => {
  const plan = planOf([cover('a', 'mix-ley-clover-grass', ['2019-04-10', '2033-04-10'], { id: 'ley', kind: 'ley' })]);
  const one = plan.ground[0]?.stands[0];
  expect(one?.coverFromWeek).toBe(0);
  expect(one?.coverShare).toHaveLength(plan.horizon.weeks);
  expect(dayNumber(plan.horizon.firstMonday) % 7).toBe(dayNumber(day('2027-01-04')) % 7);
});
