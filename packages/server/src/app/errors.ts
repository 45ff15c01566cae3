/** Turns whatever went wrong before or in a route into problems. Only our own faults are 500, and those are logged with a number. */

import { StoreTrouble } from '@leywright/store';
import type { FastifyError, FastifyInstance, FastifyReply, FastifyRequest } from 'fastify';
import { TooOften } from '../guards/rate.ts';
import { refuse, sendProblems } from './answer.ts';
import { bodyLimitBytes } from './limits.ts';
import { NotAsAsked } from './read-shape.ts';

export function answerErrors(app: FastifyInstance, referenceHex: () => string): void {
  app.setNotFoundHandler((request, reply) => refuse(reply, 404, 'no-such-page', { found: pathOf(request) }));
  app.setErrorHandler((error: FastifyError, request, reply) => answer(error, request, reply, referenceHex));
}

const bytesInMb = 1e6;

function answer(
  error: FastifyError,
  request: FastifyRequest,
  reply: FastifyReply,
  referenceHex: () => string,
): FastifyReply {
  if (error instanceof NotAsAsked) return sendProblems(reply, 422, error.problems);
  if (error instanceof TooOften) return refuse(reply, 429, 'too-often', { seconds: error.waitS });
  if (error instanceof StoreTrouble) return sayTrouble(error, request, reply);
  const status = error.statusCode ?? 500;
  if (status === 413) return refuse(reply, 413, 'too-large', { limitMb: Math.round(bodyLimitBytes / bytesInMb) });
  if (status === 415)
    return refuse(reply, 415, 'wrong-content', { found: request.headers['content-type'] ?? 'nothing' });
  if (status === 400) return refuse(reply, 400, 'not-json');
  if (status < 500) return refuse(reply, status, 'no-such-page', { found: pathOf(request) });
  const reference = referenceHex();
  request.log.error({ err: error, reference }, 'fault');
  return refuse(reply, 500, 'our-fault', { reference });
}

const insufficientStorage = 507;
const unavailable = 503;

/** Nothing was written; it is logged, because it is for whoever looks after the machine. */
function sayTrouble(trouble: StoreTrouble, request: FastifyRequest, reply: FastifyReply): FastifyReply {
  request.log.error({ code: trouble.code }, 'trouble of the store');
  return refuse(reply, trouble.code === 'disk-full' ? insufficientStorage : unavailable, trouble.code);
}

function pathOf(request: FastifyRequest): string {
  return (request.url.split('?')[0] ?? '/').slice(0, 200);
}
