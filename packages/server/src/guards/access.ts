/** How the server lets people in: settled once, when it starts. */
import { loadPasswords, type Passwords } from '../people/password.ts';

export interface Limits {
  /** Requests a minute by one person, or by one address before sign-in. */
  readonly personAMinute: number;
  readonly strangerAMinute: number;
  /** Tries to sign in, and looks at invitations, a minute from one address. */
  readonly signInAMinute: number;
}

export interface Access {
  /** Whether anyone has to sign in. */
  readonly isAsked: boolean;
  /** Where people find it, such as https://farm.example:4517. */
  readonly origin: () => string;
  /** Host names it answers to besides those of this machine; in small letters, without the port. */
  readonly hosts: readonly string[];
  /** Whether whoever calls comes by way of a server in front of this one, on this machine. */
  readonly isBehindProxy: boolean;
  readonly limits: Limits | null;
  readonly passwords: Passwords;
  /** Milliseconds since 1970 by the machine's clock: codes and sessions do not live on the farm's day. */
  readonly nowMs: () => number;
}

export const usualLimits: Limits = { personAMinute: 1200, strangerAMinute: 300, signInAMinute: 10 };

/** On this machine, where nothing is asked. */
export async function openAccess(origin: () => string): Promise<Access> {
  return {
    isAsked: false,
    origin,
    hosts: [],
    isBehindProxy: false,
    limits: null,
    passwords: await loadPasswords(),
    nowMs: () => Date.now(),
  };
}

export function isSecure(access: Access): boolean {
  return access.origin().startsWith('https:');
}
