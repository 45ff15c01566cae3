/**
 * Trace: from a box run or a drop back to seed and to everything that touched that ground; from a seed lot, a batch, a plot, a lot or a bin
 * forward to every run and drop. One search over the same links, so that back and forward agree.
 */
import { addDays, type Day } from '@leywright/measures';
import type { Batch, Flow, GoodsChain, Handing, LinkFault, Lot, Run, Source, Sowing, Touch, Use } from './chain.ts';
import { joined, sourcesKg } from './take.ts';

/** Years of the ground's history an inspector asks for. */
export const groundYears = 3;

export interface LotBack {
  readonly lot: Lot;
  readonly kg: number;
  /** Of the kilos asked about. */
  readonly share: number;
  readonly sowings: readonly Sowing[];
  readonly seedBatches: readonly Batch[];
  readonly ground: readonly Touch[];
  readonly inputs: readonly (Use & { readonly input: Batch | null })[];
}

export interface BackTrace {
  readonly runs: readonly Run[];
  readonly handings: readonly Handing[];
  readonly crop: string | null;
  readonly kg: number;
  readonly lots: readonly LotBack[];
  /** Kilos no record leads further back. */
  readonly notKnownKg: number;
  readonly missing: readonly LinkFault[];
}

export interface BackAsk {
  readonly runs: readonly string[];
  readonly crop?: string | null;
}

export function traceBack(chain: GoodsChain, { runs: ids, crop = null }: BackAsk): BackTrace {
  const runs = ids.flatMap((id) => chain.runs.get(id) ?? []);
  const items = runs.flatMap((run) => run.items).filter((item) => crop === null || item.crop === crop);
  const sources = joined(items.flatMap((item) => item.sources));
  const kg = sourcesKg(sources);
  const lots = sources.flatMap((source) => lotBack(chain, source, kg));
  const entries = new Set([...lots.map((one) => one.lot.entry), ...runs.flatMap((run) => run.entries)]);
  return {
    runs,
    handings: chain.handings.filter((handing) => ids.includes(handing.run)),
    crop,
    kg,
    lots: lots.sort((one, other) => other.kg - one.kg),
    notKnownKg: sourcesKg(sources.filter((source) => source.lot === null)),
    missing: chain.faults.filter((fault) => fault.entries.some((entry) => entries.has(entry))),
  };
}

function lotBack(chain: GoodsChain, source: Source, allKg: number): readonly LotBack[] {
  const lot = source.lot === null ? undefined : chain.lots.get(source.lot);
  if (lot === undefined) return [];
  const sowings = lot.stand === null ? [] : chain.sowings.filter((sowing) => sowing.stand === lot.stand);
  const seedBatches = sowings.flatMap(({ seedLot }) => (seedLot === null ? [] : (chain.batches.get(seedLot) ?? [])));
  const since = addDays(lot.on, -Math.round(groundYears * 365.25));
  const within = (one: { readonly plot: string; readonly on: Day }) =>
    one.plot === lot.plot && one.on >= since && one.on <= lot.on;
  return [
    {
      lot,
      kg: source.kg,
      share: allKg === 0 ? 0 : source.kg / allKg,
      sowings,
      seedBatches,
      ground: chain.touches.filter(within),
      inputs: chain.uses.filter(within).map((use) => ({ ...use, input: chain.batches.get(use.batch) ?? null })),
    },
  ];
}

export const forwardStarts = ['lot', 'seed', 'batch', 'bin', 'plot'] as const;
export type ForwardStart = (typeof forwardStarts)[number];

export interface ForwardAsk {
  readonly from: ForwardStart;
  /** The lot's id or label; the seed lot as it was written; the batch, bin or plot by its id. */
  readonly named: string;
  /** For a plot: harvests from this day on. */
  readonly since?: Day | null;
}

export interface ForwardTrace {
  readonly lots: readonly Lot[];
  readonly runs: readonly { readonly run: Run; readonly kg: number; readonly crops: readonly string[] }[];
  readonly handings: readonly Handing[];
  /** Other ways out, each with the kilos of these lots. */
  readonly others: readonly { readonly flow: Flow; readonly kg: number }[];
  /** Still here: on its own, or in bins. */
  readonly leftKg: number;
  readonly bins: readonly { readonly bin: string; readonly kg: number }[];
}

export function traceForward(chain: GoodsChain, ask: ForwardAsk): ForwardTrace {
  const lots = lotsFrom(chain, ask);
  const ids = new Set(lots.map((lot) => lot.id));
  const kgOf = (sources: readonly Source[]) =>
    sourcesKg(sources.filter((source) => source.lot !== null && ids.has(source.lot)));
  const runs = [...chain.runs.values()].flatMap((run) => {
    const items = run.items.map((item) => ({ crop: item.crop, kg: kgOf(item.sources) })).filter((item) => item.kg > 0);
    const kg = items.reduce((sum, item) => sum + item.kg, 0);
    return items.length === 0 ? [] : [{ run, kg, crops: [...new Set(items.map((item) => item.crop))] }];
  });
  const runIds = new Set(runs.map((one) => one.run.id));
  const isOut = (flow: Flow) => !['harvested', 'bought', 'boxes'].includes(flow.kind);
  const others = chain.flows.filter(isOut).map((flow) => ({ flow, kg: kgOf(flow.sources) }));
  const bins = [...chain.bins.values()].map((bin) => ({
    bin: bin.id,
    kg: [...bin.nowKg].reduce((sum, [lot, kg]) => sum + (ids.has(lot) ? kg : 0), 0),
  }));
  return {
    lots,
    runs,
    handings: chain.handings.filter((handing) => runIds.has(handing.run)),
    others: others.filter((one) => one.kg > 0),
    leftKg: lots.reduce((sum, lot) => sum + (chain.leftKg.get(lot.id) ?? 0), 0),
    bins: bins.filter((one) => one.kg > 0),
  };
}

function lotsFrom(chain: GoodsChain, { from, named, since = null }: ForwardAsk): readonly Lot[] {
  const lots = [...chain.lots.values()];
  const standsOf = (sowings: readonly Sowing[]) => new Set(sowings.map((sowing) => sowing.stand));
  switch (from) {
    case 'lot':
      return lots.filter((lot) => lot.id === named || lot.label === named);
    case 'bin': {
      const ever = chain.bins.get(named)?.everKg;
      return lots.filter((lot) => ever?.has(lot.id) === true);
    }
    case 'plot':
      return lots.filter((lot) => lot.plot === named && (since === null || lot.on >= since));
    case 'seed': {
      const stands = standsOf(chain.sowings.filter((sowing) => sowing.seedLot === named));
      return lots.filter((lot) => lot.stand !== null && stands.has(lot.stand));
    }
    case 'batch': {
      const used = chain.uses.filter((use) => use.batch === named);
      const stands = standsOf(chain.sowings.filter((sowing) => sowing.seedLot === named));
      // Whatever was lifted from that ground after the batch came onto it may hold some of it.
      const touched = (lot: Lot) => used.some((use) => use.plot === lot.plot && use.on <= lot.on);
      return lots.filter((lot) => lot.id === named || touched(lot) || (lot.stand !== null && stands.has(lot.stand)));
    }
  }
}

/** What to call back: runs and drops with boxes and kilos, and what to hold of what is still here. */
export interface RecallList {
  readonly ask: ForwardAsk;
  readonly drops: readonly { readonly drop: string; readonly on: Day; readonly run: string; readonly boxes: number }[];
  readonly recipients: readonly { readonly recipient: string | null; readonly on: Day; readonly kg: number }[];
  readonly runsWithoutDrops: readonly string[];
  readonly holdKg: number;
  readonly outKg: number;
}

export function recallOf(chain: GoodsChain, ask: ForwardAsk): RecallList {
  const trace = traceForward(chain, ask);
  const handed = new Set(trace.handings.map((handing) => handing.run));
  const gone = trace.others.filter(({ flow }) => ['sale', 'gift', 'own-use', 'seed'].includes(flow.kind));
  return {
    ask,
    drops: trace.handings.map(({ drop, on, run, boxes }) => ({ drop, on, run, boxes })),
    recipients: gone.map(({ flow, kg }) => ({ recipient: flow.recipient, on: flow.on, kg })),
    runsWithoutDrops: trace.runs.flatMap(({ run }) => (handed.has(run.id) ? [] : [run.id])),
    holdKg: trace.leftKg + trace.bins.reduce((sum, bin) => sum + bin.kg, 0),
    outKg: trace.runs.reduce((sum, one) => sum + one.kg, 0) + gone.reduce((sum, one) => sum + one.kg, 0),
  };
}
