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
import { tellAll, tellNews, waitForNews } from '../app/news.ts';
import { folderProblem } from '../farm/problems.ts';
import { enteringProblems, namedIds } from '../people/may-enter.ts';
import { type Eyes, eyesOf, seenOf } from '../people/see.ts';
import { sights } from '../people/sight.ts';
import { knownOnOf, roleOf, type Visitor } from '../people/visitor.ts';

const params = z.object({ farm: z.string().max(paramChars) });
const longestWaitS = 25;
const after = z.object({
  after: z.coerce.number().int().min(0).max(Number.MAX_SAFE_INTEGER).default(0),
  /** Seconds to hold the answer until there is something new. */
  wait: z.coerce.number().int().min(0).max(longestWaitS).default(0),
});

export function entryRoutes(app: FastifyInstance, desk: Desk): void {
  let isStopping = false;
  app.addHook('preClose', async () => {
    isStopping = true;
    tellAll(desk.store);
  });
  const routes = app.withTypeProvider<InputTypes>();
  routes.get(
    '/api/farms/:farm/entries',
    {
      schema: {
        summary: 'Entries of the book after a seq; with wait, held for so many seconds until there are some',
        params,
        querystring: after,
        response: { 200: httpShapes.entriesPage, 404: httpShapes.problems },
      },
    },
    async (request, reply) => {
      const id = readId<FarmId>(request.params.farm);
      const stored = id === null ? null : await desk.store.farm(id);
      if (id === null || stored === null) return refuse(reply, 404, 'no-such-farm', { found: request.params.farm });
      const { after: seq, wait } = request.query;
      const isGone = () => isStopping || request.raw.destroyed;
      if (wait > 0) await waitForNews(desk.store, { farm: id, after: seq, longestMs: wait * 1000, isGone });
      const page = await desk.store.entriesAfter(id, seq, pageEntries);
      const eyes = await eyesFor(desk, id, request.visitor);
      const entries = await seenOf(page, eyes, (ids) => desk.store.entriesById(id, ids));
      const readTo = page.at(-1)?.seq ?? seq;
      return { entries, lastSeq: Math.max(stored.lastSeq, readTo), readTo, more: page.length === pageEntries };
    },
  );

  addRoute(app, desk);
}

function addRoute(app: FastifyInstance, desk: Desk): void {
  app.withTypeProvider<InputTypes>().post(
    '/api/farms/:farm/entries',
    {
      schema: {
        summary: 'Add entries; sending the same again is no fault',
        params,
        body: httpShapes.newEntries,
        response: {
          200: httpShapes.appended,
          403: httpShapes.problems,
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
      const notTheirs = await notTheirsToEnter(desk, { farm: id, entries, visitor: request.visitor });
      if (notTheirs.length > 0) return sendProblems(reply, 403, notTheirs);
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
      if (appended.received.length > 0) tellNews(desk.store, id);
      const received = appended.received.map(({ id: entry, seq, hash }) => ({ id: entry, seq, hash }));
      return { received, already: appended.already, lastSeq: appended.lastSeq };
    },
  );
}

async function eyesFor(desk: Desk, farm: FarmId, visitor: Visitor): Promise<Eyes> {
  const sight = sights[roleOf(visitor) ?? 'hand'];
  const knownOn = knownOnOf(visitor);
  // Only a day needs the farm's own zone; all else is read off the entries alone.
  const timeZone = knownOn === null ? null : (await desk.shelf.open(farm))?.farm.about.place.timeZone;
  return eyesOf(sight, { today: desk.clock.today(), knownOn, timeZone: timeZone ?? 'UTC' });
}

interface Sending {
  readonly farm: FarmId;
  readonly entries: readonly Entry[];
  readonly visitor: Visitor;
}

async function notTheirsToEnter(desk: Desk, { farm, entries, visitor }: Sending): Promise<readonly HttpProblem[]> {
  if (visitor.kind !== 'signed-in') return [];
  const named = await desk.store.entriesById(farm, namedIds(entries));
  const { person, role } = visitor.account;
  return enteringProblems(entries, { person, sight: sights[role] }, new Map(named.map((entry) => [entry.id, entry])));
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
