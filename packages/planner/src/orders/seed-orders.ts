/**
 * What to order: what the year needs of each plant and variety, less what is in hand, in packs, and by which right it may be used.
 *
 * Rule    Lots of the variety first, the oldest first, each used once. Then an offer of the variety: organic, else in conversion, else untreated, which asks for the
 *         local derogation, authorisation or documented search, granted before the first sowing. Other varieties that can be had organically are named beside it.
 * Checks  test/orders/seed-orders.test.ts (worked by hand; each need met, no lot used twice, whole packs)
 * Holds   used and bought together are at least the need; nothing is bought that lies there.
 */
import { reference } from '@leywright/agronomy';
import type { Farm, SeedAuthorisation, SeedOffer, SeedStatus } from '@leywright/book';
import { addDays, type Day } from '@leywright/measures';
import { cropBookOf } from '../crops/crop-book.ts';
import type { CropBook } from '../plan/inputs.ts';
import type { Plan } from '../plan/plan.ts';
import { type LotWorth, lotWorth } from './lots-in-hand.ts';
import { type SeedLine, seedLines } from './seed-need.ts';

export const seedRights = [
  'organic',
  'in-conversion',
  'granted',
  'ask',
  'refused',
  'not-known',
  'not-to-be-had',
  'nothing-to-buy',
] as const;
export type SeedRight = (typeof seedRights)[number];

export interface SeedOrder {
  readonly what: string;
  readonly name: string;
  readonly variety: string | null;
  readonly firstUseOn: Day;
  readonly needSeeds: number | null;
  readonly needKg: number | null;
  readonly inHand: readonly {
    readonly lot: string;
    readonly massKg: number | null;
    readonly seeds: number | null;
    readonly testAgain: boolean;
    readonly proof: string | null;
  }[];
  readonly buySeeds: number | null;
  readonly buyKg: number | null;
  readonly offer: SeedOffer | null;
  readonly packs: number | null;
  readonly right: SeedRight;
  /** Day before which it must be granted, and by when it should be asked for. */
  readonly grantedBefore: Day | null;
  readonly askBy: Day | null;
  readonly authorisation: SeedAuthorisation | null;
  /** Already sown without organic seed and without a grant that was there on the day. */
  readonly sownWithout: boolean;
  /** Offers of other varieties that can be had organically. */
  readonly instead: readonly SeedOffer[];
}

export interface SeedOrders {
  readonly year: number;
  /** The word of the law where the farm lies. */
  readonly term: 'derogation' | 'authorisation' | 'documented search';
  readonly lines: readonly SeedLine[];
  readonly orders: readonly SeedOrder[];
}

/** An answer takes about four weeks (common practice). */
const answerDays = 28;

export function seedOrders(farm: Farm, plan: Plan): SeedOrders {
  const lines = seedLines(farm, plan);
  const crops = cropBookOf(farm);
  const groups = grouped(lines);
  const spent = new Set<string>();
  const orders = [...groups.values()].map((group) => orderOf(group, { farm, crops, spent }));
  return { year: plan.year, term: termOf(farm.about.place.jurisdiction), lines, orders };
}

function termOf(jurisdiction: string): SeedOrders['term'] {
  if (jurisdiction === 'USA') return 'documented search';
  return ['England', 'Wales', 'Scotland/NI', 'UK'].includes(jurisdiction) ? 'authorisation' : 'derogation';
}

function grouped(lines: readonly SeedLine[]): ReadonlyMap<string, readonly SeedLine[]> {
  const groups = new Map<string, SeedLine[]>();
  for (const line of lines) {
    const key = `${line.what}|${line.variety ?? ''}`;
    const group = groups.get(key);
    if (group === undefined) groups.set(key, [line]);
    else group.push(line);
  }
  return groups;
}

interface Ordering {
  readonly farm: Farm;
  readonly crops: CropBook;
  /** Lots already used for an order. */
  readonly spent: Set<string>;
}

function orderOf(lines: readonly SeedLine[], ordering: Ordering): SeedOrder {
  const first = lines[0];
  if (first === undefined) throw new Error('An order has a line at least.');
  const needSeeds = total(lines.map((line) => line.seeds));
  const needKg = total(lines.map((line) => line.massKg));
  const used = useLots(first, { needSeeds, needKg }, ordering);
  const buySeeds = lessInHand(needSeeds, used.seeds);
  const buyKg = lessInHand(needKg, used.massKg);
  const bought = buyingOf(first, (buyKg ?? buySeeds ?? 0) > 1e-9, ordering.farm);
  const isAsked = bought.right === 'ask' || bought.right === 'refused';
  return {
    what: first.what,
    name: nameOf(first.what, ordering.crops),
    variety: first.variety,
    firstUseOn: first.useOn,
    needSeeds,
    needKg,
    inHand: used.lots,
    buySeeds,
    buyKg,
    packs: bought.offer === null ? null : packsOf(bought.offer, buySeeds, buyKg),
    sownWithout: isAsked && lines.some((line) => line.isRecorded),
    ...bought,
  };
}

function lessInHand(need: number | null, inHand: number): number | null {
  return need === null ? null : Math.max(0, need - inHand);
}

function nameOf(what: string, crops: CropBook): string {
  return crops.cropOf(what)?.name ?? reference.covers.get(what)?.name ?? what;
}

/** From whom, and by which right it may be sown. */
function buyingOf(
  line: SeedLine,
  buys: boolean,
  farm: Farm,
): Pick<SeedOrder, 'offer' | 'right' | 'grantedBefore' | 'askBy' | 'authorisation' | 'instead'> {
  const listed = farm.seedOffers.filter((one) => one.what === line.what);
  const ours = listed.filter((one) => sameVariety(one, line));
  const offer = buys ? bestOffer(ours.filter((one) => one.available)) : null;
  const authorisation = farm.seedAuthorisations.find((one) => one.what === line.what && sameVariety(one, line)) ?? null;
  const right = rightOf({ buys, offer, isListed: ours.length > 0, authorisation, firstUseOn: line.useOn });
  const mustBeGranted = right === 'ask' || right === 'granted' || right === 'refused';
  const others = listed.filter((one) => one.available && one.status === 'organic' && !sameVariety(one, line));
  return {
    offer,
    right,
    grantedBefore: mustBeGranted ? line.useOn : null,
    askBy: mustBeGranted ? addDays(line.useOn, -answerDays) : null,
    authorisation: mustBeGranted ? authorisation : null,
    instead: right === 'organic' || !buys ? [] : others,
  };
}

function total(values: readonly (number | null)[]): number | null {
  return values.every((value) => value === null) ? null : values.reduce<number>((sum, value) => sum + (value ?? 0), 0);
}

/** A variety that is not said fits any. */
function sameVariety(one: { readonly variety: string | null }, line: { readonly variety: string | null }): boolean {
  return one.variety === null || line.variety === null || one.variety.toLowerCase() === line.variety.toLowerCase();
}

const bestFirst: readonly SeedStatus[] = ['organic', 'own', 'in-conversion', 'untreated', 'unknown'];

function bestOffer(offers: readonly SeedOffer[]): SeedOffer | null {
  return offers.toSorted((a, b) => bestFirst.indexOf(a.status) - bestFirst.indexOf(b.status))[0] ?? null;
}

function packsOf(offer: SeedOffer, buySeeds: number | null, buyKg: number | null): number | null {
  if (offer.packSeeds !== null && buySeeds !== null) return Math.ceil(buySeeds / offer.packSeeds - 1e-9);
  if (offer.packKg !== null && buyKg !== null) return Math.ceil(buyKg / offer.packKg - 1e-9);
  return null;
}

interface RightAsked {
  readonly buys: boolean;
  readonly offer: SeedOffer | null;
  readonly isListed: boolean;
  readonly authorisation: SeedAuthorisation | null;
  readonly firstUseOn: Day;
}

function rightOf({ buys, offer, isListed, authorisation, firstUseOn }: RightAsked): SeedRight {
  if (!buys) return 'nothing-to-buy';
  if (offer === null) return isListed ? 'not-to-be-had' : 'not-known';
  if (offer.status === 'organic' || offer.status === 'own') return 'organic';
  if (offer.status === 'in-conversion') return 'in-conversion';
  if (offer.status === 'unknown') return 'not-known';
  const granted = authorisation?.grantedOn ?? null;
  if (granted === null) return 'ask';
  const until = authorisation?.until ?? null;
  return granted <= firstUseOn && (until === null || until >= firstUseOn) ? 'granted' : 'refused';
}

interface UsedLots {
  readonly lots: SeedOrder['inHand'];
  readonly seeds: number;
  readonly massKg: number;
}

/** Lots in hand, the oldest first, until the need is met; each is given to one order only. */
function useLots(
  line: SeedLine,
  need: { readonly needSeeds: number | null; readonly needKg: number | null },
  { farm, crops, spent }: Ordering,
): UsedLots {
  const crop = crops.cropOf(line.what);
  const plant = {
    germinationShare: crop?.germinationShare?.value ?? null,
    group: crop?.reference?.rotationGroup ?? null,
    isSetOrTuber: line.seeds === null && line.kind === 'crop',
  };
  const worths = farm.seedLots
    .filter((lot) => lot.what === line.what && sameVariety(lot, line) && !spent.has(lot.lot))
    .toSorted((a, b) => (a.harvestYear ?? 0) - (b.harvestYear ?? 0))
    .map((lot) => lotWorth(lot, line.useOn, plant));
  const lots: SeedOrder['inHand'][number][] = [];
  let seeds = 0;
  let massKg = 0;
  for (const worth of worths) {
    const isMet = need.needKg === null ? seeds >= (need.needSeeds ?? 0) : massKg >= need.needKg;
    if (isMet || worth.worthShare <= 0) continue;
    spent.add(worth.lot.lot);
    const worthy = amountsOf(worth, need);
    seeds += worthy.seeds;
    massKg += worthy.massKg;
    lots.push({
      lot: worth.lot.lot,
      massKg: worth.lot.massKg,
      seeds: worth.lot.seeds,
      testAgain: worth.testAgain,
      proof: worth.lot.proof,
    });
  }
  return { lots, seeds, massKg };
}

/** By weight and by count alike; where a lot is known by one only, the other follows from the need. */
function amountsOf(
  { lot, worthShare }: LotWorth,
  { needSeeds, needKg }: { readonly needSeeds: number | null; readonly needKg: number | null },
): { readonly seeds: number; readonly massKg: number } {
  const kgPerSeed = needSeeds === null || needKg === null || needSeeds <= 0 ? 0 : needKg / needSeeds;
  const massKg = lot.massKg ?? (lot.seeds ?? 0) * kgPerSeed;
  const seeds = lot.seeds ?? (kgPerSeed > 0 ? (lot.massKg ?? 0) / kgPerSeed : 0);
  return { seeds: seeds * worthShare, massKg: massKg * worthShare };
}
