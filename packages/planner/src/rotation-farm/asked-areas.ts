/** Ground asked for of each course: what the promise needs of its crops, by the share of the course they stand on; an equal part where that is not known. */
import type { Course } from '@leywright/book';
import { planFarm } from '../plan/planner.ts';
import type { CropNeed } from '../plan/supply.ts';
import type { RotationFarm } from './rotation-farm.ts';

export interface AskedAreas {
  readonly byPlot: Readonly<Record<string, readonly number[]>>;
  readonly by: 'promise' | 'even';
}

/** A course whose crops ask for less than this share of an equal part, or more than the other, is asked for the equal part: the farm grows it for more than the box. */
const believable = [0.4, 2] as const;

export function askedAreas(made: RotationFarm): AskedAreas {
  const { farm, rotation, wish, years, firstYear, plots } = made;
  const totalM2 = plots.reduce((sum, one) => sum + one.netM2, 0);
  const evenM2 = totalM2 / rotation.courses.length;
  const needs =
    farm.promise === null ? [] : (planFarm(farm, { today: wish.today, year: firstYear }).supply?.needs ?? []);
  const asked = rotation.courses.map((course) => askedBy(course, needs));
  const isKnown = asked.some((areaM2) => areaM2 !== null);
  const believed = asked.map((saidM2) => {
    const share = (saidM2 ?? evenM2) / evenM2;
    return share < believable[0] || share > believable[1] ? evenM2 : (saidM2 ?? evenM2);
  });
  // Every plot carries some course each year, so the areas asked for are brought to the ground there is.
  const scale = totalM2 / believed.reduce((sum, one) => sum + one, 0);
  const byCourse = rotation.courses.map((course, at): [string, readonly number[]] => [
    course.id,
    Array.from({ length: years }, () => Math.round((believed[at] ?? evenM2) * scale)),
  ]);
  return { byPlot: Object.fromEntries(byCourse), by: isKnown ? 'promise' : 'even' };
}

function askedBy(course: Course, needs: readonly CropNeed[]): number | null {
  let needM2 = 0;
  let share = 0;
  for (const crop of new Set(course.stands.filter((one) => one.kind === 'crop').map((one) => one.what))) {
    const need = needs.find((one) => one.crop === crop)?.needM2 ?? null;
    if (need === null) continue;
    needM2 += need;
    for (const one of course.stands) if (one.what === crop) share += one.span.toShare - one.span.fromShare;
  }
  return share < 0.25 ? null : needM2 / share;
}
