/** The farm a route is asked about, or a kind refusal. */
import { type FarmId, readId } from '@leywright/measures';
import type { FastifyReply } from 'fastify';
import { refuse } from '../app/answer.ts';
import type { Desk } from '../app/desk.ts';
import type { OpenFarm } from '../farm/shelf.ts';

/** Refuses and answers null when there is none. */
export async function openFarm(desk: Desk, asked: string, reply: FastifyReply): Promise<OpenFarm | null> {
  const id = readId<FarmId>(asked);
  const open = id === null ? null : await desk.shelf.open(id);
  if (open === null) refuse(reply, 404, 'no-such-farm', { found: asked });
  return open;
}
