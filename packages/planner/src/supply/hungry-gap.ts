/**
 * The hungry gap: the weeks in the year's first half when the ground gives least, between the end of the winter crops and the first new ones.
 *
 * Rule    Count the field-fresh things in an average box of each box week (nothing from store or tunnel). The gap lies about the week with the fewest
 *         between 1 February and 31 July (half a year later south of the equator) and reaches both ways as long as a week has at most half of what the
 *         fullest week of the year has. It is a gap only if its lowest week has so little.
 * Source  the trade's own word for April to early June (common practice); the rule is ours, and every page uses this one.
 */
import type { BoxWeek, Supply } from '../plan/supply.ts';

export function hungryGap(boxes: readonly BoxWeek[], latDeg: number): Supply['hungryGap'] {
  const open = boxes.filter((box) => box.closed === null && box.promised > 0);
  const spring = open.filter((box) => isSpring(box, latDeg));
  if (spring.length === 0) return null;
  const fresh = new Map(open.map((box) => [box.week, freshItems(box)]));
  const of = (box: BoxWeek) => fresh.get(box.week) ?? 0;
  const lowest = spring.reduce((least, box) => (of(box) < of(least) ? box : least));
  const limit = Math.max(...open.map(of)) / 2;
  if (of(lowest) > limit) return null;
  let from = spring.indexOf(lowest);
  let to = from;
  while (from > 0 && of(spring[from - 1] ?? lowest) <= limit) from -= 1;
  while (to < spring.length - 1 && of(spring[to + 1] ?? lowest) <= limit) to += 1;
  return { from: (spring[from] ?? lowest).week, to: (spring[to] ?? lowest).week };
}

function isSpring(box: BoxWeek, latDeg: number): boolean {
  const month = Number((box.packOn ?? '').slice(5, 7));
  return latDeg < 0 ? month >= 8 : month >= 2 && month <= 7;
}

function freshItems(box: BoxWeek): number {
  return box.items.filter((item) => item.from === 'field').reduce((sum, item) => sum + item.boxesShare, 0);
}
