/** The law every store keeps, whichever database is under it: a second one runs the same cases. */
import { verifyBook } from '@leywright/book';
import fc from 'fast-check';
import { afterEach, describe, expect, test } from 'vitest';
import type { Opened, Store } from '../src/index.ts';
import { entry, entryId, haltingSalt, ours, receipt, sealed, theirs } from './entries.ts';

export interface StoreMaker {
  readonly name: string;
  /** A store of its own, empty. `again` opens the same once more, as after a restart. */
  readonly make: () => Promise<{ readonly open: () => Promise<Opened>; readonly remove: () => Promise<void> }>;
}

/** What a case works with: stores that are closed and taken away after it. */
interface Bench {
  readonly fresh: () => Promise<Made>;
  readonly opened: (made: Made) => Promise<Store>;
  readonly storeWithFarm: () => Promise<Store>;
  /** Closes a store before its case is over, as a restart does. */
  readonly close: (store: Store) => Promise<void>;
}

type Made = Awaited<ReturnType<StoreMaker['make']>>;

export function storeCases({ name, make }: StoreMaker): void {
  describe(`a store on ${name}`, () => {
    const bench = openBench(make);
    bookCases(bench);
    refusalCases(bench);
    keepingCases(bench);
    lastingCases(bench);
  });
}

function openBench(make: StoreMaker['make']): Bench {
  const open: Store[] = [];
  const removals: (() => Promise<void>)[] = [];
  const fresh = async () => {
    const made = await make();
    removals.push(made.remove);
    return made;
  };
  const opened = async (made: Made) => {
    const result = await made.open();
    if (result.kind !== 'open') throw new Error(JSON.stringify(result.problem));
    open.push(result.store);
    return result.store;
  };
  const storeWithFarm = async () => {
    const store = await opened(await fresh());
    await store.foundFarm({ id: ours, name: 'Ours', sample: false, book: [], entries: [] }, receipt);
    return store;
  };
  afterEach(async () => {
    for (const store of open.splice(0)) await store.close();
    for (const remove of removals.splice(0)) await remove();
  }, 60_000);
  const close = async (store: Store) => {
    open.splice(open.indexOf(store), 1);
    await store.close();
  };
  return { fresh, opened, storeWithFarm, close };
}

function bookCases({ fresh, opened, storeWithFarm }: Bench): void {
  test('has no farm when it is new', async () => {
    const store = await opened(await fresh());
    expect(await store.farms()).toEqual([]);
    expect(await store.farm(ours)).toBeNull();
  });

  test('gives entries their places 1, 2, 3 and a chain that verifies', async () => {
    const store = await storeWithFarm();
    const appended = await store.appendEntries(ours, [entry(1), entry(2), entry(3)], receipt);
    expect(appended).toMatchObject({ kind: 'appended', lastSeq: 3, already: [] });
    await store.appendEntries(ours, [entry(4)], receipt);
    const book = await store.entriesAfter(ours, 0, 100);
    expect(book.map(({ seq }) => seq)).toEqual([1, 2, 3, 4]);
    expect(verifyBook(book)).toMatchObject({ ok: true, count: 4 });
    expect(new Set(book.map(({ salt }) => salt)).size).toBe(4);
  });

  test('gives back what was put in, word for word', async () => {
    const store = await storeWithFarm();
    const odd = entry(1, {
      reason: 'österfeld “quoted”, 30 % lost\nsecond line',
      doneAt: '06:10',
      body: { kind: 'observation', plot: null, what: 'aphid', count: 4, of: 10, words: '💧 Ω' },
    });
    await store.appendEntries(ours, [odd], receipt);
    expect((await store.entriesAfter(ours, 0, 10))[0]).toMatchObject(odd);
  });

  test('takes the same entry twice as once, and says so', async () => {
    const store = await storeWithFarm();
    await store.appendEntries(ours, [entry(1)], receipt);
    const again = await store.appendEntries(ours, [entry(1), entry(2), entry(2)], receipt);
    expect(again).toMatchObject({ kind: 'appended', already: [entryId(1), entryId(2)], lastSeq: 2 });
    expect(await store.entriesAfter(ours, 0, 10)).toHaveLength(2);
  });
}

function refusalCases({ fresh, opened, storeWithFarm }: Bench): void {
  test('refuses the whole sending when an id stands for other contents or another farm', async () => {
    const store = await storeWithFarm();
    await store.appendEntries(ours, [entry(1)], receipt);
    const changed = entry(1, { body: { kind: 'weighing', crop: 'carrot-maincrop', store: 'barn', kg: 99 } });
    expect(await store.appendEntries(ours, [entry(2), changed], receipt)).toEqual({
      kind: 'refused',
      differing: [entryId(1)],
      ofOtherFarm: [],
    });
    expect(await store.appendEntries(ours, [entry(3, { farm: theirs })], receipt)).toEqual({
      kind: 'refused',
      differing: [],
      ofOtherFarm: [entryId(3)],
    });
    expect(await store.entriesAfter(ours, 0, 10)).toHaveLength(1);
  });

  test('knows no entries of a farm that is not there', async () => {
    const store = await storeWithFarm();
    expect(await store.appendEntries(theirs, [entry(1, { farm: theirs })], receipt)).toEqual({ kind: 'no-such-farm' });
    expect(await store.entriesAfter(theirs, 0, 10)).toEqual([]);
  });

  test('keeps the books of two farms apart, each with its own places', async () => {
    const store = await storeWithFarm();
    await store.foundFarm(
      { id: theirs, name: 'Theirs', sample: true, book: [], entries: [entry(1, { farm: theirs })] },
      receipt,
    );
    await store.appendEntries(ours, [entry(1), entry(2)], receipt);
    expect((await store.entriesAfter(theirs, 0, 10)).map((one) => [one.farm, one.seq])).toEqual([['theirs', 1]]);
    expect((await store.farms()).map((farm) => [farm.id, farm.sample, farm.lastSeq])).toEqual([
      ['ours', false, 2],
      ['theirs', true, 1],
    ]);
  });

  test('does not make a second farm of the same id', async () => {
    const store = await storeWithFarm();
    expect(
      await store.foundFarm({ id: ours, name: 'Again', sample: false, book: [], entries: [entry(9)] }, receipt),
    ).toEqual({ kind: 'id-taken' });
    expect((await store.farm(ours))?.name).toBe('Ours');
  });

  test('makes a farm with all of its entries or not at all', async () => {
    const store = await opened(await fresh());
    const halting = { receivedAt: receipt.receivedAt, newSalt: haltingSalt(2) };
    await expect(
      store.foundFarm(
        { id: ours, name: 'Ours', sample: false, book: [], entries: [entry(1), entry(2), entry(3)] },
        halting,
      ),
    ).rejects.toThrow('no more salt');
    expect(await store.farm(ours)).toBeNull();
    expect(await store.entriesAfter(ours, 0, 10)).toEqual([]);
  });
}

function keepingCases({ fresh, opened, storeWithFarm }: Bench): void {
  test('keeps a book that came with the farm as it was sealed, and goes on from its end', async () => {
    const store = await opened(await fresh());
    const book = sealed([entry(1), entry(2)]);
    await store.foundFarm({ id: ours, name: 'Ours', sample: false, book, entries: [entry(3)] }, receipt);
    const kept = await store.entriesAfter(ours, 0, 10);
    expect(kept.slice(0, 2)).toEqual(book);
    expect(verifyBook(kept)).toMatchObject({ ok: true, count: 3 });
  });

  test('hands out the book a page at a time', async () => {
    const store = await storeWithFarm();
    await store.appendEntries(
      ours,
      Array.from({ length: 25 }, (_, at) => entry(at + 1)),
      receipt,
    );
    const pages = [
      await store.entriesAfter(ours, 0, 10),
      await store.entriesAfter(ours, 10, 10),
      await store.entriesAfter(ours, 20, 10),
      await store.entriesAfter(ours, 25, 10),
    ];
    expect(pages.map((page) => page.length)).toEqual([10, 10, 5, 0]);
    expect(pages.flat().map(({ seq }) => seq)).toEqual(Array.from({ length: 25 }, (_, at) => at + 1));
  });

  test('takes a sending of thousands', async () => {
    const store = await storeWithFarm();
    const many = Array.from({ length: 2500 }, (_, at) => entry(at + 1));
    expect(await store.appendEntries(ours, many, receipt)).toMatchObject({ kind: 'appended', lastSeq: 2500 });
    expect(await store.appendEntries(ours, many, receipt)).toMatchObject({
      kind: 'appended',
      received: [],
      lastSeq: 2500,
    });
  });

  test('seals entries of many senders at once one after another', async () => {
    const store = await storeWithFarm();
    await Promise.all(
      Array.from({ length: 20 }, (_, at) => store.appendEntries(ours, [entry(2 * at + 1), entry(2 * at + 2)], receipt)),
    );
    const book = await store.entriesAfter(ours, 0, 100);
    expect(book).toHaveLength(40);
    expect(verifyBook(book).ok).toBe(true);
  });
}

function lastingCases({ fresh, opened, storeWithFarm, close }: Bench): void {
  test('takes a withdrawn body and its salt away, and the book still verifies', async () => {
    const store = await storeWithFarm();
    await store.appendEntries(ours, [entry(1), entry(2)], receipt);
    await store.appendEntries(ours, [entry(3, { body: { kind: 'withdrawn', entry: entryId(1) } })], receipt);
    const book = await store.entriesAfter(ours, 0, 10);
    expect(book[0]).toMatchObject({ body: null, salt: '' });
    expect(verifyBook(book)).toMatchObject({ ok: true, withdrawn: 1 });
    expect(await store.appendEntries(ours, [entry(1)], receipt)).toMatchObject({
      kind: 'appended',
      already: [entryId(1)],
    });
  });

  test('follows a new name of the farm', async () => {
    const store = await storeWithFarm();
    await store.appendEntries(
      ours,
      [entry(1, { body: { kind: 'set', subject: 'about', key: '', value: { name: 'Far Ridding' } } })],
      receipt,
    );
    expect((await store.farm(ours))?.name).toBe('Far Ridding');
  });

  test('has everything still after it was closed and opened again', async () => {
    const made = await fresh();
    const store = await opened(made);
    await store.foundFarm({ id: ours, name: 'Ours', sample: false, book: [], entries: [entry(1), entry(2)] }, receipt);
    const before = await store.entriesAfter(ours, 0, 10);
    await close(store);
    const again = await opened(made);
    expect(await again.entriesAfter(ours, 0, 10)).toEqual(before);
    expect((await again.farm(ours))?.lastSeq).toBe(2);
  });

  test('whatever order sendings come in and however often, every entry is there once and the chain verifies', async () => {
    await fc.assert(
      fc.asyncProperty(
        fc.array(fc.array(fc.integer({ min: 1, max: 12 }), { maxLength: 6 }), { maxLength: 6 }),
        async (sendings) => {
          const store = await storeWithFarm();
          for (const sending of sendings)
            expect(
              (
                await store.appendEntries(
                  ours,
                  sending.map((number) => entry(number)),
                  receipt,
                )
              ).kind,
            ).toBe('appended');
          const book = await store.entriesAfter(ours, 0, 100);
          expect(new Set(book.map(({ id }) => id))).toEqual(new Set(sendings.flat().map(entryId)));
          expect(book).toHaveLength(new Set(sendings.flat()).size);
          expect(verifyBook(book).ok).toBe(true);
        },
      ),
      { numRuns: 15 },
    );
  });
}
