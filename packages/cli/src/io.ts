/** What a command may touch, handed in by `main.ts` so that commands can be tried without a terminal. */
import type { Day } from '@leywright/measures';

export interface Io {
  readonly out: (text: string) => void;
  readonly err: (text: string) => void;
  /** All of standard input as text. */
  readonly input: () => Promise<string>;
  readonly env: Readonly<Record<string, string | undefined>>;
  readonly today: () => Day;
}

/** 0 fine, 1 findings at or above `--stop-at` (or checks missed), 2 bad input. */
export type ExitCode = 0 | 1 | 2;

/** Says what is wrong, one sentence a line, and gives the code for bad input. */
export function refuse(io: Io, sentences: readonly string[]): ExitCode {
  for (const sentence of sentences) io.err(sentence);
  return 2;
}

export function printJson(io: Io, value: unknown): void {
  io.out(JSON.stringify(value, null, 2));
}
