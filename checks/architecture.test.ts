import { describe, expect, test } from 'vitest';
import { circleOffences, declaredBy, importOffences, undeclaredOffences } from './law/imports.ts';
import { purityOffences } from './law/purity.ts';
import { type Offence, parseFile, readTree, type SourceFile, teach } from './law/read-tree.ts';
import { folderOffences, sizeOffences } from './law/sizes.ts';
import { sourceHeadOffences } from './law/source-heads.ts';
import { mayImport } from './law/table.ts';
import { saysItsUnit, unitOffences } from './law/units.ts';

const tree = readTree();

const each =
  (law: (file: SourceFile) => readonly Offence[]) =>
  (files: readonly SourceFile[]): readonly Offence[] =>
    files.flatMap((file) => law(file));

const laws: Readonly<Record<string, (files: readonly SourceFile[]) => readonly Offence[]>> = {
  'packages import in one direction, and by the front door': each(importOffences),
  'a package names the libraries it imports': each((file) =>
    undeclaredOffences(file, declaredBy(file.packageName ?? '')),
  ),
  'files do not import one another in a circle': circleOffences,
  'pure packages know no clock, file, network, chance or screen': each(purityOffences),
  'numbers of agronomy and planner say their unit': each(unitOffences),
  'each model names its source and its checks': each(sourceHeadOffences),
  'files, functions and front doors stay small and have telling names': each(sizeOffences),
  'folders hold few files': folderOffences,
};

describe('the tree keeps its law', () => {
  test.for(Object.entries(laws))('%s', ([, law]) => {
    const offences = law(tree);
    expect(offences.length, teach(offences)).toBe(0);
  });

  test('every package is in the table of imports, and the table has no package that is gone', () => {
    const packages = new Set(tree.map((file) => file.packageName).filter((name) => name !== null));
    expect([...packages].sort()).toEqual(Object.keys(mayImport).sort());
  });
});

interface Planted {
  readonly law: string;
  readonly path: string;
  readonly text: string;
  readonly found: string;
}

const lines = (count: number, line: string) => `${line}\n`.repeat(count);

const planted: readonly Planted[] = [
  {
    law: 'direction',
    path: 'packages/agronomy/src/a.ts',
    text: "import { x } from '@leywright/planner';",
    found: 'agronomy imports planner',
  },
  {
    law: 'direction',
    path: 'packages/measures/src/a.ts',
    text: "export type A = import('@leywright/book').Farm;",
    found: 'measures imports book',
  },
  {
    law: 'direction',
    path: 'packages/web/src/a.ts',
    text: "const s = await import('@leywright/store');",
    found: 'web imports store',
  },
  {
    law: 'direction',
    path: 'packages/book/src/a.ts',
    text: "export { x } from '@leywright/measures/src/day.ts';",
    found: '@leywright/measures/src/day.ts',
  },
  {
    law: 'direction',
    path: 'packages/book/src/a/b.ts',
    text: "import '../../../measures/src/day.ts';",
    found: 'packages/measures/src/day.ts',
  },
  { law: 'direction', path: 'packages/planner/src/a.ts', text: "import fs from 'fs';", found: 'imports fs' },
  {
    law: 'direction',
    path: 'packages/book/src/a.ts',
    text: "import { x } from '@leywright/book';",
    found: 'imports itself',
  },
  { law: 'purity', path: 'packages/planner/src/a.ts', text: 'const now = Date.now();', found: 'Date.now' },
  { law: 'purity', path: 'packages/planner/src/a.ts', text: 'const now = new Date();', found: 'new Date()' },
  { law: 'purity', path: 'packages/planner/src/a.ts', text: 'const chance = Math.random();', found: 'Math.random' },
  { law: 'purity', path: 'packages/api/src/a.ts', text: 'const text = await fetch(address);', found: 'fetch' },
  { law: 'purity', path: 'packages/book/src/a.ts', text: 'const id = crypto.randomUUID();', found: 'crypto' },
  { law: 'purity', path: 'packages/book/src/a.ts', text: 'const o = { process };', found: 'process' },
  {
    law: 'units',
    path: 'packages/agronomy/src/a.ts',
    text: 'export interface A { readonly rain: number }',
    found: '"rain"',
  },
  {
    law: 'units',
    path: 'packages/agronomy/src/a.ts',
    text: 'export interface A { readonly left: Interval | null }',
    found: '"left"',
  },
  { law: 'units', path: 'packages/agronomy/src/a.ts', text: 'export function f(depth: number) {}', found: '"depth"' },
  {
    law: 'units',
    path: 'packages/planner/src/a.ts',
    text: 'export const areas: readonly number[] = [];',
    found: '"areas"',
  },
  { law: 'units', path: 'packages/planner/src/a.ts', text: 'export const LEAST_RAIN = 5;', found: '"LEAST_RAIN"' },
  { law: 'head', path: 'packages/agronomy/src/water/a.ts', text: 'export function f() {}', found: 'Source or Checks' },
  {
    law: 'head',
    path: 'packages/agronomy/src/a.ts',
    text: '/**\n * A.\n * Source  B 1990\n * Checks  by hand\n */\nexport function f() {}',
    found: 'names no test',
  },
  {
    law: 'head',
    path: 'packages/agronomy/src/a.ts',
    text: '/**\n * A.\n * Source  B 1990\n * Checks  test/gone.test.ts\n */\nexport function f() {}',
    found: 'not there',
  },
  { law: 'sizes', path: 'packages/book/src/a.ts', text: lines(301, '// x'), found: '301 lines' },
  { law: 'sizes', path: 'packages/book/test/a.test.ts', text: lines(501, '// x'), found: '501 lines' },
  {
    law: 'sizes',
    path: 'packages/book/src/a.ts',
    text: `const long = () => {\n${lines(60, 'x();')}};`,
    found: 'long has 62',
  },
  { law: 'sizes', path: 'packages/book/src/a/b/c/d.ts', text: '', found: '3 deep' },
  { law: 'sizes', path: 'packages/book/src/plot-utils.ts', text: '', found: 'plot-utils' },
  { law: 'sizes', path: 'packages/book/src/shared/plot.ts', text: '', found: '"shared"' },
  { law: 'sizes', path: 'packages/book/src/plot.ts', text: 'export interface PlotInfo {}', found: 'PlotInfo' },
  { law: 'sizes', path: 'packages/book/src/index.ts', text: "export * from './a.ts';", found: 'export *' },
  {
    law: 'sizes',
    path: 'packages/book/src/index.ts',
    text: `export { ${Array.from({ length: 41 }, (_, i) => `n${i}`).join(', ')} } from './a.ts';`,
    found: '41 names',
  },
];

const byLaw: Readonly<Record<string, (file: SourceFile) => readonly Offence[]>> = {
  direction: importOffences,
  purity: purityOffences,
  units: unitOffences,
  head: sourceHeadOffences,
  sizes: sizeOffences,
};

describe('the law bites', () => {
  test.for(planted)('$law: $found', ({ law, path, text, found }) => {
    const offences = byLaw[law]?.(parseFile(path, text)) ?? [];
    expect(offences).toHaveLength(1);
    expect(teach(offences)).toContain(found);
  });

  test('a circle of three files is found once, with its way round', () => {
    const ring = ['a', 'b', 'c'].map((name, i, all) =>
      parseFile(`packages/book/src/${name}.ts`, `export { x } from './${all[(i + 1) % 3]}.ts';`),
    );
    expect(circleOffences(ring).map((one) => one.found)).toEqual([
      'packages/book/src/a.ts → packages/book/src/b.ts → packages/book/src/c.ts → packages/book/src/a.ts',
    ]);
  });

  test('a library that is hoisted but not named is found', () => {
    const file = parseFile(
      'packages/book/src/a.ts',
      "import { z } from 'zod/v4'; import './b.ts'; import type { A } from '@x/y';",
    );
    expect(undeclaredOffences(file, new Set(['zod'])).map((one) => one.found)).toEqual([
      '@x/y is imported and not named',
    ]);
  });

  test('thirteen files in one folder are too many', () => {
    const files = Array.from({ length: 13 }, (_, i) => parseFile(`packages/book/src/entry/f${i}.ts`, ''));
    expect(folderOffences(files)).toHaveLength(1);
    expect(folderOffences(files.slice(1))).toHaveLength(0);
  });
});

describe('the law lets be what is right', () => {
  const innocent: readonly (readonly [string, string, string])[] = [
    ['direction', 'packages/planner/src/a.ts', "import { y } from '@leywright/agronomy'; import { z } from './b.ts';"],
    [
      'direction',
      'packages/planner/test/a.test.ts',
      "import { demoFarm } from '@leywright/farm-kit'; import 'node:fs';",
    ],
    [
      'purity',
      'packages/planner/src/a.ts',
      'const stage = { process: plan.process, document: 1 }; const d = new Date(0);',
    ],
    [
      'purity',
      'packages/planner/src/a.ts',
      'const f = (window: Window) => inWindow(window); type W = { fetch: number };',
    ],
    ['purity', 'packages/server/src/a.ts', 'const now = Date.now();'],
    [
      'units',
      'packages/agronomy/src/a.ts',
      'export interface A { rainMm: number; seeds: number; lossShare: number; name: string }',
    ],
    [
      'units',
      'packages/agronomy/src/a.ts',
      'export const MIN_DEPTH_CM = 5; const hidden = 3; export const list = [1, 2];',
    ],
    ['sizes', 'packages/book/src/index.ts', "export * as area from './area.ts'; export type { A } from './a.ts';"],
    ['sizes', 'packages/book/src/database.ts', 'export const metadataKeys = [];'],
    ['head', 'packages/agronomy/src/kinds.ts', 'export interface Kind { readonly name: string }'],
  ];
  test.for(innocent)('%s: %s %s', ([law, path, text]) => {
    expect(byLaw[law]?.(parseFile(path, text))).toEqual([]);
  });

  test.for([
    'rainMm',
    'nReleasedKgHa',
    'radiationMjM2',
    'yieldTHa',
    'tMinC',
    'plantsPerRowM',
    'gapWeeks',
    'households',
    'plantsPerBed',
    'seedsWithMargin',
    'kgHousehold',
    'packingHBox',
    'MAX_AREA_M2',
  ])('%s says its unit', (name) => expect(saysItsUnit(name)).toBe(true));

  test.for([
    'rain',
    'mass',
    'yields',
    'nitrogen',
    'seedCost',
    'rainTotalAmount',
    'speed',
    'MAX_AREA',
    'losses',
    'kgThing',
    'netYield',
  ])('%s does not', (name) => expect(saysItsUnit(name)).toBe(false));
});
