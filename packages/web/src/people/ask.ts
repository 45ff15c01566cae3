/** What the pages ask the server about people. Nothing of it is kept here but the cookie, which no script sees. */
import type { peopleShapes } from '@leywright/api';
import type { ServerProblem } from '../worker/book/server.ts';

type Shaped<S extends keyof typeof peopleShapes> = (typeof peopleShapes)[S]['_output'];
export type Me = Shaped<'me'>;
export type Visitor = NonNullable<Me['visitor']>;
export type Person = Shaped<'people'>['people'][number];
export type SessionShown = Shaped<'sessions'>['sessions'][number];
export type InvitationShown = Shaped<'invitations'>['invitations'][number];
export type InvitationSeen = Shaped<'invitationSeen'>;
export type NewFactor = Shaped<'newFactor'>;

export type Told<T> =
  | { readonly kind: 'done'; readonly value: T }
  | { readonly kind: 'refused'; readonly code: string | null; readonly sentences: readonly string[] };

type Method = 'GET' | 'POST' | 'DELETE';

/** A refusal comes in the server's own words; out of reach is one too. */
export async function ask<T>(method: Method, path: string, outOfReach: string, body?: unknown): Promise<Told<T>> {
  try {
    const response = await fetch(path, {
      method,
      ...(body === undefined ? {} : { headers: { 'content-type': 'application/json' }, body: JSON.stringify(body) }),
    });
    if (response.ok) return { kind: 'done', value: (await response.json()) as T };
    const { problems } = (await response.json()) as { readonly problems: readonly ServerProblem[] };
    return { kind: 'refused', code: problems[0]?.code ?? null, sentences: problems.map(({ sentence }) => sentence) };
  } catch {
    return { kind: 'refused', code: null, sentences: [outOfReach] };
  }
}

const longestWaitMs = 2_500;

/** Who is here; null when the server is not reached, so that what is kept here can be shown. */
export async function whoIsHere(): Promise<Me | null> {
  try {
    const response = await fetch('/api/me', { signal: AbortSignal.timeout(longestWaitMs) });
    return response.ok ? ((await response.json()) as Me) : null;
  } catch {
    return null;
  }
}
