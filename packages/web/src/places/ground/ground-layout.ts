import type { Supply } from '@leywright/planner';
import type { Viewport } from '../../look/page/use-viewport.ts';
import { bricksFootPx, bricksHeadPx } from '../../pictures/boxes/box-bricks.tsx';
import type { RibbonLayout } from '../../pictures/ribbon/cover-ribbon.tsx';

const gutterPx = 126;
const notePx = 206;
const marginPx = 24;
const leastWeekPx = 2;
/** Between the ribbon and the box, where the chosen year opens into its weeks. */
export const fanPx = 22;

export interface GroundLayout {
  readonly ribbon: RibbonLayout;
  readonly ribbonHeight: number;
  readonly hasMargin: boolean;
  readonly box: BoxLayout | null;
  readonly nitrogen: { readonly top: number; readonly height: number };
}

interface BoxLayout {
  readonly top: number;
  /** Height of one item. */
  readonly item: number;
  /** Items there is room for. */
  readonly room: number;
  readonly promised: number;
  /** The promise line, from the top of the box picture. */
  readonly promiseY: number;
}

interface Holds {
  readonly plots: number;
  readonly weeks: number;
  readonly supply: Supply | null;
}

/**
 * Sizes of the Ground desk: two px a week or more; strips as tall as the window allows between 38 and 57 px, so that the ribbon, the box
 * and nitrogen are in sight together on a window 900 px high.
 */
export function groundLayout(viewport: Viewport, { plots, weeks, supply }: Holds): GroundLayout {
  const ribbon = ribbonLayout(viewport, plots, weeks);
  const ribbonHeight = ribbon.head + ribbon.pitch * (plots - 1) + ribbon.stripHeight + 18;
  const isTall = viewport.height >= 1000;
  const box = supply === null ? null : boxLayout(supply, ribbonHeight + fanPx, isTall ? 16 : 14);
  const boxEnd = box === null ? ribbonHeight : box.top + bricksHeadPx + box.item * box.room + bricksFootPx;
  return {
    ribbon,
    ribbonHeight,
    hasMargin: hasNotesMargin(viewport, weeks),
    box,
    nitrogen: { top: boxEnd + 10, height: isTall ? 96 : 82 },
  };
}

function ribbonLayout(viewport: Viewport, plots: number, weeks: number): RibbonLayout {
  const hasMargin = hasNotesMargin(viewport, weeks);
  const room = hasMargin ? roomBesideNotes(viewport) : viewport.width - 2 * marginPx - gutterPx;
  const leastPx = leastWeekPx * weeks - (hasMargin ? 20 : 0);
  const perStrip = (viewport.height - 480) / Math.max(4, plots);
  const stripHeight = Math.round(Math.max(38, Math.min(57, perStrip - 25)));
  return {
    width: Math.round(Math.max(leastPx, Math.min(room, 3 * weeks))),
    stripHeight,
    pitch: stripHeight + 25,
    head: 38,
  };
}

function hasNotesMargin(viewport: Viewport, weeks: number): boolean {
  return roomBesideNotes(viewport) >= leastWeekPx * weeks - 20;
}

function roomBesideNotes({ width }: Viewport): number {
  return width - 2 * marginPx - gutterPx - notePx - 22;
}

function boxLayout(supply: Supply, top: number, item: number): BoxLayout {
  const promised = Math.max(0, ...supply.boxes.map((box) => box.promised));
  const highest = Math.max(promised, ...supply.boxes.map((box) => Math.max(box.itemsPerBox, box.high)));
  const room = Math.ceil(highest) + 0.2;
  return { top, item, room, promised, promiseY: bricksHeadPx + item * (room - promised) };
}
