/** Lots as they move: into bins, out, into boxes, counted, held. */
import type { InForce } from '@leywright/book';
import type { Flow, Source } from './chain.ts';
import { type Body, binOf, type Following, fault } from './following.ts';
import { heapKg, joined, putInto, sourcesKg, takeFrom, tinyKg } from './take.ts';

/** Kilos out of a lot or bin, by source; what nothing accounts for is told. */
function take(to: Following, record: InForce, taken: { readonly lot: string; readonly kg: number }): readonly Source[] {
  const heap = to.left.get(taken.lot) ?? to.bins.get(taken.lot)?.now ?? new Map<string, number>();
  const { sources, lackingKg } = takeFrom(heap, taken.kg);
  if (lackingKg > 0) {
    fault(to, record, { code: 'source-not-known', named: taken.lot, kg: lackingKg });
    // As a count would find it: more than the records say.
    const found = [{ lot: null, kg: -lackingKg }];
    pushByCrop(to, countOf(record), { sources: found, named: taken.lot });
  }
  return sources;
}

export function binned(to: Following, record: InForce, body: Body<'binned'>): void {
  const sources = joined(body.from.flatMap((one) => take(to, record, one)));
  const bin = binOf(to, body.bin, body.store);
  putInto(bin.ever, sources);
  putInto(bin.now, sources);
  const statuses = new Set(sources.map(({ lot }) => (lot === null ? 'unknown' : to.lots.get(lot)?.status)));
  if (statuses.size > 1) fault(to, record, { code: 'statuses-mixed', named: body.bin, kg: sourcesKg(sources) });
}

export function letGo(to: Following, record: InForce, body: Body<'let-go'>): void {
  for (const one of body.from) {
    const sources = take(to, record, one);
    pushByCrop(
      to,
      { kind: body.how, on: record.entry.doneOn, entry: record.root.id, recipient: body.recipient, run: null },
      { sources, named: one.lot },
    );
  }
}

function countOf({ entry, root }: InForce): FlowHead {
  return { kind: 'counted-off', on: entry.doneOn, entry: root.id, recipient: null, run: null };
}

type FlowHead = Pick<Flow, 'kind' | 'on' | 'entry' | 'recipient' | 'run'>;

/** A bin may hold more than one crop: one flow each. */
function pushByCrop(
  to: Following,
  head: FlowHead,
  { sources, named }: { readonly sources: readonly Source[]; readonly named: string },
): void {
  const byCrop = new Map<string, Source[]>();
  for (const source of sources) {
    const crop = cropOf(to, source.lot, named);
    byCrop.set(crop, [...(byCrop.get(crop) ?? []), source]);
  }
  for (const [crop, some] of byCrop) to.flows.push({ ...head, crop, kg: sourcesKg(some), sources: some });
}

/** Of kilos without a source, what the place they came from holds. */
function cropOf(to: Following, lot: string | null, named: string): string {
  const own = to.lots.get(lot ?? named)?.crop;
  if (own !== undefined) return own;
  const first = [...(to.bins.get(named)?.ever.keys() ?? [])].find((id) => to.lots.has(id));
  return first === undefined ? (named.split('/')[1] ?? 'unknown') : (to.lots.get(first)?.crop ?? 'unknown');
}

export function packed(to: Following, record: InForce, body: Body<'packed'>): void {
  const { doneOn: on } = record.entry;
  const entry = record.root.id;
  const items = body.items.map(({ lot, kg, crop }) => ({
    crop,
    kg,
    sources: take(to, record, { lot, kg }),
    from: lot,
  }));
  for (const { crop, kg, sources, from } of items) {
    to.flows.push({ kind: 'boxes', on, crop, kg, sources, entry, recipient: null, run: body.run });
    heldAndPacked(to, record, { from, sources });
  }
  const before = to.runs.get(body.run);
  to.runs.set(body.run, {
    id: body.run,
    on: before?.on ?? on,
    week: body.week,
    size: before === undefined || before.size === body.size ? body.size : null,
    boxes: (before?.boxes ?? 0) + body.boxes,
    items: [...(before?.items ?? []), ...items.map(({ crop, kg, sources }) => ({ crop, kg, sources }))],
    entries: [...(before?.entries ?? []), entry],
  });
}

function heldAndPacked(
  to: Following,
  record: InForce,
  { from, sources }: { readonly from: string; readonly sources: readonly Source[] },
): void {
  const lots = sources.flatMap((source) => (source.lot === null ? [] : [source.lot]));
  const plots = lots.flatMap((lot) => to.lots.get(lot)?.plot ?? []);
  const named = new Set([from, ...lots, ...plots]);
  const hold = to.holds.find((one) => one.to === null && named.has(one.named));
  if (hold !== undefined) fault(to, record, { code: 'held-and-packed', named: hold.named, kg: sourcesKg(sources) });
  const wrong = sources.filter(({ lot }) =>
    ['not-organic', 'in-conversion'].includes(to.lots.get(lot ?? '')?.status ?? ''),
  );
  if (wrong.length > 0)
    fault(to, record, { code: 'not-organic-packed', named: wrong[0]?.lot ?? from, kg: sourcesKg(wrong) });
}

/** A count is right: what is missing has gone unseen, what is over has no source. */
export function weigh(
  to: Following,
  record: InForce,
  { bin: id, kg }: { readonly bin: string; readonly kg: number },
): void {
  const bin = binOf(to, id, null);
  const missingKg = heapKg(bin.now) - kg;
  if (Math.abs(missingKg) <= tinyKg) return;
  const sources = missingKg > 0 ? takeFrom(bin.now, missingKg).sources : [{ lot: null, kg: missingKg }];
  if (missingKg < 0) putInto(bin.now, [{ lot: null, kg: -missingKg }]);
  pushByCrop(to, countOf(record), { sources, named: id });
}

export function held(to: Following, { entry, root }: InForce, body: Body<'held'>): void {
  if (!body.isReleased) {
    to.holds.push({ what: body.what, named: body.named, from: entry.doneOn, to: null, why: body.why, entry: root.id });
    return;
  }
  to.holds.forEach((hold, at) => {
    if (hold.named === body.named && hold.to === null) to.holds[at] = { ...hold, to: entry.doneOn };
  });
}
