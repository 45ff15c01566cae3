/** Brings a farm folder or zip into a store, with its book. */
import { loadFounding, loadServer, readFarmFiles } from '@leywright/server';
import { parseFarmWish } from '../arguments.ts';
import { readReading } from '../farm/open-farm.ts';
import { type ExitCode, type Io, printJson, refuse } from '../io.ts';
import { said } from '../words.ts';

export async function importCommand(args: readonly string[], io: Io): Promise<ExitCode> {
  const parsed = parseFarmWish(args, 1, io);
  if (parsed.kind === 'problems') return refuse(io, parsed.sentences);
  const { words, data, json, today } = parsed.wish;
  const folder = data ?? io.env['LEYWRIGHT_DATA'] ?? null;
  const [path] = words;
  const missing = [...(path === undefined ? [said.noFarm] : []), ...(folder === null ? [said.needsData] : [])];
  if (path === undefined || folder === null) return refuse(io, missing);
  const reading = readReading(path, await readFarmFiles(path), { json, io });
  if (typeof reading === 'number') return reading;
  const server = await loadServer();
  const opened = await server.openFolder(folder);
  if (opened.kind === 'refused') return refuse(io, [opened.sentence]);
  try {
    const founding = await (await loadFounding()).foundFromFolder(
      server.deskOver(opened.store, server.clockOf(today)),
      reading,
    );
    if (founding.kind === 'refused')
      return refuse(
        io,
        founding.problems.map((problem) => problem.sentence),
      );
    const { id, name, lastSeq } = founding.farm;
    if (json) printJson(io, { farm: id, name, entries: lastSeq });
    else io.out(`${name} is in the store as "${id}", with ${lastSeq} entries in its book.`);
    return 0;
  } finally {
    await opened.store.close();
  }
}
