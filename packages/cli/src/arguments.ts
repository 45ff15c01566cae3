/** Options all commands that look at a farm share. Everything wrong is said at once. */
import { parseArgs } from 'node:util';
import { type Day, readDay, yearOf } from '@leywright/measures';
import type { Gravity } from '@leywright/planner';
import type { Io } from './io.ts';
import { said } from './words.ts';

export interface FarmWish {
  readonly words: readonly string[];
  readonly json: boolean;
  readonly data: string | null;
  readonly to: string | null;
  readonly person: string | null;
  readonly today: Day;
  /** Whether --today was given. */
  readonly isDaySaid: boolean;
  readonly year: number | null;
  readonly stopAt: Gravity | null;
  /** Whether a store that is there already may be put aside. */
  readonly replace: boolean;
}

/** As in the planner's list; written here so that parsing words loads no planner. */
const gravitiesInWords = ['put-right', 'look', 'note'] as const satisfies readonly Gravity[];
const YEARS_AROUND = 30;

export type Parsed =
  | { readonly kind: 'wish'; readonly wish: FarmWish }
  | { readonly kind: 'problems'; readonly sentences: readonly string[] };

/** Reads the words after the command's name. `most` is how many may stand without an option. */
export function parseFarmWish(args: readonly string[], most: number, io: Io): Parsed {
  const read = parse(args);
  if ('sentence' in read) return { kind: 'problems', sentences: [read.sentence] };
  const { json = false, data = null, to = null, person = null, today, year, replace = false } = read.values;
  const stopAt = read.values['stop-at'];
  const sentences: string[] = read.positionals.slice(most).map(said.tooMany);
  const day = today === undefined ? io.today() : readDay(today);
  if (day === null) sentences.push(said.notADay(today ?? ''));
  const focus = year === undefined ? null : Number(year);
  sentences.push(...(year === undefined ? [] : yearProblems(year, day)));
  const gravity = stopAt === undefined ? null : gravitiesInWords.find((one) => one === stopAt);
  if (gravity === undefined) sentences.push(said.notAGravity(stopAt ?? ''));
  if (sentences.length > 0 || day === null || gravity === undefined) return { kind: 'problems', sentences };
  return {
    kind: 'wish',
    wish: {
      words: read.positionals,
      json,
      data,
      to,
      person,
      today: day,
      isDaySaid: today !== undefined,
      year: focus,
      stopAt: gravity,
      replace,
    },
  };
}

function yearProblems(year: string, day: Day | null): readonly string[] {
  if (!/^\d{4}$/.test(year)) return [said.notAYear(year)];
  return day !== null && Math.abs(Number(year) - yearOf(day)) > YEARS_AROUND ? [said.farYear(year, day)] : [];
}

function parse(args: readonly string[]) {
  try {
    return parseArgs({
      args: [...args],
      allowPositionals: true,
      options: {
        json: { type: 'boolean' },
        data: { type: 'string' },
        to: { type: 'string' },
        person: { type: 'string' },
        today: { type: 'string' },
        year: { type: 'string' },
        'stop-at': { type: 'string' },
        replace: { type: 'boolean' },
      },
    });
  } catch (error) {
    return { sentence: error instanceof Error ? error.message : String(error) };
  }
}
