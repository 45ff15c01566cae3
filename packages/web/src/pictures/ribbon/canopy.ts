import type { Horizon, PlacedStand } from '@leywright/planner';
import { weeksFromStart } from '../weeks.ts';

/** The stretch of a strip a stand is drawn in, px; `floor` is its ground, `top` full cover. */
export interface Band {
  readonly floor: number;
  readonly top: number;
}

export interface CanopyScale {
  readonly horizon: Horizon;
  readonly pxPerWeek: number;
}

/** While it grows under a crop, an undersown stand is drawn at this share of its height, so that both are seen. */
const undersownShare = 0.42;

/** The band of a span of a plot's width in a strip: the plot's first side is at the top of the strip. */
export function bandOf(span: { readonly fromShare: number; readonly toShare: number }, strip: { readonly height: number; readonly headroom: number }): Band {
  const floor = strip.height * span.toShare;
  const roof = strip.height * span.fromShare;
  return { floor, top: roof + strip.headroom * (span.toShare - span.fromShare) };
}

/** From where to where a stand is drawn, px, cut at the ends of the picture; null when none of it lies within. */
export function standReach(stand: PlacedStand, { horizon, pxPerWeek }: CanopyScale): { readonly left: number; readonly right: number } | null {
  const left = Math.max(0, weeksFromStart(horizon, stand.from)) * pxPerWeek;
  const right = Math.min(horizon.weeks, weeksFromStart(horizon, stand.to)) * pxPerWeek;
  return right > left ? { left, right } : null;
}

/**
 * The outline of a stand's cover, from the ground up and back: one point a week at the week's middle, joined straight, so that a slow rise is a
 * slow rise; in steps from the first day of harvest, since a bed is cleared at a time.
 */
export function canopyPath(stand: PlacedStand, scale: CanopyScale, band: Band, hostTo: number | null = null): string | null {
  const reach = standReach(stand, scale);
  if (reach === null) return null;
  const harvestFrom = stand.harvestFrom === null ? Number.POSITIVE_INFINITY : weeksFromStart(scale.horizon, stand.harvestFrom) * scale.pxPerWeek;
  const heightAt = (x: number, share: number) => band.floor - (band.floor - band.top) * share * (hostTo !== null && x < hostTo ? undersownShare : 1);
  let path = `M${round(reach.left)} ${round(band.floor)}`;
  let isInside = false;
  stand.coverShare.forEach((share, index) => {
    const x = (stand.coverFromWeek + index + 0.5) * scale.pxPerWeek;
    if (x <= reach.left || x >= reach.right) return;
    const y = round(heightAt(x, share));
    if (!isInside && reach.left === 0) path += `L0 ${y}`;
    path += x > harvestFrom ? `H${round(x)}V${y}` : `L${round(x)} ${y}`;
    isInside = true;
  });
  return isInside ? `${path}H${round(reach.right)}V${round(band.floor)}Z` : null;
}

function round(px: number): number {
  return Math.round(px * 10) / 10;
}
