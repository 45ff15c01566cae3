/**
 * Ammonia from cut herbage left lying.
 *
 * Source  Larsson et al. 1998, Nutrient Cycling in Agroecosystems 51:41 (thick carried mulches: 17 % of lucerne's nitrogen, 39 % of rich grass's, none of
 *         poor grass's) and Weber et al. 2018, J. Soil and Plant Biology (clover-grass where it grew 2.2 %): abstracts read; the figures used lie inside them.
 * Checks  test/checks/soil.csv vo-01; test/gases.test.ts
 * Holds   low ≤ typical ≤ high; poor herbage loses next to nothing; all is gone within 30 days.
 * Leaves out  weather: wind and dew move it within the band.
 */
import { type Interval, intervals } from '@leywright/measures';

export const mulchWays = ['in place', 'carried', 'worked in'] as const;
export type MulchWay = (typeof mulchWays)[number];

const lossPct: Readonly<Record<MulchWay, Interval>> = {
  'in place': intervals.interval(1, 3, 10),
  carried: intervals.interval(10, 20, 40),
  'worked in': intervals.interval(0, 0, 1),
};
const poorHerbagePct = intervals.interval(0, 0, 1);

/** Share of the nitrogen laid down that goes off as ammonia. */
export function ammoniaLossShare(nPct: number, way: MulchWay): Interval {
  return intervals.scaleInterval(nPct < 1.5 ? poorHerbagePct : lossPct[way], 0.01);
}

/** Ammonia (kg N/ha) from herbage cut and left. */
export function mulchAmmoniaKgHa(cutNKgHa: number, nPct: number, way: MulchWay): Interval {
  return intervals.scaleInterval(ammoniaLossShare(nPct, way), cutNKgHa);
}

/** Share of what is still to go off that goes on each of the first 30 days: half in ten days. */
export const ammoniaPerDay = 1 - 0.5 ** 0.1;
