/** Puts drops back where they cost least, now and then overlooking a place; what fits nowhere stays left over. */
import type { DraftRounds, RoundLoad, SearchContext } from './draft-rounds.ts';
import { legKm } from './route.ts';

const overlookShare = 0.01;

export function makeRecreate(context: SearchContext): (draft: DraftRounds) => void {
  return (draft) => {
    const waiting = inSomeOrder(context, draft.left);
    draft.left = [];
    for (const place of waiting) {
      const found = bestSpot(context, draft, place);
      if (found === null) {
        draft.left.push(place);
        continue;
      }
      const round = (draft.rounds[found.seatIndex] ?? []).slice();
      round.splice(found.index, 0, place);
      draft.rounds[found.seatIndex] = round;
    }
  };
}

interface Spot {
  readonly seatIndex: number;
  readonly index: number;
}

function bestSpot(context: SearchContext, draft: DraftRounds, place: number): Spot | null {
  let best: Spot | null = null;
  let bestKm = context.leftOverKm;
  let emptyTried = '';
  for (let seatIndex = 0; seatIndex < context.seats.length; seatIndex++) {
    const round = draft.rounds[seatIndex];
    if (round === undefined || !hasRoom(context, { seatIndex, place, load: context.loadOf(round) })) continue;
    if (round.length === 0) {
      // Empty vans that are alike are tried once.
      const seat = context.seats[seatIndex];
      const alike = `${seat?.dayIndex}/${seat?.mostBoxes}/${seat?.mostKg}`;
      if (emptyTried === alike) continue;
      emptyTried = alike;
    }
    const spot = cheapestIn(context, { round, place, underKm: bestKm });
    if (spot === null) continue;
    bestKm = spot.moreKm;
    best = { seatIndex, index: spot.index };
  }
  return best;
}

interface Looking {
  readonly seatIndex: number;
  readonly place: number;
  readonly load: RoundLoad;
}

function hasRoom({ seats, problem }: SearchContext, { seatIndex, place, load }: Looking): boolean {
  const [seat, drop] = [seats[seatIndex], problem.drops[place - 1]];
  if (seat === undefined || drop === undefined) return false;
  if (load.boxes + drop.boxes > seat.mostBoxes + 1e-9 || load.weightKg + (drop.kg ?? 0) > seat.mostKg + 1e-9)
    return false;
  return drop.dayIndexes.includes(seat.dayIndex);
}

interface Insertion {
  readonly round: readonly number[];
  readonly place: number;
  readonly underKm: number;
}

function cheapestIn(context: SearchContext, { round, place, underKm }: Insertion) {
  const { problem, chance, hasHours } = context;
  const { km, placeCount } = problem.legs;
  let bestIndex = -1;
  let bestKm = underKm;
  let before = 0;
  for (let index = 0; index <= round.length; index++) {
    const after = round[index] ?? 0;
    const gap = km[before * placeCount + after] ?? 0;
    let moreKm = (km[before * placeCount + place] ?? 0) + (km[place * placeCount + after] ?? 0) - gap;
    before = after;
    if (moreKm >= bestKm || chance() < overlookShare) continue;
    if (hasHours) moreKm += moreLateMin(context, { round, index, place }) * problem.lateKmPerMin;
    if (moreKm >= bestKm) continue;
    bestKm = moreKm;
    bestIndex = index;
  }
  return bestIndex < 0 ? null : { index: bestIndex, moreKm: bestKm };
}

interface Delay {
  readonly round: readonly number[];
  readonly index: number;
  readonly place: number;
}

/** Minutes of lateness more, when the place is called at before `index`: followed until the delay is lost in a wait. */
function moreLateMin(context: SearchContext, { round, index, place }: Delay): number {
  const { opensMin, closesMin, serviceMin, problem } = context;
  const { min, placeCount } = problem.legs;
  const { leaveMin, lateMin } = context.loadOf(round);
  let at = round[index - 1] ?? 0;
  let nowMin = leaveMin[index - 1] ?? problem.yardOpensMin;
  const callLateMin = (next: number): number => {
    const startMin = Math.max(nowMin + (min[at * placeCount + next] ?? 0), opensMin[next] ?? 0);
    nowMin = startMin + (serviceMin[next] ?? 0);
    at = next;
    return Math.max(0, startMin - (closesMin[next] ?? 0));
  };
  let more = callLateMin(place);
  for (let later = index; later <= round.length; later++) {
    more += callLateMin(round[later] ?? 0) - (lateMin[later] ?? 0);
    // Back on the old times: nothing changes from here on.
    if (nowMin <= (leaveMin[later] ?? -1) + 1e-9) break;
  }
  return more;
}

/** The drops in one of several orders by chance: any, most boxes first, farthest first, nearest first, closing soonest first. */
function inSomeOrder({ problem, chance, hasHours, closesMin }: SearchContext, left: readonly number[]): number[] {
  const list = left.slice();
  for (let at = list.length - 1; at > 0; at--) {
    const other = Math.floor(chance() * (at + 1));
    const [one, two] = [list[at] ?? 0, list[other] ?? 0];
    list[at] = two;
    list[other] = one;
  }
  const pick = chance() * (hasHours ? 14 : 11);
  if (pick < 4) return list;
  const rank = (place: number): number => {
    if (pick < 8) return -(problem.drops[place - 1]?.boxes ?? 0);
    if (pick < 10) return -legKm(problem.legs, 0, place);
    return pick < 11 ? legKm(problem.legs, 0, place) : (closesMin[place] ?? 0);
  };
  return list.sort((one, other) => rank(one) - rank(other));
}
