// Pure packages know no clock, file, network, chance or screen: what they need is handed to them.
import { isNode, nameOf, type Offence, type SourceFile, type SyntaxNode, walk } from './read-tree.ts';
import { purePackages } from './table.ts';

const remedies = {
  clock: 'take today (a Day) as an argument',
  chance: 'take a seed, or numbers already drawn, as an argument',
  network: 'take what was fetched as an argument; the server and the web app fetch',
  screen: 'return what is to be shown; the web app shows it',
  machine: 'take the value as an argument; the server, the command or the web app reads it',
  timer: 'return the answer at once; who calls decides when',
} as const;

type Cause = keyof typeof remedies;

/** Names that mean the machine wherever they stand free, unless the file itself declares them. */
const freeNames: Readonly<Record<string, Cause>> = {
  fetch: 'network',
  XMLHttpRequest: 'network',
  WebSocket: 'network',
  process: 'machine',
  require: 'machine',
  Buffer: 'machine',
  globalThis: 'machine',
  console: 'machine',
  crypto: 'chance',
  performance: 'clock',
  window: 'screen',
  document: 'screen',
  navigator: 'screen',
  localStorage: 'screen',
  sessionStorage: 'screen',
  indexedDB: 'screen',
  setTimeout: 'timer',
  setInterval: 'timer',
  setImmediate: 'timer',
  requestAnimationFrame: 'timer',
  queueMicrotask: 'timer',
};

const memberNames: Readonly<Record<string, Cause>> = {
  'Math.random': 'chance',
  'Date.now': 'clock',
  'Temporal.Now': 'clock',
};

export function purityOffences(file: SourceFile): readonly Offence[] {
  if (file.packageName === null || file.place !== 'src' || !purePackages.includes(file.packageName)) return [];
  const declared = declaredNames(file.program);
  const offences: Offence[] = [];
  walk(file.program, (node, parent) => {
    const touch = touchOf(node, parent, declared);
    if (touch === null) return;
    offences.push({
      path: file.path,
      line: file.lineAt(node.start),
      rule: 'pure packages touch no machine',
      found: touch.found,
      remedy: remedies[touch.cause],
    });
  });
  return offences;
}

interface Touch {
  readonly found: string;
  readonly cause: Cause;
}

function touchOf(node: SyntaxNode, parent: SyntaxNode | null, declared: ReadonlySet<string>): Touch | null {
  if (node.type === 'MemberExpression') {
    const path = `${nameOf(node['object'])}.${nameOf(node['property'])}`;
    const cause = memberNames[path];
    return cause === undefined ? null : { found: path, cause };
  }
  if (isClockRead(node)) return { found: node.type === 'NewExpression' ? 'new Date()' : 'Date()', cause: 'clock' };
  if (node.type !== 'Identifier' || !standsFree(node, parent)) return null;
  const name = nameOf(node) ?? '';
  const cause = Object.hasOwn(freeNames, name) && !declared.has(name) ? freeNames[name] : undefined;
  return cause === undefined ? null : { found: name, cause };
}

/** `new Date()` without arguments, and `Date()` with any, read the clock. */
function isClockRead(node: SyntaxNode): boolean {
  if (nameOf(node['callee']) !== 'Date') return false;
  if (node.type === 'CallExpression') return true;
  return node.type === 'NewExpression' && (node['arguments'] as readonly unknown[]).length === 0;
}

/** False for names that only label something: `farm.process`, `{ process: 1 }`, a type's member, an import's own name. */
function standsFree(node: SyntaxNode, parent: SyntaxNode | null): boolean {
  if (parent === null) return true;
  const labels = parent['computed'] !== true && (parent['property'] === node || parent['key'] === node);
  return (
    !labels && !/^(TSTypeReference|TSQualifiedName|ImportSpecifier|ExportSpecifier|TSTypeQuery)$/.test(parent.type)
  );
}

/** Every name the file itself binds: variables, parameters, functions, imports. */
function declaredNames(program: SyntaxNode): ReadonlySet<string> {
  const names = new Set<string>();
  walk(program, (node) => {
    if (/^(VariableDeclarator|(Function|Class)(Declaration|Expression))$/.test(node.type)) bind(node['id'], names);
    if (/^Import.*Specifier$/.test(node.type)) bind(node['local'], names);
    if (Array.isArray(node['params'])) for (const param of node['params']) bind(param, names);
  });
  return names;
}

/** A pattern may be a name, `{ a, b: c }`, `[a, b]`, `a = 1` or `...rest`. */
function bind(pattern: unknown, names: Set<string>): void {
  if (!isNode(pattern)) return;
  const name = nameOf(pattern);
  if (pattern.type === 'Identifier' && name !== null) names.add(name);
  const inner = [pattern['left'], pattern['argument'], pattern['value'], pattern['properties'], pattern['elements']];
  for (const part of inner.flat()) bind(part, names);
}
