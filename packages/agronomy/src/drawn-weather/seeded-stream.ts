/**
 * Numbers by chance that are the same for ever: asked for by place, not drawn in turn, so that a day's weather does not hang on what was asked before.
 *
 * Source  Salmon, Moraes, Dror & Shaw 2011, Parallel random numbers: as easy as 1, 2, 3 (Philox 4×32, ten rounds); normal pairs: Box & Muller 1958.
 * Checks  test/drawn-weather.test.ts (the authors' three known answers; uniform and normal moments)
 * Holds   the same seed and place give the same numbers on every machine.
 * Leaves out  secrecy: not for passwords.
 */

/** Four whole numbers of 32 bits, from a place of four and a seed of two. Written into `numbers` so that inner loops make nothing new. */
export function chanceBlock(counters: Uint32Array, seed: Uint32Array, numbers: Uint32Array): void {
  let c0 = counters[0] ?? 0;
  let c1 = counters[1] ?? 0;
  let c2 = counters[2] ?? 0;
  let c3 = counters[3] ?? 0;
  let k0 = seed[0] ?? 0;
  let k1 = seed[1] ?? 0;
  for (let round = 0; round < 10; round++) {
    const high0 = highHalf(0xd2511f53, c0);
    const high1 = highHalf(0xcd9e8d57, c2);
    const low0 = Math.imul(0xd2511f53, c0);
    const low1 = Math.imul(0xcd9e8d57, c2);
    c0 = high1 ^ c1 ^ k0;
    c1 = low1;
    c2 = high0 ^ c3 ^ k1;
    c3 = low0;
    k0 = (k0 + 0x9e3779b9) | 0;
    k1 = (k1 + 0xbb67ae85) | 0;
  }
  numbers[0] = c0;
  numbers[1] = c1;
  numbers[2] = c2;
  numbers[3] = c3;
}

/** Upper 32 bits of a product of two whole numbers of 32 bits. */
function highHalf(a: number, b: number): number {
  const aLow = a & 0xffff;
  const aHigh = a >>> 16;
  const bLow = b & 0xffff;
  const bHigh = b >>> 16;
  const middle = aHigh * bLow + ((aLow * bLow) >>> 16);
  const other = aLow * bHigh + (middle & 0xffff);
  return (aHigh * bHigh + (middle >>> 16) + (other >>> 16)) | 0;
}

/** A stream of one seed. Go to a day of a run, take the four numbers of a purpose there, read them as often as wanted. */
export interface Chance {
  readonly goTo: (day: number, run: number) => void;
  readonly take: (purpose: number) => void;
  /** Between 0 and 1, never either; which of the four, 0 to 3. */
  readonly uniform: (which: number) => number;
  /** Standard normal, from uniforms 0 and 1, or 2 and 3. */
  readonly normal: (which: 0 | 2) => number;
  /** The second of the pair that goes with `normal`. */
  readonly otherNormal: (which: 0 | 2) => number;
}

/** A stream by its seed, a whole number. */
export function chance(seed: number): Chance {
  const key = new Uint32Array([seed, Math.floor(seed / 0x1_0000_0000)]);
  const place = new Uint32Array(4);
  const block = new Uint32Array(4);
  const uniform = (which: number) => ((block[which] ?? 0) + 0.5) / 0x1_0000_0000;
  const radius = (which: number) => Math.sqrt(-2 * Math.log(uniform(which)));
  return {
    goTo: (day, run) => {
      place[0] = day;
      place[1] = run;
    },
    take: (purpose) => {
      place[2] = purpose;
      chanceBlock(place, key, block);
    },
    uniform,
    normal: (which) => radius(which) * Math.cos(2 * Math.PI * uniform(which + 1)),
    otherNormal: (which) => radius(which) * Math.sin(2 * Math.PI * uniform(which + 1)),
  };
}
