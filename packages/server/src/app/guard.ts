/**
 * This version listens on this machine alone, without sign-in. So a page of another site must not be able to reach it through the
 * grower's own browser: the Host header has to be ours (else a foreign name was pointed at 127.0.0.1), and writes have to come from our
 * own pages or from no page at all.
 */
import type { FastifyInstance, FastifyRequest } from 'fastify';
import { refuse } from './answer.ts';

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

export function guard(app: FastifyInstance, address: () => string): void {
  app.addHook('onRequest', async (request, reply) => {
    reply.headers(headers);
    if (request.url.startsWith('/api/')) reply.header('cache-control', 'no-store');
    if (!isOwnHost(request.headers.host)) return refuse(reply, 421, 'wrong-host', { address: address() });
    if (!readingMethods.has(request.method) && !isOwnPage(request)) return refuse(reply, 403, 'other-site');
  });
}

/** The name without its port. */
function isOwnHost(host: string | undefined): boolean {
  const name = (host ?? '').replace(/:\d+$/, '').toLowerCase();
  return name === '127.0.0.1' || name === 'localhost' || name === '[::1]';
}

function isOwnPage(request: FastifyRequest): boolean {
  const site = request.headers['sec-fetch-site'];
  if (site !== undefined && site !== 'same-origin' && site !== 'none') return false;
  const { origin, host } = request.headers;
  return origin === undefined || origin === `http://${host}`;
}
