/** The plan of a farm, its findings, the derivation of one figure, and the farm folder to take away. */
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
import { writeFarmFolder, zipFolder } from '@leywright/book';
import { yearOf } from '@leywright/measures';
import { type PlanWish, whyOf } from '@leywright/planner';
import type { FastifyInstance } from 'fastify';
import { z } from 'zod';
import { refuse } from '../app/answer.ts';
import type { Desk } from '../app/desk.ts';
import type { InputTypes } from '../app/input-types.ts';
import { paramChars } from '../app/limits.ts';
import { allEntries } from '../farm/shelf.ts';
import { openFarm } from './open-farm.ts';

const params = z.object({ farm: z.string().max(paramChars) });
const query = z.object({ year: z.coerce.number().int().optional() });
const noFarm = { 404: httpShapes.problems, 422: httpShapes.problems };
/** The plan looks at ten years; further off neither rotation nor records say anything. */
const YEARS_AROUND = 30;

export function planRoutes(app: FastifyInstance, desk: Desk): void {
  const routes = app.withTypeProvider<InputTypes>();
  const wishOf = (year: number | undefined): PlanWish | null => {
    const today = desk.clock.today();
    if (year === undefined) return { today };
    return Math.abs(year - yearOf(today)) > YEARS_AROUND ? null : { today, year };
  };

  routes.get(
    '/api/farms/:farm/plan',
    {
      schema: { summary: 'The whole plan', params, querystring: query, response: { 200: planShapes.plan, ...noFarm } },
    },
    async (request, reply) => {
      const open = await openFarm(desk, request.params.farm, reply);
      if (open === null) return reply;
      const wish = wishOf(request.query.year);
      if (wish === null) return refuse(reply, 422, 'year-out-of-range', { found: request.query.year ?? null });
      return reply.send(roundForJson(desk.shelf.plan(open, wish)));
    },
  );

  routes.get(
    '/api/farms/:farm/findings',
    {
      schema: {
        summary: 'What to put right, to look at, to know',
        params,
        querystring: query,
        response: { 200: toldShapes.findings, ...noFarm },
      },
    },
    async (request, reply) => {
      const open = await openFarm(desk, request.params.farm, reply);
      if (open === null) return reply;
      const wish = wishOf(request.query.year);
      if (wish === null) return refuse(reply, 422, 'year-out-of-range', { found: request.query.year ?? null });
      const plan = desk.shelf.plan(open, wish);
      return reply.send(roundForJson(tellFindings(plan, voiceOf(plan, open.farm))));
    },
  );

  routes.get(
    '/api/farms/:farm/why/*',
    {
      schema: {
        summary: 'Where one figure comes from',
        params: params.extend({ '*': z.string().max(paramChars) }),
        querystring: query,
        response: { 200: findingShapes.toldWhy, ...noFarm },
      },
    },
    async (request, reply) => {
      const open = await openFarm(desk, request.params.farm, reply);
      if (open === null) return reply;
      const wish = wishOf(request.query.year);
      if (wish === null) return refuse(reply, 422, 'year-out-of-range', { found: request.query.year ?? null });
      const why = whyOf(open.farm, wish, request.params['*']);
      if (why === null) return refuse(reply, 404, 'no-such-figure', { found: request.params['*'] });
      return reply.send(roundForJson(tellWhy(why, voiceOf(desk.shelf.plan(open, wish), open.farm))));
    },
  );

  routes.get(
    '/api/farms/:farm/export',
    { schema: { summary: 'The farm folder as a zip', params, response: { 404: httpShapes.problems } } },
    async (request, reply) => {
      const open = await openFarm(desk, request.params.farm, reply);
      if (open === null) return reply;
      const bytes = zipFolder(writeFarmFolder(open.described(), await allEntries(desk.store, open.stored.id)));
      return reply
        .type('application/zip')
        .header('content-disposition', `attachment; filename="${asciiName(open.stored.id)}.zip"`)
        .send(Buffer.from(bytes));
    },
  );
}

/** A header carries plain letters only. */
function asciiName(id: string): string {
  return id.normalize('NFD').replace(/[^A-Za-z0-9._-]/g, '') || 'farm';
}
