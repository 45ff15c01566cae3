/**
 * Draws a year: warmth that lasts, yields that go up and down together, stores that keep well or badly.
 *
 * Source  stated assumptions of ours. Warmth: a whole year warmer or colder by 0.8 C, and weeks about it by 1.2 C that carry 0.6 of themselves
 *         over. Yield: the logarithm has a part shared by all crops of the year, one by all sowings of a crop, one of the sowing itself, in the
 *         proportion 12 : 15 : 20; their sum is the spread of the crop's yields where the table gives one, else 0.277.
 * Checks  test/odds/calibration.test.ts
 * Leaves out  a sowing that fails outright, frost, pests and floods; what a warm year does to yields.
 */
import { nameHash, normalScore } from './chance.ts';
import type { Season, SeasonDraw } from './season-lot.ts';

const yearWarmthSdC = 0.8;
const weekWarmthSdC = 1.2;
const carriedOverShare = 0.6;
export const yieldParts = { year: 0.12, crop: 0.15, sowing: 0.2 } as const;
/** Deviation of the logarithm of a yield nobody has a spread for. */
export const usualYieldSd = Math.hypot(yieldParts.year, yieldParts.crop, yieldParts.sowing);

const yearWarmthHash = nameHash('year/warmth');
const yearYieldHash = nameHash('year/yield');
const weekHash = nameHash('week');
const keepHash = nameHash('keep');

export function drawYear(season: Season, seed: number, sampleIndex: number): SeasonDraw {
  const score = (hash: number) => normalScore(seed, sampleIndex, hash);
  const yearScore = score(yearYieldHash);
  const cropScores = new Map(season.crops.map((crop) => [crop, score(crop.cropSeed)]));
  return {
    warmerC: warmth(season, score),
    keepScore: (crop) => score(crop.cropSeed ^ keepHash),
    yieldFactor: (crop, lot) => {
      const { year, crop: cropPart, sowing } = yieldParts;
      const sum = year * yearScore + cropPart * (cropScores.get(crop) ?? 0) + sowing * score(lot.standSeed);
      const sd = lot.yieldSd;
      return Math.exp((sd / usualYieldSd) * sum - (sd * sd) / 2);
    },
  };
}

/** What has been is known; what comes is drawn week by week. */
function warmth(season: Season, score: (hash: number) => number): Float64Array {
  const warmerC = new Float64Array(season.weeks);
  const yearC = yearWarmthSdC * score(yearWarmthHash);
  const freshSdC = weekWarmthSdC * Math.sqrt(1 - carriedOverShare ** 2);
  let weekC = weekWarmthSdC * score(weekHash);
  for (let week = season.openWeek; week < season.weeks; week += 1) {
    warmerC[week] = yearC + weekC;
    weekC = carriedOverShare * weekC + freshSdC * score((weekHash + Math.imul(week + 1, 0x9e3779b1)) >>> 0);
  }
  return warmerC;
}
