import {
  boxPromise,
  boxSize,
  course,
  courseStand,
  cover,
  farmWith,
  ownCrop,
  person,
  plot,
  randomFarm,
  rotation,
  sampleFarm,
  sampleToday,
  slot,
  stand,
  storePlace,
} from '@leywright/farm-kit';
import { asDay } from '@leywright/measures';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Work } from '../../src/plan/work.ts';
import { planWork } from '../../src/work/plan-work.ts';
import { workFindings } from '../../src/work/work-findings.ts';
import { inputOf } from '../supply/inputs.ts';

const sample = planWork(inputOf(sampleFarm(), sampleToday, 2027));

function nothingLostNothingTwice(work: Work): void {
  const byJobs = work.jobs.reduce((sum, job) => sum + job.hours.typ, 0);
  expect(work.weeks.reduce((sum, week) => sum + week.hours.typ, 0)).toBeCloseTo(byJobs, 6);
  expect(
    work.weeks.reduce((sum, week) => sum + Object.values(week.byKind).reduce((kinds, hours) => kinds + hours, 0), 0),
  ).toBeCloseTo(byJobs, 6);
  expect(work.yearH).toBeCloseTo(byJobs, 6);
  expect(new Set(work.jobs.map((job) => job.id)).size).toBe(work.jobs.length);
  for (const job of work.jobs) {
    expect(job.hours.low, job.id).toBeLessThanOrEqual(job.hours.typ);
    expect(job.hours.typ, job.id).toBeLessThanOrEqual(job.hours.high);
    expect(job.hours.high, job.id).toBeGreaterThan(0);
  }
}

describe('hours by week and by job', () => {
  test('are the same hours: nothing lost, nothing twice, on the sample farm', () => nothingLostNothingTwice(sample));
  test('and on any farm', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 10_000 }), (seed) =>
        nothingLostNothingTwice(
          planWork(inputOf(randomFarm({ seed, plots: 3, years: 4, crops: 8, firstYear: 2024 }), '2026-03-01', 2026)),
        ),
      ),
      { numRuns: 15 },
    );
  });
});

describe('jobs of a stand', () => {
  const farm = farmWith({
    plots: [plot('A', { grossM2: 10_000 })],
    stands: [
      stand('a', 'cabbage-savoy', ['2027-06-20', '2028-02-10'], {
        id: 'savoy',
        sownOn: '2027-05-10',
        plantedOn: '2027-06-20',
      }),
      cover('a', 'white-clover-trefoil-undersow', ['2027-07-25', '2028-04-01'], { id: 'clover', undersownIn: 'savoy' }),
    ],
    promise: boxPromise({
      sizes: [boxSize('box', 100)],
      slots: [slot('cabbage-savoy', { from: '11-01', to: '02-10', unit: 'head' })],
    }),
  });
  const work = planWork(inputOf(farm, '2027-01-14', 2027));
  const kinds = new Set(work.jobs.filter((job) => job.stand === 'savoy').map((job) => job.kind));
  test('run from the seed tray to the knife', () => {
    for (const kind of ['sow-modules', 'make-beds', 'plant', 'hoe', 'hand-weed', 'net', 'unnet', 'cut'] as const)
      expect(kinds, kind).toContain(kind);
    expect(work.jobs.find((job) => job.stand === 'clover')?.kind).toBe('undersow');
  });
  test('planting is by the thousand plants: as many as stand on the ground', () => {
    const planting = work.jobs.find((job) => job.kind === 'plant');
    expect(planting?.basis).toBe('labour/transplant-machine');
    expect(planting?.hours.typ).toBeCloseTo(((planting?.amount ?? 0) / 1000) * 2, 6);
    expect(planting?.from).toBe('2027-06-20');
  });
  test('hours on twice the ground are twice the hours', () => {
    const twice = planWork(inputOf({ ...farm, plots: [plot('A', { grossM2: 20_000 })] }, '2027-01-14', 2027));
    for (const kind of ['plant', 'hoe', 'hand-weed', 'net'] as const) {
      const hours = (one: Work) =>
        one.jobs.filter((job) => job.kind === kind).reduce((sum, job) => sum + job.hours.typ, 0);
      expect(hours(twice) / hours(work), kind).toBeCloseTo(2, 6);
    }
  });
  test('half of a job done is half done, and the rest stays (edge 92)', () => {
    const id = work.jobs.find((job) => job.kind === 'plant')?.id ?? '';
    const done = planWork(
      inputOf(
        { ...farm, jobsDone: [{ entry: 'e', job: id, on: asDay('2027-06-21'), share: 0.5, hours: 3 }] },
        '2027-06-22',
        2027,
      ),
    );
    expect(done.jobs.find((job) => job.id === id)?.doneShare).toBe(0.5);
  });
});

describe('a farm that counts by the course', () => {
  const farm = farmWith({
    plots: [plot('A', { grossM2: 5000, courseAtStart: 'potatoes' })],
    rotation: rotation(2026, [
      course('potatoes', [courseStand('p', 'potato-maincrop', { plant: '04-20', end: '09-20' })], { hoursPerHa: 300 }),
    ]),
    stores: [storePlace('shed', 'ambient_frost_free', [])],
  });
  test('has its hours as written, and no jobs beside them', () => {
    const work = planWork(inputOf(farm, '2026-01-14', 2026));
    expect(work.yearH).toBeCloseTo(150, 6);
    expect(new Set(work.jobs.map((job) => job.kind))).toEqual(new Set(['whole-course']));
  });
  test('so does a crop with hours of its own', () => {
    const byCrop = planWork(
      inputOf(
        {
          ...farm,
          rotation: null,
          stands: [stand('a', 'potato-maincrop', ['2026-04-20', '2026-09-20'], { plantedOn: '2026-04-20' })],
          crops: [ownCrop('potato-maincrop', { hoursPerHa: 200 })],
        },
        '2026-01-14',
        2026,
      ),
    );
    expect(byCrop.yearH).toBeCloseTo(100, 6);
  });
});

describe('hands', () => {
  const work = (people: Parameters<typeof farmWith>[0]) =>
    planWork(
      inputOf(
        farmWith({ ...people, promise: boxPromise({ sizes: [boxSize('box', 500)], slots: [slot('leek-mid')] }) }),
        '2026-12-01',
        2027,
      ),
    );
  test('nobody’s hours written down is said once', () => {
    const found = workFindings(work({}), '2027-01-14');
    expect(found.map((one) => [one.code, one.gravity])).toEqual([['hands-unknown', 'look']]);
  });
  test('too much work is one finding for a run of weeks, not one a week', () => {
    const found = workFindings(work({ people: [person('one', { hoursWeek: 20 })] }), '2027-01-14');
    expect(found.map((one) => one.code)).toEqual(['hours-over-hands']);
    expect(found[0]?.figures['weeks']).toBe(52);
    expect(found[0]?.mend.length).toBeGreaterThan(0);
  });
  test('seasonal hands count in their season', () => {
    const weeks = work({
      people: [
        person('one', { hoursWeek: 20 }),
        person('summer', { hoursWeek: 30, from: '06-01' as never, to: '09-30' as never }),
      ],
    }).weeks;
    expect(weeks.find((one) => one.week === '2027-w10')?.handsH).toBe(20);
    expect(weeks.find((one) => one.week === '2027-w30')?.handsH).toBe(50);
  });
});
