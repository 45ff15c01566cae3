/** Runs a farm's parts under each of many weathers, off the main thread, and posts back what was leached from each. */
import { parentPort } from 'node:worker_threads';
import { type SoilPart, type SoilWeather, soilAccount } from '@leywright/agronomy';

export interface SeasonAsk {
  readonly parts: readonly SoilPart[];
  readonly weathers: readonly SoilWeather[];
}

function leachedKgHa({ parts, weathers }: SeasonAsk): Float64Array {
  const leached = new Float64Array(parts.length * weathers.length);
  weathers.forEach((weather, nth) => {
    parts.forEach((part, at) => {
      const run = soilAccount.runSoil(part, weather, { stepDays: 7 });
      for (const kgHa of run.column('belowRootsNKgHa'))
        leached[nth * parts.length + at] = (leached[nth * parts.length + at] ?? 0) + kgHa;
    });
  });
  return leached;
}

parentPort?.on('message', (ask: SeasonAsk) => parentPort?.postMessage(leachedKgHa(ask)));
