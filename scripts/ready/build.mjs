// Builds the command, the server and the web app, each only when its sources changed since it was last built.
import { existsSync, mkdirSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join, relative } from 'node:path';
import { Missing, say, secondsSince, whileSaying } from './say.mjs';
import { hashOfPaths } from './sources.mjs';

/**
 * @typedef {object} Product
 * @property {string} name how it is called in a sentence
 * @property {string} entry its first source file; without it there is nothing to build
 * @property {string} output what is there when it is built
 * @property {readonly string[]} sources
 * @property {(projectFolder: string, product: Product) => Promise<void>} make
 */

const pure = ['measures', 'agronomy', 'book', 'planner', 'api'].map((name) => `packages/${name}/src`);
const always = ['package-lock.json', 'tsconfig.base.json', 'scripts/ready/build.mjs'];
const behindServer = [...pure, 'packages/store/src', 'packages/server/src'];

/** @type {Product} */
export const serverProduct = {
  name: 'server',
  entry: 'packages/server/src/main.ts',
  output: 'packages/server/dist/main.mjs',
  sources: [...always, ...behindServer],
  make: bundleForNode,
};

/** @type {Product} */
export const commandProduct = {
  name: 'command',
  entry: 'packages/cli/src/main.ts',
  output: 'packages/cli/dist/leywright.mjs',
  sources: [...always, ...behindServer, 'packages/farm-kit/src', 'packages/cli/src'],
  make: bundleForNode,
};

/** @type {Product} */
const webProduct = {
  name: 'web app',
  entry: 'packages/web/index.html',
  output: 'packages/web/dist/index.html',
  sources: [...always, ...pure, 'packages/web'],
  make: bundleForBrowser,
};

const products = [serverProduct, commandProduct, webProduct];

/**
 * @param {string} projectFolder
 * @param {{ sayAbsent: boolean }} how
 * @returns {Promise<number>} how many were built
 */
export async function build(projectFolder, how) {
  const marksFile = join(projectFolder, '.cache', 'built.json');
  const marks = readMarks(marksFile);
  let builtCount = 0;
  for (const product of products) {
    if (!existsSync(join(projectFolder, product.entry))) {
      if (how.sayAbsent) say(`The ${product.name} is left out: ${product.entry} is not there.`);
      continue;
    }
    const mark = hashOfPaths(projectFolder, product.sources);
    if (marks[product.name] === mark && existsSync(join(projectFolder, product.output))) continue;
    const startedAtMs = Date.now();
    await whileSaying(`building the ${product.name}`, () => makeOrExplain(projectFolder, product));
    say(`Built the ${product.name} in ${secondsSince(startedAtMs)}.`);
    marks[product.name] = mark;
    mkdirSync(join(projectFolder, '.cache'), { recursive: true });
    writeFileSync(marksFile, JSON.stringify(marks, null, 2));
    builtCount += 1;
  }
  return builtCount;
}

/** @param {string} projectFolder @param {Product} product */
async function makeOrExplain(projectFolder, product) {
  try {
    await product.make(projectFolder, product);
  } catch (error) {
    const why = error instanceof Error ? error.message : String(error);
    throw new Missing(`The ${product.name} could not be built; mend this and run the same command again:\n\n${why}`);
  }
}

/**
 * These keep files, threads or machine code of their own beside them, so they stay in node_modules and are loaded from there.
 * All else is bundled, which halves the time the command takes to start.
 */
const loadedFromNodeModules = [
  '@photostructure/sqlite',
  '@node-rs/argon2',
  '@fastify/*',
  'fastify',
  'fastify-*',
  'pg',
  'highs',
  'pdfkit',
  'bwip-js',
];

/**
 * How esbuild bundles a program for Node.
 * @param {string} projectFolder @param {Product} product
 * @returns {import('esbuild').BuildOptions & { metafile: true }}
 */
export function nodeBundle(projectFolder, product) {
  const name = product.output.slice(product.output.lastIndexOf('/') + 1, -'.mjs'.length);
  return {
    absWorkingDir: projectFolder,
    // Each thread is a file of its own beside the program.
    entryPoints: {
      [name]: product.entry,
      'highs-worker': 'packages/server/src/solver/highs-worker.mjs',
      'plan-thread': 'packages/server/src/plans/plan-thread.ts',
    },
    outdir: join(projectFolder, product.output, '..'),
    outExtension: { '.js': '.mjs' },
    bundle: true,
    splitting: true, // what a command does not need is not read
    platform: 'node',
    format: 'esm',
    target: 'node20.11',
    sourcemap: true,
    metafile: true,
    logLevel: 'silent',
    external: loadedFromNodeModules,
    banner: {
      js: "import { createRequire as createRequireHere } from 'node:module'; const require = createRequireHere(import.meta.url);",
    },
  };
}

/** @param {string} projectFolder @param {Product} product */
async function bundleForNode(projectFolder, product) {
  const { build: bundle } = await import('esbuild');
  const { metafile } = await bundle(nodeBundle(projectFolder, product));
  const written = new Set(Object.keys(metafile.outputs).map((path) => join(projectFolder, path)));
  const outputFolder = join(projectFolder, product.output, '..');
  for (const file of readdirSync(outputFolder)) {
    const path = join(outputFolder, file);
    if (!written.has(path)) rmSync(path, { recursive: true }); // left over from an earlier build
  }
}

/** @param {string} projectFolder @param {Product} product */
async function bundleForBrowser(projectFolder, product) {
  const { build: bundle } = await import('vite');
  const root = join(projectFolder, product.entry, '..');
  await bundle({
    root,
    logLevel: 'error',
    build: { outDir: relative(root, join(projectFolder, product.output, '..')), emptyOutDir: true },
  });
}

/** @param {string} path @returns {Record<string, string>} */
function readMarks(path) {
  try {
    return JSON.parse(readFileSync(path, 'utf8'));
  } catch {
    return {};
  }
}
