/** Ground of each course for one household: of everything promised that grows in it. */
import type { Course, CourseStand } from '@leywright/book';
import { householdsOf } from '../promise/demand.ts';
import type { SupplyRun } from '../supply/supply-run.ts';

/** By course id; null where a promised crop's ground is not known. Courses that grow nothing promised need none: 0. */
export type HouseholdGround = ReadonlyMap<string, number | null>;

export function householdGround(run: SupplyRun, courses: readonly Course[]): HouseholdGround {
  const households = householdsOf(run.promise);
  const perCrop = new Map(run.needs.map((need) => [need.crop, need.needM2 === null ? null : need.needM2 / households]));
  const widths = courseWidths(courses);
  return new Map(courses.map((course) => [course.id as string, groundOf(course, { perCrop, widths })]));
}

/** Width each crop has over all courses, so that a crop grown in two of them is shared between them. */
function courseWidths(courses: readonly Course[]): ReadonlyMap<string, number> {
  const widths = new Map<string, number>();
  for (const stand of courses.flatMap((course) => course.stands)) {
    if (stand.kind === 'crop') widths.set(stand.what, (widths.get(stand.what) ?? 0) + width(stand));
  }
  return widths;
}

function groundOf(
  course: Course,
  given: { perCrop: ReadonlyMap<string, number | null>; widths: ReadonlyMap<string, number> },
): number | null {
  const crops = course.stands.filter((stand) => stand.kind === 'crop' && given.perCrop.has(stand.what));
  const layers: { stand: CourseStand; m2: number }[] = [];
  for (const stand of crops) {
    const need = given.perCrop.get(stand.what) ?? null;
    if (need === null) return null;
    layers.push({ stand, m2: need * (width(stand) / (given.widths.get(stand.what) ?? width(stand))) });
  }
  return besideOneAnother(layers);
}

/** Crops side by side each need their own ground; crops that follow one another on the same strip need the larger of theirs. */
function besideOneAnother(layers: readonly { stand: CourseStand; m2: number }[]): number {
  const strips: { from: number; to: number; m2: number }[] = [];
  for (const { stand, m2 } of layers) {
    const { fromShare: from, toShare: to } = stand.span;
    const same = strips.find((strip) => Math.min(strip.to, to) - Math.max(strip.from, from) > 1e-9);
    if (same === undefined) strips.push({ from, to, m2 });
    else Object.assign(same, { from: Math.min(same.from, from), to: Math.max(same.to, to), m2: Math.max(same.m2, m2) });
  }
  return strips.reduce((sum, strip) => sum + strip.m2, 0);
}

function width(stand: CourseStand): number {
  return stand.span.toShare - stand.span.fromShare;
}
