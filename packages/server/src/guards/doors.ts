/**
 * Who may come through which door, for every route: one table. A route that is not in it opens to nobody once sign-in is asked for, and the
 * tests go through every route of the app.
 */
import type { Role } from '@leywright/book';

export type Door =
  /** Open to all, also before sign-in. */
  | 'anyone'
  /** Whoever is signed in, for their own account; also a grower whose second factor is still to be set up. */
  | 'own-account'
  /** Only who sits at the machine, when nothing is asked there. */
  | 'at-the-machine'
  | readonly Role[];

const everyRole = ['grower', 'office', 'bench', 'hand', 'looker'] as const;
const desk = ['grower', 'office'] as const;
const workers = ['grower', 'office', 'bench', 'hand'] as const;
const growers = ['grower'] as const;

export const doors: Readonly<Record<string, Door>> = {
  'GET /*': 'anyone',
  'GET /': 'anyone',
  'GET /index.html': 'anyone',
  'GET /api/me': 'anyone',
  'POST /api/sign-in': 'anyone',
  'POST /api/invitations/look': 'anyone',
  'POST /api/invitations/accept': 'anyone',
  'POST /api/sign-out': 'own-account',
  'POST /api/me/password': 'own-account',
  'POST /api/me/second-factor': 'own-account',
  'POST /api/me/second-factor/confirm': 'own-account',
  'POST /api/me/second-factor/remove': 'own-account',
  'POST /api/me/recovery-codes': 'own-account',
  'GET /api/me/sessions': 'own-account',
  'DELETE /api/me/sessions': 'own-account',
  'DELETE /api/me/sessions/:session': 'own-account',
  'GET /api/today': everyRole,
  'GET /api/openapi.json': everyRole,
  'GET /api/calc': everyRole,
  'POST /api/calc/:model': everyRole,
  'GET /api/farms': everyRole,
  'POST /api/farms': 'at-the-machine',
  'POST /api/folder/check': desk,
  'GET /api/farms/:farm/entries': everyRole,
  'POST /api/farms/:farm/entries': workers,
  'GET /api/farms/:farm/plan': everyRole,
  'GET /api/farms/:farm/findings': everyRole,
  'GET /api/farms/:farm/why/*': everyRole,
  'POST /api/farms/:farm/rotation': desk,
  'GET /api/farms/:farm/work': desk,
  'GET /api/farms/:farm/day': workers,
  'GET /api/farms/:farm/orders': everyRole,
  'GET /api/farms/:farm/orders.csv': everyRole,
  'GET /api/farms/:farm/orders.xlsx': everyRole,
  'GET /api/farms/:farm/calendars': desk,
  /** Its key is the door: a calendar program cannot sign in. */
  'GET /api/calendars/:farm/:person/:key': 'anyone',
  'GET /api/farms/:farm/trace/*': everyRole,
  'GET /api/farms/:farm/balance': everyRole,
  'GET /api/farms/:farm/export': desk,
  'GET /api/farms/:farm/people': everyRole,
  'POST /api/farms/:farm/people/:person': growers,
  'GET /api/farms/:farm/people/:person/sessions': growers,
  'DELETE /api/farms/:farm/people/:person/sessions': growers,
  'GET /api/farms/:farm/invitations': growers,
  'POST /api/farms/:farm/invitations': growers,
  'DELETE /api/farms/:farm/invitations/:invitation': growers,
  'GET /api/farms/:farm/households': ['grower', 'office', 'bench'],
  'PUT /api/farms/:farm/households/:household': desk,
  'GET /api/farms/:farm/households/:household/export': desk,
  'POST /api/farms/:farm/households/:household/erase': desk,
};

/** The door of a route; null = it has none and opens to nobody. */
export function doorOf(method: string, url: string): Door | null {
  const name = `${method === 'HEAD' ? 'GET' : method} ${url}`;
  if (Object.hasOwn(doors, name)) return doors[name] ?? null;
  // The files of the built pages; each has its own name.
  return /^GET \/(?!api\/)/.test(name) ? 'anyone' : null;
}
