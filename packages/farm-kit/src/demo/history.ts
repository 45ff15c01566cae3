/**
 * What stood on the sample farm in the years before its agreed rotation: the same courses, each season a little early or late,
 * and the things that happen (a cover lost to slugs, ground too wet to drill, a crop lifted late).
 */
import type { Course, CourseStand, Stand } from '@leywright/book';
import { addDays, asDay, type Day, dayInYear, dayOf, dayOfYear, yearOf } from '@leywright/measures';
import { stand } from '../build/stand.ts';

/** Course years of the past; those of the first year are kept only as far as they reach into the next. */
export interface Past {
  readonly courses: readonly Course[];
  /** Place in the rotation of each plot's course in `agreedYear`. */
  readonly startOf: Readonly<Record<string, number>>;
  readonly agreedYear: number;
  readonly firstYear: number;
}

/** Recorded stands of all plots, and those of the last courses that still stand or are still to be sown, as agreed. */
export function standsOfThePast(past: Past, today: Day): readonly Stand[] {
  const stands: Stand[] = [];
  for (const [plot, start] of Object.entries(past.startOf)) {
    // Six leys of two years begin two courses back.
    for (let year = past.firstYear - 2; year < past.agreedYear; year += 1) {
      const count = past.courses.length;
      const course = past.courses[(((start + year - past.agreedYear) % count) + count) % count] as Course;
      stands.push(...course.stands.map((one) => laidOut(plot, year, { course, one })));
    }
  }
  const kept = stands.filter((one) => one.to > dayOf(past.firstYear, 1, 1));
  const ids = new Set(kept.map((one) => one.id));
  return kept
    .map((one) => ({ ...one, ...fates[one.id] }))
    .map((one) => ({
      ...one,
      // The crop it was sown into was off before the records begin.
      undersownIn: one.undersownIn !== null && ids.has(one.undersownIn) ? one.undersownIn : null,
      state: one.from <= today ? 'recorded' : 'agreed',
      endedBy: one.to <= today ? (one.endedBy ?? endOf(one)) : null,
    }));
}

function laidOut(plot: string, year: number, { course, one }: { course: Course; one: CourseStand }): Stand {
  const sown = one.sow ?? one.plant;
  if (sown === null) throw new Error(`The course stand ${one.key} is neither sown nor planted.`);
  const from = asSeasonWent(plot, dayInYear(sown, year + one.startYearOffset));
  const to = asSeasonWent(plot, dayInYear(one.end, year + one.endYearOffset));
  return stand(plot, one.what, [from, to], {
    id: idOf(plot, year, one.key),
    kind: one.kind,
    span: one.span,
    variety: one.variety,
    undersownIn: one.undersownIn === null ? null : idOf(plot, year, one.undersownIn),
    course: course.id,
    courseYear: year,
    establishedShare: one.kind === 'crop' ? null : 0.9,
    ...(one.plant === null ? {} : { sownOn: null, plantedOn: from }),
  });
}

/** The id the planner gives the same stand when it lays the rotation out. */
function idOf(plot: string, year: number, key: string): string {
  return `${plot}-${year}-${key}`;
}

/**
 * Days by which a plot's season ran early or late: a slow wave over the year, so that what followed still follows, never more than
 * two days. From the agreed year on, as planned.
 */
function asSeasonWent(plot: string, planned: Day): Day {
  const year = yearOf(planned);
  if (year >= 2027) return planned;
  const phase = (plot.charCodeAt(0) * 37 + year * 61) % 365;
  return addDays(planned, Math.round(2 * Math.sin((2 * Math.PI * (dayOfYear(planned) + phase)) / 365)));
}

function endOf(one: Stand): Stand['endedBy'] {
  if (one.kind !== 'crop') return 'turned-in';
  return one.what.startsWith('kale') || one.what.startsWith('lettuce') || one.what.startsWith('broccoli')
    ? 'cut'
    : 'lifted';
}

/** What went otherwise than meant, by stand. */
const fates: Readonly<Record<string, Partial<Stand>>> = {
  'e-2023-carrot': {
    to: asDay('2023-11-06'),
    reason: 'Wet from the second week of October; the ground did not carry the harvester until November.',
  },
  'e-2023-carrot-rye': {
    from: asDay('2024-03-14'),
    sownOn: asDay('2024-03-14'),
    what: 'mix-oat-pea-vetch',
    reason: 'Too wet to drill rye before winter.',
  },
  'b-2024-main-1-rye': { establishedShare: 0.45, reason: 'Slugs took half of it in October.' },
  'd-2022-cauliflower-rye': {
    establishedShare: 0.3,
    endedBy: 'failed',
    reason: 'Drilled into a cold, cloddy bed; pigeons took what came.',
  },
  'a-2024-spring-onion-1': { endedBy: 'lost', reason: 'Downy mildew; not worth lifting.' },
  'c-2024-squash-ley': { establishedShare: 0.8 },
  'f-2023-french-bean-2-ley': {
    establishedShare: 0.6,
    reason: 'Dry from sowing to August; thin where the beans stood thick.',
  },
};
