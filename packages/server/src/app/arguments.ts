/** What can be said to the server on its command line. */
import { homedir } from 'node:os';
import { join, resolve } from 'node:path';
import { parseArgs } from 'node:util';
import { refusalSentence } from '@leywright/api';
import { type Day, readDay } from '@leywright/measures';

export interface ServeWish {
  readonly folder: string;
  readonly port: number;
  /** The farm's day, when it is not the clock's. */
  readonly today: Day | null;
  /** Opens the sample farm when the store has none. */
  readonly sample: boolean;
  /** Where it listens; 127.0.0.1 is this machine alone. */
  readonly host: string;
  /** Where people find it when that is not where it listens, such as https://farm.example. */
  readonly address: string | null;
  /** Files of the certificate and its key. */
  readonly cert: string | null;
  readonly key: string | null;
  /** Whether passwords may travel in the clear: on a network that is one's own. */
  readonly plainHttp: boolean;
  /** Asks for sign-in on this machine too. */
  readonly signIn: boolean;
  /** Folder of the daily backups, when it is not the one in the data folder. */
  readonly backups: string | null;
}

export const thisMachine = '127.0.0.1';

export const usualPort = 4517;

/** Reads the words, or says all that is wrong with them. */
export function readServeArguments(
  words: readonly string[],
  env: Readonly<Record<string, string | undefined>>,
): ServeWish | readonly string[] {
  const read = parse(words);
  if ('problem' in read) return [read.problem];
  const { values } = read;
  const portNumber = values.port === undefined ? usualPort : Number(values.port);
  const day = values.today === undefined ? null : readDay(values.today);
  const origin = values.address === undefined ? null : originOf(values.address);
  const problems = [
    Number.isInteger(portNumber) && portNumber >= 0 && portNumber <= 65_535
      ? null
      : `--port: "${values.port}" is not a port, 1 to 65535.`,
    values.today === undefined || day !== null
      ? null
      : `--today: "${values.today}" is not a day of the calendar. Write it 2027-06-08.`,
    values.address === undefined || origin !== null ? null : refusalSentence('bad-address', { found: values.address }),
    (values.cert === undefined) === (values.key === undefined) ? null : refusalSentence('cert-and-key', {}),
  ].filter((problem) => problem !== null);
  if (problems.length > 0) return problems;
  return {
    folder: resolve(values.data ?? env['LEYWRIGHT_DATA'] ?? join(homedir(), '.leywright')),
    port: portNumber,
    today: day,
    address: origin,
    ...plainWishes(values),
  };
}

function plainWishes(values: Values) {
  return {
    sample: values.sample ?? false,
    host: values.host ?? thisMachine,
    cert: values.cert ?? null,
    key: values.key ?? null,
    plainHttp: values['plain-http'] ?? false,
    signIn: values['sign-in'] ?? false,
    backups: values.backups === undefined ? null : resolve(values.backups),
  };
}

type Values = Exclude<ReturnType<typeof parse>, { problem: string }>['values'];

/** `https://farm.example:4517` of an address with nothing behind it; null when it is none. */
function originOf(address: string): string | null {
  const url = URL.canParse(address) ? new URL(address) : null;
  const isPlain = url !== null && url.pathname === '/' && url.search === '' && url.hash === '' && url.username === '';
  return url !== null && isPlain && /^https?:$/.test(url.protocol) ? url.origin : null;
}

function parse(words: readonly string[]) {
  try {
    return parseArgs({
      args: [...words],
      options: {
        data: { type: 'string' },
        port: { type: 'string' },
        today: { type: 'string' },
        host: { type: 'string' },
        sample: { type: 'boolean' },
        address: { type: 'string' },
        cert: { type: 'string' },
        key: { type: 'string' },
        'plain-http': { type: 'boolean' },
        'sign-in': { type: 'boolean' },
        backups: { type: 'string' },
      },
    });
  } catch (error) {
    return { problem: error instanceof Error ? error.message : String(error) };
  }
}
