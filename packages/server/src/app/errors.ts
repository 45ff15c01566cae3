/** Turns whatever went wrong before or in a route into problems. Only our own faults are 500, and those are logged with a number. */
import type { FastifyError, FastifyInstance, FastifyReply, FastifyRequest } from 'fastify';
import { hasZodFastifySchemaValidationErrors } from 'fastify-type-provider-zod';
import { bodyLimitBytes } from './limits.ts';
import { type HttpProblem, refusal, refuse, sendProblems } from './answer.ts';

export function answerErrors(app: FastifyInstance, referenceHex: () => string): void {
  app.setNotFoundHandler((request, reply) => refuse(reply, 404, 'no-such-page', { found: pathOf(request) }));
  app.setErrorHandler((error: FastifyError, request, reply) => answer(error, request, reply, referenceHex));
}

function answer(error: FastifyError, request: FastifyRequest, reply: FastifyReply, referenceHex: () => string): FastifyReply {
  if (hasZodFastifySchemaValidationErrors(error)) return sendProblems(reply, 422, shapeProblems(error.validation as readonly ShapeIssue[]));
  const status = error.statusCode ?? 500;
  if (status === 413) return refuse(reply, 413, 'too-large', { limitMb: Math.round(bodyLimitBytes / 1e6) });
  if (status === 415) return refuse(reply, 415, 'wrong-content', { found: request.headers['content-type'] ?? 'nothing' });
  if (status === 400) return refuse(reply, 400, 'not-json');
  if (status < 500) return refuse(reply, status, 'no-such-page', { found: pathOf(request) });
  const reference = referenceHex();
  request.log.error({ err: error, reference }, 'fault');
  return refuse(reply, 500, 'our-fault', { reference });
}

function pathOf(request: FastifyRequest): string {
  return (request.url.split('?')[0] ?? '/').slice(0, 200);
}

interface ShapeIssue {
  readonly instancePath: string;
  readonly message?: string;
  readonly params?: unknown;
}

function shapeProblems(issues: readonly ShapeIssue[]): readonly HttpProblem[] {
  const said = issues.flatMap((issue) => innerIssues(issue)).map(({ path, message }) => {
    const field = path === '' ? 'body' : path;
    return refusal('not-as-asked', { field, said: message }, { column: field });
  });
  return said.length > 0 ? said : [refusal('not-json')];
}

/** Where one of several shapes would do, the one with the fewest faults is what was meant. */
function innerIssues(issue: ShapeIssue): readonly { readonly path: string; readonly message: string }[] {
  const outer = issue.instancePath.replace(/^\//, '').replaceAll('/', '.');
  const branches = branchesOf(issue.params);
  const meant = [...branches].sort((a, b) => a.length - b.length)[0];
  if (meant === undefined) return [{ path: outer, message: issue.message ?? 'not as asked' }];
  return meant.map((inner) => ({ path: [outer, ...(inner.path ?? []).map(String)].filter((part) => part !== '').join('.'), message: inner.message ?? 'not as asked' }));
}

interface InnerIssue {
  readonly path?: readonly (string | number)[];
  readonly message?: string;
}

function branchesOf(params: unknown): readonly (readonly InnerIssue[])[] {
  if (params === null || typeof params !== 'object') return [];
  const errors = 'errors' in params ? params.errors : 'issue' in params && params.issue !== null && typeof params.issue === 'object' && 'errors' in params.issue ? params.issue.errors : null;
  return Array.isArray(errors) ? (errors as readonly (readonly InnerIssue[])[]) : [];
}
