import { distance } from 'fastest-levenshtein';

/** Letters and digits only, lower case, accents off: how names are compared. */
export function nameKey(text: string): string {
  return text
    .normalize('NFKD')
    .replace(/\p{M}/gu, '')
    .toLowerCase()
    .replace(/[^\p{L}\p{N}]+/gu, ' ')
    .trim();
}

/** Longest text compared: nobody means a name with more. */
const longestCompared = 80;

/** Up to three of `choices` most like `text`, nearest first; none when nothing is near (more than two in five letters differ). */
export function nearest(text: string, choices: Iterable<string>): string[] {
  const wanted = nameKey(text.slice(0, longestCompared));
  if (wanted === '') return [];
  const most = Math.max(1, Math.floor(wanted.length * 0.4));
  const ranked: { choice: string; off: number }[] = [];
  for (const choice of choices) {
    const key = nameKey(choice);
    const inside =
      wanted.length > 2 && (key.startsWith(`${wanted} `) || wanted.startsWith(`${key} `))
        ? 1
        : Number.POSITIVE_INFINITY;
    const off = Math.abs(key.length - wanted.length) > most ? inside : Math.min(distance(wanted, key), inside);
    if (off <= most) ranked.push({ choice, off });
  }
  return ranked
    .sort((a, b) => a.off - b.off || (a.choice < b.choice ? -1 : 1))
    .slice(0, 3)
    .map((one) => one.choice);
}
