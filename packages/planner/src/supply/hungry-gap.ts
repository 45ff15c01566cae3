/**
 * The hungry gap: the weeks of spring and early summer when the ground gives least, between the end of the winter crops and the first new ones.
 *
 * Rule    Count the field-fresh things in an average box of each box week (nothing from store or tunnel). Take the fewest of any box week between
 *         1 April and 31 July (half a year later south of the equator). The gap is the longest run of box weeks in those months with less than one thing
 *         more than that; of two as long, the later. It is a gap only if the fewest are at most half of what the fullest week of the year has.
 * Source  the trade's own word for April to early June (common practice); the rule is ours, and every page uses this one.
 */
import type { BoxWeek, Supply } from '../plan/supply.ts';

const moreThanFewest = 1;

export function hungryGap(boxes: readonly BoxWeek[], latDeg: number): Supply['hungryGap'] {
  const open = boxes.filter((box) => box.closed === null && box.promised > 0);
  const spring = open.filter((box) => isSpring(box, latDeg));
  if (spring.length === 0) return null;
  const fewest = Math.min(...spring.map(freshItems));
  if (fewest > Math.max(...open.map(freshItems)) / 2) return null;
  let longest: readonly BoxWeek[] = [];
  let run: BoxWeek[] = [];
  for (const box of spring) {
    run = freshItems(box) < fewest + moreThanFewest - rounding ? [...run, box] : [];
    if (run.length > 0 && run.length >= longest.length) longest = run;
  }
  const [first] = longest;
  const last = longest.at(-1);
  return first === undefined || last === undefined ? null : { from: first.week, to: last.week };
}

/** A hundredth of a thing is reckoning, not vegetables. */
const rounding = 0.01;

function isSpring(box: BoxWeek, latDeg: number): boolean {
  const month = Number((box.packOn ?? '').slice(5, 7));
  return latDeg < 0 ? month >= 10 : month >= 4 && month <= 7;
}

function freshItems(box: BoxWeek): number {
  return box.items.filter((item) => item.from === 'field').reduce((sum, item) => sum + item.boxesShare, 0);
}
