/**
 * Drawn years against what their generator implies: each figure with its standard error, so that chance and fault can be told apart.
 *
 * Source  science of the generator (generator.ts); standard error = spread of the yearly values / √years, of correlations and laws by blocks of fifty years.
 * Checks  test/checks/science.csv wg-05; test/drawn-weather.test.ts
 * Holds   every month: rain, wet days, p01, p11, mean and spread of temperatures, mean radiation, shape and scale of rain; all nine lagged and three
 *         same-day correlations.
 * Leaves out  spread of monthly and yearly sums, which comes out too small and is said so where it matters.
 */
import { type DrawnWeather, emptyWeather, prepareGenerator } from './draw.ts';
import { impliedMonth, type WeatherGenerator } from './generator.ts';
import { fitRainLaw } from './rain-amount.ts';
import { dayAfterSpread, sameDaySpread, type ThreeByThree, withUnitSpread } from './residuals.ts';

export interface DrawnFigure {
  /** As "7 rainMm" or "lag tMax tMin". */
  readonly name: string;
  readonly impliedValue: number;
  readonly drawnValue: number;
  readonly sdOfMean: number;
}

const blocks = 20;
const monthDays = [31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31] as const;
/** 1 January 2001, a year of 365 days, by its day number. */
const firstDayNumber = 11_323;
const yearSums = ['rainMm', 'wetDays', 'tMaxC', 'tMinC', 'solarMjM2', 'tMaxVariance', 'tMinVariance'] as const;
const blockSums = ['dryBefore', 'wetAfterDry', 'wetBefore', 'wetAfterWet', 'wetDays', 'rainMm', 'logarithms'] as const;

/** The figures of so many drawn years, a multiple of twenty. */
export function drawnFigures(generator: WeatherGenerator, years: number, seed: number): readonly DrawnFigure[] {
  const sums = sumsOfYears(generator, years, seed);
  return [
    ...generator.months.flatMap((_, at) => [
      ...monthFigures(generator, at, sums),
      ...chainFigures(generator, at, sums),
    ]),
    ...correlationFigures(generator, sums),
  ];
}

interface Sums {
  readonly years: number;
  /** By month, figure and year. */
  readonly byYear: readonly Float64Array[][];
  /** By month, figure and block. */
  readonly byBlock: readonly Float64Array[][];
  /** By block: nine products of today with yesterday, nine of today with today, and the days. */
  readonly products: readonly Float64Array[];
}

function sumsOfYears(generator: WeatherGenerator, years: number, seed: number): Sums {
  const perMonth = <T>(make: () => T) => Array.from({ length: 12 }, make);
  const sums: Sums = {
    years,
    byYear: perMonth(() => yearSums.map(() => new Float64Array(years))),
    byBlock: perMonth(() => blockSums.map(() => new Float64Array(blocks))),
    products: Array.from({ length: blocks }, () => new Float64Array(19)),
  };
  const draw = prepareGenerator(generator, seed);
  // The day before the year is drawn with it, for the chain and the lag of 1 January.
  const weather = emptyWeather(firstDayNumber - 1, 366);
  for (let year = 0; year < years; year++) {
    draw(year, weather);
    addYear(sums, weather, { year, generator });
  }
  return sums;
}

function addYear(
  sums: Sums,
  weather: DrawnWeather,
  { year, generator }: { readonly year: number; readonly generator: WeatherGenerator },
): void {
  const block = Math.floor((year * blocks) / sums.years);
  let at = 1;
  generator.months.forEach((source, month) => {
    const days = monthDays[month] ?? 30;
    const { tMaxC, tMinC } = impliedMonth(source, days);
    for (const end = at + days; at < end; at++) {
      const warm = weather.tMaxC[at] ?? 0;
      const cold = weather.tMinC[at] ?? 0;
      const rainMm = weather.rainMm[at] ?? 0;
      const air = [warm, cold, weather.solarMjM2[at] ?? 0, (warm - tMaxC.mean) ** 2, (cold - tMinC.mean) ** 2];
      addAll(sums.byYear[month], year, [rainMm, rainMm > 0 ? 1 : 0, ...air]);
      addAll(sums.byBlock[month], block, chainOf(rainMm, weather.rainMm[at - 1] ?? 0));
      addProducts(sums.products[block], weather.residuals, at);
    }
  });
}

/** In the order of `blockSums`. */
function chainOf(rainMm: number, yesterdayMm: number): readonly number[] {
  const wet = rainMm > 0 ? 1 : 0;
  const wasWet = yesterdayMm > 0 ? 1 : 0;
  return [1 - wasWet, (1 - wasWet) * wet, wasWet, wasWet * wet, wet, rainMm, wet === 1 ? Math.log(rainMm) : 0];
}

function addAll(into: readonly Float64Array[] | undefined, at: number, values: readonly number[]): void {
  for (const [figure, value] of values.entries()) add(into?.[figure], at, value);
}

function addProducts(into: Float64Array | undefined, x: Float64Array, at: number): void {
  for (let row = 0; row < 3; row++) {
    for (let column = 0; column < 3; column++) {
      add(into, 3 * row + column, (x[3 * at + row] ?? 0) * (x[3 * (at - 1) + column] ?? 0));
      add(into, 9 + 3 * row + column, (x[3 * at + row] ?? 0) * (x[3 * at + column] ?? 0));
    }
  }
  add(into, 18, 1);
}

function add(into: Float64Array | undefined, at: number, value: number): void {
  if (into !== undefined) into[at] = (into[at] ?? 0) + value;
}

function monthFigures(generator: WeatherGenerator, at: number, sums: Sums): readonly DrawnFigure[] {
  const days = monthDays[at] ?? 30;
  const source = generator.months[at];
  if (source === undefined) return [];
  const implied = impliedMonth(source, days);
  const wanted = [
    implied.rainMm,
    implied.wetDays,
    implied.tMaxC.mean,
    implied.tMinC.mean,
    implied.solarMjM2.mean,
    implied.tMaxC.sd ** 2,
    implied.tMinC.sd ** 2,
  ];
  return yearSums.map((name, figure) => {
    const values = Array.from(sums.byYear[at]?.[figure] ?? [], (sum) => (figure < 2 ? sum : sum / days));
    return { name: `${at + 1} ${name}`, impliedValue: wanted[figure] ?? 0, ...meanOf(values) };
  });
}

function chainFigures(generator: WeatherGenerator, at: number, sums: Sums): readonly DrawnFigure[] {
  const source = generator.months[at];
  if (source === undefined) return [];
  const blockOf = (name: (typeof blockSums)[number], block: number) =>
    sums.byBlock[at]?.[blockSums.indexOf(name)]?.[block] ?? 0;
  type Ask = (name: (typeof blockSums)[number]) => number;
  const whole: Ask = (name) => {
    let sum = 0;
    for (let block = 0; block < blocks; block++) sum += blockOf(name, block);
    return sum;
  };
  const law = (of: Ask) => fitRainLaw(of('rainMm') / of('wetDays'), of('logarithms') / of('wetDays'));
  const figures: readonly (readonly [string, number, (of: Ask) => number])[] = [
    ['p01', source.wetAfterDryProbability, (of) => of('wetAfterDry') / of('dryBefore')],
    ['p11', source.wetAfterWetProbability, (of) => of('wetAfterWet') / of('wetBefore')],
    ['shape', source.rain.shapeFactor, (of) => law(of).shapeFactor],
    ['scaleMm', source.rain.scaleMm, (of) => law(of).scaleMm],
  ];
  return figures.map(([name, impliedValue, figure]) => {
    const { sdOfMean } = meanOf(Array.from({ length: blocks }, (_, b) => figure((part) => blockOf(part, b))));
    return { name: `${at + 1} ${name}`, impliedValue, drawnValue: figure(whole), sdOfMean };
  });
}

function correlationFigures(generator: WeatherGenerator, sums: Sums): readonly DrawnFigure[] {
  const matrices = withUnitSpread(generator.residuals);
  const names = ['tMax', 'tMin', 'radiation'];
  const figure = (name: string, wanted: ThreeByThree, from: number) =>
    names.flatMap((today, row) =>
      names.map((other, column): DrawnFigure => {
        const values = sums.products.map((one) => (one[from + 3 * row + column] ?? 0) / (one[18] ?? 1));
        return { name: `${name} ${today} ${other}`, impliedValue: wanted[row]?.[column] ?? 0, ...meanOf(values) };
      }),
    );
  return [...figure('lag', dayAfterSpread(matrices), 0), ...figure('same', sameDaySpread(matrices), 9)];
}

function meanOf(values: readonly number[]): { readonly drawnValue: number; readonly sdOfMean: number } {
  const drawnValue = values.reduce((sum, value) => sum + value, 0) / values.length;
  const squares = values.reduce((sum, value) => sum + (value - drawnValue) ** 2, 0);
  return { drawnValue, sdOfMean: Math.sqrt(squares / (values.length - 1) / values.length) };
}

/** Nine figures in ten within two standard errors, all within four; spreads of temperature are allowed 3 % for days and nights that crossed. */
export function drawnFiguresHold(figures: readonly DrawnFigure[]): boolean {
  const off = figures.map(({ name, impliedValue, drawnValue, sdOfMean }) => {
    const allowed = name.endsWith('Variance') ? 0.06 * impliedValue : 0;
    return Math.max(0, Math.abs(drawnValue - impliedValue) - allowed) / sdOfMean;
  });
  return off.every((one) => one <= 4) && off.filter((one) => one <= 2).length >= 0.9 * off.length;
}
