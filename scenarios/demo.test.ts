/** The sample farm as people meet it: the folder in demo/, read by the importer, its book replayed, planned. */
import { fileURLToPath } from 'node:url';
import { readFarmFolder, replay, verifyBook, writeFarmFolder } from '@leywright/book';
import { cleanFarm, sampleBook, sampleFarm, sampleToday } from '@leywright/farm-kit';
import { area, yearOf } from '@leywright/measures';
import { knownNames, type Plan, planFarm } from '@leywright/planner';
import { describe, expect, test } from 'vitest';
import { farmFiles } from './read-scenario.ts';

const folder = fileURLToPath(new URL('../demo', import.meta.url));
const files = farmFiles(folder);
const reading = readFarmFolder(files, knownNames());
const { farm: base, entries } = reading;
if (base === null) throw new Error(`The sample farm cannot be read: ${JSON.stringify(reading.problems)}`);
const { farm, findings: book } = replay(base, entries);
const plan: Plan = planFarm(farm, { today: sampleToday, year: 2027, book });

function expectSameFiles(found: ReadonlyMap<string, Uint8Array>, written: ReadonlyMap<string, string>): void {
  expect([...found.keys()].filter((name) => name !== 'README.md').sort()).toEqual([...written.keys()].sort());
  for (const [name, text] of written) expect(new TextDecoder().decode(found.get(name)), name).toBe(text);
}

test('the clean farm in scenarios/ is what scripts/make-demo.ts writes, byte for byte', () => {
  const cleanFolder = fileURLToPath(new URL('a-farm-with-nothing-to-find', import.meta.url));
  expectSameFiles(farmFiles(cleanFolder), writeFarmFolder(cleanFarm(), []));
});

describe('the folder', () => {
  test('is taken in without a problem of any kind', () => {
    expect(reading.problems).toEqual([]);
  });
  test('is what scripts/make-demo.ts writes, byte for byte', () => {
    const made = sampleFarm(sampleToday);
    expectSameFiles(files, writeFarmFolder(made, sampleBook(made, sampleToday)));
  });
  test('says that it is a sample', () => {
    expect(farm.about.sample).toBe(true);
  });
  test('has a book that verifies, kept by several people on several devices, with corrections in it', () => {
    expect(verifyBook(entries).ok).toBe(true);
    expect(entries.length).toBeGreaterThan(500);
    expect(new Set(entries.map((one) => one.by)).size).toBeGreaterThanOrEqual(4);
    expect(new Set(entries.map((one) => one.device)).size).toBeGreaterThanOrEqual(4);
    expect(entries.filter((one) => one.amends !== null).length).toBeGreaterThanOrEqual(2);
  });
  test('has eight years of history', () => {
    const years = new Set(farm.stands.filter((one) => one.state === 'recorded').map((one) => yearOf(one.from)));
    for (let year = 2019; year <= 2026; year += 1) expect(years).toContain(year);
  });
});

describe('the ground', () => {
  test('is six unequal plots of 5.2 ha net, each near its size in the pictures, and a tunnel', () => {
    const net = Object.fromEntries(
      plan.ground
        .filter((one) => one.kind === 'rotation')
        .map((one) => [one.letter, Number(area.fromM2(one.area.netM2, 'ha').toFixed(2))]),
    );
    expect(net).toEqual({ A: 0.98, B: 0.74, C: 1.08, D: 0.86, E: 0.62, F: 0.92 });
    expect(plan.ground.filter((one) => one.kind === 'tunnel')).toHaveLength(1);
  });
  test('the map agrees with the areas that were typed', () => {
    expect(reading.problems.filter((one) => one.code === 'area-differs' || one.code === 'plots-overlap')).toEqual([]);
  });
  test('keeps every hard rest from the first agreed year on', () => {
    const broken = plan.ground
      .flatMap((one) => one.visits)
      .filter((visit) => !visit.kept && visit.force === 'hard' && visit.year >= 2027);
    expect(broken).toEqual([]);
  });
  test('no two stands want the same ground, every undersowing has its host and its time, every cover its season', () => {
    const codes = [
      'stands-overlap',
      'stand-outside-plot',
      'undersown-without-host',
      'undersow-out-of-window',
      'cover-sown-too-late',
      'sown-out-of-season',
      'wait-after-cover-too-short',
      'tunnel-crop-outside',
    ];
    // Advice on leatherjackets after a ley is a note and stays one.
    expect(plan.findings.filter((one) => codes.includes(one.code) && one.gravity !== 'note')).toEqual([]);
  });
  test('one winter to come lies bare: Far Ridding after late carrots', () => {
    const bare = plan.findings.filter((one) => one.code === 'bare-in-leaching-season' && one.gravity === 'put-right');
    expect(bare.map((one) => one.place.plot)).toEqual(['f']);
    expect(plan.headline.bareWinters.map((one) => [one.plot, one.winter])).toEqual([['f', 2029]]);
  });
});

describe('the promise', () => {
  test('is 49 boxes for 260 households in 2027', () => {
    expect(plan.supply?.boxWeeks).toBe(49);
    expect(plan.supply?.households).toBe(260);
    expect(plan.headline).toMatchObject({ boxWeeks: 49, households: 260 });
  });
  test('is seven items in every one of them', () => {
    for (const week of plan.supply?.boxes ?? []) if (week.closed === null) expect(week.promised, week.week).toBe(7);
  });
  test('is kept but for a hungry gap of a few weeks about June', () => {
    const short = plan.headline.shortWeeks;
    expect(short.length).toBeGreaterThanOrEqual(2);
    expect(short.length).toBeLessThanOrEqual(6);
    for (const week of short) expect(Number(week.slice(6))).toBeGreaterThanOrEqual(21);
    for (const week of short) expect(Number(week.slice(6))).toBeLessThanOrEqual(28);
  });
});

test('there are a few honest faults to put right, and the head counts them', () => {
  const toPutRight = plan.findings.filter((one) => one.gravity === 'put-right');
  expect(toPutRight.length).toBeGreaterThanOrEqual(2);
  expect(toPutRight.length).toBeLessThanOrEqual(6);
  expect(plan.headline.toPutRight).toBe(toPutRight.length);
});

test('each finding says how it can be mended', () => {
  for (const one of plan.findings) expect(one.mend.length, one.code).toBeGreaterThan(0);
});
