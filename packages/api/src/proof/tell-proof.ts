/** Traces and balances as they are told: names beside ids, a sentence for each missing link. */
import type { Farm } from '@leywright/book';
import type { Day } from '@leywright/measures';
import { type Balance, type GoodsChain, type LinkFault, type Lot, proof, type YieldCheck } from '@leywright/planner';
import type { ToldBalance, ToldTrace } from '../shapes/proof.ts';
import { balanceSentence, linkSentence } from './proof-words.ts';

export interface TellWith {
  readonly farm: Pick<Farm, 'plots'>;
  readonly cropName: (id: string) => string;
  readonly knownOn: Day | null;
}

/** What can be traced: `run/…` and `drop/…` lead back, the others forward. */
export const traceStarts = ['run', 'drop', ...proof.forwardStarts] as const;
export type TraceStart = (typeof traceStarts)[number];

/** "lot/2026-018" → its start and name; null when it starts with none of them. */
export function readTraceStart(said: string): { readonly start: TraceStart; readonly named: string } | null {
  const bar = said.indexOf('/');
  const start = traceStarts.find((one) => one === said.slice(0, bar));
  const named = said.slice(bar + 1);
  return start === undefined || named === '' ? null : { start, named };
}

/** Null when nothing of that name is known. */
export function tellTrace(chain: GoodsChain, said: string, given: TellWith): ToldTrace | null {
  const asked = readTraceStart(said);
  if (asked === null) return null;
  const { start, named } = asked;
  if (start === 'run') return chain.runs.has(named) ? tellBack(chain, { what: said, runs: [named] }, given) : null;
  if (start === 'drop') {
    const runs = chain.handings.filter((handing) => handing.drop === named).map((handing) => handing.run);
    return runs.length === 0 ? null : tellBack(chain, { what: said, runs: [...new Set(runs)] }, given);
  }
  const forward = proof.traceForward(chain, { from: start, named });
  if (forward.lots.length === 0) return null;
  const lots = forward.lots.map((lot) => ({
    lot: toldLot(lot, given),
    kg: lot.grossKg ?? 0,
    share: 1,
    sowings: [],
    seedPapers: [],
    ground: [],
    inputs: [],
  }));
  const entries = new Set(forward.lots.map((lot) => lot.entry));
  return {
    what: said,
    knownOn: given.knownOn,
    direction: 'forward',
    kg: forward.lots.reduce((sum, lot) => sum + (lot.grossKg ?? 0), 0),
    notKnownKg: 0,
    runs: forward.runs.map(({ run, kg }) => ({ ...toldRun(run), kg })),
    handings: [...forward.handings],
    lots,
    others: forward.others.map(({ flow, kg }) => ({
      how: flow.kind,
      on: flow.on,
      kg,
      recipient: flow.recipient,
      entry: flow.entry,
    })),
    leftKg: forward.leftKg,
    bins: [...forward.bins],
    missing: tellMissing(chain.faults.filter((fault) => fault.entries.some((entry) => entries.has(entry)))),
  };
}

function tellBack(
  chain: GoodsChain,
  ask: { readonly what: string; readonly runs: readonly string[] },
  given: TellWith,
): ToldTrace {
  const back = proof.traceBack(chain, { runs: ask.runs });
  const lots = back.lots.map((one) => ({
    lot: toldLot(one.lot, given),
    kg: one.kg,
    share: one.share,
    sowings: one.sowings.map(({ on, plot, what, variety, seedLot, entry }) => ({
      on,
      plot,
      what,
      variety,
      seedLot,
      entry,
    })),
    seedPapers: one.seedBatches.map(({ batch, supplier, paper, entry }) => ({ batch, supplier, paper, entry })),
    ground: one.ground.map(({ on, kind, what, by, entry }) => ({ on, kind, what, by, entry })),
    inputs: one.inputs.map(({ on, batch, amount, entry, input }) => ({
      on,
      batch,
      name: input?.name ?? null,
      amount,
      animalFree: input?.animalFree ?? 'unknown',
      paper: input?.paper ?? null,
      entry,
    })),
  }));
  const kgOfRun = new Map(back.runs.map((run) => [run.id, run.items.reduce((sum, item) => sum + item.kg, 0)]));
  return {
    what: ask.what,
    knownOn: given.knownOn,
    direction: 'back',
    kg: back.kg,
    notKnownKg: back.notKnownKg,
    runs: back.runs.map((run) => ({ ...toldRun(run), kg: kgOfRun.get(run.id) ?? 0 })),
    handings: [...back.handings],
    lots,
    others: [],
    leftKg: 0,
    bins: [],
    missing: tellMissing(back.missing),
  };
}

function toldRun(run: GoodsChain['runs'] extends ReadonlyMap<string, infer R> ? R : never) {
  const { id, on, week, size, boxes, entries } = run;
  return { id, on, week, size, boxes, entries: [...entries] };
}

function toldLot(lot: Lot, { farm, cropName }: TellWith) {
  return {
    ...lot,
    cropName: cropName(lot.crop),
    plotName: farm.plots.find((plot) => plot.id === lot.plot)?.name ?? null,
  };
}

export function tellMissing(faults: readonly LinkFault[]): ToldTrace['missing'] {
  return faults.map((fault) => ({ ...fault, entries: [...fault.entries], sentence: linkSentence(fault) }));
}

export function tellBalance(balance: Balance, yieldCheck: YieldCheck, given: TellWith): ToldBalance {
  const cropName = given.cropName(balance.crop);
  return {
    ...balance,
    cropName,
    knownOn: given.knownOn,
    termsKg: { ...balance.termsKg },
    entries: Object.fromEntries(Object.entries(balance.entries).map(([term, ids]) => [term, [...ids]])),
    yieldCheck: { ...yieldCheck },
    sentence: balanceSentence({ ...balance, cropName }),
  };
}
