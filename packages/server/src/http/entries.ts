/** The book over HTTP: pull what came after a `seq`, push one's own by id. */
import { httpShapes } from '@leywright/api';
import { type Entry, readEntry } from '@leywright/book';
import { type FarmId, readId } from '@leywright/measures';
import type { FastifyInstance } from 'fastify';
import { z } from 'zod';
import { type HttpProblem, refusal, refuse, sendProblems } from '../app/answer.ts';
import { type Desk, hexOf } from '../app/desk.ts';
import type { InputTypes } from '../app/input-types.ts';
import { pageEntries, paramChars } from '../app/limits.ts';
import { folderProblem } from '../farm/problems.ts';

const params = z.object({ farm: z.string().max(paramChars) });
const after = z.object({ after: z.coerce.number().int().min(0).max(Number.MAX_SAFE_INTEGER).default(0) });

export function entryRoutes(app: FastifyInstance, desk: Desk): void {
  const routes = app.withTypeProvider<InputTypes>();
  routes.get(
    '/api/farms/:farm/entries',
    {
      schema: {
        summary: 'Entries of the book after a seq',
        params,
        querystring: after,
        response: { 200: httpShapes.entriesPage, 404: httpShapes.problems },
      },
    },
    async (request, reply) => {
      const id = readId<FarmId>(request.params.farm);
      const stored = id === null ? null : await desk.store.farm(id);
      if (id === null || stored === null) return refuse(reply, 404, 'no-such-farm', { found: request.params.farm });
      const entries = await desk.store.entriesAfter(id, request.query.after, pageEntries);
      return { entries, lastSeq: stored.lastSeq, more: entries.length === pageEntries };
    },
  );

  routes.post(
    '/api/farms/:farm/entries',
    {
      schema: {
        summary: 'Add entries; sending the same again is no fault',
        params,
        body: httpShapes.newEntries,
        response: {
          200: httpShapes.appended,
          404: httpShapes.problems,
          409: httpShapes.problems,
          422: httpShapes.problems,
        },
      },
    },
    async (request, reply) => {
      const id = readId<FarmId>(request.params.farm);
      if (id === null) return refuse(reply, 404, 'no-such-farm', { found: request.params.farm });
      const { entries, problems } = readEntries(request.body.entries);
      if (problems.length > 0) return sendProblems(reply, 422, problems);
      const appended = await desk.store.appendEntries(id, entries, {
        receivedAt: desk.clock.now(),
        newSalt: () => hexOf(desk.random(16)),
      });
      if (appended.kind === 'no-such-farm') return refuse(reply, 404, 'no-such-farm', { found: request.params.farm });
      if (appended.kind === 'refused') {
        const differing = appended.differing.map((found) => refusal('entry-differs', { found }));
        return sendProblems(reply, 409, [
          ...differing,
          ...appended.ofOtherFarm.map((found) => refusal('entry-of-other-farm', { found })),
        ]);
      }
      const received = appended.received.map(({ id: entry, seq, hash }) => ({ id: entry, seq, hash }));
      return { received, already: appended.already, lastSeq: appended.lastSeq };
    },
  );
}

/** All entries, or all that is wrong with them, each with its place in what was sent. */
function readEntries(sent: readonly unknown[]): {
  readonly entries: readonly Entry[];
  readonly problems: readonly HttpProblem[];
} {
  const entries: Entry[] = [];
  const problems: HttpProblem[] = [];
  sent.forEach((json, at) => {
    const read = readEntry(json);
    if (Array.isArray(read)) problems.push(...read.map((problem) => ({ ...folderProblem(problem), line: at + 1 })));
    else entries.push(read as Entry);
  });
  return { entries, problems };
}
