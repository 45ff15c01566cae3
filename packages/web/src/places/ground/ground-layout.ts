import type { Viewport } from '../../look/page/use-viewport.ts';
import type { RibbonLayout } from '../../pictures/ribbon/cover-ribbon.tsx';

const gutterPx = 126;
const notePx = 206;
const marginPx = 24;
const leastWeekPx = 2;

export interface GroundLayout {
  readonly ribbon: RibbonLayout;
  readonly hasMargin: boolean;
  /** Height of one item in the box below. */
  readonly brickItem: number;
  readonly nitrogenHeight: number;
}

/**
 * Sizes of the Ground desk: two px a week or more; strips as tall as the window allows between 44 and 57 px, so that the ribbon, the box and
 * the head of nitrogen are in sight together on a window 900 px high.
 */
export function groundLayout(viewport: Viewport, plots: number, weeks: number): GroundLayout {
  const roomWithNotes = viewport.width - 2 * marginPx - gutterPx - notePx - 22;
  const hasMargin = roomWithNotes >= leastWeekPx * weeks - 20;
  const room = hasMargin ? roomWithNotes : viewport.width - 2 * marginPx - gutterPx;
  const width = Math.round(Math.max(leastWeekPx * weeks - (hasMargin ? 20 : 0), Math.min(room, 3 * weeks)));
  const isTall = viewport.height >= 1000;
  const perStrip = (viewport.height - 480) / Math.max(4, plots);
  const stripHeight = Math.round(Math.max(44, Math.min(57, perStrip - 25)));
  return {
    ribbon: { width, stripHeight, pitch: stripHeight + 25, head: 38 },
    hasMargin,
    brickItem: isTall ? 16 : 14,
    nitrogenHeight: isTall ? 96 : 82,
  };
}
