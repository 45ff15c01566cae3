import { existsSync, readFileSync } from 'node:fs';
import { dirname, join, relative } from 'node:path';
import { describe, expect, test } from 'vitest';
import { filesUnder, projectFolder } from './law/read-tree.ts';

const pages = ['README.md', 'CHANGELOG.md', ...filesUnder('docs')].filter((path) => path.endsWith('.md'));
const read = (path: string) => readFileSync(join(projectFolder, path), 'utf8');

/** Links of a page to files of ours that are not there, and to headings that are not in them. */
function brokenLinks(path: string, text: string, readPage: (path: string) => string | null): readonly string[] {
  const withoutCode = text.replace(/```[\s\S]*?```/g, '').replace(/`[^`\n]*`/g, '');
  return [...withoutCode.matchAll(/\]\(([^)\s]+)\)/g)].flatMap(([, link = '']) => {
    if (/^[a-z]+:/.test(link)) return []; // another site, or a letter
    const [file = '', heading] = link.split('#');
    const target = file === '' ? path : relative('/', join('/', dirname(path), file));
    const page = readPage(target);
    if (page === null) return [`${path} links to ${link}, and ${target} is not there`];
    if (heading !== undefined && !headings(page).includes(heading))
      return [`${path} links to ${link}, and there is no such heading`];
    return [];
  });
}

function headings(page: string): readonly string[] {
  return [...page.matchAll(/^#+ (.*)$/gm)].map(([, title = '']) =>
    title
      .toLowerCase()
      .replace(/[^\p{L}\p{N}\s-]/gu, '')
      .trim()
      .replace(/\s/g, '-'),
  );
}

function readOrNull(path: string): string | null {
  const full = join(projectFolder, path);
  if (!existsSync(full)) return null;
  return path.endsWith('.md') ? readFileSync(full, 'utf8') : '';
}

describe('pages', () => {
  test.for(pages)('the links of %s lead somewhere', (path) => {
    const broken = brokenLinks(path, read(path), readOrNull);
    expect(broken.length, `\n${broken.join('\n')}\n`).toBe(0);
  });

  test('a link to a page or a heading that is not there is found', () => {
    const page = '[a](gone.md) [b](there.md#what-it-is) [c](there.md#what) [d](https://example.org) `[e](code.md)`';
    const there = (path: string) => (path === 'docs/there.md' ? '# What it is' : null);
    expect(brokenLinks('docs/page.md', page, there)).toHaveLength(2);
  });

  test('every command of ours the README names exists', () => {
    const { scripts } = JSON.parse(read('package.json')) as { scripts: Record<string, string> };
    const named = [...read('README.md').matchAll(/npm (?:run )?(start|test|[\w:-]+)\b/g)].map(([, name = '']) => name);
    expect(named.filter((name) => !Object.hasOwn(scripts, name) && !['ci', 'install'].includes(name))).toEqual([]);
    expect(named).toEqual(expect.arrayContaining(['start', 'test']));
  });
});

const DEPENDENCIES_PAGE = 'docs/decisions/0002-dependencies.md';

/** Names of libraries that stand first in a row of a table: | `zod` | MIT | … */
function explainedLibraries(page: string): ReadonlySet<string> {
  return new Set(
    [...page.matchAll(/^\|([^|]*)\|/gm)].flatMap(([, cell = '']) =>
      [...cell.matchAll(/`([^`]+)`/g)].map(([, name = '']) => name),
    ),
  );
}

describe('libraries', () => {
  const manifests = [
    'package.json',
    ...filesUnder('packages').filter((path) => /^packages\/[^/]+\/package\.json$/.test(path)),
  ];
  const used = new Map<string, string>();
  for (const path of manifests) {
    const manifest = JSON.parse(read(path)) as Record<string, Record<string, string> | undefined>;
    for (const list of ['dependencies', 'devDependencies', 'optionalDependencies']) {
      for (const name of Object.keys(manifest[list] ?? {})) if (!name.startsWith('@leywright/')) used.set(name, path);
    }
  }

  test('each library we use has a line that says why', () => {
    const explained = explainedLibraries(read(DEPENDENCIES_PAGE));
    const missing = [...used].filter(([name]) => !explained.has(name)).map(([name, path]) => `${name} (${path})`);
    expect(missing, `Write a row for each in ${DEPENDENCIES_PAGE}: name, licence, why.`).toEqual([]);
  });

  test('no line explains a library that is gone', () => {
    const gone = [...explainedLibraries(read(DEPENDENCIES_PAGE))].filter((name) => !used.has(name));
    expect(gone, `Take these rows out of ${DEPENDENCIES_PAGE}.`).toEqual([]);
  });

  test('a library in a row is seen, and one in a sentence is not', () => {
    expect(explainedLibraries('| `zod` | MIT | shapes |\n| `a`, `b` | MIT | x `c` |\nWe use `d`.')).toEqual(
      new Set(['zod', 'a', 'b']),
    );
  });
});
