/**
 * A short key of what a value says, so that stages are kept by the content of what they were given and never by an id alone.
 *
 * An object is read once: the farm's objects never change, they are replaced. Two objects that say the same have the same key.
 */
export interface ContentKeys {
  readonly of: (value: unknown) => string;
}

export function makeContentKeys(): ContentKeys {
  const byObject = new WeakMap<object, string>();
  const byText = new Map<string, string>();
  const intern = (text: string): string => {
    const known = byText.get(text);
    if (known !== undefined) return known;
    const key = byText.size.toString(36);
    byText.set(text, key);
    return key;
  };
  return {
    of: (value) => {
      if (typeof value !== 'object' || value === null) return intern(JSON.stringify(value) ?? 'undefined');
      const known = byObject.get(value);
      if (known !== undefined) return known;
      const key = intern(JSON.stringify(value));
      byObject.set(value, key);
      return key;
    },
  };
}
