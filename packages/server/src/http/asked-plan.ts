/** The farm and the plan a route is asked about, or a kind refusal. */
import { farmDay } from '@leywright/book';
import { type FarmId, readId, yearOf } from '@leywright/measures';
import type { Plan, PlanWish } from '@leywright/planner';
import type { FastifyReply } from 'fastify';
import { z } from 'zod';
import { refuse } from '../app/answer.ts';
import type { Desk } from '../app/desk.ts';
import { paramChars } from '../app/limits.ts';
import type { OpenFarm } from '../farm/shelf.ts';

export const farmParams = z.object({ farm: z.string().max(paramChars) });
export const yearQuery = z.object({ year: z.coerce.number().int().optional() });

/** The plan looks at ten years; further off neither rotation nor records say anything. */
const YEARS_AROUND = 30;

export interface AskedPlan {
  readonly open: OpenFarm;
  readonly wish: PlanWish;
  readonly plan: Plan;
}

/** Refuses and answers null when there is no such farm. */
export async function askedFarm(desk: Desk, asked: string, reply: FastifyReply): Promise<OpenFarm | null> {
  const id = readId<FarmId>(asked);
  const open = id === null ? null : await desk.shelf.open(id);
  if (open === null) refuse(reply, 404, 'no-such-farm', { found: asked });
  return open;
}

/** Refuses and answers null when there is no such farm, or no plan reaches that year. */
export async function askedPlan(
  desk: Desk,
  asked: { readonly farm: string; readonly year: number | undefined },
  reply: FastifyReply,
): Promise<AskedPlan | null> {
  const open = await askedFarm(desk, asked.farm, reply);
  if (open === null) return null;
  const today = farmDay(open.farm.about, desk.clock.today(), desk.clock.isDaySaid);
  if (asked.year !== undefined && Math.abs(asked.year - yearOf(today)) > YEARS_AROUND) {
    refuse(reply, 422, 'year-out-of-range', { found: asked.year });
    return null;
  }
  const wish: PlanWish = { today, book: open.bookFindings, ...(asked.year === undefined ? {} : { year: asked.year }) };
  return { open, wish, plan: desk.shelf.plan(open, wish) };
}
