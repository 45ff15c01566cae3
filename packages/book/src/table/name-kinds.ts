/** Cells that name something else: a plot, a crop, a course. Read by id, name or alias; kept as the id. */
import type { NameKind } from '../names/names.ts';
import type { Cell, Kind } from './column.ts';
import { text } from './plain-kinds.ts';

/** One name. */
export function nameOf<T extends string>(of: NameKind): Kind<T> {
  return {
    holds: `id or name of a ${of}`,
    read: (found, cell) => readName<T>(found, of, cell),
    write: (value) => value,
  };
}

/** Several names, joined by semicolons. */
export function namesOf<T extends string>(of: NameKind): Kind<readonly T[]> {
  return {
    holds: `ids or names of ${of}s, joined by ;`,
    read: (found, cell) => {
      const read = found
        .split(/[;|]/)
        .map((one) => one.trim())
        .filter((one) => one !== '')
        .map((one) => readName<T>(one, of, cell));
      return read.every((one) => one !== undefined) ? read : undefined;
    },
    write: (value) => value.join(';'),
  };
}

function readName<T extends string>(found: string, of: NameKind, cell: Cell): T | undefined {
  const named = cell.names[of].find(found);
  if (named.kind === 'one') return named.id as T;
  if (named.kind === 'several') return cell.fault('ambiguous-name', { found, nearest: named.ids, figures: { of } });
  return cell.fault('unknown-name', { found, nearest: cell.names[of].nearest(found), figures: { of } });
}

/** A botanical family; one that no table knows is kept as written and told as worth a look. */
export const family: Kind<string> = {
  holds: 'botanical family',
  read: (found, cell) => {
    const plain = text.read(found, cell);
    if (plain === undefined) return undefined;
    const named = cell.names.family.find(plain);
    if (named.kind === 'one') return named.id;
    const nearest = cell.names.family.nearest(plain);
    cell.fault('unknown-name', { gravity: 'look', found, nearest, figures: { of: 'family' } });
    return plain;
  },
  write: text.write,
};
