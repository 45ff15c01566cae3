import { reference } from '@leywright/agronomy';
import type { Course, CourseStand } from '@leywright/book';
import { asDay, dayInYear, daysBetween, weekOf, weeksBetween } from '@leywright/measures';
import { describe, expect, test } from 'vitest';
import { firstCourses } from '../src/first/courses.ts';
import { firstFarm } from '../src/first/first-farm.ts';
import { knownPlaces } from '../src/first/place.ts';
import type { FirstSentence } from '../src/first/sentence.ts';
import { planFarm } from '../src/plan/planner.ts';

const stamp = { id: 'ours', today: asDay('2027-06-08') };
const sentence: FirstSentence = {
  name: null,
  plots: 6,
  areaHa: 5.2,
  plotAreasHa: null,
  near: 'Cambridge',
  latDeg: null,
  lonDeg: null,
  items: 7,
  households: 120,
  weeks: 49,
};

function farmOf(more: Partial<FirstSentence> = {}) {
  const reading = firstFarm({ ...sentence, ...more }, stamp);
  if (reading.kind !== 'farm') throw new Error(JSON.stringify(reading.problems));
  return reading.farm;
}

function problemsOf(more: Partial<FirstSentence>) {
  const reading = firstFarm({ ...sentence, ...more }, stamp);
  return reading.kind === 'problems' ? reading.problems.map((problem) => problem.field) : [];
}

const counts = [4, 5, 6, 7, 8];
/** Where the windows of the reference tables are written for. */
const lowlandEngland = { latDeg: 52, elevationM: 80 };

/** Every stand of one plot that goes through the courses twice. */
function twiceRound(courses: readonly Course[]) {
  return Array.from({ length: 2 * courses.length }, (_, at) => ({
    course: courses[at % courses.length],
    year: 2030 + at,
  })).flatMap(({ course, year }) =>
    (course?.stands ?? []).map((stand) => ({
      ...stand,
      id: `${year}-${stand.key}`,
      host: stand.undersownIn === null ? null : `${year}-${stand.undersownIn}`,
      ...days(stand, year),
    })),
  );
}

function days(stand: CourseStand, year: number) {
  const start = stand.plant ?? stand.sow;
  if (start === null) throw new Error(`${stand.key} neither sown nor planted`);
  return {
    starts: dayInYear(start, year + stand.startYearOffset),
    ends: dayInYear(stand.end, year + stand.endYearOffset),
  };
}

describe('the first rotation', () => {
  test.each(counts)('of %i courses is sown and planted in the windows of the reference tables', (count) => {
    for (const stand of firstCourses(count, lowlandEngland).flatMap((course) => course.stands)) {
      const crop = reference.crops.get(stand.what);
      const cover = reference.covers.get(stand.what);
      const [from, to] =
        crop === undefined
          ? [cover?.sowFrom, cover?.sowTo]
          : stand.plant === null
            ? [crop.sowOutFrom, crop.sowOutTo]
            : [crop.plantFrom, crop.plantTo];
      const at = stand.plant ?? stand.sow ?? '';
      expect(at >= (from ?? 'none') && at <= (to ?? ''), `${stand.key} ${stand.what} ${at}: ${from} to ${to}`).toBe(
        true,
      );
    }
  });

  test.each(counts)('of %i courses never has two stands on the same ground, but for what is undersown', (count) => {
    const stands = twiceRound(firstCourses(count, lowlandEngland));
    const clashes = stands.flatMap((one, at) =>
      stands
        .slice(at + 1)
        .filter((other) => {
          const share =
            Math.min(one.span.toShare, other.span.toShare) - Math.max(one.span.fromShare, other.span.fromShare);
          return (
            share > 1e-6 &&
            one.starts < other.ends &&
            other.starts < one.ends &&
            one.host !== other.id &&
            other.host !== one.id
          );
        })
        .map((other) => `${one.id} and ${other.id}`),
    );
    expect(clashes).toEqual([]);
  });

  test.each(counts)('of %i courses undersows within the weeks the covers table gives for the crop', (count) => {
    for (const course of firstCourses(count, lowlandEngland)) {
      for (const stand of course.stands.filter((one) => one.undersownIn !== null)) {
        const host = course.stands.find((one) => one.key === stand.undersownIn);
        const cover = reference.covers.get(stand.what);
        if (host === undefined || cover === undefined) throw new Error(stand.key);
        const weeks = daysBetween(days(host, 2030).starts, days(stand, 2030).starts) / 7;
        const own = cover.undersowWeeksByCrop.find((entry) => entry.cropId === host.what);
        expect(cover.undersowCropIds, stand.key).toContain(host.what);
        expect(weeks, stand.key).toBeGreaterThanOrEqual(own?.lowWeeks ?? cover.undersowLowWeeks ?? 99);
        expect(weeks, stand.key).toBeLessThanOrEqual(own?.highWeeks ?? cover.undersowHighWeeks ?? 0);
      }
    }
  });

  test.each(counts)('of %i courses uses the whole of every plot that is cropped', (count) => {
    for (const course of firstCourses(count, lowlandEngland).filter((one) => one.stands.length > 0)) {
      const crops = course.stands.filter((stand) => stand.kind === 'crop');
      const edges = [...new Set(crops.map((stand) => `${stand.span.fromShare} ${stand.span.toShare}`))].map((edge) =>
        edge.split(' ').map(Number),
      );
      expect(edges.reduce((sum, [from = 0, to = 0]) => sum + to - from, 0)).toBeCloseTo(1, 3);
    }
  });
});

describe('a farm from one sentence', () => {
  test('is all in pencil, with as many plots as were said and their area between them', () => {
    const farm = farmOf();
    expect(farm.plots).toHaveLength(6);
    expect(farm.plots.reduce((sum, plot) => sum + plot.grossM2, 0)).toBeCloseTo(52_000, 6);
    expect(farm.rotation?.state).toBe('pencil');
    expect(farm.stands.every((stand) => stand.state === 'pencil')).toBe(true);
    expect(farm.stands.length).toBeGreaterThan(5);
  });

  test('takes typed areas plot by plot', () => {
    const farm = farmOf({ plots: 2, plotAreasHa: [0.4, 1.1] });
    expect(farm.plots.map((plot) => Math.round(plot.grossM2))).toEqual([4000, 11_000]);
  });

  test('promises the households, items and weeks that were said', () => {
    const { promise } = farmOf();
    expect(promise?.sizes.map((size) => size.households)).toEqual([120]);
    expect(promise?.itemsPerBox).toBe(7);
    expect(52 - (promise?.closedEveryYear.length ?? 0)).toBe(49);
    expect(promise?.slots.length).toBeGreaterThanOrEqual(7);
  });

  test.each([1, 20, 26, 45, 52])('closes the weeks that leave %i with a box', (weeks) => {
    expect(new Set(farmOf({ weeks }).promise?.closedEveryYear).size).toBe(52 - weeks);
  });

  test('has no two plots of one name, however many there are', () => {
    const { plots } = farmOf({ plots: 60, areaHa: 60 });
    expect(new Set(plots.map((plot) => plot.id)).size).toBe(60);
    expect(plots[26]?.name).toBe('Plot AA');
  });

  test('from October on begins with the next year', () => {
    const reading = firstFarm(sentence, { id: 'ours', today: asDay('2027-10-02') });
    expect(reading.kind === 'farm' ? reading.farm.rotation?.firstYear : null).toBe(2028);
  });

  test('finds a place by a name it knows, and says so when it does not', () => {
    expect(farmOf({ near: 'brussels' }).about.place).toMatchObject({
      latDeg: 50.8,
      jurisdiction: 'EU',
      timeZone: 'Europe/Brussels',
    });
    expect(problemsOf({ near: 'Nowhere-under-Wold' })).toEqual(['near']);
    expect(problemsOf({ near: null })).toEqual(['near']);
    expect(farmOf({ near: 'Nowhere-under-Wold', latDeg: 52.3 }).about.place.latDeg).toBe(52.3);
  });

  test('is not offered where its sowing days would be wrong', () => {
    expect(problemsOf({ near: 'Christchurch' })).toEqual(['near']);
    expect(problemsOf({ near: null, latDeg: -34 })).toEqual(['latDeg']);
  });

  test('says all that is wrong with the sentence at once', () => {
    expect(problemsOf({ plots: 0, areaHa: -2, items: 7.5, households: 0, weeks: 60, near: 'Nowhere' })).toEqual([
      'plots',
      'areaHa',
      'items',
      'households',
      'weeks',
      'near',
    ]);
  });

  test('assumes covers that end three weeks or more before the first crop of the year', () => {
    const farm = farmOf();
    const covers = farm.stands.filter((stand) => stand.kind === 'cover');
    for (const cover of covers) {
      const plot = farm.plots.find((one) => one.id === cover.plot);
      const course = farm.rotation?.courses.find((one) => one.id === plot?.courseAtStart);
      const next = course?.stands
        .filter((stand) => stand.kind === 'crop' && stand.span.fromShare === cover.span.fromShare)
        .map((stand) => dayInYear(stand.plant ?? stand.sow ?? stand.end, 2027))
        .sort()[0];
      expect(weeksBetween(weekOf(cover.to), weekOf(next ?? cover.from))).toBeGreaterThanOrEqual(3);
    }
  });
});

/** Findings of the ground: nothing here depends on how many households were promised. */
const ofTheGround = new Set<string>([
  'stands-overlap',
  'stand-outside-plot',
  'undersown-without-host',
  'tunnel-crop-outside',
  'bare-in-leaching-season',
  'plot-without-course',
  'family-back-too-soon',
  'organism-back-too-soon',
]);

describe('the plan of a farm from one sentence', () => {
  test.each(knownPlaces().filter((place) => !['Christchurch', 'Burnie (Round Hill), Tasmania'].includes(place)))(
    'near %s has nothing to put right on the ground',
    (near) => {
      for (const plots of [1, 4, 5, 6, 7, 8, 11]) {
        const plan = planFarm(farmOf({ plots, near }), { today: stamp.today });
        const hard = plan.findings.filter(
          (finding) => finding.gravity === 'put-right' && ofTheGround.has(finding.code),
        );
        expect(hard, `${plots} plots`).toEqual([]);
      }
    },
  );
});

describe('the promise of a farm from one sentence', () => {
  test('asks for nothing the ground does not carry, and fills most of the box in autumn', () => {
    const plan = planFarm(farmOf({ households: 260 }), { today: stamp.today, year: 2028 });
    const asked = plan.findings.filter((finding) =>
      ['ground-too-small', 'crop-not-on-ground', 'no-yield-known', 'households-over-reach'].includes(finding.code),
    );
    expect(asked).toEqual([]);
    const autumn = plan.supply?.boxes.filter((box) => box.week >= '2028-w36' && box.week <= '2028-w48') ?? [];
    expect(autumn.filter((box) => box.itemsPerBox >= 5.4).length).toBeGreaterThanOrEqual(10);
  });

  test('of far more households than a hectare feeds still asks for their full box, and says how few it feeds', () => {
    const plan = planFarm(farmOf({ plots: 4, areaHa: 1, households: 400 }), { today: stamp.today, year: 2028 });
    expect(plan.findings.map((finding) => finding.code)).toContain('ground-too-small');
    // By demand table and yields well under a hundred households live off a hectare of such a rotation, ley and covers in it.
    expect(plan.supply?.reach?.households ?? 400).toBeLessThan(100);
    const feeds = planFarm(farmOf({ plots: 4, areaHa: 1, households: 40 }), { today: stamp.today, year: 2028 });
    expect(feeds.supply?.reach?.households ?? 0).toBeGreaterThanOrEqual(30);
  });

  test('of more items than there are crops begins with the harvest all the same', () => {
    const from = farmOf({ items: 30 }).promise?.from ?? '';
    expect(from >= '2027-06-15' && from <= '2027-09-15', from).toBe(true);
  });

  test('gives no week more lines than were said', () => {
    const plan = planFarm(farmOf({ items: 4, households: 100 }), { today: stamp.today, year: 2028 });
    expect(Math.max(...(plan.supply?.boxes ?? []).map((box) => box.itemsPerBox))).toBeLessThanOrEqual(5);
  });

  test('closes the leanest weeks, the feast first', () => {
    const closed = farmOf({ weeks: 45 }).promise?.closedEveryYear ?? [];
    expect(closed).toContain(52);
    expect(closed.filter((week) => week >= 12 && week <= 29).length).toBe(6);
  });

  test('begins with the first harvest, for what the years before left is not known', () => {
    const { promise } = farmOf();
    expect((promise?.from ?? '') >= '2027-06-15' && (promise?.from ?? '') <= '2027-08-15').toBe(true);
  });
});
