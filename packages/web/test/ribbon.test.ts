import { expect, test } from 'vitest';
import { canopyPath } from '../src/pictures/ribbon/canopy.ts';
import { placeLabels } from '../src/pictures/ribbon/labels.ts';
import { layersOf } from '../src/pictures/ribbon/layers.ts';
import { faultMarks } from '../src/pictures/ribbon/marks.ts';
import { ribbonTwins } from '../src/pictures/ribbon/ribbon-twin.ts';
import { heightIn } from '../src/pictures/ribbon/strip.tsx';
import { ribbonYears, runsOfWeeks, weeksFromStart } from '../src/pictures/weeks.ts';
import { fourYears } from '../src/places/ground/four-years.ts';
import { horizon, inventedGround } from './look/invented-ground.ts';

const ground = inventedGround();
const scale = { horizon, pxPerWeek: 2, width: 1042 };
const endWeek = (stand: { to: (typeof ground)[number]['stands'][number]['to'] }) => weeksFromStart(horizon, stand.to);
const measure = (text: string, sizePx: number, stretch: 'normal' | 'narrow') =>
  text.length * sizePx * (stretch === 'normal' ? 0.5 : 0.46);

test('the pile of a plot is as high as the cover of its stands by their shares of the ground', () => {
  const { stands } = ground[1]!;
  const layers = layersOf(stands, endWeek);
  const week = 250;
  const standing = stands.filter(
    (stand) =>
      stand.undersownIn === null && week >= stand.coverFromWeek && week < stand.coverFromWeek + stand.coverShare.length,
  );
  const sum = standing.reduce(
    (total, stand) =>
      total + (stand.coverShare[week - stand.coverFromWeek] ?? 0) * (stand.span.toShare - stand.span.fromShare),
    0,
  );
  const highest = Math.max(
    0,
    ...layers.filter(({ stand }) => standing.includes(stand)).map(({ top, fromWeek }) => top[week - fromWeek] ?? 0),
  );
  expect(standing.length).toBeGreaterThan(0);
  expect(highest).toBeCloseTo(sum, 6);
});

test('an undersown stand leans on the foot of its host and takes the whole ground once the host is off', () => {
  const layers = layersOf(ground[1]!.stands, endWeek);
  const under = layers.find(({ stand, overUntilWeek }) => stand.name === 'Ley' && overUntilWeek !== null)!;
  const host = layers.find(({ stand }) => stand.id === under.stand.undersownIn)!;
  const week = Math.floor(under.overUntilWeek ?? 0) - 1;
  expect(under.base[week - under.fromWeek]).toBe(host.base[week - host.fromWeek]);
  expect((under.top[week - under.fromWeek] ?? 0) - (under.base[week - under.fromWeek] ?? 0)).toBeLessThan(
    (under.stand.coverShare[week - under.fromWeek] ?? 0) * 0.43,
  );
});

test('a stand is outlined in steps from its first harvest and in slopes before', () => {
  const layers = layersOf(ground[0]!.stands, endWeek);
  const potatoes = layers.find(({ stand }) => stand.name === 'Potatoes' && stand.from > '2022-02-01')!;
  const path = canopyPath(potatoes, scale, heightIn(57))!;
  const firstStep = path.indexOf('H');
  expect(path.slice(0, firstStep)).toMatch(/^M[^HV]*$/);
  expect(path.slice(firstStep)).toMatch(/H[\d.]+V[\d.]+H[\d.]+V/);
  expect(path.endsWith('Z')).toBe(true);
});

test('names above a strip never touch, never leave the strip and never stand over a run under 28 px', () => {
  for (const plot of ground) {
    const labels = placeLabels(plot.stands, scale, { measure, familyNames: (stand) => [stand.look, stand.look] });
    expect(labels.length).toBeGreaterThan(5);
    labels.forEach((label, index) => {
      expect(label.middle - label.width / 2).toBeGreaterThanOrEqual(-0.01);
      expect(label.middle + label.width / 2).toBeLessThanOrEqual(scale.width + 0.01);
      const next = labels[index + 1];
      if (next !== undefined) expect(next.middle - next.width / 2).toBeGreaterThan(label.middle + label.width / 2);
    });
  }
  const short = { ...ground[0]!.stands[0]!, from: ground[0]!.stands[3]!.from, to: ground[0]!.stands[3]!.from };
  expect(placeLabels([short], scale, { measure, familyNames: () => ['x', 'x'] })).toEqual([]);
});

test('a finding with dates is marked on its plot by its number; an answered winter keeps an outline without one', () => {
  const finding = {
    code: 'bare-in-leaching-season',
    gravity: 'put-right',
    place: { plot: 'far-ridding', from: '2028-11-02', to: '2029-04-20' },
    figures: {},
    mend: [],
    reason: null,
    why: null,
  } as const;
  const marks = faultMarks(ground, [finding], horizon);
  expect(marks.find(({ kind, plot }) => kind === 'open' && plot === 'far-ridding')?.number).toBe(1);
  expect(marks.find(({ kind, plot }) => kind === 'answered' && plot === 'elder-stubs')?.number).toBeNull();
});

test('ten years of ISO weeks are counted as the calendar has them: 2022 to 2031 are 521 weeks', () => {
  const years = ribbonYears(horizon);
  expect(years.reduce((sum, { weeks }) => sum + weeks, 0)).toBe(521);
  expect(years.find(({ isoYear }) => isoYear === 2026)?.weeks).toBe(53);
});

test('the table twin names every stand the picture draws, and every plot and year', () => {
  const [courses, stands] = ribbonTwins(ground, horizon);
  expect(stands?.rows).toHaveLength(ground.reduce((sum, plot) => sum + plot.stands.length, 0));
  expect(courses?.columns).toHaveLength(11);
  expect(courses?.rows).toHaveLength(6);
});

test('four years on a phone begin a year before the chosen one and stay within the plan', () => {
  const near = fourYears(ground[0]!, horizon, 2027);
  expect([near.horizon.fromYear, near.horizon.toYear]).toEqual([2026, 2029]);
  const late = fourYears(ground[0]!, horizon, 2031);
  expect([late.horizon.fromYear, late.horizon.toYear]).toEqual([2028, 2031]);
  const stand = ground[0]!.stands[5]!;
  expect(near.ground.stands[5]!.coverFromWeek).toBe(stand.coverFromWeek - near.fromWeek);
});

test('weeks are written as runs', () => {
  expect(runsOfWeeks([41, 42, 43, 1, 2, 8])).toBe('1 to 2, 8, 41 to 43');
  expect(runsOfWeeks([])).toBe('');
});
