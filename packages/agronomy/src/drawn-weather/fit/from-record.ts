/**
 * A weather generator from the farm's own daily record: the longer the record, the more of it is its own.
 *
 * Source  Richardson 1981, Water Resources Research 17:182; rain by Thom 1958; residuals by Matalas 1967. 20 years and more: all by month. 5-19 years: the
 *         chain and the shape of rain by three months pooled, correlations the donor's. Under 5: the place's normals moved to the record's means.
 * Checks  test/drawn-weather.test.ts (forty drawn years give their generator back; 1,000 drawn years against the record)
 * Holds   a month's mean rain, temperatures and share of wet days are the record's.
 * Leaves out  trends in the record: its years count alike. Radiation that was not measured is the normals'.
 */
import { dayNumber, monthOf } from '@leywright/measures';
import type { ClimateStation } from '../../weather/climate.ts';
import type { WeatherDay } from '../../weather/weather-series.ts';
import type { GeneratorMonth, WeatherGenerator } from '../generator.ts';
import { fitRainLaw } from '../rain-amount.ts';
import { wetFromMm } from '../rain-chain.ts';
import { fitResiduals } from './fit-residuals.ts';
import { generatorFromNormals, generatorFromStation, type MonthNormals, normalsOf } from './from-normals.ts';
import { type MonthRecord, monthRecords, type RecordedDay, skyOf } from './month-record.ts';

/** The generator a farm's record allows; with an empty record, that of the station's normals. */
export function generatorFor(station: ClimateStation, recorded: readonly WeatherDay[]): WeatherGenerator {
  const days = wholeDays(recorded);
  const years = days.length / 365.25;
  if (days.length < 365) return generatorFromStation(station);
  const records = monthRecords(days);
  const normals = movedNormals(normalsOf(station), records);
  const moved = generatorFromNormals(station.latDeg, normals);
  const recordYears = Math.floor(years + 0.01);
  if (recordYears < 5) return { ...moved, origin: 'normals-moved-to-record', recordYears };
  const pooled = recordYears < 20;
  const months = records.map((record, at) =>
    fittedMonth(record, pooled ? pool(records, at) : record, moved.months[at] as GeneratorMonth),
  );
  return {
    latDeg: station.latDeg,
    months,
    residuals: pooled ? moved.residuals : (fitResiduals(days, months) ?? moved.residuals),
    origin: pooled ? 'record-by-season' : 'record-by-month',
    recordYears,
  };
}

/** Days with both temperatures and rain, in order, each once. */
function wholeDays(recorded: readonly WeatherDay[]): readonly RecordedDay[] {
  const byNumber = new Map<number, RecordedDay>();
  for (const { day, tMaxC, tMinC, rainMm, solarMjM2 } of recorded) {
    if (tMaxC === null || tMinC === null || rainMm === null) continue;
    const number = dayNumber(day);
    const one = { dayNumber: number, monthIndex: monthOf(day) - 1, tMaxC, tMinC, rainMm, solarMjM2: solarMjM2 ?? null };
    byNumber.set(number, one);
  }
  return [...byNumber.values()].sort((a, b) => a.dayNumber - b.dayNumber);
}

/** A month's figures count from this many days on; below, the station's stand. */
const enoughDays = 20;
const enoughWetDays = 10;

function movedNormals(normals: readonly MonthNormals[], records: readonly MonthRecord[]): readonly MonthNormals[] {
  return normals.map((month, at) => {
    const record = records[at];
    if (record === undefined || record.dayCount < enoughDays) return month;
    const perMonth = month.monthDays / record.dayCount;
    return {
      ...month,
      tMaxC: record.tMaxC.all.mean,
      tMinC: record.tMinC.all.mean,
      solarMjM2: record.solarDayCount >= enoughDays ? record.solarMjM2.all.mean : month.solarMjM2,
      rainMm: record.wetRainMm * perMonth,
      rainDays: record.wetDays * perMonth,
      rainDayFromMm: wetFromMm,
    };
  });
}

function fittedMonth(record: MonthRecord, wider: MonthRecord, fallBack: GeneratorMonth): GeneratorMonth {
  const dryDays = record.dayCount - record.wetDays;
  if (record.wetDays < enoughWetDays || dryDays < enoughWetDays) return fallBack;
  const meanMm = record.wetRainMm / record.wetDays;
  const { shapeFactor } = fitRainLaw(wider.wetRainMm / wider.wetDays, wider.wetLogarithms / wider.wetDays);
  return {
    wetAfterDryProbability: wider.daysWetAfterDry / wider.daysAfterDry,
    wetAfterWetProbability: wider.daysWetAfterWet / wider.daysAfterWet,
    rain: { shapeFactor, scaleMm: meanMm / shapeFactor },
    tMaxC: skyOf(record.tMaxC),
    tMinC: skyOf(record.tMinC),
    solarMjM2: record.solarDayCount >= 0.9 * record.dayCount ? skyOf(record.solarMjM2) : fallBack.solarMjM2,
    dewOffsetC: fallBack.dewOffsetC,
    wind2mMS: fallBack.wind2mMS,
  };
}

/** The counts of a month with those of the month before and after it. */
function pool(records: readonly MonthRecord[], at: number): MonthRecord {
  const three = [records[(at + 11) % 12], records[at], records[(at + 1) % 12]].filter((one) => one !== undefined);
  const sum = (of: (one: MonthRecord) => number) => three.reduce((total, one) => total + of(one), 0);
  return {
    ...(three[1] as MonthRecord),
    wetDays: sum((one) => one.wetDays),
    wetRainMm: sum((one) => one.wetRainMm),
    wetLogarithms: sum((one) => one.wetLogarithms),
    daysWetAfterDry: sum((one) => one.daysWetAfterDry),
    daysWetAfterWet: sum((one) => one.daysWetAfterWet),
    daysAfterDry: sum((one) => one.daysAfterDry),
    daysAfterWet: sum((one) => one.daysAfterWet),
  };
}
