/** Books of goods for tests: made short, and by chance. */
import { chain, type Entry, type EntryBody, type Farm, newEntryId, type ReceivedEntry } from '@leywright/book';
import { addDays, asDay, asId } from '@leywright/measures';
import * as fc from 'fast-check';

export const firstDay = asDay('2027-06-07');

/** Entries of one device, each received an hour after it was entered; `dayOffsets` from the first day. */
export function bookOf(
  steps: readonly {
    readonly on: number;
    readonly body: EntryBody;
    readonly amends?: string;
    readonly lateDays?: number;
  }[],
): readonly ReceivedEntry[] {
  const book: ReceivedEntry[] = [];
  steps.forEach(({ on, body, amends, lateDays = 0 }, at) => {
    const doneOn = addDays(firstDay, on);
    const enteredOn = addDays(doneOn, lateDays);
    const entry: Entry = {
      v: 1,
      id: idOf(at),
      farm: asId('garth'),
      doneOn,
      doneAt: null,
      enteredAt: `${enteredOn}T12:00:00Z`,
      by: asId('ann'),
      device: asId('phone'),
      deviceSeq: at + 1,
      body,
      amends: (amends ?? null) as Entry['amends'],
      reason: amends === undefined ? null : 'counted again',
    };
    book.push(
      chain(book.at(-1)?.hash ?? null, entry, {
        receivedAt: `${enteredOn}T13:00:00Z`,
        seq: at + 1,
        salt: String(at).padStart(32, '0'),
      }),
    );
  });
  return book;
}

export function idOf(at: number): Entry['id'] {
  return newEntryId(
    new Uint8Array(10).map((_, place) => (at * (place + 3)) % 256),
    1_800_000_000_000 + at * 1000,
  );
}

export function harvestBody(given: {
  readonly crop: string;
  readonly plot: string | null;
  readonly kg: number;
  readonly graded?: number;
  readonly into?: 'box' | 'store';
  readonly store?: string;
  readonly stand?: string;
}): EntryBody {
  return {
    kind: 'harvest',
    stand: given.stand ?? null,
    plot: given.plot,
    crop: given.crop,
    grossKg: given.kg,
    count: null,
    unit: 'kg',
    gradedOutShare: given.graded ?? null,
    into: given.into ?? 'box',
    store: given.store ?? null,
  };
}

export function sowingBody(given: {
  readonly crop: string;
  readonly plot: string;
  readonly stand: string;
  readonly seedLot: string | null;
}): EntryBody {
  return {
    kind: 'sowing',
    stand: given.stand,
    plot: given.plot,
    span: { fromShare: 0, toShare: 1 },
    what: given.crop,
    standKind: 'crop',
    variety: null,
    seedLot: given.seedLot,
    seedKg: null,
    undersownIn: null,
    expectedTo: null,
  };
}

export const plots = (['a', 'b'] as const).map((id) => ({
  id: asId(id),
  letter: id.toUpperCase(),
  name: id,
  field: null,
  kind: 'rotation',
  grossM2: 5000,
  measuredBy: 'typed',
  hedgeM: 0,
  bankM2: 0,
  headlandShare: 0,
  soil: null,
  bedCentresM: null,
  bedCount: null,
  courseAtStart: null,
  from: null,
  to: null,
  status: 'organic',
  statusSince: null,
  ring: null,
})) as unknown as Farm['plots'];

export const given = { farm: { plots }, unitKgOf: () => 0.5 };

type Step = { readonly on: number; readonly body: EntryBody };

/** A few weeks of lifting, mixing, packing and handing over, with never more taken than is there. */
export const goodsBooks: fc.Arbitrary<readonly Step[]> = fc
  .array(
    fc.record({
      pick: fc.nat(9),
      kg: fc.integer({ min: 1, max: 400 }),
      share: fc.double({ min: 0.05, max: 1, noNaN: true }),
      which: fc.nat(50),
      other: fc.nat(50),
    }),
    { minLength: 4, maxLength: 40 },
  )
  .map((choices) => {
    const steps: Step[] = [
      { on: 0, body: sowingBody({ crop: 'carrot-maincrop', plot: 'a', stand: 'stand-a', seedLot: 'seed-1' }) },
      { on: 0, body: sowingBody({ crop: 'carrot-maincrop', plot: 'b', stand: 'stand-b', seedLot: 'seed-2' }) },
    ];
    const there = new Map<string, number>();
    const places = () => [...there].filter(([, kg]) => kg > 0.001).map(([id]) => id);
    const put = (id: string, kg: number) => there.set(id, (there.get(id) ?? 0) + kg);
    choices.forEach(({ pick, kg, share, which, other }, number) => {
      const on = 1 + number;
      const from = places()[which % Math.max(1, places().length)];
      if (pick <= 2 || from === undefined) {
        const plot = which % 2 === 0 ? 'a' : 'b';
        const stand = `stand-${plot}`;
        steps.push({ on, body: harvestBody({ crop: 'carrot-maincrop', plot, kg, graded: 0.25, stand }) });
        put(idOf(steps.length - 1), kg * 0.75);
        return;
      }
      const takenKg = (there.get(from) ?? 0) * share;
      put(from, -takenKg);
      if (pick <= 4) put(`bin-${other % 3}`, takenKg);
      const taken = [{ lot: from, kg: takenKg }];
      steps.push(...moveSteps({ pick, on, taken, other, number }));
    });
    return steps;
  });

interface Move {
  readonly pick: number;
  readonly on: number;
  readonly taken: readonly { readonly lot: string; readonly kg: number }[];
  readonly other: number;
  readonly number: number;
}

function moveSteps({ pick, on, taken, other, number }: Move): readonly Step[] {
  if (pick <= 4) return [{ on, body: { kind: 'binned', bin: `bin-${other % 3}`, store: 'cold', from: taken } }];
  if (pick > 7)
    return [
      {
        on,
        body: { kind: 'let-go', how: pick === 8 ? 'sale' : 'loss', from: taken, recipient: 'Mill Kitchen', why: null },
      },
    ];
  const run = `run-${number}`;
  const items = taken.map((one) => ({ ...one, crop: 'carrot-maincrop' }));
  return [
    { on, body: { kind: 'packed', run, week: '2027-w24' as never, size: null, boxes: 40, items } },
    { on, body: { kind: 'handed-over', run, round: '1', drop: `drop-${other % 4}`, boxes: 40 } },
  ];
}
