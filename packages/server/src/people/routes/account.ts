/** One's own account: going out, the password, and the browsers one is signed in with. */
import { httpShapes, peopleShapes } from '@leywright/api';
import type { FastifyInstance } from 'fastify';
import { z } from 'zod';
import { refusal, refuse, sendProblems } from '../../app/answer.ts';
import type { InputTypes } from '../../app/input-types.ts';
import { paramChars } from '../../app/limits.ts';
import { dropCookie } from '../../guards/cookie.ts';
import { slowly } from '../../guards/rate.ts';
import { passwordProblems } from '../password.ts';
import { isPasswordGiven, type PeopleDesk, signedIn, toldSession } from './signed-in.ts';

export function accountRoutes(app: FastifyInstance, people: PeopleDesk): void {
  signOutRoute(app, people);
  passwordRoute(app, people);
  sessionRoutes(app, people);
}

function signOutRoute(app: FastifyInstance, { desk, access }: PeopleDesk): void {
  app.post(
    '/api/sign-out',
    { schema: { summary: 'End this session', response: { 200: peopleShapes.done } } },
    async (request, reply) => {
      const visitor = signedIn(request, reply);
      if (visitor === null) return reply;
      const { farm, person, id } = visitor.session;
      await desk.store.people.endSession(farm, person, id);
      dropCookie(reply, access);
      return { done: true };
    },
  );
}

function passwordRoute(app: FastifyInstance, people: PeopleDesk): void {
  const { desk, access } = people;
  app.withTypeProvider<InputTypes>().post(
    '/api/me/password',
    {
      ...slowly(access),
      schema: {
        summary: 'Change the password; all other sessions end',
        body: peopleShapes.newPassword,
        response: { 200: peopleShapes.done, 403: httpShapes.problems, 422: httpShapes.problems },
      },
    },
    async (request, reply) => {
      const visitor = signedIn(request, reply);
      if (visitor === null) return reply;
      const { password, newPassword } = request.body;
      const { account, session } = visitor;
      if (!(await isPasswordGiven(people, { account, password }, reply))) return reply;
      const problems = passwordProblems(newPassword, account.person);
      if (problems.length > 0)
        return sendProblems(
          reply,
          422,
          problems.map((code) => refusal(code, {}, { column: 'newPassword' })),
        );
      const passwordHash = await access.passwords.hash(newPassword);
      await desk.store.people.changeAccount(account.farm, account.person, { passwordHash });
      await desk.store.people.endSessions(account.farm, account.person, session.id);
      return { done: true };
    },
  );
}

function sessionRoutes(app: FastifyInstance, { desk }: PeopleDesk): void {
  const routes = app.withTypeProvider<InputTypes>();
  routes.get(
    '/api/me/sessions',
    { schema: { summary: 'Browsers one is signed in with', response: { 200: peopleShapes.sessions } } },
    async (request, reply) => {
      const visitor = signedIn(request, reply);
      if (visitor === null) return reply;
      const { farm, person, id: thisOne } = visitor.session;
      return { sessions: (await desk.store.people.sessions(farm, person)).map((one) => toldSession(one, thisOne)) };
    },
  );
  routes.delete(
    '/api/me/sessions',
    { schema: { summary: 'End all sessions but this one', response: { 200: peopleShapes.done } } },
    async (request, reply) => {
      const visitor = signedIn(request, reply);
      if (visitor === null) return reply;
      const { farm, person, id } = visitor.session;
      await desk.store.people.endSessions(farm, person, id);
      return { done: true };
    },
  );
  routes.delete(
    '/api/me/sessions/:session',
    {
      schema: {
        summary: 'End one session',
        params: z.object({ session: z.string().max(paramChars) }),
        response: { 200: peopleShapes.done, 404: httpShapes.problems },
      },
    },
    async (request, reply) => {
      const visitor = signedIn(request, reply);
      if (visitor === null) return reply;
      const { farm, person } = visitor.session;
      const isEnded = await desk.store.people.endSession(farm, person, request.params.session);
      return isEnded ? { done: true } : refuse(reply, 404, 'no-such-session');
    },
  );
}
