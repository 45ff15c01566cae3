/** A stand on its ground with its days as numbers: what the stages of ground, cover and rests work on. */

import type { Stand } from '@leywright/book';
import { dayNumber } from '@leywright/measures';
import { type Plant, plantOf } from '../crops/plant.ts';
import type { PlacedStand } from '../plan/ground.ts';
import type { CropBook } from '../plan/inputs.ts';

export interface GroundStand {
  readonly stand: Stand;
  readonly plant: Plant;
  readonly origin: PlacedStand['origin'];
  /** Days by which it stands later than planned; negative = earlier. */
  readonly driftDays: number;
  /** Half open, as day numbers. */
  readonly fromDay: number;
  readonly toDay: number;
}

export function groundStand(stand: Stand, origin: GroundStand['origin'], crops: CropBook): GroundStand {
  const fromDay = dayNumber(stand.from);
  const planned = stand.plannedFrom === undefined ? fromDay : dayNumber(stand.plannedFrom);
  return {
    stand,
    plant: plantOf(stand.what, crops),
    origin,
    driftDays: fromDay - planned,
    fromDay,
    toDay: dayNumber(stand.to),
  };
}

/** By first day, then by side, then by id, so that the order of files and edits changes nothing. */
export function inOrder(a: GroundStand, b: GroundStand): number {
  return (
    a.fromDay - b.fromDay ||
    a.stand.span.fromShare - b.stand.span.fromShare ||
    (a.stand.id < b.stand.id ? -1 : a.stand.id > b.stand.id ? 1 : 0)
  );
}
