/**
 * Mass balance of a crop over a period: what lay there, came in, went out and lies there now.
 *
 * Rule    opening + harvested + bought = boxes + sales + own use + gifts + seed + graded out + compost + loss + not packed + closing +
 *         not accounted for.
 *         Not accounted for is what counts found missing (positive: waste nobody wrote down), less what was taken though it was not there
 *         (negative: the alarm). Shrink is never used to hide a difference.
 */
import type { GoodsStatus } from '@leywright/book';
import type { Day } from '@leywright/measures';
import type { Flow, GoodsChain } from './chain.ts';

export interface BalanceAsk {
  readonly crop: string;
  /** First day of the period. */
  readonly from: Day;
  /** Last day of the period. */
  readonly to: Day;
  /** Only lots of this status; null = all. */
  readonly status?: GoodsStatus | null;
  /** How far it may be off before someone asks, as a share of all that came in; the farm's own. */
  readonly bandShare?: number;
}

/** Usual when all is weighed; a farm that counts crates sets 0.1. Common practice. */
export const usualBandShare = 0.03;

export const balanceTerms = [
  'harvested',
  'bought',
  'boxes',
  'sale',
  'own-use',
  'gift',
  'seed',
  'graded-out',
  'compost',
  'loss',
] as const;
export type BalanceTerm = (typeof balanceTerms)[number];

export interface Balance {
  readonly crop: string;
  readonly from: Day;
  readonly to: Day;
  readonly status: GoodsStatus | null;
  readonly openingKg: number;
  readonly closingKg: number;
  /** The closing stock was weighed within the period, not only reckoned. */
  readonly isClosingWeighed: boolean;
  readonly termsKg: Readonly<Record<BalanceTerm, number>>;
  /** Records behind each term. */
  readonly entries: Readonly<Record<BalanceTerm, readonly string[]>>;
  readonly notAccountedKg: number;
  readonly notAccountedShare: number | null;
  readonly bandShare: number;
  /** `alarm`: more went out than came in; `look`: outside the band; `fine`. */
  readonly judged: 'fine' | 'look' | 'alarm';
  /** Cut for the boxes of the period, with no packing that says where it went. */
  readonly notPackedKg: number;
  readonly estimatedKg: number;
}

const signs: Readonly<Record<BalanceTerm, 1 | -1>> = {
  harvested: 1,
  bought: 1,
  boxes: -1,
  sale: -1,
  'own-use': -1,
  gift: -1,
  seed: -1,
  'graded-out': -1,
  compost: -1,
  loss: -1,
};

export function balanceOf(chain: GoodsChain, ask: BalanceAsk): Balance {
  const { crop, from, to, status = null, bandShare = usualBandShare } = ask;
  const kgOf = (flow: Flow) => kiloOf(chain, flow, status);
  const flows = chain.flows.filter((flow) => flow.crop === crop && flow.on <= to);
  const within = flows.filter((flow) => flow.on >= from);
  const before = flows.filter((flow) => flow.on < from);
  const termsKg = byTerm((term) => sum(within.filter((flow) => flow.kind === term).map(kgOf)));
  const entries = byTerm((term) =>
    within.filter((flow) => flow.kind === term && kgOf(flow) !== 0).map((flow) => flow.entry),
  );
  const openKg = notPackedIn(chain, { crop, status, isWithin: (on) => on < from });
  const notPackedKg = notPackedIn(chain, { crop, status, isWithin: (on) => on >= from && on <= to });
  const openingKg = sum(before.map((flow) => moved(flow, kgOf(flow)))) - openKg;
  const changeKg = sum(within.map((flow) => moved(flow, kgOf(flow))));
  const notAccountedKg = sum(within.filter((flow) => flow.kind === 'counted-off').map(kgOf));
  const inKg = openingKg + termsKg.harvested + termsKg.bought;
  const notAccountedShare = inKg > 0 ? notAccountedKg / inKg : null;
  return {
    crop,
    from,
    to,
    status,
    openingKg,
    closingKg: openingKg + changeKg - notPackedKg,
    isClosingWeighed: within.some((flow) => flow.kind === 'counted-off'),
    termsKg,
    entries,
    notAccountedKg,
    notAccountedShare,
    bandShare,
    judged: judge(notAccountedKg, inKg, bandShare),
    notPackedKg,
    estimatedKg: sum(
      [...chain.lots.values()]
        .filter((lot) => lot.crop === crop && lot.isEstimated && lot.on >= from && lot.on <= to)
        .map((lot) => lot.grossKg ?? 0),
    ),
  };
}

function byTerm<T>(of: (term: BalanceTerm) => T): Readonly<Record<BalanceTerm, T>> {
  return Object.fromEntries(balanceTerms.map((term) => [term, of(term)])) as Record<BalanceTerm, T>;
}

function sum(values: readonly number[]): number {
  return values.reduce((total, value) => total + value, 0);
}

/** Kilos of a flow that are of the status asked for; kilos without a source count where no status, or the unknown one, is asked for. */
function kiloOf(chain: GoodsChain, flow: Flow, status: GoodsStatus | null): number {
  if (status === null) return flow.kg;
  return sum(
    flow.sources.map(({ lot, kg }) =>
      (lot === null ? 'unknown' : (chain.lots.get(lot)?.status ?? 'unknown')) === status ? kg : 0,
    ),
  );
}

function moved(flow: Flow, kg: number): number {
  return flow.kind === 'counted-off' ? -kg : signs[flow.kind] * kg;
}

function judge(notAccountedKg: number, inKg: number, bandShare: number): Balance['judged'] {
  const bandKg = bandShare * inKg;
  if (notAccountedKg < -bandKg - 1e-6) return 'alarm';
  return notAccountedKg > bandKg + 1e-6 ? 'look' : 'fine';
}

interface NotPackedAsk {
  readonly crop: string;
  readonly status: GoodsStatus | null;
  readonly isWithin: (on: Day) => boolean;
}

function notPackedIn(chain: GoodsChain, { crop, status, isWithin }: NotPackedAsk): number {
  const lots = [...chain.lots.values()].filter(
    (lot) => lot.isForBox && lot.crop === crop && isWithin(lot.on) && (status === null || lot.status === status),
  );
  return sum(lots.map((lot) => chain.leftKg.get(lot.id) ?? 0));
}

export interface YieldAsk {
  readonly crop: string;
  readonly from: Day;
  readonly to: Day;
  /** Ground of the crop's stands in the period. */
  readonly areaM2: number;
  readonly lowTHa: number | null;
  readonly highTHa: number | null;
}

/** Area times yield: whether the kilos lifted can have grown there. */
export interface YieldCheck {
  readonly liftedKg: number;
  readonly areaM2: number;
  readonly yieldTHa: number | null;
  readonly lowTHa: number | null;
  readonly highTHa: number | null;
  readonly judged: 'plausible' | 'low' | 'high' | 'unknown';
}

export function yieldCheck(chain: GoodsChain, { crop, from, to, areaM2, lowTHa, highTHa }: YieldAsk): YieldCheck {
  const lots = [...chain.lots.values()].filter(
    (lot) => lot.kind === 'harvest' && lot.crop === crop && lot.on >= from && lot.on <= to,
  );
  const liftedKg = sum(lots.map((lot) => (lot.grossKg ?? 0) - lot.gradedOutKg));
  const yieldTHa = areaM2 > 0 ? (liftedKg / areaM2) * 10 : null;
  const judged =
    yieldTHa === null || lowTHa === null || highTHa === null
      ? 'unknown'
      : yieldTHa > highTHa
        ? 'high'
        : yieldTHa < lowTHa
          ? 'low'
          : 'plausible';
  return { liftedKg, areaM2, yieldTHa, lowTHa, highTHa, judged };
}
