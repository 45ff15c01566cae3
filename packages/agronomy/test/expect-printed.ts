import { expect } from 'vitest';

/** Holds a value against a printed figure, given as the text it was printed as: within half a unit of its last digit, and no more. */
export function expectPrinted(value: number, printed: string): void {
  const decimals = printed.split('.')[1]?.length ?? 0;
  const half = 0.5 * 10 ** -decimals;
  const off = Math.abs(value - Number(printed));
  expect(off, `${value} is printed as ${printed}`).toBeLessThanOrEqual(half * (1 + 1e-9));
}
