import { minerals } from '@leywright/agronomy';
import { type Interval, intervals } from '@leywright/measures';
import { describe, expect, test } from 'vitest';
import { expectPrinted } from './expect-printed.ts';

const { addIntervals, between, exactly, scaleInterval, subtractIntervals } = intervals;

/** Worked case C07: six courses on six plots of 0.70 ha. All farm figures are invented; run-down factors are the case's. */
interface GarthCourse {
  readonly soldTHa: number;
  readonly nKgT: number;
  readonly fixedKgHa: Interval;
  readonly leachedKgHa: Interval;
  readonly broughtNKgHa?: number;
  readonly pKgHa: number;
  readonly kKgHa: number;
}

const potatoes = minerals.oxides.asElements({ p2o5KgHa: 22 * 1.0, k2oKgHa: 22 * 5.8 });
const none = exactly(0);
const courses: Readonly<Record<string, GarthCourse>> = {
  'ley 1': { soldTHa: 0, nKgT: 0, fixedKgHa: between(120, 200), leachedKgHa: between(10, 25), pKgHa: 0, kKgHa: 0 },
  'ley 2': { soldTHa: 0, nKgT: 0, fixedKgHa: between(150, 250), leachedKgHa: between(15, 40), pKgHa: 0, kKgHa: 0 },
  potatoes: {
    soldTHa: 22,
    nKgT: 3.3,
    fixedKgHa: none,
    leachedKgHa: between(40, 90),
    broughtNKgHa: 3,
    pKgHa: -potatoes.pKgHa,
    kKgHa: -potatoes.kKgHa,
  },
  brassicas: {
    soldTHa: 18,
    nKgT: 3.6,
    fixedKgHa: none,
    leachedKgHa: between(20, 50),
    broughtNKgHa: 60,
    pKgHa: 8 - 18 * 0.4,
    kKgHa: 50 - 18 * 3,
  },
  alliums: {
    soldTHa: 17,
    nKgT: 2.2,
    fixedKgHa: between(5, 15),
    leachedKgHa: between(25, 60),
    pKgHa: -17 * 0.31,
    kKgHa: -17 * 1.5,
  },
  roots: {
    soldTHa: 30,
    nKgT: 1.8,
    fixedKgHa: between(5, 20),
    leachedKgHa: between(15, 40),
    pKgHa: -30 * 0.33,
    kKgHa: -30 * 2.7,
  },
};

/** In less off-take less losses: low takes low inputs with high losses. */
function nitrogenLeftKgHa(course: GarthCourse): Interval {
  const inputs = addIntervals(course.fixedKgHa, exactly(12 + (course.broughtNKgHa ?? 0)));
  const losses = addIntervals(course.leachedKgHa, between(3, 12));
  return subtractIntervals(subtractIntervals(inputs, exactly(course.soldTHa * course.nKgT)), losses);
}

describe('six courses at Garth (worked case C07)', () => {
  test.each([
    ['ley 1', ['95.0', '199.0'], ['0.0', '4.0']],
    ['ley 2', ['110.0', '244.0'], ['0.0', '4.0']],
    ['potatoes', ['-159.6', '-100.6'], ['-9.6', '-101.9']],
    ['brassicas', ['-54.8', '-15.8'], ['0.8', '0.0']],
    ['alliums', ['-92.4', '-38.4'], ['-5.3', '-21.5']],
    ['roots', ['-89.0', '-40.0'], ['-9.9', '-77.0']],
  ] as const)('%s: nitrogen between %s, phosphorus and potassium %s kg/ha', (name, [low, high], [p, k]) => {
    const course = courses[name] as GarthCourse;
    const left = nitrogenLeftKgHa(course);
    expectPrinted(left.low, low);
    expectPrinted(left.high, high);
    expectPrinted(course.pKgHa, p);
    expectPrinted(course.kKgHa + 4, k);
  });

  test('the whole farm lies between -133.6 and 173.7 kg nitrogen a year: its sign is not known', () => {
    const farm = Object.values(courses)
      .map((course) => scaleInterval(nitrogenLeftKgHa(course), 0.7))
      .reduce(addIntervals);
    expectPrinted(farm.low, '-133.6');
    expectPrinted(farm.high, '173.7');
    expectPrinted(farm.low / 4.2, '-31.8');
    expectPrinted(farm.high / 4.2, '41.4');
    expect(farm.low < 0 && farm.high > 0).toBe(true);
  });

  test('phosphorus and potassium go down by 16.78 and 134.67 kg a year', () => {
    const sum = (of: (course: GarthCourse) => number) =>
      Object.values(courses).reduce((total, course) => total + 0.7 * of(course), 0);
    expect(Math.abs(sum((course) => course.pKgHa) + 16.78)).toBeLessThan(0.005 * 16.78);
    expect(Math.abs(sum((course) => course.kKgHa + 4) + 134.67)).toBeLessThan(0.005 * 134.67);
  });
});
