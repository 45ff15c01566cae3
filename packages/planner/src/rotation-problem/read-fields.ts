/** Members of a JSON object, read one by one; what is wrong is added to a list and replaced by something harmless. */

export interface ProblemFault {
  /** Where, as in `plots.3.area`. */
  readonly place: string;
  readonly found: string;
  readonly need: string;
}

interface NumberRange {
  readonly least?: number;
  readonly most?: number;
  /** Taken when nothing is said; without it the number is needed. */
  readonly absent?: number;
}

export type Fields = ReturnType<typeof readFields>;

export function readFields(said: unknown, place: string, faults: ProblemFault[]) {
  const isObject = typeof said === 'object' && said !== null && !Array.isArray(said);
  if (!isObject) faults.push({ place, found: JSON.stringify(said) ?? 'nothing', need: 'an object' });
  const members = isObject ? (said as Readonly<Record<string, unknown>>) : {};
  const member = (name: string): unknown => (Object.hasOwn(members, name) ? members[name] : undefined);
  const fault = (name: string, need: string) => {
    const at = place === '' ? name : `${place}.${name}`;
    faults.push({ place: at, found: JSON.stringify(member(name)) ?? 'nothing', need });
  };
  return {
    has: (name: string) => member(name) !== undefined,
    raw: member,
    ...singleFields({ member, fault }),
    ...namedFields({ member, fault }),
  };
}

interface Members {
  readonly member: (name: string) => unknown;
  readonly fault: (name: string, need: string) => void;
}

/** One value, or one list. */
function singleFields({ member, fault }: Members) {
  const number = (name: string, range: NumberRange): number => {
    const value = member(name);
    if (value === undefined && range.absent !== undefined) return range.absent;
    const { least = Number.NEGATIVE_INFINITY, most = Number.POSITIVE_INFINITY } = range;
    if (typeof value === 'number' && Number.isFinite(value) && value >= least && value <= most) return value;
    fault(name, rangeNeed(range));
    return Number.isFinite(least) ? least : 0;
  };
  return {
    number,
    whole: (name: string, range: NumberRange) => {
      const value = number(name, range);
      if (!Number.isInteger(value)) fault(name, 'a whole number');
      return Math.round(value);
    },
    text: (name: string, absent?: string) => {
      const value = member(name) ?? absent;
      if (typeof value === 'string' && value !== '') return value;
      fault(name, 'a word');
      return '';
    },
    texts: (name: string): readonly string[] => {
      const value = member(name);
      if (isTexts(value)) return value;
      fault(name, 'a list of words');
      return [];
    },
    flag: (name: string) => {
      const value = member(name) ?? false;
      if (typeof value === 'boolean') return value;
      fault(name, 'true or false');
      return false;
    },
    list: (name: string, mayBeAbsent = false): readonly unknown[] => {
      const value = member(name) ?? (mayBeAbsent ? [] : undefined);
      if (Array.isArray(value)) return value;
      fault(name, 'a list');
      return [];
    },
  };
}

/** Values of one kind by name. */
function namedFields({ member, fault }: Members) {
  function byName<T>(name: string, need: string, isRight: (value: unknown) => value is T): Record<string, T> {
    const value = member(name);
    const entries = typeof value === 'object' && value !== null && !Array.isArray(value) ? Object.entries(value) : null;
    if (entries?.every((entry): entry is [string, T] => isRight(entry[1]))) return Object.fromEntries(entries);
    fault(name, need);
    return {};
  }
  return {
    textsByName: (name: string) => byName(name, 'words by name', (value): value is string => typeof value === 'string'),
    listsByName: (name: string) => byName(name, 'lists of words by name', isTexts),
    numbersByName: (name: string, least: number) =>
      byName(name, `numbers of at least ${least} by name`, (value): value is number => isNumber(value, least)),
    numberListsByName: (name: string) =>
      byName(
        name,
        'lists of numbers by name',
        (value): value is readonly number[] => Array.isArray(value) && value.every((one) => isNumber(one, 0)),
      ),
  };
}

function rangeNeed({ least, most }: NumberRange): string {
  if (least !== undefined && most !== undefined) return `a number from ${least} to ${most}`;
  return least === undefined ? 'a number' : `a number of at least ${least}`;
}

function isTexts(value: unknown): value is readonly string[] {
  return Array.isArray(value) && value.every((one) => typeof one === 'string');
}

function isNumber(value: unknown, least: number): value is number {
  return typeof value === 'number' && Number.isFinite(value) && value >= least;
}
