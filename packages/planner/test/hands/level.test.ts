import { randomFarm, sampleFarm, sampleToday } from '@leywright/farm-kit';
import { addDays, asDay, asIsoWeek, dayNumber, mondayOf, weekOf } from '@leywright/measures';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { levelWork } from '../../src/hands/level.ts';
import { oneMoreInWeek } from '../../src/hands/one-more.ts';
import { slipOf } from '../../src/hands/slip.ts';
import type { Job, Work } from '../../src/plan/work.ts';
import { planWork } from '../../src/work/plan-work.ts';
import { inputOf } from '../supply/inputs.ts';

const weekNames = ['2027-w20', '2027-w21', '2027-w22', '2027-w23'].map(asIsoWeek);
const firstDay = mondayOf(weekNames[0] as (typeof weekNames)[number]);

/** A job of so many hours on a day counted from Monday of week 20, which may be done some days sooner and later. */
function job(
  id: string,
  hours: number,
  at: { on: number; early?: number; late?: number; after?: readonly string[] },
): Job {
  const from = addDays(firstDay, at.on);
  return {
    id,
    kind: 'hoe',
    plot: null,
    letter: null,
    stand: null,
    crop: null,
    course: null,
    name: id,
    from,
    to: from,
    window: { from: addDays(from, -(at.early ?? 0)), to: addDays(from, at.late ?? 0) },
    week: weekOf(from),
    areaM2: null,
    rowM: null,
    amount: null,
    amountUnit: null,
    hours: { low: hours, typ: hours, high: hours },
    basis: 'x',
    doneShare: 0,
    caution: null,
    tools: [],
    skill: null,
    after: at.after ?? [],
    waitsFor: [],
  };
}

function workOf(jobs: readonly Job[], handsH: readonly number[]): Work {
  return {
    year: 2027,
    jobs,
    yearH: jobs.reduce((sum, one) => sum + one.hours.typ, 0),
    weeks: weekNames.map((week, at) => {
      const typ = jobs.filter((one) => one.week === week).reduce((sum, one) => sum + one.hours.typ, 0);
      return { week, hours: { low: typ, typ, high: typ }, handsH: handsH[at] ?? 0, byKind: {}, why: '' };
    }),
  };
}

/** Every way to put each job on a day of its own: the least hours over the hands, then the least hours moved by weeks. */
function byTryingAll(work: Work): { overH: number; movedHWeeks: number } {
  let best = { overH: Number.POSITIVE_INFINITY, movedHWeeks: Number.POSITIVE_INFINITY };
  const days = new Map<string, string>();
  const tryFrom = (at: number) => {
    const next = work.jobs[at];
    if (next === undefined) {
      const cost = costOf(work, days);
      if (
        cost.overH < best.overH - 1e-9 ||
        (cost.overH < best.overH + 1e-9 && cost.movedHWeeks < best.movedHWeeks - 1e-9)
      )
        best = cost;
      return;
    }
    for (let day = next.window.from; day <= next.window.to; day = addDays(day, 1)) {
      if (!weekNames.includes(weekOf(day))) continue;
      if (next.after.some((id) => (days.get(id) ?? '') > day)) continue;
      days.set(next.id, day);
      tryFrom(at + 1);
      days.delete(next.id);
    }
  };
  tryFrom(0);
  return best;
}

function costOf(work: Work, days: ReadonlyMap<string, string>): { overH: number; movedHWeeks: number } {
  const weekOfJob = (one: Job) => weekOf(asDay(days.get(one.id) ?? one.from));
  const overH = work.weeks.reduce((sum, { week, handsH }) => {
    const load = work.jobs.filter((one) => weekOfJob(one) === week).reduce((total, one) => total + one.hours.typ, 0);
    return sum + Math.max(0, load - (handsH ?? 0));
  }, 0);
  const movedHWeeks = work.jobs.reduce(
    (sum, one) => sum + one.hours.typ * Math.abs(weekNames.indexOf(weekOfJob(one)) - weekNames.indexOf(one.week)),
    0,
  );
  return { overH, movedHWeeks };
}

function daysAfter(work: Work, moved: ReturnType<typeof levelWork>['moved']): ReadonlyMap<string, string> {
  const days = new Map(work.jobs.map((one) => [one.id, one.from as string]));
  for (const one of moved) days.set(one.job, one.to);
  return days;
}

const aJob = fc.record({
  hours: fc.integer({ min: 1, max: 12 }),
  on: fc.integer({ min: 0, max: 27 }),
  early: fc.integer({ min: 0, max: 4 }),
  late: fc.integer({ min: 0, max: 5 }),
  waits: fc.boolean(),
});
/** Up to four jobs in order of day, some of which wait for the one before them. */
const someWork = fc
  .tuple(
    fc.array(aJob, { minLength: 1, maxLength: 4 }),
    fc.array(fc.integer({ min: 0, max: 14 }), { minLength: 4, maxLength: 4 }),
  )
  .map(([drawn, handsH]) => {
    const inOrder = drawn.toSorted((a, b) => a.on - b.on);
    const jobs = inOrder.map(({ hours, waits, ...at }, index) =>
      job(`j${index}`, hours, { ...at, after: waits && index > 0 ? [`j${index - 1}`] : [] }),
    );
    return workOf(jobs, handsH);
  });

describe('levelling', () => {
  test('on small farms drawn at random it is as good as trying every day of every job', () => {
    fc.assert(
      fc.property(someWork, (work) => {
        const levelled = levelWork(work);
        const best = byTryingAll(work);
        expect(levelled.proven).toBe(true);
        expect(levelled.overAfterH).toBeCloseTo(best.overH, 9);
        expect(costOf(work, daysAfter(work, levelled.moved)).movedHWeeks).toBeCloseTo(best.movedHWeeks, 9);
      }),
      { numRuns: 80 },
    );
  });

  test.each([1, 7, 23, 51])('on random farm %i no order and no window is broken, and no hours are lost', (seed) => {
    const farm = randomFarm({ seed, plots: 4, years: 4, crops: 12, firstYear: 2024 });
    const people = farm.people.map((one) => ({ ...one, hoursWeek: 25 }));
    kept(planWork(inputOf({ ...farm, people }, '2026-01-05', 2026)));
  });

  test('nor on the sample farm with two of its growers gone', () => {
    const farm = sampleFarm();
    kept(planWork(inputOf({ ...farm, people: farm.people.slice(0, 3) }, sampleToday, 2027)));
  });

  test('a job that its successor holds back is stuck for its order; one with one day only for its days', () => {
    const work = workOf(
      [job('beds', 10, { on: 7, late: 10 }), job('sow', 10, { on: 9, after: ['beds'] }), job('other', 1, { on: 14 })],
      [40, 5, 40, 40],
    );
    const { stuck, moved } = levelWork(work);
    expect(moved).toEqual([]);
    expect(stuck.map((one) => [one.job, one.why])).toEqual([
      ['beds', 'order'],
      ['sow', 'days'],
    ]);
  });

  test('without hands nothing moves', () => {
    const work = workOf([job('a', 50, { on: 0, late: 20 })], []);
    const unknown = { ...work, weeks: work.weeks.map((week) => ({ ...week, handsH: null })) };
    expect(levelWork(unknown)).toMatchObject({ moved: [], overAfterH: 0, proven: true });
  });
});

function kept(work: Work): void {
  const levelled = levelWork(work, { mostSteps: 2000 });
  const days = daysAfter(work, levelled.moved);
  expect(levelled.moved.length).toBeGreaterThan(0);
  expect(levelled.overAfterH).toBeLessThan(levelled.overBeforeH);
  for (const one of work.jobs) {
    const day = days.get(one.id) ?? '';
    if (day !== one.from) {
      expect(day >= one.window.from && day <= one.window.to, one.id).toBe(true);
    }
    for (const id of one.after) expect((days.get(id) ?? '') <= day, `${id} before ${one.id}`).toBe(true);
  }
  expect(levelled.weeks.reduce((sum, week) => sum + week.hoursH, 0)).toBeCloseTo(work.yearH, 6);
}

describe('one more pair of hands', () => {
  test('in week 22 frees what they can do there, and what had been moved out of it stays', () => {
    const jobs = [job('lift', 20, { on: 14 }), job('weed', 20, { on: 15, late: 6 }), job('plant', 20, { on: 21 })];
    const found = oneMoreInWeek(workOf(jobs, [0, 0, 20, 20]), '2027-w22', { addedH: 20 });
    expect(found).toMatchObject({ overWithoutH: 20, overWithH: 0, freedH: 20 });
  });

  test('on the sample farm never makes anything worse', () => {
    const farm = sampleFarm();
    const work = planWork(inputOf({ ...farm, people: farm.people.slice(0, 3) }, sampleToday, 2027));
    const found = oneMoreInWeek(work, '2027-w22', { addedH: 38, mostSteps: 2000 });
    expect(found.freedH).toBeGreaterThanOrEqual(0);
    expect(found.freedH).toBeLessThanOrEqual(38 + 1e-6);
  });
});

describe('what slips', () => {
  const work = workOf(
    [
      { ...job('sow', 1, { on: 0, late: 3 }), kind: 'sow' },
      { ...job('hoe-1', 1, { on: 14, late: 4, after: ['sow'] }) },
      { ...job('hoe-2', 1, { on: 20, late: 4, after: ['hoe-1'] }) },
      { ...job('net', 1, { on: 5, after: [] }) },
    ],
    [],
  );
  test('sown a week late, the hoeing comes a week late; the second pass only when the first is in its way', () => {
    const found = slipOf(work, 'sow', addDays(firstDay, 7));
    expect(found.map((one) => [one.job, one.slipDays, one.isTooLate])).toEqual([
      ['sow', 7, true],
      ['hoe-1', 7, true],
      ['hoe-2', 1, false],
    ]);
  });
  test('nothing slips with a job that nothing waits for', () => {
    expect(slipOf(work, 'net', addDays(firstDay, 9)).map((one) => one.job)).toEqual(['net']);
    expect(slipOf(work, 'no-such-job', firstDay)).toEqual([]);
  });
  test('planting put off by ten days on the sample farm moves what grows from it, never what came before', () => {
    const sample = planWork(inputOf(sampleFarm(), sampleToday, 2027));
    const planting = sample.jobs.find((one) => one.kind === 'plant' && one.stand !== null);
    if (planting === undefined) throw new Error('The sample farm plants nothing.');
    const slipped = slipOf(sample, planting.id, addDays(planting.from, 10));
    expect(slipped.length).toBeGreaterThan(1);
    for (const one of slipped) {
      expect(one.slipDays).toBeGreaterThan(0);
      expect(dayNumber(one.to)).toBeGreaterThanOrEqual(dayNumber(planting.from));
    }
  });
});
