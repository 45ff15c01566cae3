/**
 * The six courses of the sample farm, as its growers would write them down.
 *
 * A plot is read across its beds from 0 to 1. What is sown into a crop, or after it, lies on that crop's own stretch, so that every
 * stretch can be followed from ley to ley. Dates keep to the windows of the reference tables and leave the weeks those tables ask
 * between turning a cover in and the next sowing. The farm is invented; its figures are no advice.
 */
import type { Course, CourseStand } from '@leywright/book';
import { span } from '../build/farm.ts';
import { type CourseStandPieces, course, courseStand } from '../build/stand.ts';

type Dates = Omit<CourseStandPieces, 'kind' | 'span' | 'undersownIn'>;

function crop(key: string, what: string, [from, to]: Stretch, dates: Dates): CourseStand {
  return courseStand(key, what, { ...dates, span: span(from, to) });
}

function cover(key: string, what: string, [from, to]: Stretch, dates: Dates): CourseStand {
  return courseStand(key, what, { ...dates, kind: 'cover', span: span(from, to) });
}

function undersown(
  key: string,
  what: string,
  [from, to]: Stretch,
  dates: Dates & { readonly into: string },
): CourseStand {
  const { into, ...rest } = dates;
  return courseStand(key, what, { ...rest, kind: 'cover', span: span(from, to), undersownIn: into });
}

function ley(key: string, host: string, [from, to]: Stretch, dates: Dates): CourseStand {
  return courseStand(key, 'mix-undersow-ley', { ...dates, kind: 'ley', span: span(from, to), undersownIn: host });
}

type Stretch = readonly [from: number, to: number];

const next = 1;
const ryeVetch = 'mix-rye-vetch';
const rye = 'grazing-rye';
const low = 'mix-undersow-low';

/** The half by the old ley's corn and beans is turned in at the end of April, for cabbages; the other half grows to June. */
const brassicas: readonly CourseStand[] = [
  cover('summer-catch', 'mix-phacelia-buckwheat', [0, 0.08], { sow: '07-08', end: '08-28' }),
  crop('spring-cabbage', 'cabbage-spring', [0, 0.08], { plant: '09-12', end: '05-28', endYearOffset: next }),
  crop('winter-cauliflower', 'cauliflower-winter', [0.08, 0.16], { plant: '07-12', end: '05-18', endYearOffset: next }),
  crop('sprouting', 'broccoli-purple-sprouting', [0.16, 0.26], { plant: '07-11', end: '05-06', endYearOffset: next }),
  undersown('sprouting-clover', low, [0.16, 0.26], {
    into: 'sprouting',
    sow: '08-09',
    end: '05-06',
    endYearOffset: next,
  }),
  crop('kale', 'kale-curly', [0.26, 0.4], { plant: '07-11', end: '04-02', endYearOffset: next }),
  undersown('kale-clover', low, [0.26, 0.4], { into: 'kale', sow: '08-09', end: '04-02', endYearOffset: next }),
  crop('calabrese-2', 'calabrese', [0.4, 0.5], { plant: '07-08', end: '10-08' }),
  cover('calabrese-2-rye', rye, [0.4, 0.5], { sow: '10-09', end: '03-30', endYearOffset: next }),
  crop('calabrese-1', 'calabrese', [0.5, 0.56], { plant: '06-20', end: '09-19' }),
  cover('calabrese-1-rye', ryeVetch, [0.5, 0.56], { sow: '09-21', end: '03-04', endYearOffset: next }),
  crop('cauliflower', 'cauliflower-autumn', [0.56, 0.64], { plant: '06-10', end: '10-06' }),
  cover('cauliflower-rye', rye, [0.56, 0.64], { sow: '10-07', end: '03-04', endYearOffset: next }),
  crop('red-cabbage', 'cabbage-red', [0.64, 0.71], { plant: '05-18', end: '10-08' }),
  cover('red-cabbage-rye', rye, [0.64, 0.71], { sow: '10-09', end: '03-14', endYearOffset: next }),
  crop('swede', 'swede', [0.71, 0.76], { sow: '05-24', end: '10-10' }),
  cover('swede-rye', rye, [0.71, 0.76], { sow: '10-11', end: '03-14', endYearOffset: next }),
  crop('savoy', 'cabbage-savoy', [0.76, 0.9], { plant: '06-22', end: '03-10', endYearOffset: next }),
  undersown('savoy-clover', low, [0.76, 0.9], { into: 'savoy', sow: '07-26', end: '03-30', endYearOffset: next }),
  crop('sprouts', 'brussels-sprout', [0.9, 1], { plant: '05-26', end: '03-05', endYearOffset: next }),
  undersown('sprouts-clover', low, [0.9, 1], { into: 'sprouts', sow: '07-01', end: '03-30', endYearOffset: next }),
];

/** Winter brassicas hold the first quarter into May, so it carries late leaf crops; the rest is planted with potatoes. */
const potatoes: readonly CourseStand[] = [
  crop('endive', 'endive', [0, 0.08], { plant: '07-24', end: '10-06' }),
  cover('endive-rye', rye, [0, 0.08], { sow: '10-07', end: '03-10', endYearOffset: next }),
  cover('chicory-catch', 'phacelia', [0.08, 0.16], { sow: '05-22', end: '06-24' }),
  crop('chicory', 'chicory-sugarloaf', [0.08, 0.16], { plant: '07-06', end: '10-06' }),
  cover('chicory-rye', rye, [0.08, 0.16], { sow: '10-07', end: '03-10', endYearOffset: next }),
  crop('late-courgette', 'courgette', [0.16, 0.26], { plant: '05-30', end: '09-19' }),
  cover('late-courgette-rye', ryeVetch, [0.16, 0.26], { sow: '09-21', end: '03-12', endYearOffset: next }),
  crop('main-1', 'potato-maincrop', [0.26, 0.5], { plant: '04-28', end: '09-20' }),
  cover('main-1-rye', ryeVetch, [0.26, 0.44], { sow: '09-22', end: '03-12', endYearOffset: next }),
  cover('main-1-early-rye', ryeVetch, [0.44, 0.5], { sow: '09-22', end: '02-22', endYearOffset: next }),
  crop('early', 'potato-first-early', [0.5, 0.58], { plant: '04-02', end: '07-10' }),
  cover('early-catch', 'phacelia', [0.5, 0.58], { sow: '07-14', end: '09-08' }),
  cover('early-rye', ryeVetch, [0.5, 0.58], { sow: '09-12', end: '04-06', endYearOffset: next }),
  crop('second', 'potato-second-early', [0.58, 0.76], { plant: '04-14', end: '08-28' }),
  cover('second-rye', ryeVetch, [0.58, 0.76], { sow: '09-02', end: '04-06', endYearOffset: next }),
  crop('main-2', 'potato-maincrop', [0.76, 1], { plant: '04-28', end: '09-20' }),
  cover('main-2-rye', ryeVetch, [0.76, 1], { sow: '09-22', end: '05-06', endYearOffset: next }),
];

const alliums: readonly CourseStand[] = [
  crop('onion', 'onion-set', [0, 0.44], { plant: '04-10', end: '08-24' }),
  undersown('onion-trefoil', 'trefoil', [0, 0.44], { into: 'onion', sow: '06-12', end: '03-22', endYearOffset: next }),
  crop('spring-onion-1', 'spring-onion', [0.44, 0.47], { sow: '03-16', end: '07-20' }),
  cover('spring-onion-1-trefoil', 'trefoil', [0.44, 0.47], { sow: '07-24', end: '03-01', endYearOffset: next }),
  crop('spring-onion-2', 'spring-onion', [0.47, 0.5], { sow: '04-28', end: '08-20' }),
  cover('spring-onion-2-rye', ryeVetch, [0.47, 0.5], { sow: '08-26', end: '04-20', endYearOffset: next }),
  crop('leek-early', 'leek-early', [0.5, 0.62], { plant: '05-04', end: '10-14' }),
  undersown('leek-early-trefoil', 'trefoil', [0.5, 0.62], {
    into: 'leek-early',
    sow: '06-08',
    end: '04-14',
    endYearOffset: next,
  }),
  crop('leek-mid', 'leek-mid', [0.62, 0.8], { plant: '05-28', end: '01-28', endYearOffset: next }),
  undersown('leek-mid-clover', low, [0.62, 0.8], { into: 'leek-mid', sow: '06-30', end: '02-26', endYearOffset: next }),
  crop('leek-late', 'leek-late', [0.8, 1], { plant: '06-20', end: '05-08', endYearOffset: next }),
  undersown('leek-late-clover', low, [0.8, 1], { into: 'leek-late', sow: '07-22', end: '05-08', endYearOffset: next }),
];

/** First planting, cleared, second planting, cleared. */
const lettuceStrips = [
  ['03-22', '06-08', '06-16', '08-04'],
  ['04-08', '06-16', '06-28', '08-14'],
  ['04-18', '06-24', '07-08', '08-24'],
  ['04-28', '07-02', '07-16', '09-04'],
  ['05-07', '07-12', '07-26', '09-14'],
  ['05-21', '07-22', '08-06', '10-05'],
] as const;

/** Six strips of lettuce follow one another; all roots are lifted in time for rye to take. */
const roots: readonly CourseStand[] = [
  crop('carrot', 'carrot-maincrop', [0, 0.34], { sow: '05-05', end: '10-04' }),
  cover('carrot-rye', rye, [0, 0.34], { sow: '10-05', end: '04-28', endYearOffset: next }),
  crop('parsnip', 'parsnip', [0.34, 0.44], { sow: '04-18', end: '10-10' }),
  cover('parsnip-rye', rye, [0.34, 0.44], { sow: '10-11', end: '04-28', endYearOffset: next }),
  crop('bunched-carrot-1', 'carrot-bunching', [0.44, 0.467], { sow: '03-28', end: '08-01' }),
  crop('bunched-carrot-2', 'carrot-bunching', [0.467, 0.504], { sow: '05-22', end: '09-18' }),
  cover('bunched-carrot-rye', ryeVetch, [0.44, 0.504], { sow: '09-21', end: '04-28', endYearOffset: next }),
  crop('celeriac', 'celeriac', [0.504, 0.62], { plant: '05-14', end: '10-10' }),
  cover('celeriac-rye', rye, [0.504, 0.62], { sow: '10-11', end: '04-28', endYearOffset: next }),
  ...lettuces(),
  cover('lettuce-rye-vetch', ryeVetch, [0.62, 0.7033], { sow: '09-21', end: '04-18', endYearOffset: next }),
  cover('lettuce-rye', rye, [0.7033, 0.72], { sow: '10-07', end: '04-18', endYearOffset: next }),
  crop('chard', 'chard', [0.72, 0.77], { plant: '04-26', end: '10-06' }),
  cover('chard-rye', rye, [0.72, 0.77], { sow: '10-08', end: '04-18', endYearOffset: next }),
  crop('spinach', 'spinach', [0.77, 0.8], { sow: '03-22', end: '06-14' }),
  cover('spinach-catch', 'phacelia', [0.77, 0.8], { sow: '06-20', end: '09-06' }),
  crop('fennel-1', 'fennel-florence', [0.8, 0.83], { plant: '06-05', end: '09-01' }),
  crop('fennel-2', 'fennel-florence', [0.83, 0.86], { plant: '06-24', end: '09-08' }),
  cover('fennel-rye', ryeVetch, [0.77, 0.86], { sow: '09-10', end: '04-18', endYearOffset: next }),
  crop('beetroot', 'beetroot-maincrop', [0.86, 1], { sow: '06-02', end: '10-05' }),
  cover('beetroot-rye', rye, [0.86, 1], { sow: '10-06', end: '02-18', endYearOffset: next }),
];

function lettuces(): readonly CourseStand[] {
  const edge = (place: number): number => Math.round((0.62 + (0.1 * place) / lettuceStrips.length) * 1e4) / 1e4;
  return lettuceStrips.flatMap(([plant, end, plantAgain, endAgain], at) => {
    const stretch: Stretch = [edge(at), edge(at + 1)];
    return [
      crop(`lettuce-${at + 1}`, 'lettuce-head', stretch, { plant, end }),
      crop(`lettuce-${at + 7}`, 'lettuce-head', stretch, { plant: plantAgain, end: endAgain }),
    ];
  });
}

/** The ley is sown into the crops; where peas and broad beans stood it is sown alone. It stands till the second year after. */
const squash: readonly CourseStand[] = [
  crop('squash', 'squash-maxima', [0, 0.3], { plant: '05-27', end: '09-28' }),
  ley('squash-ley', 'squash', [0, 0.3], { sow: '06-28', end: '06-08', endYearOffset: 2 }),
  crop('small-squash', 'squash-pepo-winter', [0.3, 0.4], { plant: '05-27', end: '09-16' }),
  ley('small-squash-ley', 'small-squash', [0.3, 0.4], { sow: '06-28', end: '06-08', endYearOffset: 2 }),
  crop('courgette', 'courgette', [0.4, 0.5], { plant: '05-29', end: '09-30' }),
  ley('courgette-ley', 'courgette', [0.4, 0.5], { sow: '06-30', end: '06-08', endYearOffset: 2 }),
  crop('corn', 'sweet-corn', [0.5, 0.64], { plant: '05-29', end: '09-24' }),
  ley('corn-ley', 'corn', [0.5, 0.64], { sow: '07-01', end: '04-20', endYearOffset: 2 }),
  crop('french-bean-1', 'french-bean-dwarf', [0.64, 0.7], { sow: '05-14', end: '08-14' }),
  ley('french-bean-1-ley', 'french-bean-1', [0.64, 0.7], { sow: '07-06', end: '04-20', endYearOffset: 2 }),
  crop('french-bean-2', 'french-bean-dwarf', [0.7, 0.76], { sow: '06-06', end: '09-15' }),
  ley('french-bean-2-ley', 'french-bean-2', [0.7, 0.76], { sow: '07-22', end: '04-20', endYearOffset: 2 }),
  crop('runner-bean', 'runner-bean', [0.76, 0.86], { sow: '05-18', end: '10-02' }),
  ley('runner-bean-ley', 'runner-bean', [0.76, 0.86], { sow: '07-08', end: '04-20', endYearOffset: 2 }),
  crop('broad-bean', 'broad-bean-spring', [0.86, 0.93], { sow: '03-14', end: '07-22' }),
  crop('pea-1', 'pea', [0.93, 0.965], { sow: '03-16', end: '07-12' }),
  crop('pea-2', 'pea', [0.965, 1], { sow: '04-26', end: '08-01' }),
  courseStand('pea-ley', 'mix-ley-clover-grass', {
    kind: 'ley',
    span: span(0.86, 1),
    sow: '08-04',
    end: '04-20',
    endYearOffset: 2,
  }),
];

/** In the order in which every plot goes through them. */
export const sampleCourses: readonly Course[] = [
  course('ley', [], { name: 'Ley, first year' }),
  course('brassicas', brassicas, { name: 'Ley to June, brassicas' }),
  course('potatoes', potatoes, { name: 'Potatoes' }),
  course('alliums', alliums, { name: 'Alliums' }),
  course('roots', roots, { name: 'Roots and beet' }),
  course('squash', squash, { name: 'Squash, corn, beans' }),
];
