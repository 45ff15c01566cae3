/** Shapes of the bodies about goods. */
import * as z from 'zod';
import { amount, id, orNull, span, week, words } from '../shapes/plain-shapes.ts';
import { animalFreeAnswers, goodsKinds, goodsStatuses, goodsUnits, heldKinds, outKinds } from './goods.ts';

const name = z.string().min(1).max(120);
const taken = { lot: name, kg: amount };
const boxes = z.number().int().min(0);

export const goodsShapes = [
  z.strictObject({
    kind: z.literal('goods-in'),
    batch: name,
    what: z.enum(goodsKinds),
    crop: orNull(id<string>()),
    name: words,
    supplier: orNull(words),
    amount: orNull(amount),
    unit: z.enum(goodsUnits),
    status: z.enum(goodsStatuses),
    animalFree: z.enum(animalFreeAnswers),
    composition: orNull(words),
    paper: orNull(words),
  }),
  z.strictObject({
    kind: z.literal('goods-used'),
    batch: name,
    plot: id<string>(),
    span: orNull(span),
    amount: orNull(amount),
  }),
  z.strictObject({
    kind: z.literal('binned'),
    bin: name,
    store: orNull(id<string>()),
    from: z.array(z.strictObject(taken)).max(500),
  }),
  z.strictObject({
    kind: z.literal('let-go'),
    how: z.enum(outKinds),
    from: z.array(z.strictObject(taken)).max(500),
    recipient: orNull(words),
    why: orNull(words),
  }),
  z.strictObject({
    kind: z.literal('packed'),
    run: name,
    week,
    size: orNull(words),
    boxes,
    items: z.array(z.strictObject({ ...taken, crop: id<string>() })).max(500),
  }),
  z.strictObject({ kind: z.literal('handed-over'), run: name, round: orNull(words), drop: name, boxes }),
  z.strictObject({ kind: z.literal('bin-weighed'), bin: name, kg: amount }),
  z.strictObject({
    kind: z.literal('held'),
    what: z.enum(heldKinds),
    named: name,
    isReleased: z.boolean(),
    why: words,
  }),
] as const;
