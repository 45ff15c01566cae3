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
import { type FarmId, readId } from '@leywright/measures';
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
  wholeRoute(app, desk);
  const routes = app.withTypeProvider<InputTypes>();
  const asking = { params: farmParams, querystring: yearQuery };
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

const wholeQuery = yearQuery.extend({
  settled: z
    .enum(['true', 'false'])
    .optional()
    .meta({ description: 'true: the plan last worked out will do. It is at most two seconds behind the book.' }),
});

/** `x-book-seq` of the answer says how far the book is in it. */
function wholeRoute(app: FastifyInstance, desk: Desk): void {
  app.withTypeProvider<InputTypes>().get(
    '/api/farms/:farm/plan',
    {
      schema: {
        summary: 'The whole plan',
        params: farmParams,
        querystring: wholeQuery,
        response: { 200: planShapes.plan, ...refusals },
      },
    },
    async ({ params, query, visitor, headers }, reply) => {
      const farm = readId<FarmId>(params.farm);
      if (farm === null) return refuse(reply, 404, 'no-such-farm', { found: params.farm });
      const { clock } = desk;
      const asked = { farm, seen: sightOf(visitor), year: query.year ?? null };
      const answer = await desk.plans.answer(
        { ...asked, today: clock.today(), isDaySaid: clock.isDaySaid },
        query.settled === 'true' ? 'settled' : 'fresh',
      );
      reply.code(answer.status).type('application/json').header('x-book-seq', answer.seq);
      reply.header('vary', 'accept-encoding');
      if (answer.gzipped === null || !/\bgzip\b/.test(String(headers['accept-encoding'] ?? '')))
        return reply.send(answer.bytes);
      return reply.header('content-encoding', 'gzip').send(answer.gzipped);
    },
  );
}

/** The farm behind it was opened without prices already; this is the second lock. */
function asSeen<T>({ visitor }: Pick<FastifyRequest, 'visitor'>, answer: T): T {
  return sightOf(visitor).money ? answer : withoutMoney(answer);
}
