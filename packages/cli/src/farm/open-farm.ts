/** FARM as people name it: a folder, a zip, or with `--data` the id of a farm in a store. */
import { problemSentence } from '@leywright/api';
import {
  type BookFinding,
  type Farm,
  type FolderReading,
  farmDay,
  type Problem,
  type ReceivedEntry,
  readFarmFolder,
  readFarmZip,
} from '@leywright/book';
import { type Day, type FarmId, readId } from '@leywright/measures';
import { knownNames, type PlanWish } from '@leywright/planner';
import { type FarmFiles, farmOfFolder, loadServer, readFarmFiles } from '@leywright/server';
import type { FarmWish } from '../arguments.ts';
import { type ExitCode, type Io, printJson, refuse } from '../io.ts';
import { said } from '../words.ts';

export interface Opened {
  /** With the records of its book. */
  readonly farm: Farm;
  /** Without them: what the tables of a farm folder hold. */
  readonly described: () => Farm;
  readonly bookFindings: readonly BookFinding[];
  readonly entries: readonly ReceivedEntry[];
}

export interface FarmName {
  readonly name: string | undefined;
  readonly data: string | null;
  readonly json: boolean;
  readonly today: Day;
}

/** The farm, or the code to leave with after everything wrong with it was said. */
export async function openFarm(asked: FarmName, io: Io): Promise<Opened | ExitCode> {
  if (asked.name === undefined) return refuse(io, [said.noFarm]);
  return asked.data === null ? fromDisk(asked.name, asked, io) : fromStore(asked.name, asked.data, io);
}

/** Why a path is no farm. */
export const notRead = { 'not-there': said.notThere, neither: said.neither, 'too-large': said.tooLarge } as const;

async function fromDisk(path: string, { json, today }: FarmName, io: Io): Promise<Opened | ExitCode> {
  const reading = readReading(path, await readFarmFiles(path), { json, io });
  if (typeof reading === 'number') return reading;
  const { farm, findings, described } = farmOfFolder(reading.farm, reading.entries, today);
  return { farm, described, bookFindings: findings, entries: reading.entries };
}

/** What a folder or zip holds; everything wrong with it is said, and nothing is taken by halves. */
export function readReading(
  path: string,
  found: FarmFiles,
  { json, io }: { readonly json: boolean; readonly io: Io },
): Read | ExitCode {
  if (found.kind === 'none') return refuse(io, [notRead[found.why](path)]);
  const reading =
    found.kind === 'zip' ? readFarmZip(found.bytes, knownNames()) : readFarmFolder(found.files, knownNames());
  const { farm, problems } = reading;
  if (problems.length > 0) sayProblems(problems, farm === null && json, io);
  return farm === null ? refuse(io, [said.notImported]) : { ...reading, farm };
}

type Read = FolderReading & { readonly farm: Farm };

/** All of them, each with its place; as JSON on standard output too when nothing else will stand there. */
function sayProblems(problems: readonly Problem[], asJson: boolean, io: Io): void {
  for (const problem of problems) io.err(problemSentence(problem));
  if (asJson)
    printJson(io, { problems: problems.map((problem) => ({ ...problem, sentence: problemSentence(problem) })) });
}

async function fromStore(name: string, data: string, io: Io): Promise<Opened | ExitCode> {
  const server = await loadServer();
  const opened = await server.openFolder(data);
  if (opened.kind === 'refused') return refuse(io, [opened.sentence]);
  try {
    const id = readId<FarmId>(name);
    const farm = id === null ? null : await server.farmInStore(opened.store, id);
    if (farm !== null) return farm;
    return refuse(io, [
      said.noStoreFarm(
        name,
        (await opened.store.farms()).map((one) => one.id),
      ),
    ]);
  } finally {
    await opened.store.close();
  }
}

/** What to plan: the day asked for, or the farm's own, and the year asked for. */
export function planWishOf(wish: FarmWish, { farm, bookFindings }: Opened): PlanWish {
  return {
    today: farmDay(farm.about, wish.today, wish.isDaySaid),
    book: bookFindings,
    ...(wish.year === null ? {} : { year: wish.year }),
  };
}
