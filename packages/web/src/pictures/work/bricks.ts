/** The year's hours as bricks, one a person's day: which job each stands for, and which have nobody to do them. */
import type { IsoWeek } from '@leywright/measures';
import type { JobKind, WorkWeek } from '@leywright/planner';

export const dayH = 8;

/** From the foot up: packing cannot wait, upkeep can. */
export const brickGroups = ['pack', 'pick', 'sow', 'weed', 'upkeep'] as const;
export type BrickGroup = (typeof brickGroups)[number];

const groupOf: Partial<Readonly<Record<JobKind, BrickGroup>>> = {
  pack: 'pack',
  deliver: 'pack',
  grade: 'pack',
  'into-store': 'pack',
  lift: 'pick',
  cut: 'pick',
  'haulm-off': 'pick',
  sow: 'sow',
  'sow-modules': 'sow',
  'sow-seedbed': 'sow',
  'prick-out': 'sow',
  'tend-plants': 'sow',
  'harden-off': 'sow',
  chit: 'sow',
  plant: 'sow',
  'make-beds': 'sow',
  'lay-mulch': 'sow',
  hoe: 'weed',
  'hand-weed': 'weed',
  flame: 'weed',
  brush: 'weed',
  ridge: 'weed',
  'false-seedbed': 'weed',
};

export interface BrickWeek {
  readonly week: IsoWeek;
  /** Group of each brick, from the foot up. */
  readonly bricks: readonly BrickGroup[];
  /** Bricks from the foot up that there are hands for; all where nobody's hours are known. */
  readonly there: number;
  readonly roof: number | null;
}

/** Bricks of a week: as many as its hours make in whole days, shared by the running sum so that none is lost by rounding. */
export function brickWeek({ week, byKind, hours, handsH }: WorkWeek): BrickWeek {
  const sums = new Map<BrickGroup, number>();
  for (const [kind, hoursH] of Object.entries(byKind)) {
    const group = groupOf[kind as JobKind] ?? 'upkeep';
    sums.set(group, (sums.get(group) ?? 0) + hoursH);
  }
  const bricks: BrickGroup[] = [];
  let runningH = 0;
  for (const group of brickGroups) {
    runningH += sums.get(group) ?? 0;
    while (bricks.length < Math.round(runningH / dayH)) bricks.push(group);
  }
  const roof = handsH === null ? null : handsH / dayH;
  const overH = handsH === null ? 0 : hours.typ - handsH;
  // A week that is over by less than half a day still lacks somebody.
  const missing = overH <= 0 ? 0 : Math.max(1, Math.round(overH / dayH));
  return { week, bricks, roof, there: Math.max(0, bricks.length - missing) };
}
