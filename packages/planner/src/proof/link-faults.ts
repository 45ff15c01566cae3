/** Links of the way of the goods that are missing: named, never filled by a guess. */
import type { GoodsChain, LinkFault, Lot } from './chain.ts';

export function chainFaults(chain: Omit<GoodsChain, 'faults'>): readonly LinkFault[] {
  return [...lotFaults(chain), ...twiceFaults(chain), ...useFaults(chain), ...handingFaults(chain)];
}

function lotFaults(chain: Omit<GoodsChain, 'faults'>): readonly LinkFault[] {
  const sown = new Map(chain.sowings.map((sowing) => [sowing.stand, sowing]));
  return [...chain.lots.values()].flatMap((lot) => {
    if (lot.kind !== 'harvest') return [];
    const say = (code: LinkFault['code']): LinkFault => ({
      code,
      on: lot.on,
      named: lot.label,
      kg: lot.grossKg,
      entries: [lot.entry],
    });
    const faults: LinkFault[] = [];
    if (lot.plot === null) faults.push(say('harvest-without-plot'));
    if (lot.grossKg === null) faults.push(say('harvest-not-weighed'));
    const sowing = lot.stand === null ? undefined : sown.get(lot.stand);
    if (lot.stand === null) faults.push(say('harvest-without-stand'));
    else if (sowing === undefined) faults.push(say('sowing-not-recorded'));
    else if (sowing.seedLot === null) faults.push(say('seed-lot-not-recorded'));
    return faults;
  });
}

/** The same crop from the same plot on the same day, and nearly the same kilos, on two records: asked about, never taken out. */
function twiceFaults({ lots }: Pick<GoodsChain, 'lots'>): readonly LinkFault[] {
  const byPlace = new Map<string, Lot[]>();
  for (const lot of lots.values())
    if (lot.kind === 'harvest') {
      const key = `${lot.on} ${lot.plot} ${lot.crop}`;
      byPlace.set(key, [...(byPlace.get(key) ?? []), lot]);
    }
  return [...byPlace.values()].flatMap((list) => {
    const [first, second] = list;
    if (first === undefined || second === undefined) return [];
    const [oneKg, otherKg] = [first.grossKg ?? 0, second.grossKg ?? 0];
    if (Math.abs(oneKg - otherKg) > 0.1 * Math.max(oneKg, otherKg)) return [];
    return [
      {
        code: 'harvest-twice',
        on: first.on,
        named: first.label,
        kg: otherKg,
        entries: [first.entry, second.entry],
      } as const,
    ];
  });
}

function useFaults({ uses, batches }: Pick<GoodsChain, 'uses' | 'batches'>): readonly LinkFault[] {
  return uses
    .filter((use) => !batches.has(use.batch))
    .map((use) => ({ code: 'batch-not-known', on: use.on, named: use.batch, kg: null, entries: [use.entry] }));
}

function handingFaults({ runs, handings }: Pick<GoodsChain, 'runs' | 'handings'>): readonly LinkFault[] {
  const handed = new Map<string, number>();
  for (const { run, boxes } of handings) handed.set(run, (handed.get(run) ?? 0) + boxes);
  const ofRuns = [...runs.values()].flatMap((run): LinkFault[] => {
    const boxes = handed.get(run.id) ?? 0;
    const head = { on: run.on, named: run.id, kg: null, entries: run.entries };
    if (boxes === 0) return [{ code: 'run-not-handed-over', ...head }];
    return boxes > run.boxes ? [{ code: 'more-handed-over-than-packed', ...head }] : [];
  });
  const ofHandings = handings
    .filter(({ run }) => !runs.has(run))
    .map(({ run, on, entry }): LinkFault => ({ code: 'run-not-recorded', on, named: run, kg: null, entries: [entry] }));
  return [...ofRuns, ...ofHandings];
}
