// Reads the project's own source files and parses each once, for the checks of the tree.
import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { parseSync } from 'oxc-parser';

export const projectFolder = resolve(import.meta.dirname, '../..');

/** Any node of the syntax tree. The checks look at a few kinds only, so they are read loosely. */
export interface SyntaxNode {
  readonly type: string;
  readonly start: number;
  readonly end: number;
  readonly [part: string]: unknown;
}

export interface ImportOfFile {
  /** What stands in quotes, such as '@leywright/book' or '../day.ts'. */
  readonly from: string;
  readonly line: number;
}

export interface SourceFile {
  /** From the project's folder, such as packages/book/src/replay.ts. */
  readonly path: string;
  /** 'book', or null outside packages/. */
  readonly packageName: string | null;
  readonly place: 'src' | 'test' | 'other';
  readonly text: string;
  readonly program: SyntaxNode;
  readonly imports: readonly ImportOfFile[];
  readonly lineAt: (offset: number) => number;
}

export interface Offence {
  readonly path: string;
  readonly line: number;
  readonly rule: string;
  readonly found: string;
  readonly remedy: string;
}

/** What a failing test prints: file, line, what is there, which rule, what to do. */
export function teach(offences: readonly Offence[]): string {
  return offences
    .map((one) => `\n${one.path}:${one.line}  ${one.found}\n    rule: ${one.rule}\n    do:   ${one.remedy}`)
    .join('\n');
}

export function parseFile(path: string, text: string): SourceFile {
  const parsed = parseSync(path, text);
  const [fault] = parsed.errors;
  if (fault !== undefined) throw new Error(`${path} cannot be parsed: ${fault.message}`);
  const lineStarts = [0, ...[...text.matchAll(/\n/g)].map((match) => match.index + 1)];
  const lineAt = (offset: number) => lineStarts.findLastIndex((start) => start <= offset) + 1;
  const program = parsed.program as unknown as SyntaxNode;
  const [, packageName = null, place] = /^packages\/([^/]+)\/([^/]+)\//.exec(path) ?? [];
  return {
    path,
    packageName,
    place: place === 'src' || place === 'test' ? place : 'other',
    text,
    program,
    imports: importsOf(program, lineAt),
    lineAt,
  };
}

/** All TypeScript and JavaScript files of ours: packages, checks, scripts, tasks, scenarios, bench. */
export function readTree(): readonly SourceFile[] {
  return ['packages', 'checks', 'scripts', 'tasks', 'scenarios', 'bench']
    .flatMap((folder) => filesUnder(folder))
    .filter((path) => /\.(ts|tsx|mjs)$/.test(path))
    .map((path) => parseFile(path, readFileSync(join(projectFolder, path), 'utf8')));
}

const leaveOut = new Set(['node_modules', 'dist', '.cache', 'generated', 'results']);

/** Paths from the project's folder, in order. */
export function filesUnder(folder: string): readonly string[] {
  const full = join(projectFolder, folder);
  if (!existsSync(full)) return [];
  return readdirSync(full, { withFileTypes: true })
    .filter((entry) => !leaveOut.has(entry.name))
    .sort((a, b) => (a.name < b.name ? -1 : 1))
    .flatMap((entry) => {
      const path = `${folder}/${entry.name}`;
      return entry.isDirectory() ? filesUnder(path) : [path];
    });
}

/** Calls `visit` on every node, with its parent, from the top down. */
export function walk(node: SyntaxNode, visit: (node: SyntaxNode, parent: SyntaxNode | null) => void): void {
  const step = (value: unknown, parent: SyntaxNode | null) => {
    if (Array.isArray(value)) for (const item of value) step(item, parent);
    else if (isNode(value)) {
      visit(value, parent);
      for (const part of Object.values(value)) if (typeof part === 'object') step(part, value);
    }
  };
  step(node, null);
}

export function isNode(value: unknown): value is SyntaxNode {
  return typeof value === 'object' && value !== null && typeof (value as SyntaxNode).type === 'string';
}

/** The name of an identifier node; null for anything else. */
export function nameOf(node: unknown): string | null {
  return isNode(node) && typeof node['name'] === 'string' ? node['name'] : null;
}

/** Also finds `import('…')`, `export … from` and the type form `import('…').X`. */
function importsOf(program: SyntaxNode, lineAt: (offset: number) => number): readonly ImportOfFile[] {
  const imports: ImportOfFile[] = [];
  walk(program, (node) => {
    if (!/^(Import|Export(Named|All)|TSImport)/.test(node.type)) return;
    const source = node['source'] ?? node['argument'];
    const from = isNode(source) ? (source['value'] ?? (source['literal'] as SyntaxNode | undefined)?.['value']) : null;
    if (typeof from === 'string') imports.push({ from, line: lineAt(node.start) });
  });
  return imports;
}
