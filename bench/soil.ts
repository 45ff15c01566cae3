/**
 * The ground's daily account, timed: `npm run --silent bench:soil -- --json`. Prints one JSON object, budgets beside what was measured.
 * Parts, stands and weathers are made from a seed.
 */
import { once } from 'node:events';
import { cpus } from 'node:os';
import { Worker } from 'node:worker_threads';
import { soilAccount } from '@leywright/agronomy';
import { asDay } from '@leywright/measures';
import { firstYear, makeParts, weatherDraws } from './make-soil.ts';
import type { SeasonAsk } from './soil-season-worker.ts';

/** Runs it `times` over: the middle time, and the least, which is what the machine does while nobody else wants it. */
function timed<T>(times: number, run: () => T): { readonly middleMs: number; readonly leastMs: number } {
  const spentMs: number[] = [];
  for (let at = 0; at < times; at++) {
    const started = performance.now();
    run();
    spentMs.push(performance.now() - started);
  }
  spentMs.sort((a, b) => a - b);
  return { middleMs: spentMs[Math.floor(times / 2)] ?? 0, leastMs: spentMs[0] ?? 0 };
}

const seed = 20_270_114;
const years = 10;
const from = asDay(`${firstYear}-01-01`);
const parts = makeParts(years);
const tenYears = weatherDraws({ from, days: 3653 }, seed)(0);
const [part] = parts;
if (part === undefined) throw new Error('The made farm has no part.');
const runOne = () => soilAccount.runSoil(part, tenYears, { stepDays: 7 });

// The compiler has warmed to a farm that is open: so must it here.
for (let at = 0; at < 60; at++) runOne();
const cpuBefore = process.cpuUsage();
const one = timed(101, runOne);
const cpu = process.cpuUsage(cpuBefore);
const farm = timed(31, () => parts.map((each) => soilAccount.runSoil(each, tenYears, { stepDays: 7 })));

// Half-way through, one stand ends ten days later: what is before is taken up from the run that was.
const before = runOne();
const at = part.stands.findIndex((stand) => stand.endDayNumber > tenYears.startDayNumber + tenYears.dayCount / 2);
const changedDayNumber = part.stands[at]?.endDayNumber ?? 0;
const changed = {
  ...part,
  stands: part.stands.map((stand, place) =>
    place === at ? { ...stand, endDayNumber: stand.endDayNumber + 10 } : stand,
  ),
};
const again = timed(101, () =>
  soilAccount.runSoil(changed, tenYears, { stepDays: 7, after: { run: before, changedDayNumber } }),
);

const drawYear = weatherDraws({ from, days: 365 }, seed);
const season: SeasonAsk = {
  parts: makeParts(1),
  weathers: Array.from({ length: 100 }, (_, nth) => drawYear(nth)),
};
const workerUrl = new URL('./soil-season-worker.ts', import.meta.url).href;
const worker = new Worker(
  // Threads read TypeScript only where tsx is made ready in them.
  `import('tsx/esm/api').then(({ register }) => { register(); return import(${JSON.stringify(workerUrl)}); });`,
  { eval: true },
);
const seasonMs: number[] = [];
for (let ask = 0; ask < 5; ask++) {
  const started = performance.now();
  worker.postMessage(season);
  await once(worker, 'message');
  seasonMs.push(performance.now() - started);
}
await worker.terminate();

const plotDays = tenYears.dayCount;
const rounded = (value: number) => Math.round(value * 100) / 100;
console.log(
  JSON.stringify({
    seed,
    cpu: cpus()[0]?.model ?? null,
    layers: 25,
    nsPerPlotDay: Math.round((one.middleMs / plotDays) * 1e6),
    nsPerPlotDayLeast: Math.round((one.leastMs / plotDays) * 1e6),
    plotDaysPerSecond: Math.round(plotDays / (one.middleMs / 1000)),
    onePartTenYearsMs: rounded(one.middleMs),
    onePartTenYearsLeastMs: rounded(one.leastMs),
    // On a machine that others use too, the processor's own time says more than the clock.
    onePartCpuMs: rounded((cpu.user + cpu.system) / 1000 / 101),
    onePartBudgetMs: 3,
    changedHalfWayMs: rounded(again.middleMs),
    changedHalfWayLeastMs: rounded(again.leastMs),
    wholeFarmTenYearsMs: rounded(farm.middleMs),
    wholeFarmTenYearsLeastMs: rounded(farm.leastMs),
    wholeFarmBudgetMs: 25,
    hundredSeasonsFirstMs: rounded(seasonMs[0] ?? 0),
    hundredSeasonsMs: rounded([...seasonMs].sort((a, b) => a - b)[2] ?? 0),
    hundredSeasonsLeastMs: rounded(Math.min(...seasonMs)),
    hundredSeasonsBudgetMs: 600,
  }),
);
