/** Results kept by key, the longest unused thrown away first. */
export interface Memo<V> {
  readonly get: (key: string, make: () => V) => V;
}

export function makeMemo<V>(most: number): Memo<V> {
  const kept = new Map<string, V>();
  return {
    get: (key, make) => {
      const known = kept.get(key);
      if (known !== undefined) {
        kept.delete(key);
        kept.set(key, known);
        return known;
      }
      const value = make();
      kept.set(key, value);
      const oldest = kept.size > most ? kept.keys().next().value : undefined;
      if (oldest !== undefined) kept.delete(oldest);
      return value;
    },
  };
}
