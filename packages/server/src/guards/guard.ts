/**
 * What every answer carries and every request is held to, before anyone is asked who they are. A page of another site must not be able to reach
 * the server through somebody's own browser: the Host header has to be one of ours (else a foreign name was pointed at this machine), and writes
 * have to come from our own pages, or from a program that carries nobody's cookie.
 */
import type { FastifyInstance, FastifyRequest } from 'fastify';
import { refuse } from '../app/answer.ts';
import { type Access, isSecure } from './access.ts';
import { cookieOf } from './cookie.ts';

const readingMethods = new Set(['GET', 'HEAD']);

/** No inline script, no foreign source of any kind; a worker and wasm of our own are let run. */
const contentPolicy = [
  "default-src 'none'",
  "script-src 'self' 'wasm-unsafe-eval'",
  "worker-src 'self'",
  "style-src 'self'",
  "img-src 'self' blob:",
  "font-src 'self'",
  "connect-src 'self'",
  "manifest-src 'self'",
  "base-uri 'none'",
  "form-action 'self'",
  "frame-ancestors 'none'",
].join('; ');

const headers: Readonly<Record<string, string>> = {
  'content-security-policy': contentPolicy,
  'x-content-type-options': 'nosniff',
  'x-frame-options': 'DENY',
  'referrer-policy': 'no-referrer',
  'cross-origin-opener-policy': 'same-origin',
  'cross-origin-resource-policy': 'same-origin',
  'permissions-policy': 'camera=(), microphone=(), geolocation=(self)',
};

const yearS = 31_536_000;

export function guard(app: FastifyInstance, access: Access): void {
  app.addHook('onRequest', async (request, reply) => {
    reply.headers(headers);
    if (isSecure(access)) reply.header('strict-transport-security', `max-age=${yearS}`);
    if (request.url.startsWith('/api/')) reply.header('cache-control', 'no-store');
    if (!isOwnHost(request.headers.host, access)) return refuse(reply, 421, 'wrong-host', { address: access.origin() });
    if (!readingMethods.has(request.method) && !isOwnPage(request, access)) return refuse(reply, 403, 'other-site');
  });
}

/** The name without its port. */
function isOwnHost(host: string | undefined, { hosts }: Access): boolean {
  const name = (host ?? '').replace(/:\d+$/, '').toLowerCase();
  return name === '127.0.0.1' || name === 'localhost' || name === '[::1]' || hosts.includes(name);
}

function isOwnPage(request: FastifyRequest, access: Access): boolean {
  const { origin, host, 'sec-fetch-site': site } = request.headers;
  if (site !== undefined && site !== 'same-origin' && site !== 'none') return false;
  if (origin !== undefined)
    return origin === access.origin() || origin === `${isSecure(access) ? 'https' : 'http'}://${host}`;
  // Every browser says where a write comes from in one of the two. Who says neither is a program, and a program has to say it with a cookie.
  return site !== undefined || cookieOf(request, access) === null;
}
