import type { Look } from '@leywright/planner';

/**
 * What stands on the ground, as the eye tells it apart: the pattern is the main code, the hue the second. In the order of the line of
 * patterns above a picture.
 */
export const families = [
  'ley',
  'cover',
  'undersown',
  'brassica',
  'potato',
  'allium',
  'root',
  'squash',
  'beet',
  'salad',
  'pulse',
] as const satisfies readonly Look[];
export type Family = Look;

/** Fixed order from the foot of a box upward, so that the same crop stands at the same height week after week. */
export const boxOrder: readonly Family[] = [
  'potato',
  'root',
  'beet',
  'allium',
  'brassica',
  'pulse',
  'salad',
  'squash',
  'ley',
  'cover',
  'undersown',
];
