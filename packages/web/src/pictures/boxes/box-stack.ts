import type { BoxItem, BoxWeek } from '@leywright/planner';
import { boxOrder, type Family } from '../../look/marks/families.ts';

/** One brick of a week's box: crops of one family from one kind of place, as high as the items they make up. */
export interface Brick {
  readonly id: string;
  readonly look: Family;
  readonly isStore: boolean;
  /** Items it counts for; under 1 when not every box carries it. */
  readonly items: number;
  readonly crops: readonly string[];
  /** Items below it. */
  readonly below: number;
}

/**
 * The bricks of a week from the foot up, always in the same order of families. Crops of one family and one kind of place share a brick that
 * says how many they are, so that alike bricks never stand for unlike crops.
 */
export function stackOf(week: BoxWeek): readonly Brick[] {
  const bricks: Brick[] = [];
  let below = 0;
  for (const look of boxOrder) {
    for (const isStore of [true, false]) {
      const items = week.items.filter((item) => item.look === look && (item.from === 'store') === isStore);
      if (items.length === 0) continue;
      const count = items.reduce((sum, { boxesShare }) => sum + boxesShare, 0);
      bricks.push({ id: `${look}-${isStore}`, look, isStore, items: count, crops: namesOf(items), below });
      below += count;
    }
  }
  return bricks;
}

/** The crops of a week by name, each once. */
export function namesOf(items: readonly BoxItem[]): readonly string[] {
  return [...new Set(items.map(({ name }) => name))];
}

/** All of a week's crops in the order of the box, those from store saying so. */
export function spokenBox(week: BoxWeek): string {
  return stackOf(week)
    .flatMap(({ crops, isStore }) => crops.map((crop) => (isStore ? `${crop} from store` : crop)))
    .join(', ');
}
