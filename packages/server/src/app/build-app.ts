/** The HTTP server as a value: routes and guards over a desk. Listening is somebody else's. */
import fastifyStatic from '@fastify/static';
import fastifySwagger from '@fastify/swagger';
import Fastify, { type FastifyInstance, type FastifySchemaCompiler } from 'fastify';
import { jsonSchemaTransform, jsonSchemaTransformObject } from 'fastify-type-provider-zod';
import type { Access } from '../guards/access.ts';
import { admitVisitors, knowVisitors } from '../guards/admit.ts';
import { guard } from '../guards/guard.ts';
import { limitRates } from '../guards/rate.ts';
import type { Tls } from '../guards/settle.ts';
import { calcRoutes } from '../http/calc.ts';
import { entryRoutes } from '../http/entries.ts';
import { exportRoutes } from '../http/export.ts';
import { farmRoutes } from '../http/farms.ts';
import { planRoutes } from '../http/plan.ts';
import { proofRoutes } from '../http/proof.ts';
import { rotationRoutes } from '../http/rotation.ts';
import { workRoutes } from '../http/work.ts';
import { accountRoutes } from '../people/routes/account.ts';
import { factorRoutes } from '../people/routes/factor.ts';
import { householdRoutes } from '../people/routes/households.ts';
import { invitationRoutes } from '../people/routes/invitations.ts';
import { personRoutes } from '../people/routes/persons.ts';
import { signInRoutes } from '../people/routes/sign-in.ts';
import type { PeopleDesk } from '../people/routes/signed-in.ts';
import { refuse } from './answer.ts';
import { type Desk, hexOf } from './desk.ts';
import { answerErrors } from './errors.ts';
import { bodyLimitBytes, paramChars } from './limits.ts';
import { shapeValidator } from './read-shape.ts';

export interface AppSettings {
  readonly desk: Desk;
  /** Folder of the built web app; null = none built. */
  readonly webRoot: string | null;
  readonly access: Access;
  /** Where faults of ours are written; null = nowhere. */
  readonly log: { readonly write: (line: string) => void } | null;
  /** Certificate and key, where it speaks https itself. */
  readonly tls?: Tls | null;
}

const bytesOfReference = 4;

export async function buildApp({ desk, webRoot, access, log, tls = null }: AppSettings): Promise<FastifyInstance> {
  const app = Fastify({
    ...(tls === null ? {} : { https: tls }),
    logger: log === null ? false : { level: 'error', stream: log },
    bodyLimit: bodyLimitBytes,
    routerOptions: { maxParamLength: paramChars },
    exposeHeadRoutes: true,
    trustProxy: access.isBehindProxy ? 'loopback' : false,
    frameworkErrors: (_error, request, reply) =>
      refuse(reply, 404, 'no-such-page', { found: request.url.slice(0, 200) }),
  });
  guard(app, access);
  answerErrors(app, () => hexOf(desk.random(bytesOfReference)));
  knowVisitors(app, desk, access);
  await limitRates(app, access);
  admitVisitors(app);
  app.addContentTypeParser('application/zip', { parseAs: 'buffer' }, (_request, bytes, done) => done(null, bytes));
  app.setValidatorCompiler(shapeValidator as FastifySchemaCompiler<unknown>);
  // Answers are made by typed routes and held to their shapes by tests; checking a plan of a megabyte once more on each request is not worth its time.
  app.setSerializerCompiler(() => (answer) => JSON.stringify(answer));
  await app.register(fastifySwagger, {
    openapi: {
      openapi: '3.1.0',
      info: {
        title: 'Leywright',
        version: desk.version,
        description: 'Plans, runs and proves the year of a stock-free organic vegetable farm that sells by weekly box.',
      },
    },
    transform: jsonSchemaTransform,
    transformObject: jsonSchemaTransformObject,
  });
  await app.register(async (routes) => {
    farmRoutes(routes, desk);
    entryRoutes(routes, desk);
    planRoutes(routes, desk);
    rotationRoutes(routes, desk);
    workRoutes(routes, desk);
    proofRoutes(routes, desk);
    exportRoutes(routes, desk);
    calcRoutes(routes);
    peopleRoutes(routes, { desk, access });
    routes.get('/api/openapi.json', { schema: { summary: 'This description' } }, async () => app.swagger());
  });
  if (webRoot !== null) await servePages(app, webRoot);
  return app;
}

function peopleRoutes(app: FastifyInstance, people: PeopleDesk): void {
  signInRoutes(app, people);
  accountRoutes(app, people);
  factorRoutes(app, people);
  personRoutes(app, people);
  invitationRoutes(app, people);
  householdRoutes(app, people);
}

/** The pages' addresses are made in the browser, so any of them answers with the one page; `/api` never does. */
async function servePages(app: FastifyInstance, webRoot: string): Promise<void> {
  await app.register(fastifyStatic, {
    root: webRoot,
    wildcard: false,
    cacheControl: false,
    setHeaders: (response, path) => response.header('cache-control', cachingOf(path)),
  });
  app.get('/*', { schema: { hide: true } }, (request, reply) => {
    const path = request.url.split('?')[0] ?? '/';
    if (path.startsWith('/api/') || path.startsWith('/assets/'))
      return refuse(reply, 404, 'no-such-page', { found: path.slice(0, 200) });
    return reply.sendFile('index.html');
  });
}

/** Files under assets carry their content's mark in their name and never change. */
function cachingOf(path: string): string {
  return /[\\/]assets[\\/]/.test(path) ? 'public, max-age=31536000, immutable' : 'no-cache';
}
