import { readFileSync } from 'node:fs';
import { parse } from 'csv-parse/sync';

/** The rows of a table of published figures in test/checks. */
export function readChecks(file: string): readonly Readonly<Record<string, string>>[] {
  return parse(readFileSync(new URL(`./checks/${file}`, import.meta.url), 'utf8'), {
    columns: true,
    skip_empty_lines: true,
  }) as Record<string, string>[];
}
