/** Backups looked over, and what is wrong with one in words. */
import { refusalSentence } from '@leywright/api';
import { type BackedUpFarm, inspectBackup, type Restored } from '@leywright/store';
import { type ExitCode, type Io, refuse } from '../io.ts';
import { said } from '../words.ts';

type StoreRefusal = Extract<Restored, { kind: 'refused' }>['problem'];

export function backupSentence(problem: StoreRefusal): string {
  if (problem.code === 'store-there') return said.storeThere(problem.found);
  const { code, ...figures } = problem;
  return refusalSentence(code, figures);
}

export interface LookedOver {
  readonly farms: readonly BackedUpFarm[];
  readonly sentence: string;
}

/** Follows the seals of every book in the file. */
export async function lookOver(path: string, io: Io): Promise<LookedOver | ExitCode> {
  const inspected = await inspectBackup(path);
  if (inspected.kind === 'refused') return refuse(io, [backupSentence(inspected.problem)]);
  return { farms: inspected.farms, sentence: farmsSentence(inspected.farms) };
}

/** "Elder Farm (812 entries), Home (31 entries)" */
export function farmsSentence(farms: readonly BackedUpFarm[]): string {
  if (farms.length === 0) return 'no farm';
  return farms.map(({ name, entries }) => `${name} (${entries} entries)`).join(', ');
}
