/** Grounds, stands and weathers for tests of the soil run. Invented: for their shape, not as fact. */
import {
  climate,
  dailyNormals,
  type SoilColumn,
  type SoilPart,
  type SoilRun,
  type SoilStand,
  type SoilWeather,
  soilAccount,
  weather,
} from '@leywright/agronomy';
import { asDay, dayNumber } from '@leywright/measures';

export const numberOf = (day: string): number => dayNumber(asDay(day));

/** The same numbers from the same seed. */
export function seededNumbers(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), state | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4_294_967_296;
  };
}

/** Years at Rothamsted: mean days roughened into showers, warm and cold spells. Rain falls on two days of five, as much in all as the normals have. */
export function roughWeather(from: string, to: string, seed: number, rainFactor = 1): SoilWeather {
  const { station } = climate.climateNear(51.81, -0.36);
  const series = weather.weatherFor({ from: asDay(from), to: asDay(to) }, [], dailyNormals.dailyNormals(station));
  const random = seededNumbers(seed);
  let spellC = 0;
  for (let at = 0; at < series.dayCount; at++) {
    spellC = 0.7 * spellC + (random() - 0.5) * 7;
    const wetness = random() < 0.4 ? -Math.log(1 - 0.999 * random()) / 0.4 : 0;
    series.tMaxC[at] = (series.tMaxC[at] ?? 0) + spellC;
    series.tMinC[at] = (series.tMinC[at] ?? 0) + spellC;
    series.rainMm[at] = (series.rainMm[at] ?? 0) * wetness * rainFactor;
  }
  return soilAccount.soilWeather(series, { latDeg: 51.81, elevationM: 128 });
}

/** A stand; a ley, a crop or a cover by what the tables know it as. */
export function standOf(
  plantId: string,
  span: readonly [from: string, to: string],
  more: Partial<SoilStand> = {},
): SoilStand {
  const isCover =
    /^(mix-|grazing|rye|red-clover|white-clover|lucerne|vetch|phacelia|mustard|crimson|trefoil|winter-vetch|white-mustard|fodder|buckwheat|italian|oat|black)/.test(
      plantId,
    );
  return {
    id: `${plantId} ${span[0]}`,
    habit: isCover ? soilAccount.habitOfCover(plantId) : soilAccount.habitOfCrop(plantId),
    startDayNumber: numberOf(span[0]),
    endDayNumber: numberOf(span[1]),
    ending: isCover ? 'turned-in' : 'sold',
    seedNKgHa: 1,
    establishedShare: 1,
    cuts: [],
    groundWorked: true,
    ...more,
  };
}

/** A part on a sandy loam. */
export function partOf(stands: readonly SoilStand[], more: Partial<SoilPart> = {}): SoilPart {
  return {
    id: 'a',
    profile: soilAccount.profiles.profileOfTexture('sandy loam'),
    latDeg: 51.81,
    stands,
    brought: [],
    irrigation: { kind: 'none' },
    tunnel: false,
    depositionKgHaYear: 15,
    startMineralNKgHa: 50,
    startAvailableShare: 1,
    ...more,
  };
}

/** Sum of a column over days, the last not counted. Runs of one-day steps only. */
export function sumOver(run: SoilRun, name: SoilColumn, from: string, to: string): number {
  const values = run.column(name);
  let sum = 0;
  for (let at = numberOf(from); at < numberOf(to); at++) sum += values[at - run.startDayNumber] ?? 0;
  return sum;
}

/** Value of a column at the end of a day. Runs of one-day steps only. */
export function valueOn(run: SoilRun, name: SoilColumn, day: string): number {
  return run.column(name)[numberOf(day) - run.startDayNumber] ?? 0;
}
