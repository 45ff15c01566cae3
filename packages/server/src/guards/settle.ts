/** Settles, before the server listens, who will be asked to sign in, and refuses what would leave a farm open to strangers. */
import { readFileSync } from 'node:fs';
import { hostname, networkInterfaces } from 'node:os';
import { refusalSentence } from '@leywright/api';
import type { Store } from '@leywright/store';
import type { ServeWish } from '../app/arguments.ts';
import { loadPasswords } from '../people/password.ts';
import { type Standing, standingOf } from '../people/standing.ts';
import { type Access, usualLimits } from './access.ts';

export interface Tls {
  readonly cert: Buffer;
  readonly key: Buffer;
}

export type Settled =
  | {
      readonly kind: 'settled';
      readonly access: (origin: () => string) => Promise<Access>;
      readonly tls: Tls | null;
      /** The address people find it at, when it was given. */
      readonly address: string | null;
      /** What is worth saying when it starts. */
      readonly said: readonly string[];
    }
  | { readonly kind: 'refused'; readonly sentence: string };

export async function settleAccess(wish: ServeWish, store: Store, nowMs: number): Promise<Settled> {
  const standing = await standingOf(store, nowMs);
  const isBeyond = answersBeyond(wish);
  const refusal = isBeyond ? refusalBeyond(wish, standing) : refusalHere(wish, standing);
  if (refusal !== null) return { kind: 'refused', sentence: refusal };
  const tls = readTls(wish);
  if (typeof tls === 'string') return { kind: 'refused', sentence: tls };
  const isAsked = isBeyond || wish.signIn || (standing.growers > 0 && standing.people > 1);
  const isBehindProxy = wish.address !== null && tls === null;
  return {
    kind: 'settled',
    tls,
    address: wish.address,
    said: isBeyond && !isEncrypted(wish) ? [refusalSentence('travels-in-the-clear', {})] : [],
    access: async (origin) => ({
      isAsked,
      origin,
      hosts: hostsOf(wish),
      isBehindProxy,
      limits: isAsked ? usualLimits : null,
      passwords: await loadPasswords(),
      nowMs: () => Date.now(),
    }),
  };
}

export function isThisMachine(host: string): boolean {
  return host === 'localhost' || host === '::1' || /^127(\.\d{1,3}){3}$/.test(host);
}

/** Whether anyone who does not sit at this machine could call. An address given for it says that somebody else will pass calls on. */
function answersBeyond({ host, address }: ServeWish): boolean {
  return !isThisMachine(host) || (address !== null && !isThisMachine(new URL(address).hostname));
}

function isEncrypted({ address, cert }: ServeWish): boolean {
  return cert !== null || address?.startsWith('https:') === true;
}

function refusalBeyond(wish: ServeWish, { growers, invitedGrowers }: Standing): string | null {
  if (growers + invitedGrowers === 0) return refusalSentence('needs-a-grower', { folder: wish.folder });
  return isEncrypted(wish) || wish.plainHttp ? null : refusalSentence('needs-https', {});
}

function refusalHere(wish: ServeWish, { growers, invitedGrowers }: Standing): string | null {
  return wish.signIn && growers + invitedGrowers === 0
    ? refusalSentence('needs-a-grower', { folder: wish.folder })
    : null;
}

function readTls({ cert, key }: ServeWish): Tls | null | string {
  if (cert === null || key === null) return null;
  try {
    return { cert: readFileSync(cert), key: readFileSync(key) };
  } catch (error) {
    return refusalSentence('cannot-read-cert', { found: error instanceof Error ? error.message : String(error) });
  }
}

/** Names a browser may call it by: the address it was given, where it listens, and where it listens everywhere, all of this machine's. */
function hostsOf({ host, address }: ServeWish): readonly string[] {
  const isEverywhere = host === '0.0.0.0' || host === '::';
  const own = Object.values(networkInterfaces()).flatMap((cards) => (cards ?? []).map((card) => card.address));
  const names = isEverywhere ? [...own, hostname(), `${hostname()}.local`] : [host];
  const given = address === null ? [] : [new URL(address).hostname];
  return [...names, ...given].map((name) =>
    (name.includes(':') && !name.startsWith('[') ? `[${name}]` : name).toLowerCase(),
  );
}
