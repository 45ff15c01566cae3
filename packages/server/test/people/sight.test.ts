import { httpShapes, peopleShapes } from '@leywright/api';
import { asId, type EntryId } from '@leywright/measures';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { addPerson, type Browser, openPeopleBench, type PeopleBench, signedIn } from './people-bench.ts';

let bench: PeopleBench;
let as: Readonly<Record<'ruth' | 'olga' | 'ben' | 'hanna' | 'ines', Browser>>;
beforeAll(async () => {
  bench = await openPeopleBench();
  await addPerson(bench, 'ruth', 'grower');
  await addPerson(bench, 'olga', 'office');
  await addPerson(bench, 'ben', 'bench');
  await addPerson(bench, 'hanna', 'hand');
  await addPerson(bench, 'ines', 'looker', { asKnownOn: '2027-06-07' });
  as = {
    ruth: await signedIn(bench, 'ruth'),
    olga: await signedIn(bench, 'olga'),
    ben: await signedIn(bench, 'ben'),
    hanna: await signedIn(bench, 'hanna'),
    ines: await signedIn(bench, 'ines'),
  };
  const sent = await send(as.ruth, [weighing(1, 'ruth', '2024-05-01'), weighing(2, 'ruth', '2027-06-01'), price(3)]);
  expect(sent.status, sent.text).toBe(200);
  const put = await as.ruth.ask('PUT', of('/households/h-1'), ada);
  expect(put.status, put.text).toBe(200);
});
afterAll(() => bench.close());

const of = (rest: string) => `/api/farms/${bench.farm}${rest}`;
const ada = {
  size: 'small',
  drop: 'Mill Lane',
  from: '2027-01-01',
  to: null,
  person: {
    name: 'Ada Example',
    email: 'ada@example.org',
    phone: null,
    address: '1 Any Street',
    without: ['beetroot'],
    note: 'gate "B"',
  },
};

function idOf(number: number): EntryId {
  return `01900000-0000-7000-8000-${String(number).padStart(12, '0')}` as EntryId;
}

interface Made {
  readonly by: string;
  readonly doneOn: string;
  readonly body: object;
  readonly amends?: EntryId | null;
}

function entry(number: number, { by, doneOn, body, amends = null }: Made) {
  return {
    v: 1,
    id: idOf(number),
    farm: bench.farm,
    doneOn,
    doneAt: '07:30',
    enteredAt: '2027-06-08T05:30:00Z',
    by: asId(by),
    device: asId('phone'),
    deviceSeq: number,
    body,
    amends,
    reason: null,
  };
}
const weighing = (number: number, by: string, doneOn = '2027-06-07') =>
  entry(number, { by, doneOn, body: { kind: 'weighing', crop: 'carrot-maincrop', store: 'cold-store', kg: number } });
const correcting = (amends: number, made: ReturnType<typeof weighing>) => ({
  ...made,
  amends: idOf(amends),
  reason: 'misread',
});
const price = (number: number, by = 'ruth') => {
  const value = { crop: 'carrot-maincrop', from: '2027-06-08', unit: 'kg', priceMinor: 4242 };
  const body = { kind: 'set', subject: 'prices', key: 'carrot-maincrop|kg|2027-06-08', value };
  return entry(number, { by, doneOn: '2027-06-08', body });
};

const send = (own: Browser, entries: readonly unknown[]) => own.ask('POST', of('/entries'), { entries });

async function bookAs(own: Browser) {
  const entries: { doneOn: string; body: { kind: string; subject?: string } | null; id: string; receivedAt: string }[] =
    [];
  for (let after = 0, more = true; more; ) {
    const answer = await own.ask('GET', of(`/entries?after=${after}`));
    const page = httpShapes.entriesPage.parse(answer.json());
    entries.push(...(page.entries as unknown as typeof entries));
    ({ readTo: after, more } = page);
  }
  return entries;
}

describe('the book', () => {
  test('of a hand holds no prices, no rows about people, and no record older than 24 months', async () => {
    const [all, seen] = [await bookAs(as.ruth), await bookAs(as.hanna)];
    const ids = seen.map(({ id }) => id);
    expect(ids).not.toContain(idOf(1));
    expect(ids).toContain(idOf(2));
    expect(ids).not.toContain(idOf(3));
    const subjects = new Set(seen.map(({ body }) => body?.subject));
    expect(subjects.has('prices') || subjects.has('people')).toBe(false);
    expect(subjects.has('plots')).toBe(true);
    const old = seen.filter(({ body, doneOn }) => body?.kind === 'harvest' && doneOn < '2025-06-08');
    expect(old).toEqual([]);
    expect(seen.length).toBeLessThan(all.length);
    expect(JSON.stringify(seen)).not.toContain('Minor');
  });

  test('of the office holds everything', async () => {
    expect((await bookAs(as.olga)).map(({ id }) => id)).toEqual((await bookAs(as.ruth)).map(({ id }) => id));
  });

  test('of a looker as of a day ends with that day', async () => {
    const known = await bookAs(as.ines);
    expect(known.length).toBeGreaterThan(0);
    expect(known.filter(({ receivedAt }) => receivedAt >= '2027-06-07T23:00:00Z')).toEqual([]);
    await addPerson(bench, 'ivor', 'looker', { asKnownOn: '2027-06-08' });
    const seen = await bookAs(await signedIn(bench, 'ivor'));
    expect(seen.map(({ id }) => id)).toContain(idOf(1));
    expect(JSON.stringify(seen)).not.toContain('Minor');
  });
});

describe('the plan', () => {
  test('of a hand has no figure of money in it, and neither do findings, derivations or the people list', async () => {
    for (const path of ['/plan', '/findings', '/why/net/a', '/people']) {
      const answer = await as.hanna.ask('GET', of(path));
      expect(answer.status, path).toBe(200);
      expect(/Minor":\s*\d/.test(answer.text), path).toBe(false);
    }
  });

  test('of a looker as of a day is planned on that day', async () => {
    const answer = await as.ines.ask('GET', of('/plan'));
    expect(answer.status, answer.text.slice(0, 200)).toBe(200);
    expect((answer.json() as { today: string }).today).toBe('2027-06-07');
  });
});

describe('what is entered', () => {
  test.each([
    ['a price by a hand', 'hanna', () => price(10, 'hanna'), 'entry-not-for-your-role'],
    ['a weighing by a hand in the name of another', 'hanna', () => weighing(11, 'ruth'), 'entry-by-another'],
    [
      'a correction by a hand of what another recorded',
      'hanna',
      () => correcting(2, weighing(12, 'hanna')),
      'amends-of-another',
    ],
    [
      'a sowing by the packing bench',
      'ben',
      () => entry(13, { by: 'ben', doneOn: '2027-06-07', body: sowing }),
      'entry-not-for-your-role',
    ],
    ['anything by a looker', 'ines', () => weighing(14, 'ines'), 'not-for-your-role'],
  ] as const)('%s is refused, and nothing is written', async (_what, who, make, code) => {
    const before = (await bookAs(as.ruth)).length;
    const answer = await send(as[who], [weighing(90, who), make()]);
    expect([answer.status, answer.code()]).toEqual([403, code]);
    expect((await bookAs(as.ruth)).length).toBe(before);
  });

  test('a weighing of their own by hand, bench, office and grower is taken', async () => {
    for (const [at, who] of (['hanna', 'ben', 'olga', 'ruth'] as const).entries())
      expect((await send(as[who], [weighing(100 + at, who)])).status, who).toBe(200);
    expect((await send(as.hanna, [correcting(100, weighing(110, 'hanna'))])).status).toBe(200);
    expect((await send(as.olga, [correcting(110, weighing(111, 'olga'))])).status).toBe(200);
  });

  const sowing = {
    kind: 'sowing',
    stand: null,
    plot: 'a',
    span: { fromShare: 0, toShare: 1 },
    what: 'carrot-maincrop',
    standKind: 'crop',
    variety: null,
    seedLot: null,
    seedKg: null,
    undersownIn: null,
    expectedTo: null,
  };
});

describe('households', () => {
  test('are seen whole by the office, for packing by the bench, and by nobody else', async () => {
    const whole = peopleShapes.households.parse((await as.olga.ask('GET', of('/households'))).json());
    expect(whole.households[0]?.person).toEqual(ada.person);
    expect(whole.bySize).toEqual({ small: 1 });
    const packed = await as.ben.ask('GET', of('/households'));
    expect(packed.text).toContain('beetroot');
    expect(packed.text).not.toMatch(/ada@example\.org|Any Street|gate/);
    expect((await as.hanna.ask('GET', of('/households'))).status).toBe(403);
    expect((await as.ines.ask('GET', of('/households'))).status).toBe(403);
  });

  test('can be handed out and erased: the person is gone from the store, and the count stays', async () => {
    const put = await as.olga.ask('PUT', of('/households/h-2'), {
      ...ada,
      person: { ...ada.person, name: 'Quenya Vanish' },
    });
    expect(put.status).toBe(200);
    const out = peopleShapes.householdExport.parse((await as.olga.ask('GET', of('/households/h-2/export'))).json());
    expect(out).toMatchObject({ household: { person: { name: 'Quenya Vanish' } }, keptUntil: null });
    const erased = peopleShapes.household.parse((await as.olga.ask('POST', of('/households/h-2/erase'))).json());
    expect(erased.person).toBeNull();
    const after = await as.olga.ask('GET', of('/households'));
    expect(after.text).not.toContain('Quenya');
    expect(peopleShapes.households.parse(after.json()).bySize).toEqual({ small: 2 });
    expect((await as.olga.ask('PUT', of('/households/h-2'), ada)).code()).toBe('household-erased');
    expect(JSON.stringify(await bookAs(as.ruth))).not.toMatch(/Quenya|Ada Example/);
  });
});

describe('people', () => {
  test('are invited by a link that opens once, and come in with a password of their own', async () => {
    const made = await as.ruth.ask('POST', of('/invitations'), { person: 'nils', name: 'Nils', role: 'hand' });
    expect(made.status, made.text).toBe(201);
    const { link } = peopleShapes.invited.parse(made.json());
    expect(link).toMatch(/^http:\/\/127\.0\.0\.1:7345\/invitation#/);
    const { browser } = await import('./people-bench.ts');
    const nils = browser(bench.app);
    const looked = peopleShapes.invitationSeen.parse(
      (await nils.ask('POST', '/api/invitations/look', { link })).json(),
    );
    expect(looked).toMatchObject({ person: 'nils', role: 'hand', farmName: 'Oddlethorpe Growers' });
    expect((await nils.ask('POST', '/api/invitations/accept', { link, password: 'short' })).code()).toBe(
      'password-short',
    );
    const word = 'a rainy week in March';
    expect((await nils.ask('POST', '/api/invitations/accept', { link, password: word })).status).toBe(200);
    expect((await nils.ask('POST', '/api/invitations/accept', { link, password: word })).code()).toBe(
      'invitation-over',
    );
    const came = await nils.ask('POST', '/api/sign-in', { farm: bench.farm, person: 'nils', password: word });
    expect(came.status).toBe(200);
    expect((await as.ruth.ask('POST', of('/people/nils'), { mayEnter: false })).status).toBe(200);
    expect((await nils.ask('GET', of('/plan'))).status).toBe(401);
  });

  test('never lose their last grower', async () => {
    for (const change of [{ mayEnter: false }, { role: 'hand' }])
      expect((await as.ruth.ask('POST', of('/people/ruth'), change)).code()).toBe('last-grower');
  });
});
