/** The farm and the plan a route is asked about, or a kind refusal. */
import { type FarmId, readId } from '@leywright/measures';
import type { Plan, PlanWish } from '@leywright/planner';
import type { FastifyReply, FastifyRequest } from 'fastify';
import { z } from 'zod';
import { refuse, sendProblems } from '../app/answer.ts';
import type { Desk } from '../app/desk.ts';
import { paramChars } from '../app/limits.ts';
import type { OpenFarm } from '../farm/shelf.ts';
import { sights } from '../people/sight.ts';
import { knownOnOf, roleOf } from '../people/visitor.ts';
import { planWishOf } from '../plans/plan-text.ts';

export const farmParams = z.object({ farm: z.string().max(paramChars) });
export const yearQuery = z.object({ year: z.coerce.number().int().optional() });

export interface AskedPlan {
  readonly open: OpenFarm;
  readonly wish: PlanWish;
  readonly plan: Plan;
}

type AskedOfFarm = FastifyRequest<{ Params: { readonly farm: string } }>;

/** The farm as whoever asks may see it. Refuses and answers null when there is no such farm. */
export async function askedFarm(
  desk: Desk,
  { params, visitor }: Pick<AskedOfFarm, 'params' | 'visitor'>,
  reply: FastifyReply,
): Promise<OpenFarm | null> {
  const id = readId<FarmId>(params.farm);
  const open = id === null ? null : await desk.shelf.open(id, sightOf(visitor));
  if (open === null) refuse(reply, 404, 'no-such-farm', { found: params.farm });
  return open;
}

export function sightOf(visitor: FastifyRequest['visitor']) {
  const role = roleOf(visitor);
  return { knownOn: knownOnOf(visitor), money: role !== null && sights[role].readsMoney };
}

/** Refuses and answers null when there is no such farm, or no plan reaches that year. */
export async function askedPlan(
  desk: Desk,
  asked: { readonly request: Pick<AskedOfFarm, 'params' | 'visitor'>; readonly year: number | undefined },
  reply: FastifyReply,
): Promise<AskedPlan | null> {
  const open = await askedFarm(desk, asked.request, reply);
  if (open === null) return null;
  const { clock } = desk;
  const wish = planWishOf(open, {
    seen: sightOf(asked.request.visitor),
    year: asked.year ?? null,
    today: clock.today(),
    isDaySaid: clock.isDaySaid,
  });
  if (!('code' in wish)) return { open, wish, plan: desk.shelf.plan(open, wish) };
  sendProblems(reply, 422, [wish]);
  return null;
}
