import { type DecimalSign, readNumber } from './quantity.ts';

/** A sum of money in whole pence, cents or other least coin, so that sums never drift. */
export interface Money {
  readonly minor: number;
  /** Three letters of ISO 4217, as EUR. */
  readonly currency: string;
}

/** Throws when the sum is not whole: a share of a penny must be rounded where it is known how. */
export function money(minor: number, currency: string): Money {
  if (!Number.isSafeInteger(minor)) throw new Error(`Money is kept in whole coins, not ${minor} ${currency}.`);
  if (!/^[A-Z]{3}$/.test(currency)) throw new Error(`"${currency}" is not a currency of three letters.`);
  return { minor, currency };
}

/** Reads a sum as people write it (12.50, 12,50). Null when it is none, could be two sums, or has more decimals than the currency. */
export function readMoney(text: string, currency: string, decimals: DecimalSign | null = null): Money | null {
  const number = readNumber(text, decimals);
  if (number.kind !== 'number') return null;
  const minor = number.value * 10 ** minorDigits(currency);
  const whole = Math.round(minor);
  return Math.abs(minor - whole) < 1e-6 && Number.isSafeInteger(whole) ? money(whole, currency) : null;
}

/** Throws on two currencies: there is no rate of exchange in the book. */
export function addMoney(a: Money, b: Money): Money {
  if (a.currency !== b.currency) throw new Error(`${a.currency} and ${b.currency} cannot be added.`);
  return money(a.minor + b.minor, a.currency);
}

/** Times a number, to the nearest coin, halves away from nought. */
export function scaleMoney(sum: Money, factor: number): Money {
  const exact = sum.minor * factor;
  return money(Math.sign(exact) * Math.round(Math.abs(exact)) + 0, sum.currency);
}

/** Shares out by weight without losing a coin: the odd coins go to the largest remainders, the earlier first. Weights not all nought. */
export function shareMoney(sum: Money, weights: readonly number[]): readonly Money[] {
  const total = weights.reduce((a, b) => a + b, 0);
  if (!(total > 0)) throw new Error('Money is shared by weights of which at least one is above nought.');
  const exact = weights.map((weight) => (Math.abs(sum.minor) * weight) / total);
  const coins = exact.map(Math.floor);
  const left = Math.abs(sum.minor) - coins.reduce((a, b) => a + b, 0);
  const byRemainder = exact
    .map((share, at) => ({ at, over: share - Math.floor(share) }))
    .sort((a, b) => b.over - a.over || a.at - b.at);
  for (const { at } of byRemainder.slice(0, left)) coins[at] = (coins[at] ?? 0) + 1;
  return coins.map((minor) => money(Math.sign(sum.minor) * minor + 0, sum.currency));
}

/** For screens and papers only, in the reader's own way of writing. */
export function formatMoney(sum: Money, locale: string): string {
  return new Intl.NumberFormat(locale, { style: 'currency', currency: sum.currency }).format(
    sum.minor / 10 ** minorDigits(sum.currency),
  );
}

function minorDigits(currency: string): number {
  return new Intl.NumberFormat('en', { style: 'currency', currency }).resolvedOptions().maximumFractionDigits ?? 2;
}
