/**
 * The last safe day to sow a winter cover, by the thermal time left from the farm's own weather.
 *
 * Source  canopy curves (agronomy, cover/canopy-choice.ts) and emergence sums. What has to be reached by when is our rule, fitted to the last dates of ten covers recalled from
 *         British green manure guides (rosenfeld-rayns): hardy cereals go on growing and need a third of the ground covered by 1 November; other hardy covers
 *         need to be full by then to live through the winter; tender ones, which the frost ends, and small-seeded legumes, which must be
 *         well rooted before it, need to be full by the middle of October.
 * Checks  test/cover-choice/last-day.test.ts: nine published dates within ten days at 52° N, each its own test.
 * Holds   warmer autumns give later days. Null where the sum is never reached: no day is safe there.
 * Leaves out  winter beans, which are sown to stand in spring and cover nothing before; drought and slugs at emergence.
 */
import { type Cover, canopyChoice, canopyCurve, emergence } from '@leywright/agronomy';
import { type Day, dayAt, dayNumber, dayOf } from '@leywright/measures';
import { isTender } from '../cover/frost.ts';
import type { ClimateDays } from '../plan/inputs.ts';

interface Target {
  readonly coverShare: number;
  readonly month: number;
  readonly dayOfMonth: number;
}

const protectedByNovember: Target = { coverShare: 0.3, month: 11, dayOfMonth: 1 };
const fullByNovember: Target = { coverShare: 0.88, month: 11, dayOfMonth: 1 };
const fullByMidOctober: Target = { coverShare: 0.88, month: 10, dayOfMonth: 15 };
const longestDays = 200;

/** What a cover has to reach by when, to be of use over winter. */
export function winterTarget(cover: Cover): Target {
  if (isSmallSeededLegume(cover) || (isTender(cover.life) && cover.type !== 'legume')) return fullByMidOctober;
  return cover.type === 'grass' && cover.life === 'winter annual' ? protectedByNovember : fullByNovember;
}

/** Clovers, trefoil and lucerne: slow from a small seed, and lost in frost when not well rooted. */
const smallSeedG = 10;
function isSmallSeededLegume(cover: Cover): boolean {
  return cover.type === 'legume' && cover.tswG !== null && cover.tswG < smallSeedG;
}

/** The last day on which a cover reaches its target in the autumn of a year; south of the equator half a year on. */
export function lastSafeSowing(cover: Cover, autumnYear: number, climate: ClimateDays): Day | null {
  const { coverShare, month, dayOfMonth } = winterTarget(cover);
  const { curve } = canopyChoice.canopyFor(cover.id);
  const reached = canopyCurve.thermalTimeAtCover(curve, Math.min(coverShare, curve.fullCoverShare * 0.978));
  if (reached === null) return null;
  const isSouth = climate.latDeg < 0;
  const target = dayNumber(isSouth ? dayOf(autumnYear, month - 6, dayOfMonth) : dayOf(autumnYear, month, dayOfMonth));
  const { baseC, sumCd } = emergence.emergenceOfCover(cover.id);
  for (let sownOn = target; sownOn > target - longestDays; sownOn--) {
    const upOn = climate.dayOfSum(baseC, sownOn, sumCd);
    if (upOn !== null && upOn <= target && climate.degreeDays(curve.baseC, upOn, target) >= reached)
      return dayAt(sownOn);
  }
  return null;
}
