import type { Horizon, PlacedStand } from '@leywright/planner';
import { weeksFromStart } from '../weeks.ts';
import type { Layer } from './layers.ts';

export interface CanopyScale {
  readonly horizon: Horizon;
  readonly pxPerWeek: number;
}

/** Where a share of ground covered lies in a strip, px from its top. */
export type HeightOf = (share: number) => number;

/** From where to where a stand is drawn, px, cut at the ends of the picture; null when none of it lies within. */
export function standReach(
  stand: PlacedStand,
  { horizon, pxPerWeek }: CanopyScale,
): { readonly left: number; readonly right: number } | null {
  const left = Math.max(0, weeksFromStart(horizon, stand.from)) * pxPerWeek;
  const right = Math.min(horizon.weeks, weeksFromStart(horizon, stand.to)) * pxPerWeek;
  return right > left ? { left, right } : null;
}

interface Corner {
  readonly x: number;
  readonly top: number;
  readonly base: number;
}

/** Thinner than this a stand is not drawn: nothing can be seen of it. */
const leastShare = 0.004;

/**
 * The outline of a stand in its pile: one point a week at the week's middle, joined straight, so that a slow rise is a slow rise; in steps from
 * the first day of harvest, since a bed is cleared at a time. Null when nothing of it shows.
 */
export function canopyPath(layer: Layer, scale: CanopyScale, heightOf: HeightOf): string | null {
  const corners = cornersOf(layer, scale, heightOf);
  const first = corners[0];
  const last = corners.at(-1);
  const reach = standReach(layer.stand, scale);
  if (first === undefined || last === undefined || reach === null) return null;
  const harvestFrom =
    layer.stand.harvestFrom === null
      ? Number.POSITIVE_INFINITY
      : weeksFromStart(scale.horizon, layer.stand.harvestFrom) * scale.pxPerWeek;
  const left = Math.max(reach.left, first.x - scale.pxPerWeek / 2);
  const right = Math.min(reach.right, last.x + scale.pxPerWeek / 2);
  const isCutAtLeft = reach.left === 0 && left === 0;
  let path = `M${round(left)} ${round(first.base)}${isCutAtLeft ? `V${round(first.top)}` : ''}`;
  for (const { x, top } of corners)
    path += x > harvestFrom ? `H${round(x)}V${round(top)}` : `L${round(x)} ${round(top)}`;
  path += `H${round(right)}V${round(last.base)}`;
  for (const { x, base } of [...corners].reverse()) path += `L${round(x)} ${round(base)}`;
  return `${path}Z`;
}

function cornersOf({ stand, fromWeek, base, top }: Layer, scale: CanopyScale, heightOf: HeightOf): readonly Corner[] {
  const reach = standReach(stand, scale);
  if (reach === null) return [];
  return top.flatMap((share, index) => {
    const foot = base[index] ?? 0;
    const x = (fromWeek + index + 0.5) * scale.pxPerWeek;
    return share - foot < leastShare || x < reach.left || x > reach.right
      ? []
      : [{ x, top: heightOf(share), base: heightOf(foot) }];
  });
}

function round(px: number): number {
  return Math.round(px * 10) / 10;
}
