/** The `leywright` command: hands the terminal, the clock and the words to `run`. */
import { asDay } from '@leywright/measures';
import type { Io } from './io.ts';
import { run } from './run.ts';

const io: Io = {
  out: (text) => process.stdout.write(`${text}\n`),
  err: (text) => process.stderr.write(`${text}\n`),
  input: readInput,
  env: process.env,
  today: () => {
    const now = new Date();
    const two = (number: number) => String(number).padStart(2, '0');
    return asDay(`${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`);
  },
};

async function readInput(): Promise<string> {
  const pieces: Buffer[] = [];
  for await (const piece of process.stdin) pieces.push(piece as Buffer);
  return Buffer.concat(pieces).toString('utf8');
}

// Whoever reads us may stop early (`| head`); that is no fault.
process.stdout.on('error', (error: NodeJS.ErrnoException) => {
  if (error.code === 'EPIPE') process.exit(0);
  throw error;
});

process.exitCode = await run(process.argv.slice(2), io);
