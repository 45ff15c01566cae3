import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import {
  chain,
  type Entry,
  entriesOf,
  newEntryId,
  type ReceivedEntry,
  readFarmFolder,
  readFarmZip,
} from '@leywright/book';
import { asDay, type DeviceId, type PersonId } from '@leywright/measures';
import { firstFarm, knownNames } from '@leywright/planner';
import { beforeEach, describe, expect, test } from 'vitest';
import type { Clock } from '../src/worker/book/clock.ts';
import { inMemory, type Keep } from '../src/worker/book/keep.ts';
import type { Answer, Server } from '../src/worker/book/server.ts';
import { Door } from '../src/worker/door/door.ts';
import { FarmDesk } from '../src/worker/farm-desk.ts';
import type { Seen } from '../src/worker/plan-source.ts';

const today = asDay('2027-06-08');
const now = '2027-06-08T06:00:00.000Z';

let drawn = 0;
function random(bytes: number): Uint8Array {
  return Uint8Array.from({ length: bytes }, () => {
    drawn += 1;
    return drawn % 251;
  });
}

const clock: Clock = { today: () => today, now: () => now, random };

/** A server in memory, that can be put out of reach. */
class TestServer implements Server {
  isUp = true;
  book: ReceivedEntry[] = [];
  constructor(name: string) {
    const reading = firstFarm(
      {
        name,
        plots: 4,
        areaHa: 2,
        plotAreasHa: null,
        near: 'Cambridge',
        latDeg: null,
        lonDeg: null,
        items: 6,
        households: 60,
        weeks: 40,
      },
      { id: 'ash', today },
    );
    if (reading.kind !== 'farm') throw new Error('the sentence is not read');
    const { farm } = reading;
    const stamp = {
      farm: farm.about.id,
      by: 'import' as PersonId,
      device: 'import' as DeviceId,
      doneOn: today,
      enteredAt: now,
      deviceSeqFrom: 1,
    };
    this.#receive(entriesOf(farm, { ...stamp, newId: () => newEntryId(random(10), Date.parse(now)) }));
  }
  #receive(entries: readonly Entry[]) {
    for (const entry of entries) {
      const last = this.book.at(-1);
      this.book.push(
        chain(last?.hash ?? null, entry, { salt: '00'.repeat(16), seq: (last?.seq ?? 0) + 1, receivedAt: now }),
      );
    }
  }
  async #answer<T>(value: () => T): Promise<Answer<T>> {
    return this.isUp ? { kind: 'answered', value: value() } : { kind: 'unreachable' };
  }
  today = () => this.#answer(() => ({ today, isDaySaid: true }));
  visitor: { readonly person: string; readonly role: string } | null = null;
  me = () => this.#answer(() => ({ visitor: this.visitor }));
  farms = () =>
    this.#answer(() => ({
      farms: [{ id: 'ash', name: 'Ash', sample: false, createdAt: now, lastSeq: this.book.length }],
    }));
  /** Three at a time, so that pages are asked for. */
  entriesAfter = (_farm: string, seq: number) =>
    this.#answer(() => {
      const entries = this.book.filter((entry) => entry.seq > seq).slice(0, 3);
      return { entries, readTo: entries.at(-1)?.seq ?? seq, more: entries.length === 3 };
    });
  addEntries = (_farm: string, entries: readonly Entry[]) => this.#answer(() => this.#receive(entries));
  begin = () => this.#answer(() => ({ farm: { id: 'ash', name: 'Ash', sample: false, createdAt: now, lastSeq: 0 } }));
  openSample = this.begin;
  takeFolder = this.begin;
  checkFolder = () => this.#answer(() => ({ wouldImport: true, name: 'Ash', problems: [] }));
}

let server: TestServer;
let keep: Keep;
let shown: Seen[];

beforeEach(() => {
  server = new TestServer('Ash');
  keep = inMemory();
  shown = [];
});

function desk(over: Server = server) {
  return new FarmDesk({ server: over, keep, clock }, (seen) => shown.push(seen));
}

function last() {
  const seen = shown.at(-1);
  if (seen?.kind !== 'ready')
    throw new Error(
      `not ready: ${seen?.kind} ${'sentence' in (seen ?? {}) ? (seen as { sentence: string }).sentence : ''}`,
    );
  return seen;
}

describe('a farm opens from its book', () => {
  test('all of the book is brought, page by page, kept, and planned', async () => {
    await desk().start();
    expect(await keep.entries('ash')).toEqual(server.book);
    expect(last().view.plan.ground).toHaveLength(4);
    expect(last().offline).toBeNull();
    expect(last().view.told.standing).toBe('In pencil');
  });

  test('only what is new is brought the next time', async () => {
    await desk().start();
    const asked: number[] = [];
    const counting = {
      ...server,
      entriesAfter: (farm: string, seq: number) => {
        asked.push(seq);
        return server.entriesAfter(farm, seq);
      },
    };
    await desk(counting as unknown as Server).start();
    expect(asked).toEqual([server.book.length - 1]);
  });

  test('without the server it opens from what this machine keeps, and says so', async () => {
    await desk().start();
    server.isUp = false;
    await desk().start();
    expect(last().view.plan.ground).toHaveLength(4);
    expect(last().offline).toContain('The server is not reached');
    server.isUp = true;
  });

  test('with neither server nor anything kept there is no farm', async () => {
    server.isUp = false;
    await desk().start();
    expect(shown.at(-1)?.kind).toBe('no-farm');
  });

  test('another book under the same name takes the place of the one kept', async () => {
    await desk().start();
    const other = new TestServer('Other');
    await desk(other).start();
    expect(last().view.plan.farm.name).toBe('Other');
    expect(await keep.entries('ash')).toEqual(other.book);
  });
});

describe('who is signed in', () => {
  test('when it is somebody else than before, what was kept for them is taken off this machine first', async () => {
    server.visitor = { person: 'ruth', role: 'grower' };
    await desk().start();
    expect((await keep.entries('ash')).length).toBe(server.book.length);
    server.visitor = { person: 'hanna', role: 'hand' };
    const asked: number[] = [];
    const counting = {
      ...server,
      entriesAfter: (farm: string, seq: number) => {
        asked.push(seq);
        return server.entriesAfter(farm, seq);
      },
    };
    await desk(counting as unknown as Server).start();
    expect(asked[0]).toBe(0);
    expect(await keep.fact('who')).toEqual({ person: 'hanna', role: 'hand' });
  });

  test('enters in their own name, and sends nothing that another hand left here to be sent', async () => {
    server.visitor = { person: 'hanna', role: 'hand' };
    await desk().start();
    const made = { ...(server.book[0] as unknown as Entry), id: '01900000-0000-7000-8000-000000000077' as Entry['id'] };
    await keep.putUnsent({ ...made, by: 'nils' as Entry['by'] });
    const own = desk();
    await own.start();
    const sent: string[] = [];
    server.addEntries = async (_farm, entries) => {
      sent.push(...entries.map(({ by }) => by));
      return { kind: 'answered', value: undefined };
    };
    await own.enter((farm) => ({ kind: 'set', subject: 'about', key: '', value: farm.about }));
    expect(sent).toEqual(['hanna']);
    expect((await keep.unsent('ash')).map(({ by }) => by)).toEqual(['nils']);
  });
});

describe('what is changed here', () => {
  const acres = (farm: { about: { shows: object } }) =>
    ({
      kind: 'set',
      subject: 'about',
      key: '',
      value: { ...farm.about, shows: { ...farm.about.shows, area: 'acres' } },
    }) as const;

  test('shows at once and reaches the server', async () => {
    const one = desk();
    await one.start();
    const before = server.book.length;
    await one.enter(acres);
    expect(last().view.shows.area).toBe('acres');
    expect(server.book).toHaveLength(before + 1);
    expect(await keep.unsent('ash')).toEqual([]);
    expect(last().view.plan.findings.filter((finding) => finding.code === 'device-clock-wrong')).toEqual([]);
  });

  test('waits while the server is out of reach, and is sent when it is back', async () => {
    const one = desk();
    await one.start();
    server.isUp = false;
    await one.enter(acres);
    expect(last().view.shows.area).toBe('acres');
    expect(last().offline).toContain('One change waits to be sent');
    const before = server.book.length;
    server.isUp = true;
    await one.lookAgain();
    expect(server.book).toHaveLength(before + 1);
    expect(last().offline).toBeNull();
    expect(last().view.shows.area).toBe('acres');
  });

  test('another year in focus plans that year', async () => {
    const one = desk();
    await one.start();
    await Promise.all([one.focusYear(2028), one.focusYear(2029)]);
    expect(last().view.plan.year).toBe(2029);
    expect(shown.filter((seen) => seen.kind === 'ready')).toHaveLength(2);
  });

  test('a figure opens to its sum, and an unknown one to nothing', async () => {
    const one = desk();
    await one.start();
    expect(one.why('net/a')?.title).toMatch(/^4,\d00 m²$/);
    expect(one.why('net/nowhere')).toBeNull();
    const winter = one.why('bare/a/2028');
    expect(JSON.stringify(winter)).toContain('Bare days on');
    expect(winter?.why.sum).not.toMatch(/\d{4}-\d{2}-\d{2}/);
  });
});

/** Reads as the server does. */
const checkFolder: Server['checkFolder'] = async (zip) => {
  const read = readFarmZip(zip, knownNames());
  const problems = read.problems.map((problem) => ({ ...problem, sentence: problem.code }));
  return {
    kind: 'answered',
    value: { wouldImport: read.farm !== null, name: read.farm?.about.name ?? null, problems },
  };
};

describe('the ways in', () => {
  test('each blank of the sentence that was left is named', async () => {
    const door = new Door(server, desk());
    const problems = await door.begin({ plots: 6, areaHa: null, near: null, items: 7, households: 260, weeks: 49 });
    expect(problems.map(({ where }) => where)).toEqual(['Area', 'Nearest town']);
  });

  test('a folder is mended in place until it can be taken in', async () => {
    const demo = join(import.meta.dirname, '..', '..', '..', 'demo');
    const files = new Map(readdirSync(demo).map((name) => [name, readFileSync(join(demo, name))] as const));
    const people = files.get('people.csv')?.toString('utf8') ?? '';
    const hours = people.split('\n')[1]?.split(',')[3] ?? '';
    files.set('people.csv', Buffer.from(people.replace(`,${hours},`, ',often,')));
    const door = new Door({ ...server, checkFolder } as unknown as Server, desk());
    const given = [...files].map(([path, bytes]) => ({ path, bytes: new Uint8Array(bytes).buffer }));
    const answer = await door.readFolder(given);
    if (answer.kind !== 'read') throw new Error('not read');
    const stops = answer.reading.problems.filter((problem) => problem.stops);
    expect(stops.map(({ file, line, mend, written }) => ({ file, line, mend, written }))).toEqual([
      { file: 'people.csv', line: 2, mend: 'cell', written: 'often' },
    ]);
    const again = await door.mendFolder([{ problem: stops[0]?.id ?? '', to: hours }]);
    expect(again.kind === 'read' && again.reading.canBeTaken).toBe(true);
    expect(readFarmFolder(files, knownNames()).farm).toBeNull();
    expect(await door.takeFolder()).toEqual([]);
    expect(last().view.plan.farm.name).toBe('Ash');
  });
});
