// The sample farm's folder with twelve mistakes in it, each with what should stand there.
import { cpSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';

export interface Mistake {
  readonly file: string;
  /** As a spreadsheet counts; null in farm.json. */
  readonly line: number | null;
  readonly column: string;
  readonly wrong: string;
  readonly right: string;
}

export const mistakes: readonly Mistake[] = [
  { file: 'plots.csv', line: 2, column: 'gross_m2', wrong: 'ten thousand', right: '10840' },
  { file: 'plots.csv', line: 3, column: 'field', wrong: 'north-feild', right: 'north-field' },
  { file: 'plots.csv', line: 4, column: 'status', wrong: 'organik', right: 'organic' },
  { file: 'people.csv', line: 2, column: 'hours_week', wrong: 'thirty-eight', right: '38' },
  { file: 'sizes.csv', line: 3, column: 'households', wrong: '-104', right: '104' },
  { file: 'prices.csv', line: 2, column: 'price', wrong: '1.5.0', right: '1.50' },
  { file: 'prices.csv', line: 3, column: 'crop', wrong: 'potato-first-erly', right: 'potato-first-early' },
  { file: 'stores.csv', line: 3, column: 'kind', wrong: 'ambient_frost', right: 'ambient_frost_free' },
  { file: 'rotation.csv', line: 2, column: 'sow', wrong: '02-31', right: '07-08' },
  { file: 'agreed.csv', line: 2, column: 'planted_on', wrong: '2027-02-31', right: '2027-05-01' },
  { file: 'history.csv', line: 3, column: 'what', wrong: 'trefoyl', right: 'trefoil' },
  { file: 'farm.json', line: null, column: 'rotation.first_year', wrong: 'soon', right: '2027' },
];

/** A copy of the sample farm with the mistakes made. Take it away when done. */
export function folderWithMistakes(): { readonly folder: string; readonly takeAway: () => void } {
  const above = mkdtempSync(join(tmpdir(), 'leywright-folder-'));
  const folder = join(above, 'my-farm');
  cpSync(resolve(import.meta.dirname, '..', 'demo'), folder, { recursive: true });
  for (const mistake of mistakes) {
    const path = join(folder, mistake.file);
    writeFileSync(path, withMistake(readFileSync(path, 'utf8'), mistake));
  }
  return { folder, takeAway: () => rmSync(above, { recursive: true, force: true }) };
}

function withMistake(text: string, { line, column, wrong, right }: Mistake): string {
  if (line === null) {
    const json = JSON.parse(text) as { rotation: Record<string, unknown> };
    json.rotation[column.split('.')[1] ?? ''] = wrong;
    return JSON.stringify(json, null, 2);
  }
  const lines = text.split('\n');
  const cells = (lines[line - 1] ?? '').split(',');
  const at = (lines[0] ?? '').split(',').indexOf(column);
  if (cells[at] !== right)
    throw new Error(`The sample farm has ${cells[at]} and not ${right} at line ${line}, ${column}.`);
  cells[at] = wrong;
  lines[line - 1] = cells.join(',');
  return lines.join('\n');
}
