/**
 * What is true of each kind of job wherever it is done: how long it may wait, what it waits for, what comes first, what it is done with.
 *
 * Source  common practice throughout; windows of hedges and margins are those of the habitat table, nets those of the pest table.
 * Holds   every kind has a row; nothing comes before itself.
 */
import type { JobKind, Skill } from '@leywright/book';
import type { Tool, Waiting } from '../plan/work.ts';

export interface Husbandry {
  /** Days before and after the day it is meant for. */
  readonly earlyDays: number;
  readonly lateDays: number;
  readonly waitsFor: readonly Waiting[];
  readonly tools: readonly Tool[];
  /** Needed whoever does it; work with a tractor asks for that as well. */
  readonly skill: Skill | null;
  /** Kinds of jobs of the same stand that come first. */
  readonly comesAfter: readonly JobKind[];
}

const raised: readonly JobKind[] = ['sow-modules', 'sow-seedbed', 'prick-out', 'tend-plants', 'harden-off', 'chit'];
const onTheGround: readonly JobKind[] = ['sow', 'plant'];

function kind(days: readonly [early: number, late: number], rest: Partial<Husbandry> = {}): Husbandry {
  const [earlyDays, lateDays] = days;
  return { earlyDays, lateDays, waitsFor: [], tools: [], skill: null, comesAfter: [], ...rest };
}

export const husbandry: Readonly<Record<JobKind, Husbandry>> = {
  'make-beds': kind([7, 6], { waitsFor: ['fit-soil'], tools: ['bed-former'] }),
  'false-seedbed': kind([3, 3], { waitsFor: ['fit-soil', 'dry-day'], tools: ['harrow'], comesAfter: ['make-beds'] }),
  sow: kind([3, 10], {
    waitsFor: ['fit-soil'],
    tools: ['drill'],
    comesAfter: ['make-beds', 'false-seedbed', 'lay-mulch'],
  }),
  'sow-modules': kind([4, 4], { tools: ['trays', 'mix'] }),
  'sow-seedbed': kind([4, 7], { waitsFor: ['fit-soil'], tools: ['drill'] }),
  'prick-out': kind([2, 5], { tools: ['trays', 'mix'], comesAfter: ['sow-modules'] }),
  'tend-plants': kind([0, 6], { comesAfter: ['sow-modules'] }),
  'harden-off': kind([2, 6], { comesAfter: ['sow-modules', 'prick-out'] }),
  chit: kind([14, 7], { tools: ['trays'] }),
  'lay-mulch': kind([3, 3], { waitsFor: ['fit-soil'], tools: ['mulch'], comesAfter: ['make-beds'] }),
  plant: kind([3, 10], {
    waitsFor: ['plants-ready', 'fit-soil'],
    tools: ['planter'],
    comesAfter: ['make-beds', 'false-seedbed', 'lay-mulch', ...raised],
  }),
  flame: kind([1, 1], { waitsFor: ['dry-day'], tools: ['flame'], skill: 'flame', comesAfter: ['sow'] }),
  net: kind([0, 3], { waitsFor: ['pest-dates'], tools: ['nets'], comesAfter: onTheGround }),
  unnet: kind([0, 10], { tools: ['nets'], comesAfter: ['net'] }),
  hoe: kind([4, 4], {
    waitsFor: ['dry-day', 'fit-soil'],
    tools: ['hoe'],
    comesAfter: [...onTheGround, 'flame', 'hoe'],
  }),
  brush: kind([4, 4], { waitsFor: ['fit-soil'], tools: ['brush'], comesAfter: [...onTheGround, 'brush'] }),
  ridge: kind([7, 7], { waitsFor: ['fit-soil'], tools: ['ridger'], comesAfter: [...onTheGround, 'ridge'] }),
  'hand-weed': kind([7, 7], { tools: ['hand-hoe'], comesAfter: [...onTheGround, 'hand-weed'] }),
  undersow: kind([7, 7], { waitsFor: ['crop-stage', 'rain-to-come'], tools: ['seeder'] }),
  irrigate: kind([2, 2], { waitsFor: ['water-need'], tools: ['sprinklers'], comesAfter: onTheGround }),
  stake: kind([3, 7], { tools: ['stakes'], comesAfter: onTheGround }),
  train: kind([0, 6], { tools: ['strings'], comesAfter: ['plant', 'stake'] }),
  top: kind([7, 10], { tools: ['hand'], comesAfter: ['plant'] }),
  'haulm-off': kind([4, 7], { waitsFor: ['dry-day'], tools: ['flail'], comesAfter: ['plant'] }),
  lift: kind([0, 6], {
    waitsFor: ['fit-soil', 'dry-day'],
    tools: ['lifter'],
    comesAfter: [...onTheGround, 'haulm-off'],
  }),
  cut: kind([0, 6], { tools: ['knife', 'crates'], comesAfter: onTheGround }),
  'into-store': kind([0, 6], { tools: ['trailer'], comesAfter: ['lift', 'cut'] }),
  grade: kind([3, 3], { tools: ['grader'] }),
  mow: kind([7, 10], { waitsFor: ['dry-day'], tools: ['flail'], comesAfter: ['undersow', 'sow-cover', 'mow'] }),
  'turn-in': kind([10, 0], { waitsFor: ['fit-soil'], tools: ['plough'], comesAfter: ['sow-cover', 'undersow', 'mow'] }),
  'sow-cover': kind([3, 10], { waitsFor: ['fit-soil'], tools: ['seeder'] }),
  pack: kind([0, 0], { tools: ['boxes'] }),
  deliver: kind([0, 0], { tools: ['van'], skill: 'driving' }),
  'cut-hedge': kind([0, 0], { waitsFor: ['lawful-window', 'nest-check'], tools: ['flail'] }),
  'mow-margin': kind([0, 0], { waitsFor: ['lawful-window', 'nest-check'], tools: ['flail'] }),
  'whole-course': kind([0, 6]),
};
