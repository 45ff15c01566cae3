/** The rotation command's own options; everything wrong with them is said at once. */
import { parseArgs } from 'node:util';
import { type Farm, nearest } from '@leywright/book';
import type { FarmRotationWish } from '@leywright/planner';

export interface RotationWish {
  readonly wish: Omit<FarmRotationWish, 'today'>;
  readonly seconds: number;
  readonly gapShare: number;
  /** Whether what stands behind the proposal is asked for as well. */
  readonly isExplained: boolean;
  /** Words and options for all commands that look at a farm. */
  readonly rest: readonly string[];
  readonly sentences: readonly string[];
  /** Names in pins that the farm does not know. */
  readonly unknownNames: (farm: Farm) => readonly string[];
}

const ownOptions = ['years', 'from', 'pin', 'never', 'seconds', 'gap'] as const;
const explainOption = 'explain';
const leastYears = 4;
const mostYears = 15;

export function parseRotationWish(args: readonly string[]): RotationWish {
  const { own, rest } = parted(args);
  const sentences: string[] = [];
  const number = (
    name: 'years' | 'from' | 'seconds' | 'gap',
    absent: number,
    [least, most]: readonly [number, number],
  ) => {
    const said = own.get(name)?.at(-1);
    if (said === undefined) return absent;
    const value = Number(said);
    if (said.trim() !== '' && value >= least && value <= most) return value;
    sentences.push(`--${name}: "${said}" is not a number from ${least} to ${most}.`);
    return absent;
  };
  const pins = (own.get('pin') ?? []).flatMap((said) => {
    const [, plot, year, course] = /^([^:]+):(\d{4}):(.+)$/.exec(said) ?? [];
    if (plot === undefined || course === undefined) sentences.push(`--pin: write PLOT:YEAR:COURSE, not "${said}".`);
    return plot === undefined || course === undefined ? [] : [{ plot, year: Number(year), course }];
  });
  const never = (own.get('never') ?? []).flatMap((said) => {
    const [, plot, course] = /^([^:]+):(.+)$/.exec(said) ?? [];
    if (plot === undefined || course === undefined) sentences.push(`--never: write PLOT:COURSE, not "${said}".`);
    return plot === undefined || course === undefined ? [] : [{ plot, course }];
  });
  const from = own.has('from') ? number('from', 0, [1950, 2150]) : null;
  return {
    wish: { years: Math.round(number('years', 10, [leastYears, mostYears])), firstYear: from, pins, never, dear: [] },
    seconds: number('seconds', 20, [1, 3600]),
    gapShare: number('gap', 0, [0, 1]),
    isExplained: own.has(explainOption),
    rest,
    sentences,
    unknownNames: (farm) => unknownNames(farm, [...pins, ...never]),
  };
}

/** Own options with their values, and all other words as they came. */
function parted(args: readonly string[]) {
  const own = new Map<string, string[]>();
  const rest: string[] = [];
  const { tokens } = parseArgs({
    args: [...args],
    strict: false,
    tokens: true,
    options: Object.fromEntries(
      [...ownOptions, 'data', 'to', 'today', 'year', 'stop-at'].map((name) => [name, { type: 'string' as const }]),
    ),
  });
  for (const token of tokens) {
    if (token.kind === 'positional') rest.push(token.value);
    else if (token.kind === 'option-terminator') rest.push('--');
    else if (token.name === explainOption) own.set(explainOption, []);
    else if ((ownOptions as readonly string[]).includes(token.name))
      own.set(token.name, [...(own.get(token.name) ?? []), token.value ?? '']);
    else rest.push(token.value === undefined ? token.rawName : `${token.rawName}=${token.value}`);
  }
  return { own, rest };
}

function unknownNames(
  { plots, rotation }: Farm,
  said: readonly { readonly plot: string; readonly course: string }[],
): readonly string[] {
  const plotIds = plots.map((plot) => plot.id as string);
  const courseIds = (rotation?.courses ?? []).map((course) => course.id as string);
  const unknown = (word: string, known: readonly string[], of: string) =>
    known.includes(word)
      ? []
      : [`There is no ${of} "${word}". Did you mean ${nearest(word, known)[0] ?? known.join(', ')}?`];
  return said.flatMap((one) => [...unknown(one.plot, plotIds, 'plot'), ...unknown(one.course, courseIds, 'course')]);
}
