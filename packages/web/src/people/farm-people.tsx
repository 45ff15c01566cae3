import { type FormEvent, useCallback, useEffect, useState } from 'react';
import { ask, type InvitationShown, type Person } from './ask.ts';
import { Field, Refusals, readForm } from './fields.tsx';
import { peopleWords } from './people-words.ts';

const said = peopleWords.place;
const roles = Object.entries(peopleWords.roles);

interface Linked {
  readonly name: string;
  readonly link: string;
}

/** The people of a farm; for growers, who signs in, and the ways to invite and to end. */
export function FarmPeople({ farm, isGrower }: { readonly farm: string; readonly isGrower: boolean }) {
  const [people, setPeople] = useState<readonly Person[]>([]);
  const [invitations, setInvitations] = useState<readonly InvitationShown[]>([]);
  const [sentences, setSentences] = useState<readonly string[]>([]);
  const [linked, setLinked] = useState<Linked | null>(null);
  const path = `/api/farms/${encodeURIComponent(farm)}`;
  const look = useCallback(async () => {
    const told = await ask<{ readonly people: readonly Person[] }>('GET', `${path}/people`, peopleWords.outOfReach);
    if (told.kind === 'done') setPeople(told.value.people);
    else setSentences(told.sentences);
    if (!isGrower) return;
    const open = await ask<{ readonly invitations: readonly InvitationShown[] }>(
      'GET',
      `${path}/invitations`,
      peopleWords.outOfReach,
    );
    if (open.kind === 'done') setInvitations(open.value.invitations);
  }, [path, isGrower]);
  useEffect(() => void look(), [look]);
  const act = async (method: 'POST' | 'DELETE', rest: string, body?: unknown) => {
    const told = await ask(method, path + rest, peopleWords.outOfReach, body);
    setSentences(told.kind === 'done' ? [] : told.sentences);
    await look();
  };
  const invite = async (wish: {
    readonly person: string;
    readonly name: string;
    readonly role: string;
    readonly asKnownOn?: string | null;
  }) => {
    const told = await ask<{ readonly link: string }>('POST', `${path}/invitations`, peopleWords.outOfReach, wish);
    setSentences(told.kind === 'done' ? [] : told.sentences);
    setLinked(told.kind === 'done' ? { name: wish.name, link: told.value.link } : null);
    await look();
    return told.kind === 'done';
  };
  return (
    <section className="farm-people">
      <h2>{said.all}</h2>
      {people.length === 0 ? (
        <p>{said.none}</p>
      ) : (
        <PeopleTable people={people} isGrower={isGrower} act={act} invite={invite} />
      )}
      <Invitations invitations={invitations} onTakeBack={(id) => void act('DELETE', `/invitations/${id}`)} />
      {isGrower ? <InviteForm onInvite={invite} /> : null}
      <Refusals sentences={sentences} />
      {linked === null ? null : (
        <p className="invite-link" role="status">
          {said.link(linked.name)} <code>{linked.link}</code>
        </p>
      )}
    </section>
  );
}

type Invite = (wish: {
  readonly person: string;
  readonly name: string;
  readonly role: string;
  readonly asKnownOn?: string | null;
}) => Promise<boolean>;

interface StandingProps {
  readonly person: Person;
  readonly isGrower: boolean;
  readonly act: (method: 'POST' | 'DELETE', rest: string, body?: unknown) => Promise<void>;
  readonly invite: Invite;
}

interface InvitationsProps {
  readonly invitations: readonly InvitationShown[];
  readonly onTakeBack: (id: string) => void;
}

function Invitations({ invitations, onTakeBack }: InvitationsProps) {
  return invitations.map(({ id, name, role, endsAt }) => (
    <p key={id}>
      {name}, {peopleWords.roles[role]}: {said.invitedUntil(endsAt.slice(0, 10))}{' '}
      <button type="button" className="link" onClick={() => onTakeBack(id)}>
        {said.takeBack}
      </button>
    </p>
  ));
}

type TableProps = Omit<StandingProps, 'person'> & { readonly people: readonly Person[] };

function PeopleTable({ people, ...ways }: TableProps) {
  return (
    <table className="people-table">
      <thead>
        <tr>
          <th scope="col">{said.name}</th>
          <th scope="col">{said.person}</th>
          <th scope="col">{said.role}</th>
          <th scope="col">{said.standing}</th>
        </tr>
      </thead>
      <tbody>
        {people.map((person) => (
          <tr key={person.person}>
            <th scope="row">{person.name}</th>
            <td>{person.person}</td>
            <td>{peopleWords.roles[person.role]}</td>
            <td>
              <PersonStanding person={person} {...ways} />
            </td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}

function PersonStanding({ person, isGrower, act, invite }: StandingProps) {
  const { account } = person;
  if (account === null) return isGrower ? said.mayNot : null;
  const rest = `/people/${encodeURIComponent(person.person)}`;
  if (account.endedAt !== null)
    return (
      <>
        {said.ended(account.endedAt.slice(0, 10))}{' '}
        <button type="button" className="link" onClick={() => void act('POST', rest, { mayEnter: true })}>
          {said.giveBack}
        </button>
      </>
    );
  return (
    <>
      {said.may}{' '}
      <button type="button" className="link" onClick={() => void act('DELETE', `${rest}/sessions`)}>
        {said.signOutOf}
      </button>{' '}
      <button type="button" className="link" onClick={() => void invite(person)}>
        {said.newPassword}
      </button>{' '}
      <button type="button" className="link" onClick={() => void act('POST', rest, { mayEnter: false })}>
        {said.endAccount}
      </button>
    </>
  );
}

function InviteForm({ onInvite }: { readonly onInvite: Invite }) {
  const send = async (event: FormEvent<HTMLFormElement>) => {
    event.preventDefault();
    const form = event.currentTarget;
    const isMade = await onInvite({
      person: (readForm(form, 'person') ?? '').trim(),
      name: readForm(form, 'name') ?? '',
      role: readForm(form, 'role') ?? '',
      asKnownOn: readForm(form, 'asKnownOn'),
    });
    if (isMade) form.reset();
  };
  return (
    <form onSubmit={send} className="door-form">
      <h3>{said.invite}</h3>
      <Field label={said.name} name="name" required autoComplete="off" />
      <Field label={said.person} name="person" required autoComplete="off" autoCapitalize="none" />
      <p className="field">
        <label>
          {said.role}
          <select name="role" defaultValue="hand">
            {roles.map(([role, name]) => (
              <option key={role} value={role}>
                {name}
              </option>
            ))}
          </select>
        </label>
      </p>
      <Field label={said.asKnownOn} name="asKnownOn" type="date" />
      <button type="submit" className="button">
        {said.inviteGo}
      </button>
    </form>
  );
}
