/** The people of a farm: names for the ids in the book, and for growers who can sign in and with what. */
import { httpShapes, peopleShapes } from '@leywright/api';
import type { Role } from '@leywright/book';
import { type FarmId, type PersonId, readDay, readId } from '@leywright/measures';
import type { Account, AccountChange } from '@leywright/store';
import type { FastifyInstance, FastifyReply } from 'fastify';
import { z } from 'zod';
import { refuse } from '../../app/answer.ts';
import type { InputTypes } from '../../app/input-types.ts';
import { paramChars } from '../../app/limits.ts';
import { askedFarm, farmParams } from '../../http/asked-plan.ts';
import { isLastGrower } from '../standing.ts';
import { roleOf } from '../visitor.ts';
import { type PeopleDesk, toldSession } from './signed-in.ts';

const personParams = farmParams.extend({ person: z.string().max(paramChars) });
const refusals = { 404: httpShapes.problems, 409: httpShapes.problems, 422: httpShapes.problems };

export function personRoutes(app: FastifyInstance, people: PeopleDesk): void {
  listRoute(app, people);
  changeRoute(app, people);
  sessionRoutes(app, people);
}

function listRoute(app: FastifyInstance, { desk }: PeopleDesk): void {
  app.withTypeProvider<InputTypes>().get(
    '/api/farms/:farm/people',
    {
      schema: {
        summary: 'People of the farm',
        params: farmParams,
        response: { 200: peopleShapes.people, 404: httpShapes.problems },
      },
    },
    async (request, reply) => {
      const open = await askedFarm(desk, request, reply);
      if (open === null) return reply;
      const isGrower = roleOf(request.visitor) === 'grower';
      const accounts = await desk.store.people.accounts(open.stored.id);
      const signing = accounts.map((account) => ({ ...named(account), account: isGrower ? told(account) : null }));
      const inBook = open.farm.people
        .filter(({ id }) => !accounts.some(({ person }) => person === id))
        .map(({ id, name, role }) => ({ person: id, name, role, account: null }));
      return { people: [...signing, ...inBook] };
    },
  );
}

function named({ person, name, role }: Account) {
  return { person, name, role };
}

function told({ asKnownOn, secondFactor, endedAt }: Account) {
  return { asKnownOn, secondFactor: secondFactor?.isOn === true ? 'on' : 'off', endedAt } as const;
}

function changeRoute(app: FastifyInstance, people: PeopleDesk): void {
  const { desk, access } = people;
  app.withTypeProvider<InputTypes>().post(
    '/api/farms/:farm/people/:person',
    {
      schema: {
        summary: 'Change name, role or day of someone who signs in; end their account or give it back',
        params: personParams,
        body: peopleShapes.personChange,
        response: { 200: peopleShapes.done, ...refusals },
      },
    },
    async (request, reply) => {
      const account = await askedAccount(people, request.params, reply);
      if (account === null) return reply;
      const change = request.body;
      const losesGrower = change.mayEnter === false || (change.role !== undefined && change.role !== 'grower');
      if (losesGrower && (await isLastGrower(desk.store, account.farm, account.person)))
        return refuse(reply, 409, 'last-grower');
      const role = change.role ?? account.role;
      const day = dayAfter(account, role, change.asKnownOn);
      if (day !== null && role !== 'looker') return refuse(reply, 422, 'day-for-lookers');
      await desk.store.people.changeAccount(account.farm, account.person, {
        role,
        asKnownOn: day,
        ...(change.name === undefined ? {} : { name: change.name }),
        ...endingOf(change.mayEnter, new Date(access.nowMs()).toISOString()),
      });
      if (change.mayEnter === false) await desk.store.people.endSessions(account.farm, account.person);
      return { done: true };
    },
  );
}

/** The day a looker is held to, after a change: as asked; else as it was, and none for who is no looker any more. */
function dayAfter({ asKnownOn }: Account, role: Role, asked: string | null | undefined) {
  if (asked !== undefined) return asked === null ? null : readDay(asked);
  return role === 'looker' ? asKnownOn : null;
}

function endingOf(mayEnter: boolean | undefined, now: string): AccountChange {
  if (mayEnter === undefined) return {};
  return mayEnter ? { endedAt: null, failures: 0, waitUntil: null } : { endedAt: now };
}

function sessionRoutes(app: FastifyInstance, people: PeopleDesk): void {
  const { desk } = people;
  const routes = app.withTypeProvider<InputTypes>();
  routes.get(
    '/api/farms/:farm/people/:person/sessions',
    {
      schema: {
        summary: 'Browsers someone is signed in with',
        params: personParams,
        response: { 200: peopleShapes.sessions, ...refusals },
      },
    },
    async (request, reply) => {
      const account = await askedAccount(people, request.params, reply);
      if (account === null) return reply;
      const own = request.visitor.kind === 'signed-in' ? request.visitor.session.id : null;
      const sessions = await desk.store.people.sessions(account.farm, account.person);
      return { sessions: sessions.map((session) => toldSession(session, own)) };
    },
  );
  routes.delete(
    '/api/farms/:farm/people/:person/sessions',
    {
      schema: {
        summary: 'End every session of someone',
        params: personParams,
        response: { 200: peopleShapes.done, ...refusals },
      },
    },
    async (request, reply) => {
      const account = await askedAccount(people, request.params, reply);
      if (account === null) return reply;
      await desk.store.people.endSessions(account.farm, account.person);
      return { done: true };
    },
  );
}

/** Refuses and answers null when there is no such farm or nobody of that name who signs in. */
async function askedAccount(
  { desk }: PeopleDesk,
  asked: { readonly farm: string; readonly person: string },
  reply: FastifyReply,
): Promise<Account | null> {
  const [farm, person] = [readId<FarmId>(asked.farm), readId<PersonId>(asked.person)];
  const account = farm === null || person === null ? null : await desk.store.people.account(farm, person);
  if (account === null) refuse(reply, 404, 'no-such-person', { found: asked.person });
  return account;
}
