/** The farm folder to take away. */
import { httpShapes } from '@leywright/api';
import { writeFarmFolder, zipFolder } from '@leywright/book';
import type { FastifyInstance } from 'fastify';
import type { Desk } from '../app/desk.ts';
import type { InputTypes } from '../app/input-types.ts';
import { allEntries } from '../farm/shelf.ts';
import { askedFarm, farmParams } from './asked-plan.ts';

export function exportRoutes(app: FastifyInstance, desk: Desk): void {
  const routes = app.withTypeProvider<InputTypes>();
  routes.get(
    '/api/farms/:farm/export',
    { schema: { summary: 'The farm folder as a zip', params: farmParams, response: { 404: httpShapes.problems } } },
    async (request, reply) => {
      const open = await askedFarm(desk, request, reply);
      if (open === null) return reply;
      const bytes = zipFolder(writeFarmFolder(open.described(), await allEntries(desk.store, open.stored.id)));
      const name = asciiName(open.stored.id);
      reply.type('application/zip').header('content-disposition', `attachment; filename="${name}.zip"`);
      return reply.send(Buffer.from(bytes));
    },
  );
}

/** A header carries plain letters only. */
function asciiName(id: string): string {
  return id.normalize('NFD').replace(/[^A-Za-z0-9._-]/g, '') || 'farm';
}
