import type { Farm, Stand } from '@leywright/book';
import { course, courseStand, cover, day, farmWith, plot, rotation, span, stand } from '@leywright/farm-kit';
import { describe, expect, test } from 'vitest';
import { planFarm } from '../../src/index.ts';

const today = day('2027-01-14');
const found = (stands: readonly Stand[], rest: Partial<Farm> = {}) =>
  planFarm(farmWith({ plots: [plot('A')], stands, ...rest }), { today }).findings;
const ofCode = (code: string, stands: readonly Stand[], rest: Partial<Farm> = {}) =>
  found(stands, rest).filter((one) => one.code === code);

describe('two stands on the same ground', () => {
  const sprouting = stand('a', 'broccoli-purple-sprouting', ['2027-07-10', '2028-05-10'], {
    id: 'sprouting',
    sownOn: null,
    plantedOn: '2027-07-10',
  });
  const carrots = stand('a', 'carrot-maincrop', ['2028-05-01', '2028-10-10'], { id: 'carrots' });

  test('sprouting broccoli to 10 May under carrots drilled on the 1st: nine days, and from when to when (edge 8)', () => {
    expect(ofCode('stands-overlap', [sprouting, carrots])).toEqual([
      expect.objectContaining({
        gravity: 'put-right',
        place: { plot: 'a', stand: 'carrots', from: '2028-05-01', to: '2028-05-10' },
        figures: expect.objectContaining({ other: 'sprouting', days: 9, share: 1, areaM2: 10_000 }),
      }),
    ]);
  });
  test('only the shared ground is counted', () => {
    const half = ofCode('stands-overlap', [
      { ...sprouting, span: span(0, 0.5) },
      { ...carrots, span: span(0.4, 1) },
    ]);
    expect(half[0]?.figures['areaM2']).toBeCloseTo(1000);
  });
  test('side by side they do not overlap, nor one after the other on the same day', () => {
    expect(
      ofCode('stands-overlap', [
        { ...sprouting, span: span(0, 0.5) },
        { ...carrots, span: span(0.5, 1) },
      ]),
    ).toEqual([]);
    expect(ofCode('stands-overlap', [sprouting, { ...carrots, from: day('2028-05-10') }])).toEqual([]);
  });
  test('two records that overlap are worth a look', () => {
    const past = [
      stand('a', 'swede', ['2025-05-10', '2025-11-20'], { id: 's', state: 'recorded' }),
      stand('a', 'leek-mid', ['2025-06-10', '2025-12-20'], { id: 'l', state: 'recorded' }),
    ];
    expect(ofCode('stands-overlap', past)[0]?.gravity).toBe('look');
  });
});

describe('undersowing', () => {
  const leeks = stand('a', 'leek-mid', ['2027-06-05', '2028-01-28'], {
    id: 'leeks',
    sownOn: null,
    plantedOn: '2027-06-05',
  });
  const trefoil = (from: string) =>
    cover('a', 'trefoil', [from, '2028-03-22'], { id: 'trefoil', undersownIn: 'leeks' });

  test('four to six weeks after planting is the time for trefoil in leeks; a week either side is no fault', () => {
    expect(ofCode('undersow-out-of-window', [leeks, trefoil('2027-07-08')])).toEqual([]);
    expect(ofCode('undersow-out-of-window', [leeks, trefoil('2027-06-27')])).toEqual([]);
  });
  test('three days after planting is too early, and the window is named', () => {
    expect(ofCode('undersow-out-of-window', [leeks, trefoil('2027-06-08')])[0]?.figures).toMatchObject({
      weeks: 0.4,
      lowWeeks: 4,
      highWeeks: 6,
      windowFrom: '2027-07-03',
      windowTo: '2027-07-17',
    });
  });
  test('onions take it 8 to 10 weeks after planting', () => {
    const onions = stand('a', 'onion-set', ['2027-04-10', '2027-08-24'], {
      id: 'leeks',
      sownOn: null,
      plantedOn: '2027-04-10',
    });
    expect(ofCode('undersow-out-of-window', [onions, trefoil('2027-06-12')])).toEqual([]);
    expect(ofCode('undersow-out-of-window', [onions, trefoil('2027-05-15')])).toHaveLength(1);
  });
  test('into drilled beans it may go from four weeks after sowing to six after they are up', () => {
    const beans = stand('a', 'french-bean-dwarf', ['2027-05-28', '2027-09-20'], { id: 'leeks' });
    const ley = (from: string) =>
      cover('a', 'mix-undersow-ley', [from, '2029-04-20'], { id: 'ley', kind: 'ley', undersownIn: 'leeks' });
    const faults = ['2027-06-15', '2027-06-30', '2027-07-20', '2027-08-12'].map(
      (from) => ofCode('undersow-out-of-window', [beans, ley(from)]).length,
    );
    expect(faults).toEqual([1, 0, 0, 1]);
  });
  test('without its host it has nothing to be sown into', () => {
    expect(ofCode('undersown-without-host', [trefoil('2027-07-08')])[0]).toMatchObject({
      gravity: 'put-right',
      figures: { host: 'leeks' },
    });
    expect(ofCode('undersown-without-host', [{ ...leeks, to: day('2027-07-01') }, trefoil('2027-07-08')])).toHaveLength(
      1,
    );
    expect(
      ofCode('undersown-without-host', [
        { ...leeks, span: span(0, 0.5) },
        { ...trefoil('2027-07-08'), span: span(0.5, 1) },
      ]),
    ).toHaveLength(1);
  });
});

describe('seasons', () => {
  test('tomatoes outdoors are named, with the tunnel to move them to', () => {
    const plots = [plot('A'), plot('T', { kind: 'tunnel' })];
    const tomato = (where: string) =>
      stand(where, 'tomato-tunnel', ['2027-05-01', '2027-10-01'], {
        id: 'tomato',
        sownOn: null,
        plantedOn: '2027-05-01',
      });
    expect(ofCode('tunnel-crop-outside', [tomato('a')], { plots })[0]?.mend).toEqual([
      { code: 'move-to-tunnel', figures: { stand: 'tomato', plot: 't' } },
    ]);
    expect(ofCode('tunnel-crop-outside', [tomato('t')], { plots })).toEqual([]);
  });
  test('main potatoes planted in July are out of season; in the middle of May, ten days after it, too; a week after, not', () => {
    const potatoes = (from: string) =>
      ofCode('sown-out-of-season', [
        stand('a', 'potato-maincrop', [from, '2027-10-10'], { sownOn: null, plantedOn: from }),
      ]).length;
    expect([potatoes('2027-07-01'), potatoes('2027-05-18'), potatoes('2027-05-12'), potatoes('2027-04-20')]).toEqual([
      1, 1, 0, 0,
    ]);
  });
  test('rye and vetch sown on 20 October for winter is too late, and rye alone is offered while it can be sown', () => {
    const mix = (from: string) =>
      ofCode('cover-sown-too-late', [cover('a', 'mix-rye-vetch', [from, '2028-04-20'], { id: 'mix' })]);
    expect(mix('2027-10-20')[0]?.mend.map((one) => one.code)).toEqual(['sow-by']);
    expect(mix('2027-10-08')[0]?.mend.map((one) => one.code)).toEqual(['sow-by', 'take-hardier-cover']);
    expect(mix('2027-09-28')).toEqual([]);
  });
  test('near the equator and beyond the polar circle the tables’ seasons are not applied (edge 46)', () => {
    const at = (latDeg: number) =>
      farmWith({
        about: { place: { latDeg, lonDeg: 20, elevationM: null, near: null, jurisdiction: 'none', timeZone: 'UTC' } },
      }).about;
    const potatoes = [stand('a', 'potato-maincrop', ['2027-07-01', '2027-10-10'])];
    for (const latDeg of [-1, 69.6, 78, -78])
      expect(ofCode('sown-out-of-season', potatoes, { about: at(latDeg) })).toEqual([]);
  });
});

describe('waiting after a cover', () => {
  test('cabbages five days after rye is turned in want three weeks', () => {
    const rye = cover('a', 'grazing-rye', ['2026-09-20', '2027-06-01'], { id: 'rye' });
    const kale = stand('a', 'kale-curly', ['2027-06-06', '2027-12-20'], {
      id: 'kale',
      sownOn: null,
      plantedOn: '2027-06-06',
    });
    expect(ofCode('wait-after-cover-too-short', [rye, kale])[0]).toMatchObject({
      gravity: 'look',
      figures: { days: 5, needDays: 21 },
      mend: [
        { code: 'turn-in-earlier', figures: { on: '2027-05-16' } },
        { code: 'start-later', figures: { on: '2027-06-22' } },
      ],
    });
    expect(ofCode('wait-after-cover-too-short', [{ ...rye, to: day('2027-05-10') }, kale])).toEqual([]);
  });
  test('potatoes the spring after a ley of five years are told of wireworm, after one of two years not', () => {
    const ley = (from: string) => cover('a', 'mix-ley-clover-grass', [from, '2026-12-01'], { id: 'ley', kind: 'ley' });
    const potatoes = stand('a', 'potato-maincrop', ['2027-04-20', '2027-09-20'], { id: 'potatoes' });
    const wireworm = (from: string) =>
      ofCode('wait-after-cover-too-short', [ley(from), potatoes]).filter((one) => one.figures['rule'] === 'wireworm');
    expect(wireworm('2021-04-10')[0]?.gravity).toBe('note');
    expect(wireworm('2025-04-10')).toEqual([]);
  });
});

describe('plots', () => {
  const courses = [course('roots', [courseStand('carrot', 'carrot-maincrop', { sow: '05-10', end: '09-20' })])];
  test('a plot of the rotation without a course to start on is named', () => {
    expect(ofCode('plot-without-course', [], { rotation: rotation(2027, courses) })[0]?.place).toEqual({ plot: 'a' });
    expect(
      ofCode('plot-without-course', [], {
        rotation: rotation(2027, courses),
        plots: [plot('A', { courseAtStart: 'roots' })],
      }),
    ).toEqual([]);
  });
  test('unknown status is unknown, and noted', () => {
    expect(ofCode('status-unknown', [], { plots: [plot('A', { status: 'unknown' })] })[0]?.gravity).toBe('note');
  });
  test('a stand on no plot of the list, and one after its plot was given up, lie outside', () => {
    const swedes = stand('nowhere', 'swede', ['2027-05-20', '2027-11-10'], { id: 's' });
    expect(ofCode('stand-outside-plot', [swedes])).toHaveLength(1);
    expect(
      ofCode('stand-outside-plot', [{ ...swedes, plot: 'a' as never }], {
        plots: [plot('A', { to: day('2027-09-29') })],
      }),
    ).toHaveLength(1);
  });
  test('a fault the rotation repeats every year is said once, for the next time, with how often', () => {
    const late = rotation(2027, [
      course('roots', [courseStand('carrot', 'carrot-maincrop', { sow: '08-10', end: '11-20' })]),
    ]);
    const again = ofCode('sown-out-of-season', [], {
      rotation: late,
      plots: [plot('A', { courseAtStart: 'roots' }), plot('B', { courseAtStart: 'roots' })],
    });
    expect(again).toEqual([
      expect.objectContaining({
        place: expect.objectContaining({ from: '2027-08-10' }),
        figures: expect.objectContaining({ times: 10 }),
      }),
    ]);
  });
});

test('findings come worst first, then in the order of the plots', () => {
  const plots = [plot('B'), plot('A')];
  const bare = (where: string) => [
    stand(where, 'carrot-maincrop', ['2027-05-10', '2027-11-10'], { id: `c-${where}` }),
    stand(where, 'onion-set', ['2028-03-20', '2028-08-20'], { id: `o-${where}` }),
  ];
  const gravities = found([...bare('a'), ...bare('b')], { plots }).map((one) => [one.gravity, one.place.plot]);
  expect(gravities.filter(([gravity]) => gravity === 'put-right')).toEqual([
    ['put-right', 'b'],
    ['put-right', 'a'],
  ]);
  const rank = ['put-right', 'look', 'note'];
  expect(gravities.map(([gravity]) => rank.indexOf(gravity ?? ''))).toEqual(
    gravities.map(([gravity]) => rank.indexOf(gravity ?? '')).toSorted(),
  );
});
