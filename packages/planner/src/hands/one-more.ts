/** What one more pair of hands in a week frees: the hours over the hands there were, and those there would be, both levelled. */
import type { Work } from '../plan/work.ts';
import { type Levelled, type LevelWish, levelWork } from './level.ts';

export interface OneMore {
  readonly week: string;
  readonly addedH: number;
  readonly overWithoutH: number;
  readonly overWithH: number;
  readonly freedH: number;
  /** Jobs that need not move then. */
  readonly stayPut: readonly string[];
  readonly with: Levelled;
}

export function oneMoreInWeek(
  work: Work,
  week: string,
  { addedH, ...wish }: LevelWish & { readonly addedH: number },
): OneMore {
  const without = levelWork(work, wish);
  const withMore = levelWork(
    {
      ...work,
      weeks: work.weeks.map((one) =>
        one.week === week && one.handsH !== null ? { ...one, handsH: one.handsH + addedH } : one,
      ),
    },
    wish,
  );
  const moved = new Set(withMore.moved.map((one) => one.job));
  return {
    week,
    addedH,
    overWithoutH: without.overAfterH,
    overWithH: withMore.overAfterH,
    freedH: without.overAfterH - withMore.overAfterH,
    stayPut: without.moved.map((one) => one.job).filter((job) => !moved.has(job)),
    with: withMore,
  };
}
