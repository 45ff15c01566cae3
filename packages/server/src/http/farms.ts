/** Farms of this store: list them, begin one, check a folder without keeping it. */
import { httpShapes } from '@leywright/api';
import { type FolderReading, readFarmFolder, readFarmZip } from '@leywright/book';
import type { FarmId } from '@leywright/measures';
import { type FirstSentence, knownNames } from '@leywright/planner';
import type { StoredFarm } from '@leywright/store';
import type { FastifyInstance, FastifyReply } from 'fastify';
import type { z } from 'zod';
import { sendProblems } from '../app/answer.ts';
import type { Desk } from '../app/desk.ts';
import type { InputTypes } from '../app/input-types.ts';
import { NotAsAsked, readShape } from '../app/read-shape.ts';
import { type Founding, foundFromFolder, foundFromSentence } from '../farm/found.ts';
import { folderProblem } from '../farm/problems.ts';
import { foundSample } from '../farm/sample.ts';
import { ownFarm } from '../people/visitor.ts';

export function farmRoutes(app: FastifyInstance, desk: Desk): void {
  const routes = app.withTypeProvider<InputTypes>();
  routes.get('/api/today', { schema: { summary: 'The day', response: { 200: httpShapes.today } } }, async () => ({
    today: desk.clock.today(),
    isDaySaid: desk.clock.isDaySaid,
    version: desk.version,
  }));

  routes.get(
    '/api/farms',
    { schema: { summary: 'Farms of this store', response: { 200: httpShapes.farms } } },
    async ({ visitor }) => ({ farms: await farmsOf(desk, ownFarm(visitor)) }),
  );

  routes.post(
    '/api/farms',
    {
      schema: {
        summary: 'Begin a farm: from a sentence, from the files of a folder, or from a zip; or the sample farm',
        body: httpShapes.newFarm,
        response: { 201: httpShapes.founded, 409: httpShapes.problems, 422: httpShapes.problems },
      },
      validatorCompiler: asSent,
    },
    async (request, reply) => answerFounding(reply, await found(desk, request.body)),
  );

  routes.post(
    '/api/folder/check',
    {
      schema: {
        summary: 'What is wrong with a folder, without keeping it',
        body: httpShapes.folder,
        response: { 200: httpShapes.folderCheck, 422: httpShapes.problems },
      },
      validatorCompiler: asSent,
    },
    async (request) => {
      const reading = readFolder(request.body);
      return {
        wouldImport: reading.farm !== null,
        name: reading.farm?.about.name ?? null,
        problems: reading.problems.map(folderProblem),
      };
    },
  );
}

/** Whoever signed in to a farm sees that one alone. */
async function farmsOf({ store }: Desk, own: FarmId | null): Promise<readonly StoredFarm[]> {
  if (own === null) return store.farms();
  const farm = await store.farm(own);
  return farm === null ? [] : [farm];
}

/** Which of several shapes is meant is seen from what was sent, so that the problems are those of that shape. */
function asSent() {
  return (sent: unknown) => ({ value: sent });
}

async function found(desk: Desk, sent: unknown): Promise<Founding> {
  const has = (field: string) => typeof sent === 'object' && sent !== null && Object.hasOwn(sent, field);
  if (has('sample') && asked(httpShapes.sampleFarm, sent).sample) return foundSample(desk);
  return sent instanceof Uint8Array || has('files')
    ? foundFromFolder(desk, readFolder(sent))
    : foundFromSentence(desk, sentenceOf(asked(httpShapes.firstSentence, sent)));
}

function readFolder(sent: unknown): FolderReading {
  if (sent instanceof Uint8Array) return readFarmZip(sent, knownNames());
  return readFarmFolder(new Map(Object.entries(asked(httpShapes.folderFiles, sent).files)), knownNames());
}

function asked<T>(shape: z.ZodType<T>, sent: unknown): T {
  const reading = readShape(shape, sent);
  if (reading.kind === 'problems') throw new NotAsAsked(reading.problems);
  return reading.value;
}

function sentenceOf(body: z.infer<typeof httpShapes.firstSentence>): FirstSentence {
  const { name = null, plotAreasHa = null, near = null, latDeg = null, lonDeg = null, ...counts } = body;
  return { ...counts, name, plotAreasHa, near: near === '' ? null : near, latDeg, lonDeg };
}

function answerFounding(reply: FastifyReply, founding: Founding): FastifyReply {
  if (founding.kind === 'refused') return sendProblems(reply, founding.status, founding.problems);
  const { farm, assumed, problems } = founding;
  return reply.code(201).send({ farm, assumed, problems });
}
