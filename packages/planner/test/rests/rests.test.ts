import type { Farm, Stand } from '@leywright/book';
import { cover, day, farmWith, ownRest, part, plot, span, stand } from '@leywright/farm-kit';
import { describe, expect, test } from 'vitest';
import { planFarm } from '../../src/index.ts';

const today = day('2026-01-15');
const planOf = (stands: readonly Stand[], rest: Partial<Farm> = {}) =>
  planFarm(farmWith({ plots: [plot('A'), plot('B')], stands, ...rest }), { today });
const broken = (stands: readonly Stand[], rest: Partial<Farm> = {}) =>
  planOf(stands, rest).findings.filter(
    (one) => one.code === 'family-back-too-soon' || one.code === 'organism-back-too-soon',
  );
const record = { state: 'recorded' as const };

describe('rests of families (reference/intervals.csv)', () => {
  const kale = stand('a', 'kale-curly', ['2022-07-01', '2023-04-20'], { id: 'kale', ...record });
  const cabbage = (year: number) => stand('a', 'cabbage-autumn', [`${year}-06-10`, `${year}-11-01`], { id: 'cabbage' });

  test('cabbage three years after kale that wintered is a year too soon, and says which kale, the years and the first lawful one', () => {
    const [first] = broken([kale, cabbage(2026)]);
    expect(first).toMatchObject({
      code: 'family-back-too-soon',
      gravity: 'put-right',
      place: { plot: 'a', stand: 'cabbage', year: 2026 },
      figures: { previous: 'kale', previousYear: 2023, gapYears: 3, needYears: 4, earliestYear: 2027 },
    });
  });

  test('the year after it is lawful', () => {
    expect(broken([kale, cabbage(2027)])).toEqual([]);
  });

  test('its mends name the year, another plot where it is lawful now, and the reason', () => {
    const [first] = broken([kale, cabbage(2026)]);
    expect(first?.mend.map((one) => [one.code, one.figures['plot'] ?? one.figures['year'] ?? null])).toEqual([
      ['move-to-year', 2027],
      ['move-to-plot', 'b'],
      ['give-reason', null],
    ]);
  });

  test('another plot that carried the family as late is not offered', () => {
    const there = { ...kale, id: 'kale-b' as never, plot: 'b' as never };
    expect(broken([kale, there, cabbage(2026)])[0]?.mend.map((one) => one.code)).toEqual([
      'move-to-year',
      'give-reason',
    ]);
  });

  test('a mustard cover counts as a brassica, rye does not', () => {
    const after = (what: string) =>
      broken([cover('a', what, ['2024-08-20', '2025-03-01'], { id: 'c', ...record }), cabbage(2026)]).length;
    expect([after('white-mustard'), after('grazing-rye')]).toEqual([1, 0]);
  });

  test('two lettuces in one summer are one return', () => {
    const lettuce = (from: string, to: string) => stand('a', 'lettuce-head', [from, to], { id: `lettuce-${from}` });
    expect(broken([lettuce('2026-04-10', '2026-06-10'), lettuce('2026-06-20', '2026-08-20')])).toEqual([]);
  });

  test('only the ground that carried the first is held to the rest (half plots, edge 5)', () => {
    const half = { ...kale, span: span(0, 0.5) };
    const on = (from: number, to: number) => broken([half, { ...cabbage(2026), span: span(from, to) }]);
    expect(on(0.5, 1)).toEqual([]);
    expect(on(0.25, 0.75)[0]?.figures['sharedShare']).toBeCloseTo(0.5);
  });

  test('the past of a plot that was divided goes with its ground', () => {
    const parts = [
      part('a1', 'b', {
        span: span(),
        from: day('2025-01-01'),
        parents: [{ plot: 'a' as never, span: span(), share: 1 }],
      }),
    ];
    const onB = { ...cabbage(2026), plot: 'b' as never };
    expect(broken([kale, onB])).toEqual([]);
    expect(broken([kale, onB], { parts })).toHaveLength(1);
  });

  test('an own rest of the family takes the table’s place', () => {
    expect(
      broken([kale, cabbage(2026)], { rests: [ownRest('Brassicaceae', 3)] }).map((one) => one.figures['rule']),
    ).toEqual(['clubroot']);
    expect(broken([kale, cabbage(2027)], { rests: [ownRest('Brassicaceae', 6)] })[0]?.figures).toMatchObject({
      needYears: 6,
      earliestYear: 2029,
    });
  });

  test('a reason is shown beside the finding and does not hide it (edge 10)', () => {
    expect(broken([kale, { ...cabbage(2026), reason: 'One bed only.' }])[0]).toMatchObject({
      gravity: 'put-right',
      reason: 'One bed only.',
    });
  });

  test('what already stands is worth a look: it cannot be moved', () => {
    const standing = stand('a', 'cabbage-spring', ['2025-09-20', '2026-05-20'], { id: 'spring', ...record });
    expect(broken([kale, standing])[0]).toMatchObject({ gravity: 'look', mend: [{ code: 'give-reason' }] });
  });
});

describe('rests of organisms', () => {
  const onion = (id: string, year: number) => stand('a', 'onion-set', [`${year}-03-20`, `${year}-08-20`], { id });
  const conventions = { organismRests: true };

  test('white rot asks five years of onions on clean land, as a warning: worth a look', () => {
    const [first] = broken([{ ...onion('o1', 2022), ...record }, onion('o2', 2026)], {
      about: farmWith({ about: { conventions } }).about,
    });
    expect(first).toMatchObject({
      code: 'organism-back-too-soon',
      gravity: 'look',
      figures: { rule: 'allium-white-rot', gapYears: 4, needYears: 5, infested: 0 },
    });
  });

  test('where white rot was found it asks ten years and is hard', () => {
    const marks = [
      {
        organism: 'allium-white-rot',
        plot: 'a' as never,
        span: span(),
        foundOn: day('2022-07-01'),
        clearedOn: null,
        note: null,
      },
    ];
    const [first] = broken([{ ...onion('o1', 2020), ...record }, onion('o2', 2026)], { marks });
    expect(first).toMatchObject({
      code: 'organism-back-too-soon',
      gravity: 'put-right',
      figures: { needYears: 10, earliestYear: 2030, infested: 1 },
    });
  });

  test('a mark on one half says nothing of the other', () => {
    const marks = [
      {
        organism: 'allium-white-rot',
        plot: 'a' as never,
        span: span(0, 0.5),
        foundOn: day('2022-07-01'),
        clearedOn: null,
        note: null,
      },
    ];
    expect(
      broken(
        [
          { ...onion('o1', 2020), ...record },
          { ...onion('o2', 2026), span: span(0.5, 1) },
        ],
        { marks },
      ),
    ).toEqual([]);
  });

  test('a farm that does not look at organisms still hears of those it recorded', () => {
    const about = farmWith({ about: { conventions: { organismRests: false } } }).about;
    const marks = [
      {
        organism: 'clubroot',
        plot: 'a' as never,
        span: span(),
        foundOn: day('2021-09-01'),
        clearedOn: null,
        note: null,
      },
    ];
    const swedes = [
      stand('a', 'swede', ['2021-05-20', '2021-10-20'], { id: 's1', ...record }),
      stand('a', 'swede', ['2026-05-20', '2026-10-20'], { id: 's2' }),
    ];
    expect(broken(swedes, { about })).toEqual([]);
    expect(broken(swedes, { about, marks })[0]).toMatchObject({
      gravity: 'put-right',
      figures: { rule: 'clubroot', needYears: 7 },
    });
  });
});

describe('south of the equator', () => {
  test('a crop that stands over new year occupies the season it was planted in, and so does the next', () => {
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
        conventions: { restSeasonFrom: '09-01' as never, restSeasonTo: '04-30' as never },
      },
    }).about;
    const potatoes = (from: string, to: string, id: string) => stand('a', 'potato-maincrop', [from, to], { id });
    const early = broken(
      [{ ...potatoes('2022-10-20', '2023-03-20', 'p1'), ...record }, potatoes('2026-10-10', '2027-03-20', 'p2')],
      { about },
    );
    expect(early).toEqual([
      expect.objectContaining({
        code: 'organism-back-too-soon',
        figures: expect.objectContaining({ gapYears: 4, needYears: 5, rule: 'potato-cyst-nematode' }),
      }),
    ]);
  });
});
