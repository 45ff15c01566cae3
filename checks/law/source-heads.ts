// Each model of agronomy says at its head where it is from and how it is checked.
import { existsSync } from 'node:fs';
import { join } from 'node:path';
import { isNode, type Offence, projectFolder, type SourceFile, type SyntaxNode } from './read-tree.ts';

const REMEDY =
  'begin the file with /** what it is … Source  author, year, table or equation · Checks  test/name.test.ts (what it holds) · Holds · Leaves out */';

/** Tables (reference/), the front door, and the list of models by name (calc/) describe models; they are none. */
export function isModel(file: SourceFile): boolean {
  if (file.packageName !== 'agronomy' || file.place !== 'src') return false;
  if (/^packages\/agronomy\/src\/(reference\/|calc\/|index\.ts)/.test(file.path)) return false;
  return (file.program['body'] as readonly SyntaxNode[]).some((statement) => {
    const declaration = statement['declaration'];
    return (
      statement.type === 'ExportNamedDeclaration' && isNode(declaration) && declaration.type === 'FunctionDeclaration'
    );
  });
}

export function sourceHeadOffences(file: SourceFile, fileIsThere = isThere): readonly Offence[] {
  if (!isModel(file)) return [];
  const head = /^\s*\/\*\*([\s\S]*?)\*\//.exec(file.text)?.[1] ?? '';
  const offence = (found: string): Offence => ({
    path: file.path,
    line: 1,
    rule: 'a model names its source and its checks',
    found,
    remedy: REMEDY,
  });
  const missing = ['Source', 'Checks'].filter((word) => !new RegExp(`^\\s*\\*?\\s*${word}\\b\\s+\\S`, 'm').test(head));
  if (missing.length > 0) return [offence(`the head of this model says nothing under ${missing.join(' or ')}`)];
  const named = [...new Set(head.match(/\btest\/[\w./-]+\.(?:test\.ts|csv)\b/g))];
  if (named.length === 0)
    return [offence('Checks names no test of this package (test/….test.ts, or a table of checks test/….csv)')];
  return named
    .filter((test) => !fileIsThere(`packages/agronomy/${test}`))
    .map((test) => offence(`Checks names ${test}, which is not there`));
}

function isThere(path: string): boolean {
  return existsSync(join(projectFolder, path));
}
