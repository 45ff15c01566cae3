/** The rotation, own rests and own crops out of their rows, and back into them. */
import type { MonthDay } from '@leywright/measures';
import { type Span, wholePlot } from '../farm/land.ts';
import type { Course, CourseStand, OwnCrop, OwnRest, Rotation, StandKind } from '../farm/stand.ts';
import { nearest } from '../names/nearest.ts';
import type { Placed } from '../table/read-table.ts';
import { asWish, settledSpan } from '../table/span-columns.ts';
import type { Open } from './land-tables.ts';
import { freeStretch } from './lay-out.ts';
import type { RotationRow } from './stand-tables.ts';

/** Courses in the order of courses.csv, with their stands. */
export function coursesOf(
  courses: readonly Placed<Open<Omit<Course, 'stands'>, 'name'>>[],
  rows: readonly Placed<RotationRow>[],
  kindOf: (what: string) => StandKind,
): Course[] {
  return courses.map(({ value }) => ({
    ...value,
    name: value.name ?? value.id,
    stands: courseStands(
      rows.filter((row) => row.value.course === value.id),
      kindOf,
    ),
  }));
}

type Laid = CourseStand & { readonly startsAt: number; readonly endsAt: number };

function courseStands(rows: readonly Placed<RotationRow>[], kindOf: (what: string) => StandKind): CourseStand[] {
  const laid: Laid[] = [];
  for (const row of rows) {
    const stand = courseStandOf(row, kindOf);
    laid.push({ ...stand, span: spanOf(row, stand, laid) });
  }
  const keys = laid.map((one) => one.key);
  for (const { value, fault } of rows) {
    if (value.undersownIn === null || keys.includes(value.undersownIn)) continue;
    fault('unknown-name', 'undersown_in', {
      found: value.undersownIn,
      nearest: nearest(value.undersownIn, keys),
      figures: { of: 'stand' },
    });
  }
  return laid.map(({ startsAt: _, endsAt: __, ...stand }) => stand);
}

function courseStandOf(row: Placed<RotationRow>, kindOf: (what: string) => StandKind): Laid {
  const { course: _, span: __, ...value } = row.value;
  const start = value.plant ?? value.sow;
  if (start === null) row.fault('one-of', 'sow', { nearest: ['sow', 'plant'] });
  const startsAt = yearTime(value.startYearOffset, start ?? value.end);
  const sameYear = start !== null && value.end > start;
  const endYearOffset = value.endYearOffset ?? value.startYearOffset + (sameYear ? 0 : 1);
  const endsAt = yearTime(endYearOffset, value.end);
  if (start !== null && endsAt <= startsAt)
    row.fault('ends-before-start', 'end', { found: value.end, figures: { from: start } });
  return { ...value, kind: value.kind ?? kindOf(value.what), endYearOffset, span: wholePlot, startsAt, endsAt };
}

/** Orders months and days of several years; not a length of time. */
function yearTime(yearOffset: number, monthDay: MonthDay): number {
  return yearOffset * 10_000 + Number(monthDay.replace('-', ''));
}

function spanOf(row: Placed<RotationRow>, stand: Laid, before: readonly Laid[]): Span {
  const wish = row.value.span;
  const host = before.find((one) => one.key === stand.undersownIn);
  if (wish.kind === 'not-said') return host?.span ?? wholePlot;
  if (wish.kind !== 'share') return settledSpan(wish, null) ?? wholePlot;
  const beside = before.filter(
    (one) =>
      one.span !== wholePlot && one.undersownIn === null && one.startsAt < stand.endsAt && stand.startsAt < one.endsAt,
  );
  return (
    freeStretch(
      wish.share,
      beside.map((one) => one.span),
    ) ??
    wish.cell.fault('shares-over-whole', { figures: { share: wish.share } }) ??
    wholePlot
  );
}

export function rowsOfCourses(rotation: Rotation): RotationRow[] {
  return rotation.courses.flatMap((course) =>
    course.stands.map((stand) => ({
      ...stand,
      course: course.id,
      span: asWish(stand.span, stand.undersownIn !== null),
    })),
  );
}

/** Own rests; one that names neither a family nor hosts holds for nothing and is told. */
export function restsOf(rows: readonly Placed<Open<OwnRest, 'name'>>[]): OwnRest[] {
  return rows.map(({ value, fault }) => {
    if (value.family === null && value.hosts.length === 0) fault('one-of', 'family', { nearest: ['family', 'hosts'] });
    return { ...value, name: value.name ?? value.id };
  });
}

/** Own crops; at most one of the three yields is given. */
export function cropsOf(rows: readonly Placed<OwnCrop>[]): OwnCrop[] {
  return rows.map(({ value, fault }) => {
    const given = [
      ['yield_gross', value.yieldGrossTHa],
      ['yield_marketable', value.yieldMarketableTHa],
      ['yield_packed', value.yieldPackedTHa],
    ].filter(([, figure]) => figure !== null);
    if (given.length > 1)
      fault('one-of', `${given[1]?.[0]}_t_ha`, {
        found: given.map(([name]) => name).join(', '),
        nearest: ['yield_gross_t_ha', 'yield_marketable_t_ha', 'yield_packed_t_ha'],
      });
    return value;
  });
}
