/** The plan of a farm, its findings, and the derivation of one figure. */
import {
  findingShapes,
  httpShapes,
  planShapes,
  roundForJson,
  tellFindings,
  tellWhy,
  toldShapes,
  voiceOf,
} from '@leywright/api';
import { whyOf } from '@leywright/planner';
import type { FastifyInstance, FastifyRequest } from 'fastify';
import { z } from 'zod';
import { refuse } from '../app/answer.ts';
import type { Desk } from '../app/desk.ts';
import type { InputTypes } from '../app/input-types.ts';
import { paramChars } from '../app/limits.ts';
import { withoutMoney } from '../people/see.ts';
import { askedPlan, farmParams, sightOf, yearQuery } from './asked-plan.ts';

const refusals = { 404: httpShapes.problems, 422: httpShapes.problems };

export function planRoutes(app: FastifyInstance, desk: Desk): void {
  const routes = app.withTypeProvider<InputTypes>();
  const asking = { params: farmParams, querystring: yearQuery };
  routes.get(
    '/api/farms/:farm/plan',
    { schema: { summary: 'The whole plan', ...asking, response: { 200: planShapes.plan, ...refusals } } },
    async (request, reply) => {
      const asked = await askedPlan(desk, { request, year: request.query.year }, reply);
      return asked === null ? reply : reply.send(roundForJson(asSeen(request, asked.plan)));
    },
  );

  routes.get(
    '/api/farms/:farm/findings',
    {
      schema: {
        summary: 'What to put right, to look at, to know',
        ...asking,
        response: { 200: toldShapes.findings, ...refusals },
      },
    },
    async (request, reply) => {
      const asked = await askedPlan(desk, { request, year: request.query.year }, reply);
      if (asked === null) return reply;
      const plan = asSeen(request, asked.plan);
      return reply.send(roundForJson(tellFindings(plan, voiceOf(plan, asked.open.farm))));
    },
  );

  const params = farmParams.extend({ '*': z.string().max(paramChars) });
  routes.get(
    '/api/farms/:farm/why/*',
    {
      schema: {
        summary: 'Where one figure comes from',
        ...asking,
        params,
        response: { 200: findingShapes.toldWhy, ...refusals },
      },
    },
    async (request, reply) => {
      const asked = await askedPlan(desk, { request, year: request.query.year }, reply);
      if (asked === null) return reply;
      const figure = request.params['*'];
      const why = whyOf(asked.open.farm, asked.wish, figure);
      if (why === null) return refuse(reply, 404, 'no-such-figure', { found: figure });
      return reply.send(roundForJson(asSeen(request, tellWhy(why, voiceOf(asked.plan, asked.open.farm)))));
    },
  );
}

/** The farm behind it was opened without prices already; this is the second lock. */
function asSeen<T>({ visitor }: Pick<FastifyRequest, 'visitor'>, answer: T): T {
  return sightOf(visitor).money ? answer : withoutMoney(answer);
}
