/** The one cookie: it holds the session's token, is not seen by scripts, and is sent by our own pages alone. */
import type { FastifyReply, FastifyRequest } from 'fastify';
import { type Access, isSecure } from './access.ts';

/** With `__Host-` a browser takes it from https and this very host alone. */
function nameOf(access: Access): string {
  return isSecure(access) ? '__Host-leywright' : 'leywright';
}

export function cookieOf(request: FastifyRequest, access: Access): string | null {
  const wanted = `${nameOf(access)}=`;
  const found = (request.headers.cookie ?? '').split(';').map((pair) => pair.trim());
  return found.find((pair) => pair.startsWith(wanted))?.slice(wanted.length) ?? null;
}

export function putCookie(reply: FastifyReply, access: Access, value: string, seconds: number): void {
  const words = [`${nameOf(access)}=${value}`, 'Path=/', 'HttpOnly', 'SameSite=Strict', `Max-Age=${seconds}`];
  reply.header('set-cookie', [...words, ...(isSecure(access) ? ['Secure'] : [])].join('; '));
}

export function dropCookie(reply: FastifyReply, access: Access): void {
  putCookie(reply, access, '', 0);
}
