/** Farms with a rotation, from a seed: unequal plots on courses with covers and leys, some infected, rented for a time, or outside the rotation. Invented for shape. */
import type { Course, Farm, OrganismMark, Plot } from '@leywright/book';
import { asDay, asId } from '@leywright/measures';
import { farmWith, plot } from '../build/farm.ts';
import { course, courseStand, rotation } from '../build/stand.ts';
import { type Chance, chanceFrom } from './chance.ts';

const pool: readonly Course[] = [
  course('potatoes', [
    courseStand('main', 'potato-maincrop', { plant: '04-28', end: '09-20' }),
    courseStand('rye', 'mix-rye-vetch', { kind: 'cover', sow: '09-22', end: '04-10', endYearOffset: 1 }),
  ]),
  course('cabbages', [
    courseStand('cabbage', 'cabbage-autumn', { plant: '06-10', end: '10-12' }),
    courseStand('rye', 'grazing-rye', { kind: 'cover', sow: '10-14', end: '04-20', endYearOffset: 1 }),
  ]),
  course('sprouting', [
    courseStand('sprouting', 'broccoli-purple-sprouting', { plant: '07-11', end: '05-06', endYearOffset: 1 }),
  ]),
  course('onions', [
    courseStand('onion', 'onion-set', { plant: '04-10', end: '08-24' }),
    courseStand('rye', 'mix-rye-vetch', { kind: 'cover', sow: '08-28', end: '03-28', endYearOffset: 1 }),
  ]),
  course('leeks', [courseStand('leek', 'leek-mid', { plant: '06-05', end: '02-20', endYearOffset: 1 })]),
  course('carrots', [
    courseStand('carrot', 'carrot-maincrop', { sow: '05-05', end: '10-04' }),
    courseStand('rye', 'grazing-rye', { kind: 'cover', sow: '10-06', end: '04-20', endYearOffset: 1 }),
  ]),
  course('beans', [
    courseStand('bean', 'broad-bean-spring', { sow: '03-14', end: '07-22' }),
    courseStand('mustard', 'white-mustard', { kind: 'cover', sow: '08-01', end: '11-20' }),
  ]),
  course('beet', [
    courseStand('beet', 'beetroot-maincrop', { sow: '05-22', end: '10-01' }),
    courseStand('rye', 'grazing-rye', { kind: 'cover', sow: '10-03', end: '04-15', endYearOffset: 1 }),
  ]),
];

/** Squash undersown with a ley that stands through the next course. */
const leyPair: readonly Course[] = [
  course('squash', [
    courseStand('squash', 'squash-maxima', { plant: '05-27', end: '09-28' }),
    courseStand('ley', 'mix-undersow-ley', {
      kind: 'ley',
      sow: '06-28',
      end: '03-20',
      endYearOffset: 2,
      undersownIn: 'squash',
    }),
  ]),
  course('ley', []),
];

const organisms = ['clubroot', 'allium-white-rot', 'potato-cyst-nematode'] as const;
const firstYear = 2022;

/** The rotation has run since 2022; it is meant to be looked at from January 2027 on. */
export function rotatingFarm(seed: number): Farm {
  const chance = chanceFrom(seed);
  const crops = shuffled(pool, chance).slice(0, chance.whole(3, 6));
  const courses = chance.happens(0.7) ? [...leyPair, ...crops] : crops;
  const plots = Array.from({ length: chance.whole(2, 8) }, (_, at) => rotatingPlot(at, courses, chance));
  return farmWith({
    about: { id: `rotating-${seed}`, name: `Rotating farm ${seed}` },
    plots: chance.happens(0.3) ? [...plots, plot('T', { id: 'tunnel', kind: 'tunnel', grossM2: 800 })] : plots,
    rotation: rotation(firstYear, courses),
    marks: plots.flatMap((one) => (chance.happens(0.25) ? [mark(one, chance.oneOf(organisms))] : [])),
  });
}

function rotatingPlot(at: number, courses: readonly Course[], chance: Chance): Plot {
  return plot(`P${at + 1}`, {
    id: `p${at + 1}`,
    grossM2: chance.whole(20, 120) * 100,
    headlandShare: chance.oneOf([null, 0, 0.06]),
    courseAtStart: courses[chance.whole(0, courses.length - 1)]?.id ?? null,
    ...(chance.happens(0.1) ? { to: asDay(`${chance.whole(2029, 2034)}-10-01`) } : {}),
  });
}

function mark({ id }: Plot, organism: string): OrganismMark {
  return {
    organism,
    plot: asId(id),
    span: { fromShare: 0, toShare: 1 },
    foundOn: asDay('2025-08-14'),
    clearedOn: null,
    note: null,
  };
}

function shuffled<T>(list: readonly T[], chance: Chance): readonly T[] {
  return list
    .map((item) => ({ item, order: chance.between(0, 1) }))
    .sort((a, b) => a.order - b.order)
    .map((one) => one.item);
}
