/** Lets a request through its door or says no. Where sign-in is not asked for, whoever reaches the machine is let in. */
import type { FastifyInstance, FastifyReply, FastifyRequest } from 'fastify';
import { refuse } from '../app/answer.ts';
import type { Desk } from '../app/desk.ts';
import { lacksFactor, visitorOf } from '../people/visitor.ts';
import type { Access } from './access.ts';
import { cookieOf } from './cookie.ts';
import { type Door, doorOf } from './doors.ts';

/** Finds out who asks. Runs before requests are counted, so that people are counted each by themselves. */
export function knowVisitors(app: FastifyInstance, desk: Desk, access: Access): void {
  app.decorateRequest('visitor', null as never);
  app.addHook('onRequest', async (request) => {
    request.visitor = access.isAsked
      ? await visitorOf(desk.store, cookieOf(request, access), access.nowMs())
      : { kind: 'at-the-machine' };
  });
}

/** Runs before anything of the body is read. */
export function admitVisitors(app: FastifyInstance): void {
  app.addHook('preParsing', async (request, reply) => {
    if (request.is404) return undefined;
    const door = doorOf(request.method, request.routeOptions.url ?? '');
    return admit(request, reply, door);
  });
}

function admit(request: FastifyRequest, reply: FastifyReply, door: Door | null): FastifyReply | undefined {
  const { visitor } = request;
  if (visitor.kind === 'at-the-machine' || door === 'anyone') return undefined;
  if (visitor.kind === 'stranger') return refuse(reply, 401, 'sign-in-first');
  if (door === 'own-account') return undefined;
  if (lacksFactor(visitor.account)) return refuse(reply, 403, 'factor-first');
  if (door === 'at-the-machine') return refuse(reply, 403, 'at-the-machine-alone');
  if (door === null || !door.includes(visitor.account.role)) return refuse(reply, 403, 'not-for-your-role');
  const { farm } = request.params as { readonly farm?: string };
  // Another farm is as if it were not there: nobody learns which farms there are.
  if (farm !== undefined && farm.normalize('NFC') !== visitor.account.farm)
    return refuse(reply, 404, 'no-such-farm', { found: farm.slice(0, 200) });
  return undefined;
}
