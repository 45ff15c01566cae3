/** How often one may ask: people by themselves, strangers by their address, and sign-in far more slowly. */
import rateLimit from '@fastify/rate-limit';
import type { FastifyInstance, FastifyRequest, RouteShorthandOptions } from 'fastify';
import type { Access } from './access.ts';

export async function limitRates(app: FastifyInstance, { limits }: Access): Promise<void> {
  if (limits === null) return;
  await app.register(rateLimit, {
    global: true,
    timeWindow: 60_000,
    max: (request) => (request.visitor.kind === 'signed-in' ? limits.personAMinute : limits.strangerAMinute),
    keyGenerator: whoAsks,
    errorResponseBuilder: (_request, { ttl }) => new TooOften(Math.ceil(ttl / 1000)),
  });
}

function whoAsks({ visitor, ip }: FastifyRequest): string {
  return visitor.kind === 'signed-in' ? `${visitor.account.farm}~${visitor.account.person}` : ip;
}

/** Thrown by the counter; carries the wait to the error handler. */
export class TooOften extends Error {
  readonly statusCode = 429;
  readonly waitS: number;

  constructor(waitS: number) {
    super('too often');
    this.waitS = waitS;
  }
}

/** For routes where a secret could be guessed. */
export function slowly({ limits }: Access): Pick<RouteShorthandOptions, 'config'> {
  return limits === null
    ? {}
    : {
        config: {
          rateLimit: {
            max: limits.signInAMinute,
            timeWindow: 60_000,
            keyGenerator: ({ ip }: FastifyRequest) => `slow ${ip}`,
          },
        },
      };
}
