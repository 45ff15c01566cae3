/** From which course year on the rotation is open: nothing of it has begun. */
import type { Rotation } from '@leywright/book';
import { type Day, dayInYear, yearOf } from '@leywright/measures';

export function firstOpenYear(rotation: Rotation, today: Day): number {
  const starts = rotation.courses.flatMap((course) =>
    course.stands.flatMap((stand) => {
      const start = stand.plant ?? stand.sow;
      return start === null ? [] : [{ start, offsetYears: stand.startYearOffset }];
    }),
  );
  const hasBegun = (year: number) =>
    starts.some(({ start, offsetYears }) => dayInYear(start, year + offsetYears) <= today);
  let year = Math.max(rotation.firstYear, yearOf(today) - 1);
  while (hasBegun(year)) year += 1;
  return year;
}
