/** The inspection pack of a year: a PDF, or a folder of CSV files. */
import { existsSync } from 'node:fs';
import { mkdir, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { type Pack, told } from '@leywright/api';
import { asKnownOn, replay } from '@leywright/book';
import { yearOf } from '@leywright/measures';
import { planFarm } from '@leywright/planner';
import { loadPackSheets } from '@leywright/server';
import { openFarm, planWishOf } from '../farm/open-farm.ts';
import { type ExitCode, type Io, printJson, refuse } from '../io.ts';
import { said } from '../words.ts';
import { parseProofWish } from './proof-wish.ts';

export async function packCommand(args: readonly string[], io: Io): Promise<ExitCode> {
  const parsed = parseProofWish(args, 3, io);
  if (parsed.kind === 'problems') return refuse(io, parsed.sentences);
  const { wish } = parsed;
  const [name, ...traces] = wish.words;
  const opened = await openFarm({ ...wish, name }, io);
  if (typeof opened === 'number') return opened;
  const wrong = traces.filter((trace) => told.readTraceStart(trace) === null);
  if (wrong.length > 0) return refuse(io, [said.noTrace]);
  const today = planWishOf(wish, opened).today;
  const knownOn = wish.knownOn ?? today;
  const year = wish.year ?? yearOf(knownOn);
  const entries = asKnownOn(opened.entries, knownOn, opened.farm.about.place.timeZone);
  const { farm, findings } =
    wish.knownOn === null ? { farm: opened.farm, findings: opened.bookFindings } : replay(opened.described(), entries);
  const plan = planFarm(farm, { today: knownOn, year, book: findings });
  const pack = told.packOf({ farm, entries, plan, year, knownOn, ...(traces.length === 0 ? {} : { traces }) });
  if (wish.json) printJson(io, pack);
  if (wish.to === null) return wish.json ? 0 : refuse(io, [said.packNeedsTo]);
  if (existsSync(wish.to)) return refuse(io, [said.toTaken(wish.to)]);
  await writePack(pack, wish.to, today);
  if (!wish.json) io.out(`${wish.to} is written: ${pack.parts.length} parts for ${year}, as known on ${knownOn}.`);
  return 0;
}

async function writePack(pack: Pack, to: string, printedOn: string): Promise<void> {
  const { packCsv, packPdf } = await loadPackSheets();
  if (to.endsWith('.pdf')) {
    await writeFile(to, await packPdf(pack, printedOn));
    return;
  }
  await mkdir(to, { recursive: true });
  for (const [file, text] of packCsv(pack)) await writeFile(join(to, file), text);
}
