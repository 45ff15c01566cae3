/** How the server says no: always `{ problems: [...] }`, all of them at once, in words. */
import { type Figures, refusalSentence } from '@leywright/api';
import type { FastifyReply } from 'fastify';

export interface HttpProblem {
  readonly code: string;
  readonly sentence: string;
  readonly file: string | null;
  readonly line: number | null;
  readonly column: string | null;
  readonly found: string | null;
  readonly nearest: readonly string[];
  readonly gravity: 'stops' | 'look';
}

export function refusal(code: string, figures: Figures = {}, at: { readonly column?: string } = {}): HttpProblem {
  const found = figures['found'];
  return {
    code,
    sentence: refusalSentence(code, figures),
    file: null,
    line: null,
    column: at.column ?? null,
    found: found === undefined || found === null ? null : String(found),
    nearest: [],
    gravity: 'stops',
  };
}

export function sendProblems(reply: FastifyReply, status: number, problems: readonly HttpProblem[]): FastifyReply {
  return reply.code(status).type('application/json').send({ problems });
}

export function refuse(reply: FastifyReply, status: number, code: string, figures: Figures = {}): FastifyReply {
  return sendProblems(reply, status, [refusal(code, figures)]);
}
