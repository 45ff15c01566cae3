/** Shape of an entry of version 1. Old shapes are read for ever; a change of shape is a new version beside this one. */
import { type DeviceId, type EntryId, type FarmId, type PersonId, readDay } from '@leywright/measures';
import * as z from 'zod';
import { standEnds, standKinds } from '../farm/stand.ts';
import { isListSubject, keyOf, subjectShapes } from '../farm/subjects.ts';
import { markShape } from '../shapes/land-shapes.ts';
import { amount, day, id, orNull, share, span, unit, words } from '../shapes/plain-shapes.ts';
import { type Entry, type EntryBody, type Received, seenKinds, subjects } from './entry.ts';
import { goodsShapes } from './goods-shapes.ts';

const instantShape = /^\d{4}-\d{2}-\d{2}T([01]\d|2[0-3]):[0-5]\d:[0-5]\d(\.\d{1,9})?Z$/;
const instant = z.custom<string>(
  (value) => typeof value === 'string' && instantShape.test(value) && readDay(value.slice(0, 10)) !== null,
  'not-an-instant',
);
const hash = z.string().regex(/^[0-9a-f]{64}$/);

/** A row set must have its table's shape, and stand under its own key. */
const setShape = z
  .strictObject({ kind: z.literal('set'), subject: z.enum(subjects), key: words, value: z.unknown() })
  .superRefine((body, context) => {
    if (body.value === null) return;
    const read = subjectShapes[body.subject].safeParse(body.value);
    for (const issue of read.error?.issues ?? [])
      context.addIssue({ code: 'custom', message: issue.message, path: ['value', ...issue.path] });
    if (!read.success || !isListSubject(body.subject)) return;
    const wanted = keyOf(body.subject, body.value as never);
    if (wanted !== body.key)
      context.addIssue({ code: 'custom', message: 'not-in-list', path: ['key'], params: { nearest: [wanted] } });
  });

const sowing = {
  stand: orNull(id<string>()),
  plot: id<string>(),
  span,
  what: id<string>(),
  variety: orNull(words),
  expectedTo: orNull(day),
};

export const bodyShape = z.discriminatedUnion('kind', [
  setShape,
  z.strictObject({
    kind: z.literal('sowing'),
    ...sowing,
    standKind: z.enum(standKinds),
    seedLot: orNull(words),
    seedKg: orNull(amount),
    undersownIn: orNull(id<string>()),
  }),
  z.strictObject({ kind: z.literal('planting'), ...sowing, plants: orNull(amount) }),
  z.strictObject({
    kind: z.literal('harvest'),
    stand: orNull(id<string>()),
    plot: orNull(id<string>()),
    crop: id<string>(),
    grossKg: orNull(amount),
    count: orNull(amount),
    unit,
    gradedOutShare: orNull(share),
    into: z.enum(['box', 'store', 'sale', 'own-use', 'compost']),
    store: orNull(id<string>()),
  }),
  z.strictObject({ kind: z.literal('stand-ended'), stand: id<string>(), by: z.enum(standEnds), why: orNull(words) }),
  z.strictObject({ kind: z.literal('establishment'), stand: id<string>(), establishedShare: share }),
  z.strictObject({ kind: z.literal('weighing'), crop: id<string>(), store: orNull(id<string>()), kg: amount }),
  z.strictObject({ kind: z.literal('job-done'), job: words, share, hours: orNull(amount) }),
  z.strictObject({ kind: z.literal('organism-found'), mark: markShape }),
  z.strictObject({
    kind: z.literal('observation'),
    plot: orNull(id<string>()),
    what: words,
    count: orNull(amount),
    of: orNull(amount),
    words: orNull(words),
    seen: z.enum(seenKinds).optional(),
    crop: id<string>().optional(),
  }),
  ...goodsShapes,
  z.strictObject({ kind: z.literal('rotation-agreed'), reasons: z.record(z.string(), words) }),
  z.strictObject({ kind: z.literal('struck-out') }),
  z.strictObject({ kind: z.literal('withdrawn'), entry: id<string>() }),
]) as unknown as z.ZodType<EntryBody>;

const envelope = {
  v: z.literal(1),
  id: id<EntryId>(),
  farm: id<FarmId>(),
  doneOn: day,
  doneAt: orNull(z.string().regex(/^([01]\d|2[0-3]):[0-5]\d$/)),
  enteredAt: instant,
  by: id<PersonId>(),
  device: id<DeviceId>(),
  deviceSeq: z.number().int().min(0),
  body: orNull(bodyShape),
  amends: orNull(id<EntryId>()),
  reason: orNull(words),
};

export const entryShape: z.ZodType<Entry> = z.strictObject(envelope);

export const receivedShape: z.ZodType<Entry & Received> = z.strictObject({
  ...envelope,
  receivedAt: instant,
  seq: z.number().int().min(1),
  salt: z.string().max(128),
  bodyDigest: hash,
  hash,
});
