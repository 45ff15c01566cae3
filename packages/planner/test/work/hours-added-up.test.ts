/** The year's hours by crop, week, person, course, kind, plot and pay: the same total each way; and hours inside what is published. */
import { reference } from '@leywright/agronomy';
import { cover, farmWith, person, plot, randomFarm, sampleFarm, sampleToday, stand } from '@leywright/farm-kit';
import { asDay } from '@leywright/measures';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { assignHands, hoursAddedUp, hoursBy } from '../../src/hands/assign.ts';
import { handsInWeek, hoursOfPersonH } from '../../src/hands/hands.ts';
import type { Work } from '../../src/plan/work.ts';
import { planWork } from '../../src/work/plan-work.ts';
import { inputOf } from '../supply/inputs.ts';

type Hands = Parameters<typeof hoursAddedUp>[2];

function sameEachWay(work: Work, hands: Hands): void {
  for (const by of hoursBy) {
    const total = [...hoursAddedUp(work, by, hands).values()].reduce((sum, hours) => sum + hours, 0);
    expect(total, by).toBeCloseTo(work.yearH, 6);
  }
  const lines = assignHands(work, hands);
  for (const job of work.jobs) {
    const ours = lines.filter((line) => line.job === job.id);
    expect(ours.length, job.id).toBeGreaterThan(0);
    expect(
      ours.reduce((sum, line) => sum + line.hoursH, 0),
      job.id,
    ).toBeCloseTo(job.hours.typ, 6);
    expect(new Set(ours.map((line) => line.person)).size, job.id).toBe(ours.length);
  }
  for (const one of hands.people) {
    for (const { week } of work.weeks) {
      const given = lines.filter((line) => line.person === one.id && line.week === week);
      const hoursH = given.reduce((sum, line) => sum + line.hoursH, 0);
      expect(hoursH, `${one.id} ${week}`).toBeLessThanOrEqual(hoursOfPersonH(one, week, hands.absences) + 1e-6);
    }
  }
}

describe('hours added up', () => {
  test('by crop, week, person, course, kind, plot and pay are the same on the sample farm', () => {
    const farm = sampleFarm();
    sameEachWay(planWork(inputOf(farm, sampleToday, 2027)), farm);
  });

  test('and on any farm, with any hands, some of them away', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 10_000 }),
        fc.integer({ min: 0, max: 60 }),
        fc.subarray(['tractor', 'driving', 'flame'] as const),
        (seed, hoursWeek, skills) => {
          const farm = randomFarm({ seed, plots: 2, years: 3, crops: 16, firstYear: 2025 });
          const people = [...farm.people, person('anna', { hoursWeek, skills: [...skills], weekdays: [1, 3, 5] })];
          const absences = [
            { person: people[0]?.id ?? ('x' as never), from: asDay('2026-06-01'), to: asDay('2026-06-14'), why: null },
          ];
          sameEachWay(planWork(inputOf({ ...farm, people, absences }, '2026-03-01', 2026)), { people, absences });
        },
      ),
      { numRuns: 6 },
    );
  });
});

describe('hands', () => {
  const anna = person('anna', { hoursWeek: 40 });
  const away = (from: string, to: string) => [{ person: anna.id, from: asDay(from), to: asDay(to), why: null }];
  test('a week away is a week without them; two days away leave three fifths', () => {
    expect(handsInWeek([anna], '2027-w23' as never, away('2027-06-07', '2027-06-13'))).toBe(0);
    expect(handsInWeek([anna], '2027-w23' as never, away('2027-06-10', '2027-06-12'))).toBeCloseTo(24, 9);
    expect(handsInWeek([anna], '2027-w24' as never, away('2027-06-07', '2027-06-13'))).toBe(40);
  });
  test('who works on two days loses half for one of them, and nothing for a day they never work', () => {
    const two = { ...anna, weekdays: [2, 4] };
    expect(handsInWeek([two], '2027-w23' as never, away('2027-06-08', '2027-06-08'))).toBe(20);
    expect(handsInWeek([two], '2027-w23' as never, away('2027-06-09', '2027-06-09'))).toBe(40);
  });
  test('unpaid hours count as work, not as pay (edge 93)', () => {
    const farm = farmWith({
      plots: [plot('A', { grossM2: 3000 })],
      stands: [stand('a', 'cabbage-savoy', ['2027-06-20', '2028-02-10'], { plantedOn: '2027-06-20' })],
      people: [person('grower', { hoursWeek: 10 }), person('helper', { hoursWeek: 10, paid: false })],
    });
    const work = planWork(inputOf(farm, '2027-01-14', 2027));
    const pay = hoursAddedUp(work, 'pay', farm);
    expect(pay.get('unpaid')).toBeGreaterThan(0);
    expect([...pay.values()].reduce((sum, hours) => sum + hours, 0)).toBeCloseTo(work.yearH, 6);
    expect(work.weeks.every((week) => week.handsH === 20)).toBe(true);
  });
});

describe('how this farm does a job (jobs.csv)', () => {
  const farm = farmWith({
    plots: [plot('A', { grossM2: 20_000 })],
    stands: [
      stand('a', 'leek-late', ['2027-06-20', '2028-03-10'], { id: 'leeks', plantedOn: '2027-06-20' }),
      cover('a', 'mix-rye-vetch', ['2028-03-12', '2028-06-01'], { id: 'rye' }),
    ],
  });
  const own = (row: Partial<(typeof farm)['ownJobs'][number]>) => ({
    ...farm,
    ownJobs: [{ what: null, job: 'hoe' as const, done: true, hoursPerHa: null, times: null, windowDays: null, ...row }],
  });
  const work = (one: typeof farm) => planWork(inputOf(one, '2027-01-14', 2027));
  const of = (one: Work, kind: string) => one.jobs.filter((job) => job.kind === kind && job.stand === 'leeks');

  test('a job it does not do is gone, for that crop or for all', () => {
    expect(of(work(farm), 'hand-weed').length).toBeGreaterThan(0);
    expect(of(work(own({ job: 'hand-weed', done: false })), 'hand-weed')).toEqual([]);
    expect(of(work(own({ job: 'hand-weed', done: false, what: 'leek-late' })), 'hand-weed')).toEqual([]);
    expect(of(work(own({ job: 'hand-weed', done: false, what: 'leek-mid' })), 'hand-weed').length).toBeGreaterThan(0);
  });
  test('mulch is laid only where it says so', () => {
    expect(of(work(farm), 'lay-mulch')).toEqual([]);
    expect(of(work(own({ job: 'lay-mulch' })), 'lay-mulch')).toHaveLength(1);
  });
  test('its own hours a hectare, and how often, stand over the table', () => {
    const ha = (of(work(farm), 'ridge')[0]?.areaM2 ?? 0) / 10_000;
    const ridged = of(work(own({ job: 'ridge', hoursPerHa: 3, times: 2 })), 'ridge');
    expect(ridged).toHaveLength(2);
    for (const job of ridged) {
      expect(job.hours.typ).toBeCloseTo(3 * ha, 9);
      expect(job.basis).toBe('jobs.csv/all/ridge');
    }
  });
  test('how long it may wait is its own', () => {
    const planting = of(work(own({ job: 'plant', windowDays: 2 })), 'plant')[0];
    expect(planting?.window.to).toBe('2027-06-22');
  });
  test('raised plants are sown, and the bare ground they go into is made first', () => {
    const planting = of(work(farm), 'plant')[0];
    expect(planting?.after).toEqual(expect.arrayContaining(['make-beds/leeks', 'sow-seedbed/leeks']));
    expect(planting?.waitsFor).toContain('plants-ready');
    expect(of(work(farm), 'hoe').every((job) => job.after.length > 0)).toBe(true);
  });
});

/** Hours the work gives a unit, at its low and high ends, against what was published: [job, what one unit is, least, most]. */
describe('hours lie inside published ranges', () => {
  const ha = (crop: string, to: string) =>
    planWork(
      inputOf(
        farmWith({
          plots: [plot('A', { grossM2: 12_000, headlandShare: 0 })],
          stands: [stand('a', crop, ['2027-04-20', to], { plantedOn: '2027-04-20', id: 's' })],
        }),
        '2027-01-14',
        2027,
      ),
    );
  const perHa = (crop: string, kind: string, to = '2027-10-20') => {
    const jobs = ha(crop, to).jobs.filter((job) => job.kind === kind && job.stand === 's');
    const areaHa = (jobs[0]?.areaM2 ?? 0) / 10_000;
    const sum = (end: 'low' | 'high') => jobs.reduce((total, job) => total + job.hours[end], 0) / areaHa;
    return [sum('low'), sum('high')] as const;
  };
  test.each([
    [
      'hand weeding of drilled carrots: 100 to 400 h a hectare (Rasmussen 2011, read)',
      'carrot-maincrop',
      'hand-weed',
      100,
      400,
    ],
    [
      'hand weeding of drilled onions: 100 to 600 h a hectare (Brewster 2008, read)',
      'onion-drilled',
      'hand-weed',
      100,
      600,
    ],
    ['planting potatoes, two-row planter: 4 to 10 h a hectare (KTBL, recalled)', 'potato-maincrop', 'plant', 4, 10],
    ['precision drilling: 1.5 to 4 h a hectare (KTBL, recalled)', 'carrot-maincrop', 'sow', 1.5, 4],
    ['bed forming: 1.5 to 4 h a hectare (KTBL, recalled)', 'carrot-maincrop', 'make-beds', 1.5, 4],
  ] as const)('%s', (...row) => {
    const [, crop, kind, least, most] = row;
    const [low, high] = perHa(crop, kind);
    expect(low).toBeGreaterThanOrEqual(least - 1e-9);
    expect(high).toBeLessThanOrEqual(most + 1e-9);
  });

  test('planting modules with a machine: 514 plants a person-hour, 1.7 to 2.2 h a thousand (Tilth 2011, read)', () => {
    const planting = ha('cabbage-autumn', '2027-11-20').jobs.find((job) => job.kind === 'plant');
    const thousands = (planting?.amount ?? 0) / 1000;
    expect((planting?.hours.low ?? 0) / thousands).toBeCloseTo(1.7, 9);
    expect((planting?.hours.high ?? 0) / thousands).toBeCloseTo(2.2, 9);
    expect(1000 / ((planting?.hours.typ ?? 1) / thousands)).toBeGreaterThan(1000 / 2.2);
    expect(1000 / ((planting?.hours.typ ?? 1) / thousands)).toBeLessThan(514 * 1.15);
  });

  test('packing: 10 to 25 boxes a person-hour (common practice); whole farm 400 to 1600 h a hectare (organic box farm, recalled)', () => {
    const pack = reference.labour.get('pack-box');
    expect(1 / (pack?.personHHigh ?? 1)).toBeCloseTo(10, 9);
    expect(1 / (pack?.personHLow ?? 1)).toBeCloseTo(25, 9);
    const farm = sampleFarm();
    const work = planWork(inputOf(farm, sampleToday, 2027));
    const growingHa = farm.plots.reduce((sum, one) => sum + one.grossM2, 0) / 10_000;
    expect(work.yearH / growingHa).toBeGreaterThan(400);
    expect(work.yearH / growingHa).toBeLessThan(1600);
  });
});
