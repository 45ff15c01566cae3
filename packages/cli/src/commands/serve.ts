/** Starts the app on this machine. */
import { loadServer, readServeArguments } from '@leywright/server';
import { type ExitCode, type Io, refuse } from '../io.ts';

export async function serveCommand(args: readonly string[], io: Io): Promise<ExitCode> {
  const wish = readServeArguments(args, io.env);
  if (!('folder' in wish)) return refuse(io, wish);
  const started = await (await loadServer()).start(wish);
  if (started.kind === 'refused') return refuse(io, [started.sentence]);
  for (const sentence of started.said) io.err(sentence);
  io.out(`Leywright is ready at ${started.address}`);
  await untilToldToStop();
  await started.stop();
  return 0;
}

function untilToldToStop(): Promise<void> {
  return new Promise((resolve) => {
    for (const signal of ['SIGINT', 'SIGTERM'] as const) process.once(signal, () => resolve());
  });
}
