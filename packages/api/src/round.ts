/** Figures are kept in full inside and cut only here, where they leave as JSON. */

const DIGITS = 7;
const FROM_HERE_TWO_DECIMALS = 1e5;

/** A copy with every fraction cut to seven digits (two decimals from 100,000 on); whole numbers and texts stay as they are. */
export function roundForJson<T>(value: T): T {
  return roundAny(value) as T;
}

function roundAny(value: unknown): unknown {
  if (typeof value === 'number') return roundNumber(value);
  if (Array.isArray(value)) return value.map(roundAny);
  if (value === null || typeof value !== 'object') return value;
  return Object.fromEntries(Object.entries(value).map(([key, inner]) => [key, roundAny(inner)]));
}

function roundNumber(value: number): number {
  if (Number.isInteger(value)) return value;
  return Math.abs(value) >= FROM_HERE_TWO_DECIMALS ? Math.round(value * 100) / 100 : Number(value.toPrecision(DIGITS));
}
