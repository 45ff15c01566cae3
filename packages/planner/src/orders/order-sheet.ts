/** The orders as a sheet: one row an order, plain cells that a spreadsheet can hold; and seed added up by one thing. */
import type { HandsLine } from '../hands/assign.ts';
import type { Work } from '../plan/work.ts';
import type { SeedLine } from './seed-need.ts';
import type { SeedOrders } from './seed-orders.ts';

export const orderColumns = [
  'supplier',
  'what',
  'name',
  'variety',
  'first_use',
  'need_seeds',
  'need_kg',
  'buy_seeds',
  'buy_kg',
  'packs',
  'pack_seeds',
  'pack_kg',
  'status',
  'right',
  'granted_before',
  'lots_in_hand',
  'proof',
] as const;
export type OrderCell = string | number | null;
export type OrderRow = Readonly<Record<(typeof orderColumns)[number], OrderCell>>;

/** Rows by supplier, then plant; those without a supplier last. */
export function orderSheet({ orders }: SeedOrders): readonly OrderRow[] {
  const rows = orders.map(
    (order): OrderRow => ({
      supplier: order.offer?.supplier ?? null,
      what: order.what,
      name: order.name,
      variety: order.variety,
      first_use: order.firstUseOn,
      need_seeds: whole(order.needSeeds),
      need_kg: grams(order.needKg),
      buy_seeds: whole(order.buySeeds),
      buy_kg: grams(order.buyKg),
      packs: order.packs,
      pack_seeds: order.offer?.packSeeds ?? null,
      pack_kg: order.offer?.packKg ?? null,
      status: order.offer?.status ?? null,
      right: order.right,
      granted_before: order.grantedBefore,
      lots_in_hand: order.inHand.map((one) => one.lot).join(';') || null,
      proof: order.authorisation?.proof ?? (order.inHand.flatMap((one) => one.proof ?? []).join(';') || null),
    }),
  );
  const key = (row: OrderRow) => `${row.supplier ?? '\uffff'} ${row.what} ${row.variety ?? ''}`;
  return rows.toSorted((a, b) => (key(a) < key(b) ? -1 : 1));
}

/** Up, never down: seeds whole, mass to the gram. */
function whole(seeds: number | null): number | null {
  return seeds === null ? null : Math.ceil(seeds - 1e-9);
}

function grams(massKg: number | null): number | null {
  return massKg === null ? null : Math.ceil(massKg * 1000 - 1e-9) / 1000;
}

export const seedBy = ['crop', 'week', 'person', 'course'] as const;
export type SeedBy = (typeof seedBy)[number];

const sowing: readonly string[] = ['sow', 'sow-modules', 'sow-seedbed', 'plant', 'sow-cover', 'undersow'];

interface Sowers {
  readonly work: Work;
  readonly hands: readonly HandsLine[];
}

/** Mass of the year's seed added up by one thing; '' stands for what has none. By person: who sows or plants it, shared as their hours are. */
export function seedAddedUpKg(lines: readonly SeedLine[], by: SeedBy, at: Sowers): ReadonlyMap<string, number> {
  const sums = new Map<string, number>();
  for (const line of lines)
    for (const [key, share] of keysOf(line, by, at)) sums.set(key, (sums.get(key) ?? 0) + (line.massKg ?? 0) * share);
  return sums;
}

function keysOf(line: SeedLine, by: SeedBy, at: Sowers): Iterable<readonly [key: string, share: number]> {
  if (by === 'person') return sowers(line, at);
  if (by === 'crop') return [[line.what, 1]];
  return [[by === 'week' ? line.week : (line.course ?? ''), 1]];
}

function sowers(line: SeedLine, { work, hands }: Sowers): ReadonlyMap<string, number> {
  const job = work.jobs.find((one) => one.stand === line.stand && sowing.includes(one.kind));
  const ours = job === undefined ? [] : hands.filter((one) => one.job === job.id);
  const allH = ours.reduce((sum, one) => sum + one.hoursH, 0);
  if (allH <= 0) return new Map([['', 1]]);
  return new Map(ours.map((one) => [one.person ?? '', one.hoursH / allH]));
}
