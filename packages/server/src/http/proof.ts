/** Traces and balances of a farm's book, as known now or on another day. */
import { httpShapes, roundForJson, told } from '@leywright/api';
import { asKnownOn, farmDay, type ReceivedEntry, records } from '@leywright/book';
import { asDay, type Day, readDay, yearOf } from '@leywright/measures';
import { type GoodsChain, proof } from '@leywright/planner';
import type { FastifyInstance, FastifyReply, FastifyRequest } from 'fastify';
import { z } from 'zod';
import { refuse } from '../app/answer.ts';
import type { Desk } from '../app/desk.ts';
import type { InputTypes } from '../app/input-types.ts';
import { paramChars } from '../app/limits.ts';
import { allEntries, type OpenFarm } from '../farm/shelf.ts';
import { knownOnOf } from '../people/visitor.ts';
import { askedFarm, farmParams } from './asked-plan.ts';

const refusals = { 404: httpShapes.problems, 422: httpShapes.problems };
const dayText = z.string().refine((text) => readDay(text) !== null, 'not-a-day');
const knownQuery = z.object({ knownOn: dayText.optional() });
const balanceQuery = knownQuery.extend({
  crop: z.string().max(paramChars).optional(),
  from: dayText.optional(),
  until: dayText.optional(),
  status: z.enum(records.goodsStatuses).optional(),
});

export function proofRoutes(app: FastifyInstance, desk: Desk): void {
  const routes = app.withTypeProvider<InputTypes>();
  const params = farmParams.extend({ '*': z.string().max(paramChars) });
  routes.get(
    '/api/farms/:farm/trace/*',
    {
      schema: {
        summary: 'A run or drop back to seed and ground; a lot, seed, batch, bin or plot forward',
        params,
        querystring: knownQuery,
        response: { 200: told.shapes.trace, ...refusals },
      },
    },
    async (request, reply) => {
      const asked = await askedChain(desk, { request, knownOn: request.query.knownOn }, reply);
      if (asked === null) return reply;
      const trace = told.tellTrace(asked.chain, request.params['*'], asked.given);
      if (trace === null) return refuse(reply, 404, 'no-such-lot', { found: request.params['*'] });
      return reply.send(roundForJson(trace));
    },
  );

  routes.get(
    '/api/farms/:farm/balance',
    {
      schema: {
        summary: 'Mass balance by crop',
        params: farmParams,
        querystring: balanceQuery,
        response: { 200: told.shapes.balances, ...refusals },
      },
    },
    async (request, reply) => {
      const asked = await askedChain(desk, { request, knownOn: request.query.knownOn }, reply);
      if (asked === null) return reply;
      const { crop, status = null, from, until } = request.query;
      const today = asked.given.knownOn ?? farmDay(asked.open.farm.about, desk.clock.today(), desk.clock.isDaySaid);
      const period = { from: asDay(from ?? `${yearOf(today)}-01-01`), to: asDay(until ?? today) };
      const crops = crop === undefined ? proof.cropsBetween(asked.chain, period.from, period.to) : [crop];
      const balances = crops.map((one) =>
        told.tellBalance(
          proof.balanceOf(asked.chain, { crop: one, ...period, status }),
          proof.farmYieldCheck(asked.open.farm, asked.chain, { crop: one, ...period }),
          asked.given,
        ),
      );
      return reply.send(roundForJson({ balances }));
    },
  );
}

interface AskedChain {
  readonly open: OpenFarm;
  readonly chain: GoodsChain;
  readonly given: Parameters<typeof told.tellTrace>[2];
}

type Asked = FastifyRequest<{ Params: { readonly farm: string } }>;

/** The way of the goods as whoever asks may see it: a visitor with a day of their own never sees past it. */
async function askedChain(
  desk: Desk,
  { request, knownOn }: { readonly request: Pick<Asked, 'params' | 'visitor'>; readonly knownOn: string | undefined },
  reply: FastifyReply,
): Promise<AskedChain | null> {
  const open = await askedFarm(desk, request, reply);
  if (open === null) return null;
  const own = knownOnOf(request.visitor);
  const day: Day | null = earlier(own, knownOn === undefined ? null : asDay(knownOn));
  const all = await allEntries(desk.store, open.stored.id);
  const entries: readonly ReceivedEntry[] = day === null ? all : asKnownOn(all, day, open.farm.about.place.timeZone);
  const chain = proof.followFarm(open.farm, entries);
  return { open, chain, given: { farm: open.farm, cropName: proof.cropNameOf(open.farm), knownOn: day } };
}

function earlier(one: Day | null, other: Day | null): Day | null {
  if (one === null || other === null) return one ?? other;
  return one < other ? one : other;
}
