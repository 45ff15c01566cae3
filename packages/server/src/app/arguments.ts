/** What can be said to the server on its command line. */
import { homedir } from 'node:os';
import { join, resolve } from 'node:path';
import { parseArgs } from 'node:util';
import { type Day, readDay } from '@leywright/measures';

export interface ServeWish {
  readonly folder: string;
  readonly port: number;
  /** The farm's day, when it is not the clock's. */
  readonly today: Day | null;
  /** Opens the sample farm when the store has none. */
  readonly sample: boolean;
}

export const usualPort = 4517;

/** Reads the words, or says all that is wrong with them. */
export function readServeArguments(
  words: readonly string[],
  env: Readonly<Record<string, string | undefined>>,
): ServeWish | readonly string[] {
  const read = parse(words);
  if ('problem' in read) return [read.problem];
  const { data, port, today, host, sample } = read.values;
  const problems: string[] = [];
  const portNumber = port === undefined ? usualPort : Number(port);
  if (!Number.isInteger(portNumber) || portNumber < 0 || portNumber > 65_535)
    problems.push(`--port: "${port}" is not a port, 1 to 65535.`);
  const day = today === undefined ? null : readDay(today);
  if (today !== undefined && day === null)
    problems.push(`--today: "${today}" is not a day of the calendar. Write it 2027-06-08.`);
  if (host !== undefined && host !== '127.0.0.1' && host !== 'localhost')
    problems.push(`--host: this version answers on this machine alone (127.0.0.1), so "${host}" is refused.`);
  if (problems.length > 0) return problems;
  return {
    folder: resolve(data ?? env['LEYWRIGHT_DATA'] ?? join(homedir(), '.leywright')),
    port: portNumber,
    today: day,
    sample: sample ?? false,
  };
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
      },
    });
  } catch (error) {
    return { problem: error instanceof Error ? error.message : String(error) };
  }
}
