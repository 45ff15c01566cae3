/** Invitations by link: growers make them, whoever holds one opens it once. */
import { httpShapes, peopleShapes } from '@leywright/api';
import { asId, type FarmId, type PersonId, readDay, readId } from '@leywright/measures';
import type { Invitation } from '@leywright/store';
import type { FastifyInstance } from 'fastify';
import { z } from 'zod';
import { refusal, refuse, sendProblems } from '../../app/answer.ts';
import type { InputTypes } from '../../app/input-types.ts';
import { paramChars } from '../../app/limits.ts';
import { slowly } from '../../guards/rate.ts';
import { farmParams } from '../../http/asked-plan.ts';
import { invite, linkOf, usualInviteDays } from '../invite.ts';
import { passwordProblems } from '../password.ts';
import { readTicket } from '../ticket.ts';
import { personOf } from '../visitor.ts';
import type { PeopleDesk } from './signed-in.ts';

const refusals = { 404: httpShapes.problems, 409: httpShapes.problems, 422: httpShapes.problems };
/** Who invites where nobody has signed in. */
const atTheMachine = asId<PersonId>('at-the-machine');

export function invitationRoutes(app: FastifyInstance, people: PeopleDesk): void {
  listRoute(app, people);
  inviteRoute(app, people);
  takeBackRoute(app, people);
  lookRoute(app, people);
  acceptRoute(app, people);
}

function listRoute(app: FastifyInstance, { desk, access }: PeopleDesk): void {
  app.withTypeProvider<InputTypes>().get(
    '/api/farms/:farm/invitations',
    {
      schema: {
        summary: 'Invitations that are open',
        params: farmParams,
        response: { 200: peopleShapes.invitations, ...refusals },
      },
    },
    async (request, reply) => {
      const farm = readId<FarmId>(request.params.farm);
      if (farm === null || (await desk.store.farm(farm)) === null)
        return refuse(reply, 404, 'no-such-farm', { found: request.params.farm });
      const open = (await desk.store.people.invitations(farm)).filter((one) => !isOver(one, access.nowMs()));
      return { invitations: open.map(told) };
    },
  );
}

function inviteRoute(app: FastifyInstance, { desk, access }: PeopleDesk): void {
  app.withTypeProvider<InputTypes>().post(
    '/api/farms/:farm/invitations',
    {
      schema: {
        summary: 'Invite someone, or give someone a link to a new password',
        params: farmParams,
        body: peopleShapes.newInvitation,
        response: { 201: peopleShapes.invited, ...refusals },
      },
    },
    async (request, reply) => {
      const farm = readId<FarmId>(request.params.farm);
      if (farm === null || (await desk.store.farm(farm)) === null)
        return refuse(reply, 404, 'no-such-farm', { found: request.params.farm });
      const { person, name, role, asKnownOn = null, days } = request.body;
      const invited = await invite(
        { store: desk.store, random: desk.random, nowMs: access.nowMs },
        {
          farm,
          person,
          name,
          role,
          asKnownOn: asKnownOn === null ? null : readDay(asKnownOn),
          days: days ?? usualInviteDays,
          madeBy: personOf(request.visitor) ?? atTheMachine,
        },
      );
      if (invited.kind === 'refused')
        return refuse(reply, invited.code === 'person-ended' ? 409 : 422, invited.code, { found: person });
      return reply
        .code(201)
        .send({ invitation: told(invited.invitation), link: linkOf(access.origin(), invited.ticket) });
    },
  );
}

function takeBackRoute(app: FastifyInstance, { desk }: PeopleDesk): void {
  app.withTypeProvider<InputTypes>().delete(
    '/api/farms/:farm/invitations/:invitation',
    {
      schema: {
        summary: 'Take an invitation back',
        params: farmParams.extend({ invitation: z.string().max(paramChars) }),
        response: { 200: peopleShapes.done, ...refusals },
      },
    },
    async (request, reply) => {
      const farm = readId<FarmId>(request.params.farm);
      const isGone = farm !== null && (await desk.store.people.dropInvitation(farm, request.params.invitation));
      return isGone ? { done: true } : refuse(reply, 404, 'no-such-invitation');
    },
  );
}

function lookRoute(app: FastifyInstance, people: PeopleDesk): void {
  app.withTypeProvider<InputTypes>().post(
    '/api/invitations/look',
    {
      ...slowly(people.access),
      schema: {
        summary: 'What an invitation is for; it stays open',
        body: peopleShapes.invitationLink,
        response: { 200: peopleShapes.invitationSeen, ...refusals },
      },
    },
    async (request, reply) => {
      const open = await openInvitation(people, request.body.link);
      if (open === null) return refuse(reply, 404, 'invitation-over');
      const { farm, person, name, role, endsAt } = open;
      return { farm, farmName: (await people.desk.store.farm(farm))?.name ?? farm, person, name, role, endsAt };
    },
  );
}

function acceptRoute(app: FastifyInstance, people: PeopleDesk): void {
  const { desk, access } = people;
  app.withTypeProvider<InputTypes>().post(
    '/api/invitations/accept',
    {
      ...slowly(access),
      schema: {
        summary: 'Take an invitation up with a password of one’s own; then sign in',
        body: peopleShapes.acceptance,
        response: { 200: peopleShapes.accepted, ...refusals },
      },
    },
    async (request, reply) => {
      const open = await openInvitation(people, request.body.link);
      if (open === null) return refuse(reply, 404, 'invitation-over');
      const problems = passwordProblems(request.body.password, open.person);
      if (problems.length > 0)
        return sendProblems(
          reply,
          422,
          problems.map((code) => refusal(code, {}, { column: 'password' })),
        );
      const passwordHash = await access.passwords.hash(request.body.password);
      const at = new Date(access.nowMs()).toISOString();
      const taken = await desk.store.people.acceptInvitation(open, passwordHash, at);
      return taken === 'gone' ? refuse(reply, 404, 'invitation-over') : { farm: open.farm, person: open.person };
    },
  );
}

async function openInvitation({ desk, access }: PeopleDesk, link: string): Promise<Invitation | null> {
  const ticket = readTicket(link.slice(link.indexOf('#') + 1).trim());
  const found = ticket === null ? null : await desk.store.people.invitation(ticket.farm, ticket.tokenHash);
  if (found === null || isOver(found, access.nowMs())) return null;
  const account = await desk.store.people.account(found.farm, found.person);
  return account !== null && account.endedAt !== null ? null : found;
}

function isOver({ endsAt }: Invitation, nowMs: number): boolean {
  return Date.parse(endsAt) <= nowMs;
}

function told({ id, person, name, role, asKnownOn, madeBy, endsAt }: Invitation) {
  return { id, person, name, role, asKnownOn, madeBy, endsAt };
}
