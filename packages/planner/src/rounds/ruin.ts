/** Takes strings of drops that lie near one another out of their rounds. */
import type { DraftRounds, SearchContext } from './draft-rounds.ts';
import { legKm } from './route.ts';

const meanRemoved = 10;
const longestString = 10;
const splitShare = 0.5;
const goOnShare = 0.5;

export function makeRuin({ problem, chance }: SearchContext): (draft: DraftRounds) => void {
  const near = neighbours(problem.drops.length, (from, to) => legKm(problem.legs, from, to));
  const whole = (low: number, high: number) => low + Math.floor(chance() * (high - low + 1));
  return (draft) => {
    const lengths = draft.rounds.flatMap((round) => (round.length > 0 ? [round.length] : []));
    if (lengths.length === 0) return;
    const meanLength = lengths.reduce((sum, one) => sum + one, 0) / lengths.length;
    const longest = Math.min(longestString, Math.max(1, meanLength));
    const stringCount = Math.floor(1 + chance() * ((4 * meanRemoved) / (1 + longest) - 1));
    const mayRepeat = lengths.length < 5;
    const touched = new Set<number>();
    const seatOf = seatsByPlace(draft, problem.drops.length);
    let taken = 0;
    for (const place of near[whole(1, problem.drops.length)] ?? []) {
      if (taken >= stringCount) break;
      const at = seatOf[place] ?? -1;
      const round = draft.rounds[at];
      if (round === undefined || (touched.has(at) && !mayRepeat)) continue;
      const length = whole(1, Math.floor(Math.min(round.length, longest)));
      const out = stringAround(round, { around: round.indexOf(place), length, chance });
      takeOut(draft, { at, out, seatOf });
      touched.add(at);
      taken += 1;
    }
  };
}

interface TakenOut {
  readonly at: number;
  readonly out: ReadonlySet<number>;
  readonly seatOf: Int16Array;
}

function takeOut(draft: DraftRounds, { at, out, seatOf }: TakenOut): void {
  const round = draft.rounds[at] ?? [];
  draft.rounds[at] = round.filter((_, index) => !out.has(index));
  for (const index of out) {
    const place = round[index] ?? 0;
    draft.left.push(place);
    seatOf[place] = -1;
  }
}

/** Indexes of a stretch that holds `around`; at times with some in its middle spared. */
function stringAround(
  round: readonly number[],
  { around, length, chance }: { readonly around: number; readonly length: number; readonly chance: () => number },
): ReadonlySet<number> {
  let spared = 0;
  if (length > 1 && length < round.length && chance() < splitShare) {
    spared = 1;
    while (length + spared < round.length && chance() < goOnShare) spared += 1;
  }
  const span = length + spared;
  const first = Math.max(0, around - span + 1);
  const last = Math.min(around, round.length - span);
  const from = first + Math.floor(chance() * (last - first + 1));
  const spareFrom = from + 1 + Math.floor(chance() * Math.max(1, span - spared - 1));
  const out = new Set<number>();
  for (let index = from; index < from + span; index++)
    if (spared === 0 || index < spareFrom || index >= spareFrom + spared) out.add(index);
  return out;
}

function neighbours(dropCount: number, kmOf: (from: number, to: number) => number): readonly (readonly number[])[] {
  const places = Array.from({ length: dropCount }, (_, before) => before + 1);
  return [
    [],
    ...places.map((place) => places.slice().sort((one, other) => kmOf(place, one) - kmOf(place, other) || one - other)),
  ].map((list, place) => (place === 0 ? list : [place, ...list.filter((one) => one !== place)]));
}

/** The seat each place is on; -1 for those left over. */
function seatsByPlace(draft: DraftRounds, dropCount: number): Int16Array {
  const seatOf = new Int16Array(dropCount + 1).fill(-1);
  draft.rounds.forEach((round, at) => {
    for (const place of round) seatOf[place] = at;
  });
  return seatOf;
}
