/** The server's program: `node packages/server/dist/main.mjs --data DIR --port N --today YYYY-MM-DD [--sample]`. */
import { readServeArguments } from './app/arguments.ts';
import { start } from './start.ts';

const wish = readServeArguments(process.argv.slice(2), process.env);
if (!('folder' in wish)) {
  for (const sentence of wish) console.error(sentence);
  process.exit(2);
}
const started = await start(wish);
if (started.kind === 'refused') {
  console.error(started.sentence);
  process.exit(2);
}
for (const sentence of started.said) console.error(sentence);
console.log(`Leywright is ready at ${started.address}`);
for (const signal of ['SIGINT', 'SIGTERM'] as const)
  process.once(signal, () => void started.stop().then(() => process.exit(0)));
