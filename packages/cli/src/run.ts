/** Finds the command and loads only what it needs: reading a plan must not wait for a server it does not start. */
import { nearest } from '@leywright/book';
import type { ExitCode, Io } from './io.ts';
import { refuse } from './io.ts';
import { said, usage } from './words.ts';

type Command = (args: readonly string[], io: Io) => Promise<ExitCode>;

const commands: Readonly<Record<string, () => Promise<Command>>> = {
  plan: async () => (await import('./commands/plan.ts')).planCommand,
  check: async () => (await import('./commands/check.ts')).checkCommand,
  covers: async () => (await import('./rotation/covers-command.ts')).coversCommand,
  rotation: async () => (await import('./rotation/rotation-command.ts')).rotationCommand,
  work: async () => (await import('./work/work.ts')).workCommand,
  day: async () => (await import('./work/day.ts')).dayCommand,
  order: async () => (await import('./work/order.ts')).orderCommand,
  promise: async () => (await import('./commands/promise.ts')).promiseCommand,
  why: async () => (await import('./commands/why.ts')).whyCommand,
  calc: async () => (await import('./commands/calc.ts')).calcCommand,
  import: async () => (await import('./commands/import.ts')).importCommand,
  export: async () => (await import('./commands/export.ts')).exportCommand,
  serve: async () => (await import('./commands/serve.ts')).serveCommand,
  people: async () => (await import('./people/people.ts')).peopleCommand,
  households: async () => (await import('./people/households.ts')).householdsCommand,
  backup: async () => (await import('./commands/backup.ts')).backupCommand,
  restore: async () => (await import('./commands/restore.ts')).restoreCommand,
  trace: async () => (await import('./proof/trace.ts')).traceCommand,
  balance: async () => (await import('./proof/balance.ts')).balanceCommand,
  week: async () => (await import('./proof/week.ts')).weekCommand,
  pack: async () => (await import('./proof/pack.ts')).packCommand,
  'verify-book': async () => (await import('./commands/verify-book.ts')).verifyBookCommand,
};

export async function run(args: readonly string[], io: Io): Promise<ExitCode> {
  const [name, ...rest] = args;
  if (name === undefined || name === '--help' || name === '-h' || name === 'help') {
    io.out(usage);
    return name === undefined ? 2 : 0;
  }
  const load = Object.hasOwn(commands, name) ? commands[name] : undefined;
  if (load === undefined) return refuse(io, [said.noCommand(name, nearest(name, Object.keys(commands))[0] ?? null)]);
  // `calc MODEL --help` is about the model.
  if (rest.includes('--help') && (name !== 'calc' || rest.length === 1)) {
    io.out(usage);
    return 0;
  }
  return (await load())(rest, io);
}
