/**
 * What follows a record that ran late or early, moved inside its season.
 *
 * Rule    A recorded stand that keeps its ground past the day planned pushes the planned stands that were to follow on the same ground by the days
 *         they overlap, as far as their sowing season allows; one that leaves early lets the cover after it be sown as much earlier.
 *         What does not fit in its season stays where it was planned and is an overlap. Records never move, and ends of stands stay:
 *         a later start makes a shorter stand, not a later one.
 */

import type { Place, Stand } from '@leywright/book';
import { addDays, type Day, dayNumber } from '@leywright/measures';
import { windowOfStand } from '../crops/season.ts';
import { type GroundStand, inOrder } from '../ground/ground-stand.ts';
import { leastShare, overlapShare } from '../ground/history.ts';

/** Days after a stand's planned end within which a sowing counts as the one that follows it. */
const followsWithinDays = 14;
const leastLengthDays = 14;

/** The stands of one plot with what was planned after late or early records moved. */
export function withDrift(stands: readonly GroundStand[], today: Day, place: Place): readonly GroundStand[] {
  const movers = stands.filter(
    (one) =>
      one.stand.state === 'recorded' && one.stand.plannedTo !== undefined && one.stand.plannedTo !== one.stand.to,
  );
  if (movers.length === 0) return stands;
  const moved = stands.map((one) => {
    if (one.stand.state === 'recorded' || one.stand.from < today) return one;
    const shiftDays = shiftAfter(one, movers, dayNumber(today));
    return shiftDays === 0 ? one : (shifted(one, shiftDays, place) ?? one);
  });
  return moved.sort(inOrder);
}

function shiftAfter(one: GroundStand, movers: readonly GroundStand[], todayDay: number): number {
  let late = 0;
  let early = Number.POSITIVE_INFINITY;
  for (const before of movers) {
    const plannedTo = before.stand.plannedTo;
    if (
      plannedTo === undefined ||
      before.stand.id === one.stand.undersownIn ||
      overlapShare(one.stand.span, before.stand.span) <= leastShare
    )
      continue;
    const waitDays = one.fromDay - dayNumber(plannedTo);
    if (waitDays < 0) continue;
    if (before.toDay > one.fromDay) late = Math.max(late, before.toDay - one.fromDay);
    else if (waitDays <= followsWithinDays && before.toDay < dayNumber(plannedTo))
      early = Math.min(early, dayNumber(plannedTo) - before.toDay);
  }
  if (late > 0) return late;
  const canComeEarlier = one.stand.kind === 'cover' && Number.isFinite(early);
  return canComeEarlier ? -Math.max(0, Math.min(early, one.fromDay - todayDay)) : 0;
}

/** The stand by so many days later or earlier; null when that is out of its season or leaves no stand. */
function shifted(one: GroundStand, shiftDays: number, place: Place): GroundStand | null {
  const { stand } = one;
  const move = (day: Day | null) => (day === null ? null : addDays(day, shiftDays));
  const later: Stand = {
    ...stand,
    from: addDays(stand.from, shiftDays),
    plantedOn: move(stand.plantedOn),
    // Trays were sown when they were sown; what is drilled in place moves with its ground.
    sownOn: stand.plantedOn === null ? move(stand.sownOn) : stand.sownOn,
  };
  const fromDay = one.fromDay + shiftDays;
  if (one.toDay - fromDay < leastLengthDays) return null;
  const window = windowOfStand(one.plant, later, place);
  if (window !== null && shiftDays > 0 && fromDay > window.toDay) return null;
  if (window !== null && shiftDays < 0 && fromDay < window.fromDay) return null;
  return { ...one, stand: later, driftDays: one.driftDays + shiftDays, fromDay };
}
