/** Entries for tests: made short, and random books. */
import { addDays, asDay, asId, type Day } from '@leywright/measures';
import fc from 'fast-check';
import {
  aboutFarm,
  chain,
  type Entry,
  type EntryBody,
  emptyFarm,
  type Farm,
  newEntryId,
  type Plot,
  type ReceivedEntry,
  type Stand,
  wholePlot,
} from '../src/index.ts';

const start = asDay('2027-03-01');

/** An entry made on one phone, `number` days into March 2027. */
export function record(body: EntryBody | null, number: number, more: Partial<Entry> = {}): Entry {
  const doneOn = more.doneOn ?? addDays(start, number);
  return {
    v: 1,
    id: newEntryId(
      new Uint8Array(10).map((_, at) => number * (at + 3)),
      1_800_000_000_000 + number,
    ),
    farm: asId('garth'),
    doneOn,
    doneAt: null,
    enteredAt: `${doneOn}T18:00:00Z`,
    by: asId('ann'),
    device: asId('phone'),
    deviceSeq: number,
    body,
    amends: null,
    reason: null,
    ...more,
  };
}

/** Entries as one book received them, each an hour after it was entered. */
export function sealed(entries: readonly Entry[]): ReceivedEntry[] {
  const book: ReceivedEntry[] = [];
  for (const entry of entries) {
    book.push(
      chain(book.at(-1)?.hash ?? null, entry, {
        receivedAt: `${entry.enteredAt.slice(0, 11)}19:00:00Z`,
        seq: book.length + 1,
        salt: `${book.length}`.padStart(32, '0'),
      }),
    );
  }
  return book;
}

export function plot(id: string, pieces: Partial<Plot> = {}): Plot {
  return {
    id: asId(id),
    letter: id.toUpperCase(),
    name: id,
    field: null,
    kind: 'rotation',
    grossM2: 5000,
    measuredBy: 'typed',
    hedgeM: 0,
    bankM2: 0,
    headlandShare: null,
    soil: null,
    bedCentresM: null,
    bedCount: null,
    courseAtStart: null,
    from: null,
    to: null,
    status: 'organic',
    statusSince: null,
    ring: null,
    ...pieces,
  };
}

export function stand(id: string, pieces: Partial<Stand> = {}): Stand {
  return {
    id: asId(id),
    succession: null,
    plot: asId('a'),
    span: wholePlot,
    what: 'kale',
    kind: 'crop',
    variety: null,
    state: 'agreed',
    sownOn: null,
    plantedOn: null,
    from: asDay('2027-05-10'),
    to: asDay('2027-10-20'),
    undersownIn: null,
    course: null,
    courseYear: null,
    establishedShare: null,
    endedBy: null,
    reason: null,
    yieldTHa: null,
    ...pieces,
  };
}

export function farm(pieces: Partial<Farm> = {}): Farm {
  const about = aboutFarm('garth', 'Garth', {
    latDeg: 52,
    lonDeg: -1,
    elevationM: null,
    near: null,
    jurisdiction: 'England',
    timeZone: 'Europe/London',
  });
  return { ...emptyFarm(about), plots: [plot('a'), plot('b')], ...pieces };
}

export const day = (text: string): Day => asDay(text);

const plots = ['a', 'b', 'c'];
const stands = ['s1', 's2', 's3'];
const body: fc.Arbitrary<EntryBody> = fc.oneof(
  fc
    .record({
      kind: fc.constant('set' as const),
      subject: fc.constant('plots' as const),
      id: fc.constantFrom(...plots),
      grossM2: fc.integer({ min: 1, max: 9 }),
      gone: fc.nat(4),
    })
    .map(({ id, grossM2, gone, ...rest }) => ({
      ...rest,
      key: id,
      value: gone === 0 ? null : plot(id, { grossM2: grossM2 * 1000 }),
    })),
  fc
    .record({
      kind: fc.constant('set' as const),
      subject: fc.constant('stands' as const),
      id: fc.constantFrom(...stands),
      plot: fc.constantFrom(...plots),
      days: fc.nat(40),
    })
    .map(({ id, plot: on, days, ...rest }) => ({
      ...rest,
      key: id,
      value: stand(id, { plot: asId(on), from: addDays(start, days), to: addDays(start, days + 60) }),
    })),
  fc.record({
    kind: fc.constant('sowing' as const),
    stand: fc.option(fc.constantFrom(...stands), { nil: null }),
    plot: fc.constantFrom(...plots),
    span: fc.constantFrom(wholePlot, { fromShare: 0, toShare: 0.5 }, { fromShare: 0.5, toShare: 1 }),
    what: fc.constantFrom('kale', 'leek-mid'),
    standKind: fc.constant('crop' as const),
    variety: fc.constant(null),
    seedLot: fc.constant(null),
    seedKg: fc.constant(null),
    undersownIn: fc.constant(null),
    expectedTo: fc.option(fc.constant(asDay('2027-06-30')), { nil: null }),
  }),
  fc.record({
    kind: fc.constant('planting' as const),
    stand: fc.option(fc.constantFrom(...stands), { nil: null }),
    plot: fc.constantFrom(...plots),
    span: fc.constant(wholePlot),
    what: fc.constant('kale'),
    variety: fc.constant(null),
    plants: fc.constant(null),
    expectedTo: fc.constant(asDay('2027-07-30')),
  }),
  fc.record({
    kind: fc.constant('harvest' as const),
    stand: fc.option(fc.constantFrom(...stands), { nil: null }),
    plot: fc.constant(null),
    crop: fc.constant('kale'),
    grossKg: fc.nat(100),
    count: fc.constant(null),
    unit: fc.constant('kg' as const),
    gradedOutShare: fc.constant(null),
    into: fc.constant('box' as const),
    store: fc.constant(null),
  }),
  fc.record({
    kind: fc.constant('stand-ended' as const),
    stand: fc.constantFrom(...stands),
    by: fc.constantFrom('lifted' as const, 'failed' as const),
    why: fc.constant(null),
  }),
  fc.record({
    kind: fc.constant('establishment' as const),
    stand: fc.constantFrom(...stands),
    establishedShare: fc.constantFrom(0.2, 0.9),
  }),
  fc.record({
    kind: fc.constant('weighing' as const),
    crop: fc.constant('kale'),
    store: fc.constant(null),
    kg: fc.nat(500),
  }),
  fc.record({
    kind: fc.constant('job-done' as const),
    job: fc.constantFrom('j1', 'j2'),
    share: fc.constantFrom(0.5, 1),
    hours: fc.constant(null),
  }),
);

/** Some entries of one or two phones; about a third amend an earlier one, and some of those strike it out. */
export const entriesArbitrary: fc.Arbitrary<readonly Entry[]> = fc
  .array(
    fc.record({
      body,
      day: fc.nat(40),
      amends: fc.option(fc.nat(), { nil: null, freq: 3 }),
      strikes: fc.boolean(),
      phone: fc.constantFrom('phone', 'tablet'),
      at: fc.constantFrom(null, '08:00', '16:30'),
    }),
    { maxLength: 14 },
  )
  .map((rows) => {
    const entries: Entry[] = [];
    const numbers = new Map<string, number>();
    for (const [index, row] of rows.entries()) {
      const amended = row.amends === null || entries.length === 0 ? null : entries[row.amends % entries.length];
      const deviceSeq = (numbers.get(row.phone) ?? 0) + 1;
      numbers.set(row.phone, deviceSeq);
      entries.push(
        record(amended && row.strikes ? { kind: 'struck-out' } : row.body, index + 1, {
          doneOn: addDays(start, row.day),
          doneAt: row.at,
          enteredAt: `${addDays(start, 41)}T${String(8 + index).padStart(2, '0')}:00:00Z`,
          device: asId(row.phone),
          deviceSeq,
          amends: amended?.id ?? null,
        }),
      );
    }
    return entries;
  });

export const bookArbitrary: fc.Arbitrary<readonly ReceivedEntry[]> = entriesArbitrary.map(sealed);
