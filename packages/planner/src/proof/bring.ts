/** Lots as they come: lifted, or bought. */
import type { InForce } from '@leywright/book';
import type { Flow, Lot } from './chain.ts';
import { type Body, binOf, type Following, poolOf } from './following.ts';
import { statusOn } from './status.ts';
import { putInto, takeFrom } from './take.ts';

export function harvest(to: Following, { entry, root }: InForce, body: Body<'harvest'>): void {
  const unitKg = body.unit === 'kg' ? 1 : to.unitKgOf(body.crop, body.unit);
  const countedKg = body.count === null || unitKg === null ? null : body.count * unitKg;
  const grossKg = body.grossKg ?? countedKg;
  const gradedOutKg = (grossKg ?? 0) * (body.gradedOutShare ?? 0);
  const lot: Lot = {
    id: root.id,
    label: to.labels.get(root.id) ?? root.id,
    kind: 'harvest',
    crop: body.crop,
    on: entry.doneOn,
    plot: body.plot,
    stand: body.stand,
    status: statusOn(to.farm, body.plot, entry.doneOn),
    grossKg,
    isEstimated: body.grossKg === null,
    gradedOutKg,
    isForBox: body.into === 'box',
    entry: root.id,
  };
  bringLot(to, lot);
  const netKg = (grossKg ?? 0) - gradedOutKg;
  if (gradedOutKg > 0) out(to, lot, { kind: 'graded-out', kg: gradedOutKg });
  if (body.into === 'store' && body.store !== null) {
    const bin = binOf(to, poolOf(body.store, body.crop), body.store);
    const { sources } = takeFrom(to.left.get(lot.id) ?? new Map(), netKg);
    putInto(bin.now, sources);
    putInto(bin.ever, sources);
  } else if (body.into !== 'box' && body.into !== 'store') out(to, lot, { kind: body.into, kg: netKg });
}

function bringLot(to: Following, lot: Lot): void {
  to.lots.set(lot.id, lot);
  to.left.set(lot.id, new Map([[lot.id, lot.grossKg ?? 0]]));
  const source = { lot: lot.id, kg: lot.grossKg ?? 0 };
  to.flows.push({
    kind: lot.kind === 'harvest' ? 'harvested' : 'bought',
    on: lot.on,
    crop: lot.crop,
    kg: source.kg,
    sources: [source],
    entry: lot.entry,
    recipient: null,
    run: null,
  });
}

function out(to: Following, lot: Lot, { kind, kg }: { readonly kind: Flow['kind']; readonly kg: number }): void {
  const { sources } = takeFrom(to.left.get(lot.id) ?? new Map(), kg);
  to.flows.push({ kind, on: lot.on, crop: lot.crop, kg, sources, entry: lot.entry, recipient: null, run: null });
}

export function goodsIn(to: Following, { entry, root }: InForce, body: Body<'goods-in'>): void {
  to.batches.set(body.batch, { ...body, on: entry.doneOn, entry: root.id });
  if (body.what !== 'produce' || body.crop === null) return;
  bringLot(to, {
    id: body.batch,
    label: to.labels.get(root.id) ?? body.batch,
    kind: 'bought',
    crop: body.crop,
    on: entry.doneOn,
    plot: null,
    stand: null,
    status: body.status,
    grossKg: body.unit === 'kg' ? body.amount : null,
    isEstimated: false,
    gradedOutKg: 0,
    isForBox: false,
    entry: root.id,
  });
}
