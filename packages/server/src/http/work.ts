/** Work, the day and the orders of a farm; order sheets and calendars as files. */
import { createHash } from 'node:crypto';
import { httpShapes, roundForJson, workShapes, workWords } from '@leywright/api';
import { farmDay } from '@leywright/book';
import { type FarmId, readId } from '@leywright/measures';
import { orders } from '@leywright/planner';
import type { FastifyInstance } from 'fastify';
import { z } from 'zod';
import { refuse } from '../app/answer.ts';
import type { Desk } from '../app/desk.ts';
import type { InputTypes } from '../app/input-types.ts';
import { paramChars } from '../app/limits.ts';
import { calendarFeed } from '../sheets/calendar-feed.ts';
import { ordersCsv, ordersXlsx } from '../sheets/order-sheets.ts';
import { type AskedPlan, askedFarm, askedPlan, farmParams, yearQuery } from './asked-plan.ts';

const refusals = { 404: httpShapes.problems, 422: httpShapes.problems };
const xlsx = 'application/vnd.openxmlformats-officedocument.spreadsheetml.sheet';

export function workRoutes(app: FastifyInstance, desk: Desk): void {
  const routes = app.withTypeProvider<InputTypes>();
  const asking = { params: farmParams, querystring: yearQuery };
  routes.get(
    '/api/farms/:farm/work',
    {
      schema: {
        summary: 'Hours, hands, levelling and jobs',
        ...asking,
        response: { 200: workShapes.work, ...refusals },
      },
    },
    async (request, reply) => {
      const asked = await askedPlan(desk, { request, year: request.query.year }, reply);
      return asked === null ? reply : reply.send(roundForJson(workWords.tellWork(asked.open.farm, asked.plan)));
    },
  );
  routes.get(
    '/api/farms/:farm/day',
    {
      schema: {
        summary: 'What is to be done this week, for one person or for all',
        params: farmParams,
        querystring: z.object({ person: z.string().max(paramChars).optional() }),
        response: { 200: workShapes.dayOfWork, ...refusals },
      },
    },
    async (request, reply) => {
      const asked = await askedPlan(desk, { request, year: undefined }, reply);
      if (asked === null) return reply;
      const person = request.query.person ?? null;
      if (person !== null && !knows(asked, person)) return refuse(reply, 404, 'no-such-person', { found: person });
      return reply.send(roundForJson(workWords.tellDay(asked.open.farm, asked.plan, person)));
    },
  );
  routes.get(
    '/api/farms/:farm/orders',
    {
      schema: {
        summary: 'Seed to order and plants to raise',
        ...asking,
        response: { 200: workShapes.orders, ...refusals },
      },
    },
    async (request, reply) => {
      const asked = await askedPlan(desk, { request, year: request.query.year }, reply);
      return asked === null ? reply : reply.send(roundForJson(workWords.tellOrders(asked.open.farm, asked.plan)));
    },
  );
  sheetRoutes(app, desk);
  calendarRoutes(app, desk);
}

function sheetRoutes(app: FastifyInstance, desk: Desk): void {
  const routes = app.withTypeProvider<InputTypes>();
  for (const kind of ['csv', 'xlsx'] as const) {
    routes.get(
      `/api/farms/:farm/orders.${kind}`,
      {
        schema: {
          summary: `Order sheet as ${kind.toUpperCase()}`,
          params: farmParams,
          querystring: yearQuery,
          response: refusals,
        },
      },
      async (request, reply) => {
        const asked = await askedPlan(desk, { request, year: request.query.year }, reply);
        if (asked === null) return reply;
        const rows = orders.orderSheet(orders.seedOrders(asked.open.farm, asked.plan));
        reply.header('content-disposition', `attachment; filename="orders-${asked.plan.year}.${kind}"`);
        return kind === 'csv'
          ? reply.type('text/csv; charset=utf-8').send(ordersCsv(rows))
          : reply.type(xlsx).send(await ordersXlsx(rows));
      },
    );
  }
}

/** A person's calendar, at an address nobody can guess who has not the book: a calendar program signs in nowhere. */
function calendarRoutes(app: FastifyInstance, desk: Desk): void {
  const routes = app.withTypeProvider<InputTypes>();
  const word = z.string().max(paramChars);
  const address = z.object({ person: z.string(), name: z.string(), address: z.string() });
  routes.get(
    '/api/farms/:farm/calendars',
    { schema: { summary: 'Calendar addresses', params: farmParams, response: { 200: z.array(address), ...refusals } } },
    async (request, reply) => {
      const open = await askedFarm(desk, request, reply);
      if (open === null) return reply;
      const { id } = open.stored;
      const secret = await secretOf(desk, id);
      const own = secret === null ? [] : open.farm.people;
      return reply.send(
        own.map((one) => ({
          person: one.id,
          name: one.name,
          address: `/api/calendars/${encodeURIComponent(id)}/${encodeURIComponent(one.id)}/${keyOf(secret ?? '', one.id)}`,
        })),
      );
    },
  );
  routes.get(
    '/api/calendars/:farm/:person/:key',
    {
      schema: {
        summary: 'A person’s jobs as an iCalendar feed',
        params: farmParams.extend({ person: word, key: word }),
        response: refusals,
      },
    },
    async (request, reply) => {
      const feed = await feedOf(desk, request.params);
      // A wrong farm, person or key is told alike: nobody learns which of them is right.
      if (feed === null) return refuse(reply, 404, 'no-such-page', { found: 'this address' });
      return reply.type('text/calendar; charset=utf-8').send(feed);
    },
  );
}

async function feedOf(
  desk: Desk,
  asked: { readonly farm: string; readonly person: string; readonly key: string },
): Promise<string | null> {
  const id = readId<FarmId>(asked.farm);
  const secret = id === null ? null : await secretOf(desk, id);
  if (id === null || secret === null || asked.key !== keyOf(secret, asked.person)) return null;
  const open = await desk.shelf.open(id, { knownOn: null, money: false });
  if (open === null || !open.farm.people.some((one) => one.id === asked.person)) return null;
  const today = farmDay(open.farm.about, desk.clock.today(), desk.clock.isDaySaid);
  const plan = desk.shelf.plan(open, { today, book: open.bookFindings });
  return calendarFeed(open.farm, plan, { madeAt: `${today}T00:00:00Z`, person: asked.person });
}

function knows({ open }: AskedPlan, person: string): boolean {
  return open.farm.people.some((one) => one.id === person);
}

/** The salt the store drew for the first entry of the book: as random as a key, and known only to those who may read the whole book. */
async function secretOf(desk: Desk, farm: FarmId): Promise<string | null> {
  const page = await desk.store.entriesAfter(farm, 0, 1);
  return page[0]?.salt ?? null;
}

function keyOf(secret: string, person: string): string {
  return createHash('sha256').update(`calendar\n${secret}\n${person}`).digest('hex').slice(0, 32);
}
