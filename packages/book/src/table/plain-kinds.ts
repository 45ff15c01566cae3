/** Kinds of cells without a unit: text, ids, lists, yes or no, numbers and shares. */
import { type Id, readId, readNumber } from '@leywright/measures';
import { nearest } from '../names/nearest.ts';
import type { Cell, Kind } from './column.ts';

/** Longest text of one cell, characters. */
const longestText = 2000;

/** Text as people write it: spaces at its ends dropped, letters composed (NFC). */
export const text: Kind<string> = {
  holds: 'text',
  read: (found, cell) => {
    const plain = unguarded(found).normalize('NFC').trim();
    return plain.length <= longestText
      ? plain
      : cell.fault('out-of-range', { figures: { mostCharacters: longestText } });
  },
  write: guarded,
};

// A spreadsheet runs a cell that begins so as a formula; a second apostrophe keeps text that came with one of its own.
const runsAsFormula = /^'*[=+\-@\t\r]/;

/** Text made safe to open in a spreadsheet: an apostrophe before what would run as a formula. */
export function guarded(plain: string): string {
  return runsAsFormula.test(plain) ? `'${plain}` : plain;
}

/** The text before it was made safe. */
export function unguarded(found: string): string {
  return /^'+[=+\-@\t\r]/.test(found) ? found.slice(1) : found;
}

/** An id made of letters and digits in groups joined by - _ . or : */
export function id<T extends Id | string>(): Kind<T> {
  return {
    holds: 'id',
    read: (found, cell) => (readId<Id>(found) as T | null) ?? cell.fault('not-an-id', { nearest: nearestId(found) }),
    write: (value) => value,
  };
}

function nearestId(found: string): string[] {
  const mended = found
    .normalize('NFC')
    .replace(/[^\p{L}\p{N}]+/gu, '-')
    .replace(/^-|-$/g, '')
    .slice(0, 64)
    .replace(/-$/, '');
  return mended === '' ? [] : [mended];
}

/** One of a closed list. */
export function oneOf<T extends string>(list: readonly T[]): Kind<T> {
  return {
    holds: list.join(', '),
    read: (found, cell) => {
      const plain = found.toLowerCase().replaceAll(' ', '-');
      const near = nearest(found, list);
      return (
        list.find((one) => one === plain) ??
        cell.fault('not-in-list', { nearest: near.length > 0 ? near : list.slice(0, 8) })
      );
    },
    write: (value) => value,
  };
}

/** Several of a closed list, joined by ; in any order, each once. */
export function listOf<T extends string>(list: readonly T[]): Kind<readonly T[]> {
  const one = oneOf(list);
  return {
    holds: `${list.join(', ')}, joined by ;`,
    read: (found, cell) => {
      const read = found
        .split(/[;|]/)
        .map((part) => part.trim())
        .filter((part) => part !== '')
        .map((part) => one.read(part, cell));
      return read.every((part) => part !== undefined) ? [...new Set(read)] : undefined;
    },
    write: (value) => value.join(';'),
  };
}

const yeses = ['yes', 'y', 'true', '1', 'x', 'ja', 'oui', 'si', 'sí'];
const noes = ['no', 'n', 'false', '0', 'nein', 'non', 'nee'];

export const yesNo: Kind<boolean> = {
  holds: 'yes or no',
  read: (found, cell) => {
    const word = found.toLowerCase();
    if (yeses.includes(word)) return true;
    return noes.includes(word) ? false : cell.fault('not-in-list', { nearest: ['yes', 'no'] });
  },
  write: (value) => (value ? 'yes' : 'no'),
};

export interface Bounds {
  readonly least?: number;
  readonly most?: number;
  /** True when `least` itself is too little. */
  readonly above?: boolean;
  readonly whole?: boolean;
}

/** A number in one unit, kept times `factor`; bounds are in the unit kept. */
export function number(unit: string, bounds: Bounds = {}, factor = 1): Kind<number> {
  return {
    holds: unit === '' ? 'number' : unit,
    numeric: true,
    read: (found, cell) => {
      const value = readCellNumber(found, cell);
      return value === undefined ? undefined : within(value * factor, bounds, cell, factor);
    },
    write: (value) => String(factor === 1 ? value : value / factor),
  };
}

export const wholeNumber = (unit: string, bounds: Bounds = {}): Kind<number> =>
  number(unit, { ...bounds, whole: true });

/** A number as people and spreadsheets write it; undefined, told, when it is none or could be two. */
export function readCellNumber(found: string, cell: Cell): number | undefined {
  const read = readNumber(found, cell.decimals);
  if (read.kind === 'ambiguous') return cell.fault('ambiguous-number', { nearest: read.readings.map(String) });
  if (read.kind === 'not-a-number') {
    const digits = /[+-]?\d[\d.,]*/.exec(found)?.[0];
    const wouldDo = digits !== undefined && readNumber(digits, cell.decimals).kind === 'number';
    return cell.fault('not-a-number', { nearest: wouldDo ? [digits] : [] });
  }
  if (cell.pointMayPartThousands && cell.decimals === null && /^[+-]?[1-9]\d{0,2}\.\d{3}$/.test(found)) {
    return cell.fault('ambiguous-number', { nearest: [String(read.value), String(read.value * 1000)] });
  }
  return read.value;
}

function within(value: number, bounds: Bounds, cell: Cell, factor: number): number | undefined {
  const { least = Number.NEGATIVE_INFINITY, most = Number.POSITIVE_INFINITY, above = false, whole = false } = bounds;
  if (whole && !Number.isInteger(value)) return cell.fault('not-whole', { nearest: [String(Math.round(value))] });
  const tooLittle = above ? value <= least : value < least;
  if (!tooLittle && value <= most) return value;
  const positive = value < 0 && -value >= least && -value <= most ? [String(-value / factor)] : [];
  return cell.fault('out-of-range', {
    nearest: positive,
    figures: {
      ...(Number.isFinite(least) ? { least: least / factor } : {}),
      ...(Number.isFinite(most) ? { most: most / factor } : {}),
    },
  });
}
