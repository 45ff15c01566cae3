// Makes this folder ready for a command: `node scripts/make-ready.mjs start|test|install|build`.
//
// Runs by itself before `npm start`, `npm test` and `npm run dev`. Installs when the list of libraries changed, embeds the
// reference tables, and builds the command, the server and the web app when their sources changed; otherwise it does nothing.
// Uses Node's own modules alone, because on a fresh machine there is nothing else yet.
import { dirname, join, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';
import { refusalOf } from './ready/node-version.mjs';
import { Missing, remedyFor, say, secondsSince } from './ready/say.mjs';

const projectFolder = resolve(dirname(fileURLToPath(import.meta.url)), '..');
const purposes = ['start', 'test', 'install', 'build'];

/** @param {string} purpose */
async function makeReady(purpose) {
  const startedAtMs = Date.now();
  refuseOldNode();
  // Loaded only now: these use what an old Node does not have.
  const { oneAtATime } = await import('./ready/one-at-a-time.mjs');
  const { install } = await import('./ready/install.mjs');
  const { build } = await import('./ready/build.mjs');
  const did = await oneAtATime(join(projectFolder, '.cache', 'make-ready.lock'), async () => {
    const installed = await install(projectFolder);
    const { embedReference } = await import('./embed-reference.mjs');
    const embedded = await embedReference();
    if (embedded.written) say(`Embedded ${embedded.tables} reference tables.`);
    const built = purpose === 'install' ? 0 : await build(projectFolder, { sayAbsent: purpose !== 'test' });
    return installed || embedded.written || built > 0;
  });
  if (did) say(`Ready in ${secondsSince(startedAtMs)}.`);
  if (purpose === 'start') refuseWithoutServer(await import('node:fs'));
}

function refuseOldNode() {
  const refusal = refusalOf(process.versions.node);
  if (refusal !== null) throw new Missing(refusal);
}

/** @param {typeof import('node:fs')} fs */
function refuseWithoutServer(fs) {
  if (fs.existsSync(join(projectFolder, 'packages/server/dist/main.mjs'))) return;
  throw new Missing(
    'There is no server in this copy (packages/server/src/main.ts is not there), so there is nothing to start yet.',
  );
}

const purpose = process.argv[2] ?? 'build';
try {
  if (!purposes.includes(purpose))
    throw new Missing(`make-ready knows ${purposes.join(', ')}; "${purpose}" is none of them.`);
  await makeReady(purpose);
} catch (error) {
  if (error instanceof Missing) console.error(`\n${error.message}\n`);
  else console.error(`\n${remedyFor(String(error), 'get ready') ?? (error instanceof Error ? error.stack : error)}\n`);
  process.exit(1);
}
