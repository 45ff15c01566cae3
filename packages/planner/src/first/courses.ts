/** A first rotation of four to eight courses: the crops of `strips.ts`, with a cover after each crop until the next course needs the ground. */

import { type Course, type CourseStand, type Place, wholePlot } from '@leywright/book';
import { addDays, asId, asMonthDay, type CourseId, dayInYear, daysBetween, monthDayOf } from '@leywright/measures';
import {
  alliums,
  brassicas,
  brassicasToFebruary,
  type FirstCourse,
  leyEnd,
  potatoes,
  roots,
  type Strip,
  sideBySide,
  soleLey,
  squash,
  undersownLey,
  without,
} from './strips.ts';
import { courseAt, daysToSow, lastCoverSowing, someYear, startAt } from './to-place.ts';

export const fewestCourses = 4;
export const mostCourses = 8;

/** A cover turned in so long before the next crop; no cover used here asks for less than three weeks. */
const DAYS_BEFORE_NEXT = 22;
/** In spring a cover is worth little after this day, and rots slowly. */
const coverEndsBy = '05-05';

const lettuceKeys = roots.strips.filter((strip) => strip.what === 'lettuce-head').map((strip) => strip.key);
const ley: FirstCourse = { id: 'ley', name: 'Ley, first year', strips: [] };
const secondLey: FirstCourse = { id: 'ley-2', name: 'Ley, second year', strips: [] };
const leaves: FirstCourse = {
  id: 'leaves',
  name: 'Salads and beet',
  strips: without({ ...roots, id: 'leaves' }, ['carrot', 'parsnip', 'celeriac']).strips,
};
const carrots: FirstCourse = {
  ...without(roots, ['chard', 'beetroot', ...lettuceKeys]),
  id: 'carrots',
  name: 'Carrots, parsnips, celeriac',
};
const alliumsOffByWinter = without(alliums, ['leek-late']);

/** In order; the ley is first, and is sown in the last course. */
const orders: Readonly<Record<number, readonly FirstCourse[]>> = {
  // Potatoes rest five years for the cyst nematode, so four courses go without them.
  4: [
    ley,
    brassicasToFebruary,
    alliumsOffByWinter,
    sideBySide('roots-squash', 'Roots, squash and beans', [without(roots, [...lettuceKeys]), squash]),
  ],
  5: [ley, brassicas, potatoes, sideBySide('onions-roots', 'Onions, leeks, roots', [alliums, roots]), squash],
  6: [ley, brassicas, potatoes, alliums, roots, squash],
  7: [ley, secondLey, brassicas, potatoes, alliums, roots, squash],
  8: [ley, secondLey, brassicas, potatoes, alliums, leaves, carrots, squash],
};

/** The courses, `count` of them (4 to 8), with dates for a place. */
export function firstCourses(count: number, spot: Spot): readonly Course[] {
  const order = orders[count]?.map((course) => courseAt(course, spot));
  if (order === undefined)
    throw new Error(`A first rotation has ${fewestCourses} to ${mostCourses} courses, not ${count}.`);
  const leyYears = order.filter((course) => course.strips.length === 0).length;
  return order.map((course, at) => {
    const next = order[(at + 1) % order.length] ?? ley;
    const stands = course.strips.flatMap((strip) => standsOf(strip, { course, next, leyYears, spot }));
    return { id: asId<CourseId>(course.id), name: course.name, stands, hoursPerHa: null, hoursFollow: 'ground' };
  });
}

/** Years of ley in a rotation of so many courses. */
export function leyYearsOf(count: number): number {
  return (orders[count] ?? []).filter((course) => course.strips.length === 0).length;
}

type Spot = Pick<Place, 'latDeg' | 'elevationM'>;

interface Neighbours {
  readonly course: FirstCourse;
  readonly next: FirstCourse;
  readonly leyYears: number;
  readonly spot: Spot;
}

function standsOf(strip: Strip, neighbours: Neighbours): readonly CourseStand[] {
  const crop = standOf(strip.key, strip.what, strip);
  if (strip.under !== undefined) return [crop, undersown(strip, strip.under, neighbours)];
  if (neighbours.next.strips.length === 0) return [crop, ...leyAlone(strip, neighbours)];
  const follower = followerIn(neighbours.course, strip);
  return follower === null
    ? [crop, coverStand(strip, coverEnd(strip, neighbours.next, null), neighbours.spot)]
    : [crop];
}

/** The later crop of the same course on the same stretch, if any. */
function followerIn(course: FirstCourse, strip: Strip): Strip | null {
  return course.strips.find((other) => other !== strip && overlap(other, strip) && start(other) > strip.end) ?? null;
}

function undersown(strip: Strip, under: NonNullable<Strip['under']>, { next, leyYears }: Neighbours): CourseStand {
  const isLey = under.what === undersownLey;
  const ends = isLey
    ? { end: leyEnd, endYearOffset: leyYears + 1 }
    : { end: coverEnd(strip, next, under.sow), endYearOffset: 1 };
  return {
    ...standOf(`${strip.key}-${isLey ? 'ley' : 'cover'}`, under.what, {
      ...strip,
      plant: undefined,
      sow: under.sow,
      ...ends,
    }),
    kind: isLey ? 'ley' : 'cover',
    undersownIn: strip.key,
  };
}

/** Where roots stood until October, rye holds the ground and the ley is sown alone in spring. */
function leyAlone(strip: Strip, { leyYears, spot }: Neighbours): readonly CourseStand[] {
  const sow = startAt(soleLey, '04-10', { isPlanted: false, spot });
  const sown = standOf(`${strip.key}-ley`, soleLey, {
    fromShare: strip.fromShare,
    toShare: strip.toShare,
    sow,
    end: leyEnd,
    endYearOffset: leyYears + 1,
  });
  return [coverStand(strip, '03-14', spot), { ...sown, kind: 'ley', startYearOffset: 1 }];
}

function coverStand(strip: Strip, end: string, spot: Spot): CourseStand {
  const sow = monthDayOf(addDays(dayInYear(asMonthDay(strip.end), someYear), daysToSow));
  if (sow > lastCoverSowing('grazing-rye', spot))
    throw new Error(`Nothing can be sown after ${strip.key} of ${strip.end}: undersow it.`);
  const what = sow <= lastCoverSowing('mix-rye-vetch', spot) ? 'mix-rye-vetch' : 'grazing-rye';
  return {
    ...standOf(`${strip.key}-cover`, what, {
      fromShare: strip.fromShare,
      toShare: strip.toShare,
      sow,
      end,
      endYearOffset: 1,
    }),
    kind: 'cover',
  };
}

/** Three weeks before the first crop of the next course on this stretch; with its crop, when that stands longer. */
function coverEnd(strip: Strip, next: FirstCourse, undersownOn: string | null): string {
  const starts = next.strips
    .filter((other) => overlap(other, strip))
    .map(start)
    .sort();
  const first = starts[0] ?? coverEndsBy;
  const before = monthDayOf(addDays(dayInYear(asMonthDay(first), someYear), -DAYS_BEFORE_NEXT));
  const end = before < coverEndsBy ? before : coverEndsBy;
  const cropEnds = undersownOn !== null && strip.endYearOffset === 1 ? strip.end : '01-01';
  if (daysBetween(dayInYear(asMonthDay(cropEnds), someYear), dayInYear(asMonthDay(end), someYear)) < 0) {
    throw new Error(`${strip.key} stands until ${cropEnds} and its ground is wanted by ${first}.`);
  }
  return end;
}

/** A ley before the first crop of a course ends by itself; no crop starts before its own window. */
function start(strip: Strip): string {
  return strip.sow ?? strip.plant ?? strip.end;
}

function overlap(a: Pick<Strip, 'fromShare' | 'toShare'>, b: Pick<Strip, 'fromShare' | 'toShare'>): boolean {
  return Math.min(a.toShare, b.toShare) - Math.max(a.fromShare, b.fromShare) > 1e-6;
}

interface Dates {
  readonly fromShare?: number;
  readonly toShare?: number;
  readonly sow?: string | undefined;
  readonly plant?: string | undefined;
  readonly end: string;
  readonly endYearOffset?: number;
}

function standOf(key: string, what: string, dates: Dates): CourseStand {
  return {
    key,
    what,
    kind: 'crop',
    variety: null,
    span: { fromShare: dates.fromShare ?? wholePlot.fromShare, toShare: dates.toShare ?? wholePlot.toShare },
    sow: dates.sow === undefined ? null : asMonthDay(dates.sow),
    plant: dates.plant === undefined ? null : asMonthDay(dates.plant),
    startYearOffset: 0,
    end: asMonthDay(dates.end),
    endYearOffset: dates.endYearOffset ?? 0,
    undersownIn: null,
  };
}
