/**
 * Weather drawn by chance that has the climate's means, spreads, wet days and runs of days: a year that could be.
 *
 * Source  Richardson 1981, Water Resources Research 17:182, by way of rain-chain.ts, rain-amount.ts, residuals.ts, clipped-radiation.ts.
 * Checks  test/checks/science.csv wg-05; test/drawn-weather.test.ts (1,000 years against what went in; the same day is the same day whatever span is asked)
 * Holds   Tmin ≤ Tmax - 0.5; rain 0 or 0.3 mm and more; radiation within 0.05 .. 0.80 of that above the air; same seed, run and day: same weather. Drawing
 *         makes nothing new: it writes into the arrays it is given.
 * Leaves out  wet and dry years (generator.ts). Dew point and wind are assumed; no disease rule may run on them. Run a model over each drawn year; never
 *         average drawn years first.
 */
import { dayAt, dayOfYear, daysInMonth, monthOf, yearOf } from '@leywright/measures';
import { extraterrestrialMjM2 } from '../weather/radiation.ts';
import { type WeatherSeries, weatherOrigins } from '../weather/weather-series.ts';
import { meanToPutIn, radiationLimits } from './clipped-radiation.ts';
import { leastRangeC, rangeToPutIn } from './crossed-days.ts';
import type { GeneratorMonth, WeatherGenerator } from './generator.ts';
import { drawRainMm, type RainDraw, rainDraw } from './rain-amount.ts';
import { sameDaySpread, withUnitSpread } from './residuals.ts';
import { type Chance, chance } from './seeded-stream.ts';

/** Drawn weather, which is a weather series like any other, and what goes beyond one. */
export interface DrawnWeather extends WeatherSeries {
  /** Assumed from the least temperature. */
  readonly dewPointC: Float64Array;
  /** Assumed, at 2 m. */
  readonly windMS: Float64Array;
  /** Three a day, as drawn, before any value was held within limits: greatest temperature, least, radiation. */
  readonly residuals: Float64Array;
}

/** Arrays for a span of days, to be drawn into as often as wanted. */
export function emptyWeather(startDayNumber: number, dayCount: number): DrawnWeather {
  const days = () => new Float64Array(dayCount);
  return {
    startDayNumber,
    dayCount,
    tMaxC: days(),
    tMinC: days(),
    rainMm: days(),
    solarMjM2: days(),
    originIndex: new Uint8Array(dayCount).fill(weatherOrigins.indexOf('drawn')),
    dewPointC: days(),
    windMS: days(),
    residuals: new Float64Array(3 * dayCount),
  };
}

/** Draws run `runIndex` (from 0) of the span of `into`, and hands it back. */
export type DrawWeather = (runIndex: number, into: DrawnWeather) => DrawnWeather;

/** Days drawn before a span, so that it begins as its run goes on: the chain and the residuals have then forgotten their start. */
const warmUpDays = 60;

/** Purposes of chance in a day: the sky and two residuals, the third, wind, and rain from there on. */
const purposes = { sky: 0, light: 1, wind: 2, rain: 3 } as const;

/** Makes a generator ready with a seed: some milliseconds, once; drawing a day then takes less than a thousandth of one. */
export function prepareGenerator(generator: WeatherGenerator, seed: number): DrawWeather {
  const drawing = new Drawing(generator, seed);
  return (runIndex, into) => {
    drawing.begin(runIndex, into);
    for (let at = -warmUpDays; at < into.dayCount; at++) drawing.drawDay(at);
    return into;
  };
}

/** One day after another, in arrays made once. */
class Drawing {
  readonly #months: readonly PreparedMonth[];
  readonly #aboveAirMjM2: Float64Array;
  readonly #matrices: Float64Array;
  readonly #numbers: Chance;
  readonly #x = new Float64Array(3);
  readonly #calendar = new Calendar();
  #into: DrawnWeather = emptyWeather(0, 0);
  #runIndex = 0;
  #wet = false;

  constructor(generator: WeatherGenerator, seed: number) {
    const residuals = withUnitSpread(generator.residuals);
    const { a, b } = residuals;
    const dayWithNight = sameDaySpread(residuals)[0][1];
    this.#months = generator.months.map((month, at) => prepareMonth(month, at, { generator, dayWithNight }));
    this.#aboveAirMjM2 = Float64Array.from({ length: 367 }, (_, day) => extraterrestrialMjM2(generator.latDeg, day));
    this.#matrices = Float64Array.from([...a.flat(), ...b.flat()]);
    this.#numbers = chance(seed);
  }

  begin(runIndex: number, into: DrawnWeather): void {
    this.#into = into;
    this.#runIndex = runIndex;
    this.#wet = false;
    this.#x.fill(0);
    this.#calendar.goTo(into.startDayNumber - warmUpDays);
  }

  /** Whether it rains comes first, then the residuals: the sky decides what they are the residuals of. Days under 0 are not written. */
  drawDay(at: number): void {
    const month = this.#months[this.#calendar.monthIndex] as PreparedMonth;
    this.#numbers.goTo(this.#into.startDayNumber + at, this.#runIndex);
    this.#numbers.take(purposes.sky);
    this.#wet = this.#numbers.uniform(3) < (this.#wet ? month.wetAfterWet : month.wetAfterDry);
    this.#stepResiduals();
    if (at >= 0) {
      this.#writeAir(at, this.#wet ? month.wet : month.dry);
      this.#writeAssumed(at, month);
      this.#into.rainMm[at] = this.#wet ? drawRainMm(month.rain, this.#numbers, purposes.rain) : 0;
    }
    this.#calendar.step();
  }

  #stepResiduals(): void {
    const numbers = this.#numbers;
    const m = this.#matrices;
    const x = this.#x;
    const e0 = numbers.normal(0);
    const e1 = numbers.otherNormal(0);
    numbers.take(purposes.light);
    const e2 = numbers.normal(0);
    const x0 = x[0] ?? 0;
    const x1 = x[1] ?? 0;
    const x2 = x[2] ?? 0;
    for (let row = 0; row < 3; row++) {
      const at = 3 * row;
      const carried = (m[at] ?? 0) * x0 + (m[at + 1] ?? 0) * x1 + (m[at + 2] ?? 0) * x2;
      x[row] = carried + (m[at + 9] ?? 0) * e0 + (m[at + 10] ?? 0) * e1 + (m[at + 11] ?? 0) * e2;
    }
  }

  #writeAir(at: number, sky: PreparedSky): void {
    const into = this.#into;
    const x = this.#x;
    const warm = sky.tMaxMean + sky.tMaxSd * (x[0] ?? 0);
    const cold = sky.tMinMean + sky.tMinSd * (x[1] ?? 0);
    const middle = (warm + cold) / 2;
    const half = Math.max(leastRangeC, Math.abs(warm - cold)) / 2;
    into.tMaxC[at] = middle + half;
    into.tMinC[at] = middle - half;
    const raMjM2 = this.#aboveAirMjM2[this.#calendar.dayOfYear] ?? 0;
    const solar = sky.solarMean + sky.solarSd * (x[2] ?? 0);
    const { darkestShare, brightestShare } = radiationLimits;
    into.solarMjM2[at] = Math.min(brightestShare * raMjM2, Math.max(darkestShare * raMjM2, solar));
    for (let row = 0; row < 3; row++) into.residuals[3 * at + row] = x[row] ?? 0;
  }

  #writeAssumed(at: number, month: PreparedMonth): void {
    const numbers = this.#numbers;
    this.#into.dewPointC[at] = (this.#into.tMinC[at] ?? 0) + month.dewOffsetC;
    numbers.take(purposes.wind);
    // A gamma factor of shape 4 and mean 1: four exponentials.
    const u = numbers.uniform(0) * numbers.uniform(1) * numbers.uniform(2) * numbers.uniform(3);
    this.#into.windMS[at] = (month.wind2mMS * -Math.log(u)) / 4;
  }
}

interface PreparedSky {
  readonly tMaxMean: number;
  readonly tMaxSd: number;
  readonly tMinMean: number;
  readonly tMinSd: number;
  readonly solarMean: number;
  readonly solarSd: number;
}

interface PreparedMonth {
  readonly wetAfterDry: number;
  readonly wetAfterWet: number;
  readonly rain: RainDraw;
  readonly dry: PreparedSky;
  readonly wet: PreparedSky;
  readonly dewOffsetC: number;
  readonly wind2mMS: number;
}

const firstDays = [1, 32, 60, 91, 121, 152, 182, 213, 244, 274, 305, 335, 366] as const;

function prepareMonth(
  source: GeneratorMonth,
  monthIndex: number,
  { generator, dayWithNight }: { readonly generator: WeatherGenerator; readonly dayWithNight: number },
): PreparedMonth {
  const [from = 1, to = 32] = firstDays.slice(monthIndex, monthIndex + 2);
  const aboveAir = Array.from({ length: to - from }, (_, at) => extraterrestrialMjM2(generator.latDeg, from + at));
  const sky = (which: 'dry' | 'wet'): PreparedSky => {
    const [warm, cold] = [source.tMaxC[which], source.tMinC[which]];
    const rangeSd = Math.sqrt(warm.sd ** 2 + cold.sd ** 2 - 2 * dayWithNight * warm.sd * cold.sd);
    const middle = (warm.mean + cold.mean) / 2;
    const half = rangeToPutIn(warm.mean - cold.mean, rangeSd) / 2;
    return {
      tMaxMean: middle + half,
      tMaxSd: warm.sd,
      tMinMean: middle - half,
      tMinSd: cold.sd,
      solarMean: meanToPutIn(source.solarMjM2[which].mean, source.solarMjM2[which].sd, aboveAir),
      solarSd: source.solarMjM2[which].sd,
    };
  };
  return {
    wetAfterDry: source.wetAfterDryProbability,
    wetAfterWet: source.wetAfterWetProbability,
    rain: rainDraw(source.rain),
    dry: sky('dry'),
    wet: sky('wet'),
    dewOffsetC: source.dewOffsetC,
    wind2mMS: source.wind2mMS,
  };
}

/** Month and day of the year, stepped day by day without asking the calendar again. */
class Calendar {
  monthIndex = 0;
  dayOfYear = 1;
  #dayOfMonth = 1;
  #year = 2000;

  goTo(dayNumber: number): void {
    const day = dayAt(dayNumber);
    this.#year = yearOf(day);
    this.monthIndex = monthOf(day) - 1;
    this.dayOfYear = dayOfYear(day);
    this.#dayOfMonth = Number(day.slice(8));
  }

  step(): void {
    this.dayOfYear++;
    this.#dayOfMonth++;
    if (this.#dayOfMonth <= daysInMonth(this.#year, this.monthIndex + 1)) return;
    this.#dayOfMonth = 1;
    this.monthIndex++;
    if (this.monthIndex < 12) return;
    this.monthIndex = 0;
    this.dayOfYear = 1;
    this.#year++;
  }
}
