// Who imports whom: the direction between packages, the front doors, declared libraries, and no circles.
import { existsSync, readFileSync } from 'node:fs';
import { builtinModules } from 'node:module';
import { join, posix } from 'node:path';
import { type ImportOfFile, type Offence, projectFolder, type SourceFile } from './read-tree.ts';
import { mayImport, purePackages } from './table.ts';

const OURS = '@leywright/';

/** Offences against the direction of imports, and against reaching past a front door. */
export function importOffences(file: SourceFile): readonly Offence[] {
  if (file.packageName === null || file.place !== 'src') return [];
  const own = file.packageName;
  return file.imports.flatMap((one) => {
    const said = directionOffence(own, file.path, one) ?? machineModuleOffence(own, one);
    return said === null ? [] : [{ path: file.path, line: one.line, ...said }];
  });
}

type Said = Pick<Offence, 'rule' | 'found' | 'remedy'>;

function directionOffence(own: string, path: string, one: ImportOfFile): Said | null {
  if (one.from.startsWith('.')) {
    const target = posix.join(posix.dirname(path), one.from);
    if (target.startsWith(`packages/${own}/`)) return null;
    return {
      rule: 'a package is entered by its front door',
      found: `${own} reaches into ${target} by a relative path`,
      remedy: 'import the package by name, @leywright/…, and export what you need from its src/index.ts',
    };
  }
  if (!one.from.startsWith(OURS)) return null;
  const [other = '', ...deeper] = one.from.slice(OURS.length).split('/');
  if (deeper.length > 0) {
    return {
      rule: 'a package is entered by its front door',
      found: `${own} imports ${one.from}`,
      remedy: `import from ${OURS}${other}, and export what you need from packages/${other}/src/index.ts`,
    };
  }
  const allowed = mayImport[own] ?? [];
  if (allowed.includes(other)) return null;
  return {
    rule: `${own} may import ${allowed.length === 0 ? 'nothing of ours' : allowed.join(', ')}`,
    found: other === own ? `${own} imports itself by name` : `${own} imports ${other}`,
    remedy:
      other === own
        ? 'import the file you need by a relative path'
        : `move what you need down to a package that ${own} may import, or hand it in as an argument (docs/decisions/0001-layout-and-direction.md)`,
  };
}

function machineModuleOffence(own: string, one: ImportOfFile): Said | null {
  if (!purePackages.includes(own)) return null;
  if (!one.from.startsWith('node:') && !builtinModules.includes(one.from)) return null;
  return {
    rule: 'pure packages touch no machine',
    found: `${own} imports ${one.from}`,
    remedy:
      'take the text, the day or the number as an argument; the server, the command and the web app read files and clocks',
  };
}

/** Libraries a package uses without naming them in its own package.json: npm would let that pass. */
export function undeclaredOffences(file: SourceFile, declared: ReadonlySet<string>): readonly Offence[] {
  if (file.packageName === null || file.place !== 'src') return [];
  return file.imports.flatMap((one) => {
    const library = libraryOf(one.from);
    if (library === null || declared.has(library) || library === `${OURS}${file.packageName}`) return [];
    return [
      {
        path: file.path,
        line: one.line,
        rule: 'what a package imports is named in its own package.json',
        found: `${library} is imported and not named`,
        remedy: `npm install --save -w packages/${file.packageName} ${library}`,
      },
    ];
  });
}

/** '@scope/name' or 'name' of a library; null for relative paths, Node's own modules and virtual ones. */
function libraryOf(from: string): string | null {
  if (from.startsWith('.') || from.startsWith('/') || from.includes(':') || builtinModules.includes(from)) return null;
  const parts = from.split('/');
  return from.startsWith('@') ? parts.slice(0, 2).join('/') : (parts[0] ?? null);
}

export function declaredBy(packageName: string): ReadonlySet<string> {
  const path = join(projectFolder, 'packages', packageName, 'package.json');
  if (!existsSync(path)) return new Set();
  const manifest = JSON.parse(readFileSync(path, 'utf8')) as Record<string, Record<string, string> | undefined>;
  return new Set(
    ['dependencies', 'optionalDependencies', 'peerDependencies'].flatMap((list) => Object.keys(manifest[list] ?? {})),
  );
}

/** Each circle of files that import one another, once, as the path round it. */
export function circles(files: readonly SourceFile[]): readonly (readonly string[])[] {
  const targets = new Map(files.map((file) => [file.path, relativeTargets(file)]));
  const found: string[][] = [];
  const done = new Set<string>();
  const trail: string[] = [];
  const follow = (path: string) => {
    const at = trail.indexOf(path);
    if (at >= 0) {
      found.push([...trail.slice(at), path]);
      return;
    }
    if (done.has(path)) return;
    trail.push(path);
    for (const target of targets.get(path) ?? []) follow(target);
    trail.pop();
    done.add(path);
  };
  for (const path of targets.keys()) follow(path);
  return found;
}

export function circleOffences(files: readonly SourceFile[]): readonly Offence[] {
  return circles(files).map((circle) => ({
    path: circle[0] ?? '',
    line: 1,
    rule: 'files do not import one another in a circle',
    found: circle.join(' → '),
    remedy: 'move what both need into a third file, or let the caller hand it in',
  }));
}

function relativeTargets(file: SourceFile): readonly string[] {
  return file.imports
    .filter((one) => one.from.startsWith('.'))
    .map((one) => posix.join(posix.dirname(file.path), one.from));
}
