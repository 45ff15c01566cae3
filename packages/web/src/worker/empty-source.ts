import type { PlanSource, Problem, Seen } from './plan-source.ts';

const noFarm: Seen = { kind: 'no-farm' };
const notYet: readonly Problem[] = [
  { id: 'no-worker', where: 'Leywright', sentence: 'This build cannot work out a plan yet. Nothing was kept.' },
];

/** A source without a farm, until the worker takes its seat. */
export const emptySource: PlanSource = {
  subscribe: () => () => undefined,
  seen: () => noFarm,
  focusYear: () => undefined,
  setShows: () => undefined,
  why: async () => null,
  begin: async () => notYet,
  openFolder: async () => notYet,
  openSample: async () => notYet,
};
