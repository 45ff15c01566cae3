/** Chance from a seed, the same on every machine: numbers from 0 up to 1. */
export type Chance = () => number;

/** Multiplies and adds modulo 2^32 (Numerical Recipes' constants); good enough to pick plots by. */
export function chanceFrom(seed: number): Chance {
  let state = seed >>> 0;
  return () => {
    state = (Math.imul(state, 1_664_525) + 1_013_904_223) >>> 0;
    return state / 2 ** 32;
  };
}
