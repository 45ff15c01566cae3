// Files, functions, folders and front doors stay small enough to read, and have names that say what is inside.
import { posix } from 'node:path';
import { isNode, nameOf, type Offence, type SourceFile, type SyntaxNode, walk } from './read-tree.ts';
import { emptyNames, sizes } from './table.ts';

export function sizeOffences(file: SourceFile): readonly Offence[] {
  return [
    ...fileLength(file),
    ...functionLengths(file),
    ...depth(file),
    ...emptyName(file),
    ...emptyExports(file),
    ...frontDoor(file),
  ];
}

export function isTestFile(path: string): boolean {
  return /\.(test|spec)\.tsx?$/.test(path);
}

function fileLength(file: SourceFile): readonly Offence[] {
  const isTest = isTestFile(file.path) || file.place === 'test';
  const most = isTest ? sizes.testFileLines : sizes.fileLines;
  const lineCount = file.text.replace(/\n$/, '').split('\n').length;
  if (lineCount <= most) return [];
  return [
    {
      path: file.path,
      line: most + 1,
      rule: `a ${isTest ? 'test ' : ''}file has at most ${most} lines`,
      found: `${lineCount} lines`,
      remedy: 'split it by subject; a long list of values belongs in a table (CSV), not in code',
    },
  ];
}

function functionLengths(file: SourceFile): readonly Offence[] {
  if (isTestFile(file.path)) return [];
  const lines = file.text.split('\n');
  const offences: Offence[] = [];
  walk(file.program, (node, parent) => {
    if (!/^(FunctionDeclaration|FunctionExpression|ArrowFunctionExpression)$/.test(node.type)) return;
    const from = file.lineAt(node.start);
    const lineCount = lines.slice(from - 1, file.lineAt(node.end)).filter((line) => line.trim() !== '').length;
    if (lineCount <= sizes.functionLines) return;
    const name = nameOf(node['id']) ?? nameOf(parent?.['id']) ?? nameOf(parent?.['key']) ?? 'a function without a name';
    offences.push({
      path: file.path,
      line: from,
      rule: `a function has at most ${sizes.functionLines} lines`,
      found: `${name} has ${lineCount}`,
      remedy: 'name its steps and let it read as a list of them',
    });
  });
  return offences;
}

function depth(file: SourceFile): readonly Offence[] {
  if (file.place !== 'src') return [];
  const folders = posix.dirname(file.path).split('/').slice(3);
  if (folders.length <= sizes.foldersUnderSrc) return [];
  return [
    {
      path: file.path,
      line: 1,
      rule: `folders go at most ${sizes.foldersUnderSrc} deep under src`,
      found: `${folders.join('/')} is ${folders.length} deep`,
      remedy: 'move the folder up and give it the name of its subject',
    },
  ];
}

function emptyName(file: SourceFile): readonly Offence[] {
  const names = posix.dirname(file.path).split('/').slice(2);
  names.push(posix.basename(file.path).replace(/\..*$/, ''));
  const empty = names.find((name) => name.split('-').some((word) => emptyNames.includes(word.toLowerCase())));
  if (empty === undefined) return [];
  return [
    {
      path: file.path,
      line: 1,
      rule: 'a name says what is inside',
      found: `"${empty}" could hold anything`,
      remedy: 'name it after what it does or knows, in words of the trade',
    },
  ];
}

/** Exported names that end in Utils, Helper, Manager, Data or Info. */
function emptyExports(file: SourceFile): readonly Offence[] {
  if (file.place !== 'src') return [];
  return (file.program['body'] as readonly SyntaxNode[]).flatMap((statement) => {
    const declaration = statement['declaration'];
    if (!/^Export/.test(statement.type) || !isNode(declaration)) return [];
    const declared = Array.isArray(declaration['declarations'])
      ? (declaration['declarations'] as readonly SyntaxNode[])
      : [declaration];
    return declared
      .map((one) => nameOf(one['id']))
      .filter((name) => name !== null && emptyNames.includes((/[A-Za-z][a-z]*$/.exec(name)?.[0] ?? '').toLowerCase()))
      .map((name) => ({
        path: file.path,
        line: file.lineAt(statement.start),
        rule: 'a name says what is inside',
        found: `"${name}" could be anything`,
        remedy: 'name it after what it is, in words of the trade',
      }));
  });
}

/** Counts names for values; names for types cost a reader little. */
function frontDoor(file: SourceFile): readonly Offence[] {
  if (!/^packages\/[^/]+\/src\/index\.ts$/.test(file.path)) return [];
  const statements = (file.program['body'] as readonly SyntaxNode[]).filter((one) => one['exportKind'] !== 'type');
  const isWholesale = (one: SyntaxNode) => one.type === 'ExportAllDeclaration' && one['exported'] === null;
  const offences = statements.filter(isWholesale).map((one) => wholesale(file, one));
  const nameCount = statements.reduce((count, one) => count + valueNameCount(one), 0);
  if (nameCount <= sizes.frontDoorNames) return offences;
  return [
    ...offences,
    {
      path: file.path,
      line: 1,
      rule: `a front door has at most ${sizes.frontDoorNames} names (types not counted)`,
      found: `${nameCount} names`,
      remedy:
        'gather names of one subject under one word, as in export * as area from …, or keep inside what nobody outside needs',
    },
  ];
}

function valueNameCount(statement: SyntaxNode): number {
  if (statement.type === 'ExportAllDeclaration') return 1;
  if (statement.type !== 'ExportNamedDeclaration') return 0;
  const listed = (statement['specifiers'] as readonly SyntaxNode[]).filter((one) => one['exportKind'] !== 'type');
  const declaration = statement['declaration'];
  const declares = isNode(declaration) && !declaration.type.startsWith('TS');
  return listed.length + (declares ? 1 : 0);
}

function wholesale(file: SourceFile, statement: SyntaxNode): Offence {
  return {
    path: file.path,
    line: file.lineAt(statement.start),
    rule: 'a front door names what it lets out',
    found: 'export * from …',
    remedy: 'list the names, or gather them: export * as subject from …',
  };
}

/** Folders of code with more files than a reader takes in at once. */
export function folderOffences(files: readonly SourceFile[]): readonly Offence[] {
  const counts = new Map<string, number>();
  for (const file of files) {
    if (file.place !== 'src' && !/^(scripts|checks)\//.test(file.path)) continue;
    const folder = posix.dirname(file.path);
    counts.set(folder, (counts.get(folder) ?? 0) + 1);
  }
  return [...counts]
    .filter(([, count]) => count > sizes.filesInFolder)
    .map(([folder, count]) => ({
      path: folder,
      line: 1,
      rule: `a folder holds at most ${sizes.filesInFolder} files`,
      found: `${count} files`,
      remedy: 'split it by subject',
    }));
}
