/** What names mean in a folder: ids by what people may write for them, in any case, with or without accents. */
import { nameKey, nearest } from './nearest.ts';

export const nameKinds = [
  'crop',
  'plant',
  'plot',
  'field',
  'organism',
  'family',
  'course',
  'store',
  'store kind',
  'size',
  'person',
] as const;
export type NameKind = (typeof nameKinds)[number];

export type Named =
  | { readonly kind: 'one'; readonly id: string }
  | { readonly kind: 'several'; readonly ids: readonly string[] }
  | { readonly kind: 'none' };

export interface NameList {
  readonly find: (text: string) => Named;
  readonly nearest: (text: string) => string[];
}

export type Names = Readonly<Record<NameKind, NameList>>;

/** Ids with the names people use for them; an id may stand in several pairs. An exact id wins over any name. */
export function nameList(pairs: Iterable<readonly [id: string, name: string]>): NameList {
  const ids = new Set<string>();
  const byKey = new Map<string, Set<string>>();
  const spoken = new Map<string, string>();
  for (const [id, name] of pairs) {
    ids.add(id);
    for (const one of [id, name]) {
      spoken.set(one, id);
      byKey.set(nameKey(one), (byKey.get(nameKey(one)) ?? new Set()).add(id));
    }
  }
  return {
    find(text) {
      const plain = text.normalize('NFC');
      if (ids.has(plain)) return { kind: 'one', id: plain };
      const [first, ...more] = byKey.get(nameKey(plain)) ?? [];
      if (first === undefined) return { kind: 'none' };
      return more.length === 0 ? { kind: 'one', id: first } : { kind: 'several', ids: [first, ...more] };
    },
    nearest: (text) => [...new Set(nearest(text, spoken.keys()).map((one) => spoken.get(one) ?? one))],
  };
}
