/**
 * Holds a plan of rounds against what was asked, sharing no code with what made it: every drop once or named as left over, no van too
 * full, only on days when van and drop can, and the minutes by which each window is missed.
 */
import type { PlaceIndex, RoundsPlan, RoundsProblem } from './problem.ts';

export const roundFaultKinds = [
  'twice',
  'missing',
  'unknown-place',
  'too-many-boxes',
  'too-heavy',
  'wrong-day',
  'van-twice',
] as const;
export type RoundFaultKind = (typeof roundFaultKinds)[number];

export interface RoundFault {
  readonly kind: RoundFaultKind;
  readonly tripIndex: number | null;
  readonly place: PlaceIndex | null;
}

export interface RoundsCheck {
  readonly faults: readonly RoundFault[];
  /** Drops reached after they close, and trips back after the yard closes (place 0). */
  readonly late: readonly { readonly tripIndex: number; readonly place: PlaceIndex; readonly lateMin: number }[];
  readonly totalKm: number;
}

export function checkRounds(problem: RoundsProblem, plan: RoundsPlan): RoundsCheck {
  const faults: RoundFault[] = [...onceEach(problem, plan)];
  const late: RoundsCheck['late'][number][] = [];
  let totalKm = 0;
  const sent = new Set<string>();
  plan.trips.forEach((trip, tripIndex) => {
    if (trip.places.length === 0) return;
    const key = `${trip.vanIndex}/${trip.dayIndex}`;
    if (sent.has(key)) faults.push({ kind: 'van-twice', tripIndex, place: null });
    sent.add(key);
    faults.push(...loadFaults(problem, plan, tripIndex));
    const driven = drive(problem, trip.places);
    totalKm += driven.totalKm;
    late.push(...driven.late.map((one) => ({ ...one, tripIndex })));
  });
  return { faults, late, totalKm };
}

/** The trip driven on the clock, from the yard and back. */
function drive(problem: RoundsProblem, places: readonly number[]) {
  const size = problem.legs.placeCount;
  const late: { readonly place: PlaceIndex; readonly lateMin: number }[] = [];
  let clockMin = problem.yardOpensMin;
  let totalKm = 0;
  let from = 0;
  for (const to of [...places, 0]) {
    totalKm += problem.legs.km[from * size + to] ?? 0;
    clockMin += problem.legs.min[from * size + to] ?? 0;
    const drop = to === 0 ? undefined : problem.drops[to - 1];
    if (drop !== undefined && clockMin < drop.opensMin) clockMin = drop.opensMin;
    const lateMin = clockMin - (drop?.closesMin ?? problem.yardClosesMin);
    if (lateMin > 1e-6) late.push({ place: to, lateMin });
    clockMin += drop?.serviceMin ?? 0;
    from = to;
  }
  return { totalKm, late };
}

function onceEach(problem: RoundsProblem, plan: RoundsPlan): readonly RoundFault[] {
  const faults: RoundFault[] = [];
  const times = new Array<number>(problem.drops.length + 1).fill(0);
  const count = (place: number, tripIndex: number | null) => {
    const before = place === 0 ? undefined : times[place];
    if (before === undefined) faults.push({ kind: 'unknown-place', tripIndex, place });
    else times[place] = before + 1;
    if (before === 1) faults.push({ kind: 'twice', tripIndex, place });
  };
  plan.trips.forEach((trip, tripIndex) => {
    for (const place of trip.places) count(place, tripIndex);
  });
  for (const place of plan.unserved) count(place, null);
  for (let place = 1; place < times.length; place++)
    if (times[place] === 0) faults.push({ kind: 'missing', tripIndex: null, place });
  return faults;
}

function loadFaults(problem: RoundsProblem, plan: RoundsPlan, tripIndex: number): readonly RoundFault[] {
  const trip = plan.trips[tripIndex];
  const van = trip === undefined ? undefined : problem.vans[trip.vanIndex];
  if (trip === undefined || van === undefined) return [];
  const faults: RoundFault[] = [];
  let boxes = 0;
  let loadKg = 0;
  for (const place of trip.places) {
    const drop = problem.drops[place - 1];
    boxes += drop?.boxes ?? 0;
    loadKg += drop?.kg ?? 0;
    if (drop !== undefined && !drop.dayIndexes.includes(trip.dayIndex))
      faults.push({ kind: 'wrong-day', tripIndex, place });
  }
  if (!van.dayIndexes.includes(trip.dayIndex)) faults.push({ kind: 'wrong-day', tripIndex, place: null });
  if (boxes > van.mostBoxes + 1e-9) faults.push({ kind: 'too-many-boxes', tripIndex, place: null });
  if (van.mostKg !== null && loadKg > van.mostKg + 1e-9) faults.push({ kind: 'too-heavy', tripIndex, place: null });
  return faults;
}
