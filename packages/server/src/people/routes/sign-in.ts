/** Coming in, going out, and who is in. */
import { httpShapes, peopleShapes } from '@leywright/api';
import type { FastifyInstance, FastifyReply } from 'fastify';
import type { z } from 'zod';
import { refuse } from '../../app/answer.ts';
import type { InputTypes } from '../../app/input-types.ts';
import { putCookie } from '../../guards/cookie.ts';
import { slowly } from '../../guards/rate.ts';
import { type SignedInOrNot, signIn } from '../sign-in.ts';
import { longestDays } from '../visitor.ts';
import { type PeopleDesk, toldAccount } from './signed-in.ts';

const longestS = longestDays * 86_400;

export function signInRoutes(app: FastifyInstance, people: PeopleDesk): void {
  const { desk, access } = people;
  const routes = app.withTypeProvider<InputTypes>();
  routes.get(
    '/api/me',
    { schema: { summary: 'Whether sign-in is asked for, and who is signed in', response: { 200: peopleShapes.me } } },
    async ({ visitor }) => ({
      signIn: access.isAsked ? 'asked' : 'not-asked',
      visitor: visitor.kind === 'signed-in' ? await toldAccount(people, visitor.account) : null,
    }),
  );

  routes.post(
    '/api/sign-in',
    {
      ...slowly(access),
      schema: {
        summary: 'Sign in',
        body: peopleShapes.signIn,
        response: {
          200: peopleShapes.me,
          401: httpShapes.problems,
          409: httpShapes.problems,
          429: httpShapes.problems,
        },
      },
    },
    async (request, reply) => {
      if (!access.isAsked) return refuse(reply, 409, 'no-account');
      const farm = await farmOf(people, request.body);
      if (farm === null) return refuse(reply, 422, 'which-farm');
      const { person, password, code = null } = request.body;
      const device = request.headers['user-agent'] ?? '';
      const tools = { store: desk.store, random: desk.random, passwords: access.passwords, nowMs: access.nowMs };
      const answer = await signIn(tools, { farm, person, password, code, device });
      if (answer.kind !== 'signed-in') return refuseSignIn(reply, answer);
      putCookie(reply, access, answer.cookie, longestS);
      return { signIn: 'asked', visitor: await toldAccount(people, answer.account) };
    },
  );
}

/** The farm of the store where there is one alone; else the one that is named. */
async function farmOf({ desk }: PeopleDesk, { farm }: z.infer<typeof peopleShapes.signIn>): Promise<string | null> {
  if (farm !== undefined && farm !== null) return farm;
  const [only, ...more] = await desk.store.farms();
  return only === undefined || more.length > 0 ? null : only.id;
}

function refuseSignIn(reply: FastifyReply, answer: Exclude<SignedInOrNot, { kind: 'signed-in' }>): FastifyReply {
  return answer.kind === 'wait'
    ? refuse(reply, 429, 'wait-before-sign-in', { seconds: answer.waitS })
    : refuse(reply, 401, answer.code);
}
