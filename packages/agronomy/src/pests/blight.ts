/**
 * Potato blight: whether the weather of two days on end suits infection.
 *
 * Source  Hutton criteria (James Hutton Institute and AHDB 2017), Smith period (Smith 1956): rows hutton, smith and smith-near of
 *         reference/pest-models.csv, which hold the figures used here.
 * Checks  test/checks/pests.csv bl-01, bl-02; test/checks/crops.csv hutton-*, smith-*; test/blight.test.ts (hourly days just met and just missed)
 * Holds   a Smith period is always a Hutton period; without a record of humidity nothing is said, however warm the nights.
 * Leaves out  whether spores are about, what is sprayed, and irrigation. The Smith day ran from 9 to 9 h (recalled); both rules go by calendar days here.
 */
import { dayAt, dayOfYear } from '@leywright/measures';
import type { PestModel } from '../reference/pest-columns.ts';
import { reference } from '../reference/reference.ts';
import { humidityAtPct, sunsetTemperatureC, temperatureAtHourC } from '../weather/hours-of-day.ts';
import { vapourFromRhMeanKpa, vapourFromRhRangeKpa } from '../weather/vapour-pressure.ts';

export const blightRules = ['hutton', 'smith', 'smith-near'] as const;
export type BlightRule = (typeof blightRules)[number];

/** What a rule reads of a day: its lowest temperature and its hours of air at 90 % humidity or more. */
export interface DampDay {
  readonly tMinC: number;
  readonly dampH: number;
}

/** Which rules two days on end meet; both days must. `smith-near` is named only where the full period is not met. */
export function blightRulesMet(first: DampDay, second: DampDay): readonly BlightRule[] {
  const met = blightRules.filter((rule) => [first, second].every((day) => meets(day, rule)));
  return met.includes('smith') ? met.filter((rule) => rule !== 'smith-near') : met;
}

function meets(day: DampDay, rule: BlightRule): boolean {
  const { minTempC, rhHours } = ruleRow(rule);
  return day.tMinC >= minTempC && day.dampH >= rhHours;
}

/** The figures of a rule. Throws when the table does not hold them: then the table is broken, not the weather. */
export function ruleRow(rule: BlightRule): {
  readonly minTempC: number;
  readonly rhMinPct: number;
  readonly rhHours: number;
} {
  const row: PestModel | undefined = reference.pestModels.get(rule);
  if (row === undefined || row.minTempC === null || row.rhMinPct === null || row.rhHours === null)
    throw new Error(`The table of pest models has no whole row "${rule}".`);
  return { minTempC: row.minTempC, rhMinPct: row.rhMinPct, rhHours: row.rhHours };
}

/** A day's air as it was measured: by the hour, or by its ends. Null is not measured. */
export interface AirDay {
  readonly day: number;
  readonly tMinC: number | null;
  readonly tMaxC: number | null;
  /** 24 hours from midnight, local standard time. */
  readonly hours?: readonly { readonly tC: number | null; readonly rhPct: number | null }[];
  readonly rhMinPct?: number | null;
  readonly rhMaxPct?: number | null;
  readonly rhMeanPct?: number | null;
}

export const blightVerdicts = ['met', 'perhaps', 'not-met', 'cannot-say'] as const;

/** What may be said of a day: with the rules that it and the day before meet, or why nothing can be said. */
export interface BlightDay {
  readonly day: number;
  readonly verdict: (typeof blightVerdicts)[number];
  readonly rules: readonly BlightRule[];
  readonly dampH: number | null;
  /** Damp hours with the vapour five per cent lower and higher, where the hours were estimated. */
  readonly dampLowH: number | null;
  readonly dampHighH: number | null;
  readonly basis: 'hours-measured' | 'hours-estimated' | 'none';
  readonly why: 'no-humidity-record' | 'no-temperature' | 'hours-missing' | 'day-before-unknown' | null;
}

interface Read {
  readonly tMinC: number;
  readonly dampH: number;
  readonly lowH: number;
  readonly highH: number;
  readonly basis: 'hours-measured' | 'hours-estimated';
}

type Unread = { readonly why: NonNullable<BlightDay['why']> };

/** The verdict of each day from the second on; the first stands as one whose day before is not known. Days must follow one another. */
export function blightOfDays(days: readonly AirDay[], latDeg: number): readonly BlightDay[] {
  const read = days.map((day, at) => readDay(day, { before: days[at - 1], after: days[at + 1], latDeg }));
  return days.map(({ day }, at) => {
    const today = read[at] ?? { why: 'no-humidity-record' };
    const before = at === 0 || days[at - 1]?.day !== day - 1 ? { why: 'day-before-unknown' as const } : read[at - 1];
    return { day, ...verdictOf(before ?? { why: 'day-before-unknown' }, today) };
  });
}

function verdictOf(before: Read | Unread, today: Read | Unread): Omit<BlightDay, 'day'> {
  if ('why' in today) return { ...nothing, why: today.why };
  const figures = {
    dampH: today.dampH,
    dampLowH: today.basis === 'hours-estimated' ? today.lowH : null,
    dampHighH: today.basis === 'hours-estimated' ? today.highH : null,
    basis: today.basis,
  };
  if ('why' in before) return { ...nothing, ...figures, verdict: 'cannot-say', why: 'day-before-unknown' };
  const rules = blightRulesMet(before, today);
  const atLeast = blightRulesMet({ ...before, dampH: before.lowH }, { ...today, dampH: today.lowH });
  const atMost = blightRulesMet({ ...before, dampH: before.highH }, { ...today, dampH: today.highH });
  const isSure = atLeast.includes('hutton') === atMost.includes('hutton');
  const verdict = isSure ? (rules.includes('hutton') ? 'met' : 'not-met') : 'perhaps';
  return { ...figures, verdict, rules: isSure ? rules : atMost, why: null };
}

const nothing: Omit<BlightDay, 'day'> = {
  verdict: 'cannot-say',
  rules: [],
  dampH: null,
  dampLowH: null,
  dampHighH: null,
  basis: 'none',
  why: null,
};

interface Around {
  readonly before: AirDay | undefined;
  readonly after: AirDay | undefined;
  readonly latDeg: number;
}

function readDay(day: AirDay, around: Around): Read | Unread {
  if (day.hours !== undefined) return readHours(day.hours);
  if (day.tMinC === null || day.tMaxC === null) return { why: 'no-temperature' };
  const vapourKpa = vapourOf({ ...day, tMinC: day.tMinC, tMaxC: day.tMaxC });
  return vapourKpa === null ? { why: 'no-humidity-record' } : estimated(day, around, vapourKpa);
}

/** Vapour of the day from what was measured of humidity; the night's lowest temperature is no measure of it (science: it would fire daily from June). */
function vapourOf(day: AirDay & { readonly tMinC: number; readonly tMaxC: number }): number | null {
  const { tMinC, tMaxC, rhMaxPct = null, rhMinPct = null, rhMeanPct = null } = day;
  if (rhMaxPct !== null && rhMinPct !== null) return vapourFromRhRangeKpa({ tMaxC, tMinC, rhMaxPct, rhMinPct });
  return rhMeanPct === null ? null : vapourFromRhMeanKpa(tMaxC, tMinC, rhMeanPct);
}

/** By how much the vapour of a day may be wrong; hours are counted at both ends. */
const vapourDoubtShare = 0.05;

function estimated(day: AirDay, { before, after, latDeg }: Around, vapourKpa: number): Read | Unread {
  const { tMinC, tMaxC } = day;
  if (tMinC === null || tMaxC === null) return { why: 'no-temperature' };
  const ends = (one: AirDay | undefined, next: number) =>
    one === undefined || one.tMinC === null || one.tMaxC === null
      ? null
      : { latDeg, dayOfYear: dayOfYear(dayAt(one.day)), tMinC: one.tMinC, tMaxC: one.tMaxC, tMinNextC: next };
  const own = ends(day, after?.tMinC ?? tMinC);
  const yesterday = ends(before, tMinC);
  const sunsetBeforeC = yesterday === null ? null : sunsetTemperatureC(yesterday);
  if (own === null) return { why: 'no-temperature' };
  const whole = sunsetBeforeC === null ? own : { ...own, sunsetBeforeC };
  const hours = Array.from({ length: 24 }, (_, hour) => temperatureAtHourC(whole, hour));
  if (hours.some((tC) => tC === null)) return { why: 'hours-missing' };
  const damp = (share: number) =>
    hours.filter((tC) => humidityAtPct(tC ?? 0, vapourKpa * share) >= ruleRow('hutton').rhMinPct).length;
  return {
    tMinC,
    dampH: damp(1),
    lowH: damp(1 - vapourDoubtShare),
    highH: damp(1 + vapourDoubtShare),
    basis: 'hours-estimated',
  };
}

/** Hours missing on end that are still filled by a straight line. */
const mostFilledH = 2;

function readHours(hours: NonNullable<AirDay['hours']>): Read | Unread {
  const temperatures = filled(hours.map((hour) => hour.tC));
  const humidities = filled(hours.map((hour) => hour.rhPct));
  if (hours.length !== 24 || temperatures === null) return { why: 'hours-missing' };
  if (humidities === null)
    return { why: hours.every((hour) => hour.rhPct === null) ? 'no-humidity-record' : 'hours-missing' };
  const dampH = humidities.filter((rhPct) => rhPct >= ruleRow('hutton').rhMinPct).length;
  return { tMinC: Math.min(...temperatures), dampH, lowH: dampH, highH: dampH, basis: 'hours-measured' };
}

/** Short gaps between measured hours on a straight line; null where a longer one or an open end is left. */
function filled(values: readonly (number | null)[]): readonly number[] | null {
  const out: number[] = [];
  for (let at = 0; at < values.length; at++) {
    const value = values[at] ?? null;
    if (value !== null) {
      out.push(value);
      continue;
    }
    const next = values.findIndex((one, index) => index > at && one !== null);
    const from = out.at(-1);
    if (next === -1 || from === undefined || next - at > mostFilledH) return null;
    const to = values[next] ?? from;
    out.push(from + ((to - from) * 1) / (next - at + 1));
  }
  return out;
}
