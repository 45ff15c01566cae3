/** A writer killed with SIGKILL in mid-write, over and over: is anything lost that was acknowledged? Prints one JSON object; `--times N` (1000). */
import { parseArgs } from 'node:util';
import { killWriter } from '../packages/store/test/kill/kill-writer.ts';
import { seeded } from './seeded.ts';

const { values } = parseArgs({
  options: {
    times: { type: 'string', default: '1000' },
    seed: { type: 'string', default: '20270608' },
    json: { type: 'boolean' },
  },
});
const times = Number(values.times);
if (!Number.isInteger(times) || times < 1) {
  console.error(`--times: "${values.times}" is not a count of 1 or more.`);
  process.exit(2);
}
const count = await killWriter(times, seeded(Number(values.seed)));
console.log(JSON.stringify(count));
process.exit(count.lost === 0 && count.verified ? 0 : 1);
