/** Hours that feeding so many households asks for, when the farm counts field hours by course, and how many the hands can feed. */
import { reference } from '@leywright/agronomy';
import type { Course, Person } from '@leywright/book';
import { personWeeks } from '../hands/hands.ts';
import type { Reach, ReachYear } from '../plan/supply.ts';
import type { SupplyRun } from '../supply/supply-run.ts';
import type { HouseholdGround } from './household-ground.ts';

interface HoursAsked {
  readonly courses: readonly Course[];
  readonly ground: HouseholdGround;
  readonly years: readonly ReachYear[];
  readonly households: number | null;
}

export interface LabourReach {
  readonly hours: NonNullable<Reach['hours']>;
  readonly households: number;
}

/** Null where the hours of a course, of delivery or of the hands are not known. */
export function reachHours(run: SupplyRun, asked: HoursAsked): LabourReach | null {
  const availableH = handsHours(run.input.farm.people);
  const fieldH = fieldHours(asked);
  const { deliveryHWeek, packingHBox } = run.input.farm.about.conventions;
  const packBoxH = packingHBox ?? reference.labour.get('pack-box')?.personHTyp ?? null;
  if (availableH === null || fieldH === null || deliveryHWeek === null || packBoxH === null) return null;
  const boxWeeks =
    run.promise.boxWeeksPerYear ??
    run.typ.calendar.slice(run.fromWeek, run.toWeek).filter((week) => week.closed === null).length;
  const deliveryH = deliveryHWeek * boxWeeks;
  const perHouseholdH = fieldH.perHouseholdH + packBoxH * boxWeeks;
  const households = Math.max(0, Math.floor((availableH - deliveryH - fieldH.groundH) / perHouseholdH + 1e-9));
  const at = asked.households ?? households;
  const inField = at * fieldH.perHouseholdH + fieldH.groundH;
  const packingH = at * packBoxH * boxWeeks;
  return {
    hours: { fieldH: inField, packingH, deliveryH, totalH: inField + packingH + deliveryH, availableH },
    households,
  };
}

/** Hours that grow with the households, and those that go with the ground, in the year that asks for most. */
function fieldHours({
  courses,
  ground,
  years,
}: HoursAsked): { readonly perHouseholdH: number; readonly groundH: number } | null {
  let perHouseholdH = 0;
  for (const course of courses) {
    const m2 = ground.get(course.id) ?? null;
    if (course.hoursPerHa === null) {
      if (m2 === 0 && course.stands.every((stand) => stand.kind !== 'crop')) continue;
      return null;
    }
    if (course.hoursFollow === 'need') perHouseholdH += (course.hoursPerHa * (m2 ?? 0)) / 10_000;
  }
  const byGround = courses.filter((course) => course.hoursFollow === 'ground');
  const groundH = years.map((year) =>
    byGround.reduce((sum, course) => sum + ((course.hoursPerHa ?? 0) * netOf(year, course.id)) / 10_000, 0),
  );
  return { perHouseholdH, groundH: Math.max(0, ...groundH) };
}

function netOf(year: ReachYear, course: string): number {
  return year.courses.find((one) => one.course === course)?.netM2 ?? 0;
}

/** Hours of all hands in a year; null when nobody's are written down. */
export function handsHours(people: readonly Person[]): number | null {
  const known = people.filter((person) => person.hoursYear !== null || person.hoursWeek !== null);
  if (known.length === 0) return null;
  return known.reduce((sum, person) => sum + (person.hoursYear ?? (person.hoursWeek ?? 0) * personWeeks(person)), 0);
}
