/** Files as people's programs write them, made text. */
import { limits } from './limits.ts';
import type { ProblemList } from './problem.ts';

declare const TextDecoder: new (
  label: string,
  options?: { readonly fatal?: boolean },
) => { decode(bytes: Uint8Array): string };

export const bookFileName = 'entries.jsonl';

/** Text of a file: UTF-8 or UTF-16, with or without a mark. Null, with a problem, when it is too large or no text at all. */
export function textOf(file: string, bytes: string | Uint8Array, problems: ProblemList): string | null {
  const place = { file, line: null, column: null };
  const limitBytes = file === bookFileName ? limits.bookBytes : limits.fileBytes;
  if (bytes.length > limitBytes) {
    problems.add('too-large', place, { figures: { bytes: bytes.length, limitBytes } });
    return null;
  }
  const text =
    typeof bytes === 'string'
      ? bytes
      : decoded(bytes, () => problems.add('letters-guessed', place, { gravity: 'look', nearest: ['UTF-8'] }));
  if (text === null || text.includes('\0')) {
    problems.add('not-text', place);
    return null;
  }
  return text.replace(/^\uFEFF/, '');
}

/** TextDecoder stands in every place we run (Node, browsers, workers) but in no plain language library, hence the declaration above. */
function decoded(bytes: Uint8Array, guessed: () => void): string | null {
  const utf16 = utf16Order(bytes);
  if (utf16 !== null) return new TextDecoder(utf16).decode(bytes);
  if (bytes.subarray(0, 4096).includes(0)) return null;
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(bytes);
  } catch {
    if (looksBinary(bytes)) return null;
    // Older spreadsheets write Windows-1252; its letters are kept rather than refused, and told.
    guessed();
    return new TextDecoder('windows-1252').decode(bytes);
  }
}

/** Told by its mark, or by the empty half of every Latin letter. */
function utf16Order(bytes: Uint8Array): 'utf-16le' | 'utf-16be' | null {
  const [first, second] = bytes;
  if (first === 0xff && second === 0xfe) return 'utf-16le';
  if (first === 0xfe && second === 0xff) return 'utf-16be';
  const start = bytes.subarray(0, 200);
  if (start.length < 8) return null;
  const emptyAt = (parity: number) =>
    start.filter((byte, at) => at % 2 === parity && byte === 0).length / (start.length / 2);
  if (emptyAt(1) > 0.8 && emptyAt(0) < 0.1) return 'utf-16le';
  return emptyAt(0) > 0.8 && emptyAt(1) < 0.1 ? 'utf-16be' : null;
}

function looksBinary(bytes: Uint8Array): boolean {
  const start = bytes.subarray(0, 4096);
  const odd = start.filter((byte) => byte < 32 && byte !== 9 && byte !== 10 && byte !== 13).length;
  return odd > start.length * 0.01;
}
