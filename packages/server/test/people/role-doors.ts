/** A right request for every door, and what comes of it when each role makes it: the authorisation table, as observed. */
import type { Role } from '@leywright/book';
import { roles } from '@leywright/book';
import { doors } from '../../src/guards/doors.ts';
import {
  type Answer,
  addPerson,
  type Browser,
  browser,
  type Method,
  openPeopleBench,
  type PeopleBench,
  password,
  signedIn,
} from './people-bench.ts';

export const callers = ['nobody', ...roles, 'grower of another farm'] as const;
export type Caller = (typeof callers)[number];
/** What is said to somebody who may not come through a door. */
const closed = new Set(['sign-in-first', 'not-for-your-role', 'factor-first', 'at-the-machine-alone', 'no-such-farm']);

export interface Walked {
  readonly door: string;
  readonly caller: Caller;
  readonly answer: Answer;
  readonly isOpen: boolean;
}

interface Example {
  readonly path: (bench: PeopleBench) => string;
  readonly body?: unknown;
}

const household = {
  size: 'small',
  drop: null,
  from: '2027-01-01',
  to: null,
  person: { name: 'Ada Example', email: null, phone: null, address: null, without: [], note: null },
};

const ofFarm = (rest: string) => (bench: PeopleBench) => `/api/farms/${bench.farm}${rest}`;
const at = (path: string) => () => path;

/** One for each door of `doors`; the tests hold that none is missing. */
export const examples: Readonly<Record<string, Example>> = {
  'GET /api/me': { path: at('/api/me') },
  'POST /api/sign-in': { path: at('/api/sign-in'), body: { farm: 'x', person: 'x', password: 'x' } },
  'POST /api/invitations/look': { path: at('/api/invitations/look'), body: { link: 'x' } },
  'POST /api/invitations/accept': { path: at('/api/invitations/accept'), body: { link: 'x', password } },
  'POST /api/sign-out': { path: at('/api/sign-out') },
  'POST /api/me/password': { path: at('/api/me/password'), body: { password: 'x', newPassword: 'x' } },
  'POST /api/me/second-factor': { path: at('/api/me/second-factor'), body: { password: 'x' } },
  'POST /api/me/second-factor/confirm': { path: at('/api/me/second-factor/confirm'), body: { code: '1' } },
  'POST /api/me/second-factor/remove': { path: at('/api/me/second-factor/remove'), body: { password: 'x', code: '1' } },
  'POST /api/me/recovery-codes': { path: at('/api/me/recovery-codes'), body: { password: 'x' } },
  'GET /api/me/sessions': { path: at('/api/me/sessions') },
  'DELETE /api/me/sessions': { path: at('/api/me/sessions') },
  'DELETE /api/me/sessions/:session': { path: at('/api/me/sessions/none') },
  'GET /api/today': { path: at('/api/today') },
  'GET /api/openapi.json': { path: at('/api/openapi.json') },
  'GET /api/calc': { path: at('/api/calc') },
  'POST /api/calc/:model': { path: at('/api/calc/pressure'), body: { z_m: 1800 } },
  'GET /api/farms': { path: at('/api/farms') },
  'POST /api/farms': { path: at('/api/farms'), body: { sample: true } },
  'POST /api/folder/check': { path: at('/api/folder/check'), body: { files: { 'plots.csv': 'id\n' } } },
  'GET /api/farms/:farm/entries': { path: ofFarm('/entries?after=2460') },
  'POST /api/farms/:farm/entries': { path: ofFarm('/entries'), body: { entries: [] } },
  'GET /api/farms/:farm/plan': { path: ofFarm('/plan') },
  'GET /api/farms/:farm/findings': { path: ofFarm('/findings') },
  'GET /api/farms/:farm/why/*': { path: ofFarm('/why/net/a') },
  'GET /api/farms/:farm/trace/*': { path: ofFarm('/trace/plot/a') },
  'GET /api/farms/:farm/balance': { path: ofFarm('/balance') },
  'POST /api/farms/:farm/rotation': { path: ofFarm('/rotation'), body: { years: 4, seconds: 1 } },
  'GET /api/farms/:farm/work': { path: ofFarm('/work') },
  'GET /api/farms/:farm/day': { path: ofFarm('/day') },
  'GET /api/farms/:farm/orders': { path: ofFarm('/orders') },
  'GET /api/farms/:farm/orders.csv': { path: ofFarm('/orders.csv') },
  'GET /api/farms/:farm/orders.xlsx': { path: ofFarm('/orders.xlsx') },
  'GET /api/farms/:farm/calendars': { path: ofFarm('/calendars') },
  'GET /api/calendars/:farm/:person/:key': { path: at('/api/calendars/x/x/x') },
  'GET /api/farms/:farm/export': { path: ofFarm('/export') },
  'GET /api/farms/:farm/people': { path: ofFarm('/people') },
  'POST /api/farms/:farm/people/:person': { path: ofFarm('/people/walked'), body: { name: 'Walked On' } },
  'GET /api/farms/:farm/people/:person/sessions': { path: ofFarm('/people/walked/sessions') },
  'DELETE /api/farms/:farm/people/:person/sessions': { path: ofFarm('/people/walked/sessions') },
  'GET /api/farms/:farm/invitations': { path: ofFarm('/invitations') },
  'POST /api/farms/:farm/invitations': {
    path: ofFarm('/invitations'),
    body: { person: 'new-one', name: 'New One', role: 'hand' },
  },
  'DELETE /api/farms/:farm/invitations/:invitation': { path: ofFarm('/invitations/none') },
  'GET /api/farms/:farm/households': { path: ofFarm('/households') },
  'PUT /api/farms/:farm/households/:household': { path: ofFarm('/households/h-1'), body: household },
  'GET /api/farms/:farm/households/:household/export': { path: ofFarm('/households/h-1/export') },
  'POST /api/farms/:farm/households/:household/erase': { path: ofFarm('/households/h-1/erase') },
};

export const apiDoors = Object.keys(doors).filter((door) => door.includes(' /api/'));

/** Everyone at every door. */
export async function walkDoors(): Promise<readonly Walked[]> {
  const bench = await openPeopleBench();
  try {
    for (const role of roles) await addPerson(bench, role, role);
    await addPerson(bench, 'walked', 'hand');
    await addPerson(bench, 'stranger', 'grower', { farm: bench.other });
    await bench.desk.store.households.putHousehold(bench.farm, { ...household, id: 'h-1' } as never);
    const walked: Walked[] = [];
    for (const caller of callers) {
      let own = await comeIn(bench, caller);
      for (const door of apiDoors) {
        const example = examples[door];
        if (example === undefined) continue;
        const [method = 'GET'] = door.split(' ');
        const answer = await own.ask(method as Method, example.path(bench), example.body);
        walked.push({ door, caller, answer, isOpen: answer.status < 400 || !closed.has(answer.code() ?? '') });
        if (door === 'POST /api/sign-out') own = await comeIn(bench, caller);
      }
    }
    return walked;
  } finally {
    await bench.close();
  }
}

function comeIn(bench: PeopleBench, caller: Caller): Promise<Browser> {
  // Wrong passwords among the examples make the next sign-in wait.
  bench.clock.nowMs += 3_600_000;
  if (caller === 'nobody') return Promise.resolve(browser(bench.app));
  return caller === 'grower of another farm' ? signedIn(bench, 'stranger', bench.other) : signedIn(bench, caller);
}

/** Whether the table of doors lets this caller in. */
export function isMeantOpen(door: string, caller: Caller): boolean {
  const meant = doors[door];
  if (meant === undefined || meant === 'at-the-machine') return false;
  if (meant === 'anyone') return true;
  if (caller === 'nobody') return false;
  if (meant === 'own-account') return true;
  if (caller === 'grower of another farm') return !door.includes('/:farm/') && meant.includes('grower');
  return meant.includes(caller as Role);
}

/** The table of docs/security.md. */
export function tableOf(walked: readonly Walked[]): string {
  const rows = apiDoors.map((door) => [
    `\`${door}\``,
    ...callers.map((caller) =>
      walked.find((one) => one.door === door && one.caller === caller)?.isOpen ? 'yes' : '·',
    ),
  ]);
  const heads = ['Route', ...callers];
  const widths = heads.map((head, column) => Math.max(head.length, ...rows.map((row) => row[column]?.length ?? 0)));
  const line = (cells: readonly string[]) => `| ${cells.map((cell, at) => cell.padEnd(widths[at] ?? 0)).join(' | ')} |`;
  return [line(heads), line(widths.map((width) => '-'.repeat(width))), ...rows.map(line)].join('\n');
}
