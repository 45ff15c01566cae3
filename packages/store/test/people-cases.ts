/** The law for people who sign in and for households, whichever database is under the store. */
import { verifyBook } from '@leywright/book';
import { asDay, asId, type FarmId, type PersonId } from '@leywright/measures';
import { afterEach, describe, expect, test } from 'vitest';
import type { Household, Invitation, NewAccount, Session, Store } from '../src/index.ts';
import { entry, ours, receipt, theirs } from './entries.ts';
import type { StoreMaker } from './store-cases.ts';

const ruth = asId<PersonId>('ruth');
const at = '2027-06-08T06:00:00.000Z';
const later = '2027-06-09T06:00:00.000Z';

const account = (farm: FarmId = ours, person = ruth): NewAccount => ({
  farm,
  person,
  name: 'Ruth Ambler',
  role: 'grower',
  asKnownOn: null,
  passwordHash: '$argon2id$x',
  madeAt: at,
});

const session = (farm: FarmId, id: string): Session => ({
  farm,
  tokenHash: `hash-${id}`,
  id,
  person: ruth,
  madeAt: at,
  seenAt: at,
  endsAt: later,
  device: 'Firefox',
});

const invitation = (person: string): Invitation => ({
  farm: ours,
  tokenHash: `hash-${person}`,
  id: `invitation-${person}`,
  person: asId(person),
  name: 'Colin',
  role: 'looker',
  asKnownOn: asDay('2027-01-31'),
  madeBy: ruth,
  madeAt: at,
  endsAt: later,
});

const household: Omit<Household, 'erasedAt'> = {
  id: 'h-7f3a',
  size: 'small',
  drop: 'Mill Lane',
  from: asDay('2026-05-01'),
  to: null,
  person: {
    name: 'Ada Example',
    email: 'ada@example.org',
    phone: null,
    address: '1 Any Street',
    without: ['beetroot'],
    note: 'gate "B", 💧',
  },
};

export function peopleCases({ name, make }: StoreMaker): void {
  describe(`people and households on ${name}`, () => {
    const undo: (() => Promise<void>)[] = [];
    afterEach(async () => {
      for (const step of undo.splice(0).reverse()) await step();
    });
    const twoFarms: TwoFarms = async () => {
      const made = await make();
      undo.push(made.remove);
      const opened = await made.open();
      if (opened.kind !== 'open') throw new Error(opened.problem.code);
      undo.push(() => opened.store.close());
      for (const id of [ours, theirs])
        await opened.store.foundFarm({ id, name: id, sample: false, book: [], entries: [] }, receipt);
      return opened.store;
    };
    accountCases(twoFarms);
    invitationCases(twoFarms);
    sessionCases(twoFarms);
    householdCases(twoFarms);
  });
}

type TwoFarms = () => Promise<Store>;

function accountCases(twoFarms: TwoFarms): void {
  test('an account is of one farm; the same name on another farm is another person', async () => {
    const { people } = await twoFarms();
    expect(await people.addAccount(account())).toBe('added');
    expect(await people.addAccount(account())).toBe('id-taken');
    expect(await people.account(theirs, ruth)).toBeNull();
    expect(await people.addAccount(account(theirs))).toBe('added');
    await people.changeAccount(theirs, ruth, { role: 'hand', secondFactor: { secret: 'ABC', isOn: true } });
    expect(await people.account(theirs, ruth)).toMatchObject({ role: 'hand', secondFactor: { isOn: true } });
    expect(await people.account(ours, ruth)).toMatchObject({ role: 'grower', secondFactor: null, failures: 0 });
    expect((await people.accounts(ours)).map((one) => one.farm)).toEqual([ours]);
    expect(await people.everyone()).toHaveLength(2);
  });

  test('a time step of the second factor is taken once, and none before it', async () => {
    const { people } = await twoFarms();
    await people.addAccount(account());
    const taken = await Promise.all([59, 59].map((step) => people.takeStep(ours, ruth, step)));
    expect([...taken].sort()).toEqual([false, true]);
    expect(await people.takeStep(ours, ruth, 58)).toBe(false);
    expect(await people.takeStep(ours, ruth, 60)).toBe(true);
  });

  test('a recovery code is taken once; new ones put the old out', async () => {
    const { people } = await twoFarms();
    await people.addAccount(account());
    await people.putRecoveryCodes(ours, ruth, ['a', 'b']);
    expect(await people.takeRecoveryCode(ours, ruth, 'a')).toBe(true);
    expect(await people.takeRecoveryCode(ours, ruth, 'a')).toBe(false);
    expect(await people.takeRecoveryCode(theirs, ruth, 'b')).toBe(false);
    await people.putRecoveryCodes(ours, ruth, ['c']);
    expect(await people.takeRecoveryCode(ours, ruth, 'b')).toBe(false);
    expect(await people.recoveryCodesLeft(ours, ruth)).toBe(1);
  });

  test('failures are counted, also many at once', async () => {
    const { people } = await twoFarms();
    await people.addAccount(account());
    const counted = await Promise.all(Array.from({ length: 8 }, () => people.countFailure(ours, ruth)));
    expect([...counted].sort()).toEqual([1, 2, 3, 4, 5, 6, 7, 8]);
    expect(await people.countFailure(theirs, ruth)).toBe(0);
  });
}

function invitationCases(twoFarms: TwoFarms): void {
  test('an invitation makes one account, once', async () => {
    const { people } = await twoFarms();
    await people.addInvitation(invitation('colin'));
    expect(await people.invitation(theirs, 'hash-colin')).toBeNull();
    expect(await people.invitation(ours, 'hash-colin')).toEqual(invitation('colin'));
    const answers = await Promise.all(
      [1, 2].map(() => people.acceptInvitation(invitation('colin'), '$argon2id$y', at)),
    );
    expect([...answers].sort()).toEqual(['accepted', 'gone']);
    expect(await people.account(ours, asId('colin'))).toMatchObject({ role: 'looker', asKnownOn: '2027-01-31' });
    expect(await people.invitations(ours)).toEqual([]);
  });

  test('to someone who has an account an invitation gives a new password, leaves role and second factor, and signs them out', async () => {
    const { people } = await twoFarms();
    await people.addAccount(account());
    await people.changeAccount(ours, ruth, {
      secondFactor: { secret: 'ABC', isOn: true },
      failures: 9,
      waitUntil: later,
    });
    await people.addSession(session(ours, 'one'));
    await people.addInvitation(invitation('ruth'));
    expect(await people.acceptInvitation(invitation('ruth'), '$argon2id$new', at)).toBe('accepted');
    expect(await people.account(ours, ruth)).toMatchObject({
      role: 'grower',
      passwordHash: '$argon2id$new',
      secondFactor: { isOn: true },
      failures: 0,
      waitUntil: null,
    });
    expect(await people.sessions(ours, ruth)).toEqual([]);
  });

  test('an invitation taken back opens nothing', async () => {
    const { people } = await twoFarms();
    await people.addInvitation(invitation('colin'));
    expect(await people.dropInvitation(theirs, 'invitation-colin')).toBe(false);
    expect(await people.dropInvitation(ours, 'invitation-colin')).toBe(true);
    expect(await people.acceptInvitation(invitation('colin'), '$argon2id$y', at)).toBe('gone');
    expect(await people.account(ours, asId('colin'))).toBeNull();
  });
}

function sessionCases(twoFarms: TwoFarms): void {
  test('sessions are of one farm and one person, and end one by one or all but one', async () => {
    const { people } = await twoFarms();
    for (const id of ['one', 'two', 'three']) await people.addSession(session(ours, id));
    await people.addSession(session(theirs, 'one'));
    expect(await people.session(theirs, 'hash-two')).toBeNull();
    expect(await people.endSession(ours, asId('colin'), 'two')).toBe(false);
    expect(await people.endSession(ours, ruth, 'two')).toBe(true);
    await people.endSessions(ours, ruth, 'three');
    expect((await people.sessions(ours, ruth)).map((one) => one.id)).toEqual(['three']);
    expect(await people.session(theirs, 'hash-one')).not.toBeNull();
  });

  test('sessions and invitations past their end are taken away', async () => {
    const { people } = await twoFarms();
    await people.addSession(session(ours, 'one'));
    await people.addInvitation(invitation('colin'));
    await people.dropEnded(ours, later);
    expect([await people.session(ours, 'hash-one'), await people.invitations(ours)]).toMatchObject([
      { id: 'one' },
      [{}],
    ]);
    await people.dropEnded(ours, '2027-06-10T00:00:00.000Z');
    expect([await people.session(ours, 'hash-one'), await people.invitations(ours)]).toEqual([null, []]);
  });
}

function householdCases(twoFarms: TwoFarms): void {
  test('a household is kept word for word, and of one farm', async () => {
    const { households } = await twoFarms();
    await households.putHousehold(ours, household);
    expect(await households.household(ours, household.id)).toEqual({ ...household, erasedAt: null });
    expect(await households.household(theirs, household.id)).toBeNull();
    await households.putHousehold(ours, { ...household, size: 'large' });
    expect((await households.households(ours)).map((one) => one.size)).toEqual(['large']);
    expect(await households.households(theirs)).toEqual([]);
  });

  test('erased, its person is gone for good, its code, size and days count on, and the book verifies', async () => {
    const store = await twoFarms();
    await store.appendEntries(ours, [entry(1), entry(2)], receipt);
    await store.households.putHousehold(ours, household);
    expect(await store.households.eraseHousehold(theirs, household.id, at)).toBe(false);
    expect(await store.households.eraseHousehold(ours, household.id, at)).toBe(true);
    const erased = { ...household, person: null, erasedAt: at };
    expect(await store.households.households(ours)).toEqual([erased]);
    expect(await store.households.putHousehold(ours, household)).toBe(false);
    await store.households.eraseHousehold(ours, household.id, later);
    expect(await store.households.household(ours, household.id)).toEqual(erased);
    expect(verifyBook(await store.entriesAfter(ours, 0, 10))).toMatchObject({ ok: true, count: 2 });
  });

  test('those who left before a day are erased, others stay', async () => {
    const { households } = await twoFarms();
    const left = (id: string, to: string | null) => ({ ...household, id, to: to === null ? null : asDay(to) });
    for (const one of [left('gone', '2026-05-31'), left('later', '2026-06-08'), left('here', null)])
      await households.putHousehold(ours, one);
    await households.putHousehold(theirs, left('gone', '2026-05-31'));
    expect(await households.eraseLeftBefore(ours, asDay('2026-06-08'), at)).toBe(1);
    expect(await households.eraseLeftBefore(ours, asDay('2026-06-08'), at)).toBe(0);
    expect((await households.households(ours)).map((one) => [one.id, one.person === null])).toEqual([
      ['gone', true],
      ['here', false],
      ['later', false],
    ]);
    expect((await households.household(theirs, 'gone'))?.person).not.toBeNull();
  });

  test('entries are found by their ids, in this farm alone', async () => {
    const store = await twoFarms();
    await store.appendEntries(ours, [entry(1), entry(2)], receipt);
    const ids = [entry(2).id, entry(9).id];
    expect((await store.entriesById(ours, ids)).map((one) => one.id)).toEqual([entry(2).id]);
    expect(await store.entriesById(theirs, ids)).toEqual([]);
  });
}
