/** Who is signed in, for routes about their own account; and what all of these routes work with. */
import type { Account, Session } from '@leywright/store';
import type { FastifyReply, FastifyRequest } from 'fastify';
import { refuse } from '../../app/answer.ts';
import type { Desk } from '../../app/desk.ts';
import type { Access } from '../../guards/access.ts';
import { countFailure, waitOf } from '../sign-in.ts';
import { lacksFactor, type SignedIn } from '../visitor.ts';

export interface PeopleDesk {
  readonly desk: Desk;
  readonly access: Access;
}

/** Refuses and answers null where nothing is asked, so that there is no account. */
export function signedIn(request: FastifyRequest, reply: FastifyReply): SignedIn | null {
  if (request.visitor.kind === 'signed-in') return request.visitor;
  refuse(reply, 409, 'no-account');
  return null;
}

/** What matters asks for the password once more; guesses count as failures to sign in. Refuses and answers false when it is wrong. */
export async function isPasswordGiven(
  { desk, access }: PeopleDesk,
  { account, password }: { readonly account: Account; readonly password: string },
  reply: FastifyReply,
): Promise<boolean> {
  const waitS = waitOf(account, access.nowMs());
  if (waitS > 0) refuse(reply, 429, 'wait-before-sign-in', { seconds: waitS });
  else if (await access.passwords.isRight(password, account.passwordHash)) return true;
  else {
    await countFailure({ store: desk.store, nowMs: access.nowMs }, account);
    refuse(reply, 403, 'password-wrong');
  }
  return false;
}

export async function toldAccount({ desk }: PeopleDesk, account: Account) {
  const { farm, person, name, role, asKnownOn, secondFactor } = account;
  const factor = secondFactor?.isOn === true ? 'on' : lacksFactor(account) ? 'to-set-up' : 'off';
  const recoveryCodesLeft = await desk.store.people.recoveryCodesLeft(farm, person);
  return { farm, person, name, role, asKnownOn, secondFactor: factor, recoveryCodesLeft };
}

/** Without the token, which the browser alone knows, and without its hash. */
export function toldSession({ id, madeAt, seenAt, endsAt, device }: Session, thisOne: string | null) {
  return { id, madeAt, seenAt, endsAt, device, isThis: id === thisOne };
}
