/** Chance from a seed: the same farm on every machine, every time. */
import { uniformInt } from 'pure-rand/distribution/uniformInt';
import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus';

export interface Chance {
  /** A whole number, both ends included. */
  readonly whole: (least: number, most: number) => number;
  /** One of the list, which must not be empty. */
  readonly oneOf: <T>(list: readonly T[]) => T;
  /** True in that share of asks. */
  readonly happens: (share: number) => boolean;
  /** Between two amounts, in steps of a thousandth of their distance. */
  readonly between: (least: number, most: number) => number;
}

export function chanceFrom(seed: number): Chance {
  const generator = xoroshiro128plus(seed);
  const whole = (least: number, most: number): number => uniformInt(generator, least, most);
  return {
    whole,
    oneOf: <T>(list: readonly T[]): T => {
      if (list.length === 0) throw new Error('There is nothing to choose from.');
      return list[whole(0, list.length - 1)] as T;
    },
    happens: (share) => whole(0, 999_999) < share * 1_000_000,
    between: (least, most) => least + ((most - least) * whole(0, 1000)) / 1000,
  };
}
