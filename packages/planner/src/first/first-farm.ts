/** From one sentence to a whole farm in pencil: plots, a rotation, a promise and stores, so that there is a plan to change. */

import { aboutFarm, emptyFarm, type Farm, type Place } from '@leywright/book';
import { monthOf, yearOf } from '@leywright/measures';
import { fewestCourses, firstCourses, mostCourses } from './courses.ts';
import { placeOf } from './place.ts';
import { firstPlots, standsAtStart } from './plots.ts';
import { firstPromise, firstStores } from './promise.ts';
import type { FirstProblem, FirstSentence, FirstStamp } from './sentence.ts';

export type FirstReading =
  | { readonly kind: 'farm'; readonly farm: Farm; readonly assumed: readonly FirstAssumption[] }
  | { readonly kind: 'problems'; readonly problems: readonly FirstProblem[] };

/** What the sentence did not say and the builder chose; shown until the grower says otherwise. */
export const firstAssumptions = [
  'plots-alike',
  'courses',
  'stands-at-start',
  'promise-lines',
  'portions',
  'first-box',
  'closed-weeks',
  'stores',
  'elevation',
  'longitude',
  'rules-of',
] as const;
export type FirstAssumption = (typeof firstAssumptions)[number];

/** From October on, the year to plan is the next. */
const NEXT_YEAR_FROM_MONTH = 10;

/** Reads the sentence and builds its farm, or says all that is wrong with it at once. */
export function firstFarm(sentence: FirstSentence, stamp: FirstStamp): FirstReading {
  const place = placeOf(sentence);
  const problems = [
    ...problemsIn(sentence),
    ...(place.kind === 'unknown' ? [place.problem] : reachProblems(place.place)),
  ];
  if (place.kind === 'unknown' || problems.length > 0) return { kind: 'problems', problems };
  const firstYear = yearOf(stamp.today) + (monthOf(stamp.today) >= NEXT_YEAR_FROM_MONTH ? 1 : 0);
  const courses = firstCourses(Math.min(mostCourses, Math.max(fewestCourses, sentence.plots)), place.place);
  const plots = firstPlots(sentence, courses, firstYear);
  const ground: Farm = {
    ...emptyFarm(aboutFarm(stamp.id, sentence.name ?? 'Our farm', place.place)),
    plots,
    stands: standsAtStart(plots, courses, firstYear),
    rotation: { firstYear, courses, state: 'pencil', agreedOn: null },
    stores: firstStores,
  };
  const farm: Farm = { ...ground, promise: firstPromise(sentence, ground, firstYear) };
  return { kind: 'farm', farm, assumed: assumedIn(sentence) };
}

function assumedIn(sentence: FirstSentence): readonly FirstAssumption[] {
  const always: readonly FirstAssumption[] = [
    'courses',
    'stands-at-start',
    'promise-lines',
    'portions',
    'first-box',
    'stores',
    'rules-of',
  ];
  return [
    ...(sentence.plotAreasHa === null ? ['plots-alike' as const] : []),
    ...always,
    ...(sentence.weeks < 52 ? ['closed-weeks' as const] : []),
    ...(sentence.latDeg === null ? [] : ['elevation' as const]),
    ...(sentence.latDeg !== null && sentence.lonDeg === null ? ['longitude' as const] : []),
  ];
}

interface Bound {
  readonly field: keyof FirstSentence;
  readonly least: number;
  readonly most: number;
  readonly whole: boolean;
  readonly said: string;
}

const bounds: readonly Bound[] = [
  { field: 'plots', least: 1, most: 60, whole: true, said: 'a whole number of plots, 1 to 60' },
  { field: 'areaHa', least: 0.01, most: 2000, whole: false, said: 'hectares, 0.01 to 2000' },
  { field: 'items', least: 1, most: 30, whole: true, said: 'a whole number of items, 1 to 30' },
  { field: 'households', least: 1, most: 100_000, whole: true, said: 'a whole number of households, 1 to 100,000' },
  { field: 'weeks', least: 1, most: 52, whole: true, said: 'a whole number of weeks, 1 to 52' },
];

function problemsIn(sentence: FirstSentence): readonly FirstProblem[] {
  const outside = bounds.filter(({ field, least, most, whole }) => {
    const value = sentence[field];
    return typeof value !== 'number' || !(value >= least && value <= most) || (whole && !Number.isInteger(value));
  });
  return [
    ...outside.map(({ field, said }) => wrong(field, String(sentence[field]), said)),
    ...placeProblems(sentence),
    ...plotProblems(sentence),
  ];
}

/** Courses and dates are those of temperate country north of the equator; elsewhere they would be wrong, so they are not offered. */
function reachProblems({ latDeg, near }: Place): readonly FirstProblem[] {
  if (latDeg >= 40 && latDeg <= 62) return [];
  const said =
    'a place between 40 and 62 degrees north; a farm elsewhere begins from a farm folder, with its own sowing days';
  return [near === null ? wrong('latDeg', String(latDeg), said) : wrong('near', near, said)];
}

function placeProblems({ latDeg, lonDeg }: FirstSentence): readonly FirstProblem[] {
  const isLat = latDeg === null || (latDeg >= -90 && latDeg <= 90);
  const isLon = lonDeg === null || (lonDeg >= -180 && lonDeg <= 180);
  return [
    ...(isLat ? [] : [wrong('latDeg', String(latDeg), 'degrees, -90 to 90, south below nought')]),
    ...(isLon ? [] : [wrong('lonDeg', String(lonDeg), 'degrees, -180 to 180, west below nought')]),
  ];
}

function plotProblems({ plotAreasHa, plots }: FirstSentence): readonly FirstProblem[] {
  if (plotAreasHa === null) return [];
  const isRight = plotAreasHa.length === plots && plotAreasHa.every((areaHa) => areaHa > 0 && areaHa <= 2000);
  return isRight
    ? []
    : [wrong('plotAreasHa', plotAreasHa.join(', '), `${plots} areas above nought, one for each plot`)];
}

function wrong(field: keyof FirstSentence, found: string, said: string): FirstProblem {
  return { code: 'not-as-asked', field, found, figures: { said } };
}
