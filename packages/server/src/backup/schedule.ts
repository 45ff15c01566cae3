/** A backup a day, made while the store is in use; the older ones are thinned out. A day's backup that fails is tried again, and said. */
import { existsSync, mkdirSync, readdirSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { backupName, backupsToTakeAway, inspectBackup, type Store, StoreTrouble } from '@leywright/store';

export interface BackupSchedule {
  readonly store: Store;
  readonly folder: string;
  /** The machine's day, also when the farm's day was given. */
  readonly day: () => string;
  readonly say: (sentence: string) => void;
}

export interface Backups {
  /** Makes today's backup if there is none yet. */
  readonly look: () => Promise<void>;
  readonly stop: () => Promise<void>;
}

const HOUR_MS = 3_600_000;

/** Looks now and every hour whether the day has its backup. */
export function startBackups(schedule: BackupSchedule): Backups {
  let looking: Promise<void> = Promise.resolve();
  const look = () => {
    looking = looking.then(() => makeTodays(schedule));
    return looking;
  };
  const clock = setInterval(() => void look(), HOUR_MS);
  clock.unref();
  void look();
  return {
    look,
    stop: () => {
      clearInterval(clock);
      return looking;
    },
  };
}

async function makeTodays({ store, folder, day, say }: BackupSchedule): Promise<void> {
  const path = join(folder, backupName(day()));
  try {
    if (existsSync(path) || (await store.farms()).length === 0) return;
    mkdirSync(folder, { recursive: true });
    await store.backupTo(path);
    const inspected = await inspectBackup(path);
    if (inspected.kind === 'refused') {
      say(`The backup ${path} was read back and is not sound (${inspected.problem.code}). Earlier backups were kept.`);
      return;
    }
    for (const name of backupsToTakeAway(readdirSync(folder))) rmSync(join(folder, name), { force: true });
  } catch (error) {
    const why = error instanceof StoreTrouble ? error.code : error instanceof Error ? error.message : String(error);
    say(`No backup could be made in ${folder}: ${why}. It is tried again in an hour; records go on being kept.`);
  }
}
