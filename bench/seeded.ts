/** The same numbers from the same seed, for benches: a plain 32-bit generator (mulberry32). Not for anything that must be hard to guess. */
export function seeded(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), state | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4_294_967_296;
  };
}

/** Runs it `times` over and gives the middle time in milliseconds, with the last result so that the work cannot be left out. */
export function middleMs<T>(times: number, run: () => T): { readonly ms: number; readonly result: T } {
  const spent: number[] = [];
  let result = run(); // Once for the compiler to warm to it.
  for (let at = 0; at < times; at += 1) {
    const started = performance.now();
    result = run();
    spent.push(performance.now() - started);
  }
  return { ms: Math.round((spent.sort((a, b) => a - b)[Math.floor(times / 2)] ?? 0) * 10) / 10, result };
}
