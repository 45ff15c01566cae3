/** Personal facts of households at the machine itself: listed by code, handed out, erased. */
import { writeFile } from 'node:fs/promises';
import { parseArgs } from 'node:util';
import { refusalSentence } from '@leywright/api';
import { nearest } from '@leywright/book';
import { loadPeople } from '@leywright/server';
import { type ExitCode, type Io, printJson, refuse } from '../io.ts';
import { textTable } from '../tables/text-table.ts';
import { said } from '../words.ts';
import { type StoreFarm, withStoreFarm } from './store-farm.ts';

const deeds = ['list', 'export', 'erase', 'erase-over'] as const;

interface Asked {
  readonly household: string;
  readonly to: string | undefined;
  readonly json: boolean;
}

export async function householdsCommand(args: readonly string[], io: Io): Promise<ExitCode> {
  const read = parse(args);
  if ('sentence' in read) return refuse(io, [read.sentence]);
  const { values, positionals } = read;
  const [word, farm, household = '', ...more] = positionals;
  const deed = deeds.find((one) => one === word);
  if (deed === undefined)
    return refuse(io, [said.noDeed('households', word, nearest(word ?? '', deeds)[0] ?? null, deeds)]);
  const needsOne = deed === 'export' || deed === 'erase';
  if (more.length > 0 || (needsOne && household === ''))
    return refuse(io, [...more.map(said.tooMany), ...(needsOne && household === '' ? [said.whichHousehold] : [])]);
  const asked = { household, to: values.to, json: values.json === true };
  const works = { list, export: exportOne, erase: eraseOne, 'erase-over': eraseOver };
  return withStoreFarm({ farm, data: values.data }, io, (open) => works[deed](open, asked, io));
}

function parse(args: readonly string[]) {
  try {
    return parseArgs({
      args: [...args],
      allowPositionals: true,
      options: { json: { type: 'boolean' }, data: { type: 'string' }, to: { type: 'string' } },
    });
  } catch (error) {
    return { sentence: error instanceof Error ? error.message : String(error) };
  }
}

/** By code, without names: a terminal's history is no place for them. */
async function list({ store, farm }: StoreFarm, { json }: Asked, io: Io): Promise<ExitCode> {
  const { keptUntil } = await loadPeople();
  const households = (await store.households.households(farm)).map((one) => ({
    household: one.id,
    size: one.size,
    drop: one.drop,
    from: one.from,
    to: one.to,
    erasedAt: one.erasedAt,
    keptUntil: keptUntil(one),
  }));
  if (json) printJson(io, { households });
  else if (households.length === 0) io.out(said.noHouseholds);
  else
    io.out(
      textTable(
        ['household', 'size', 'drop', 'from', 'to', 'personal facts'].map((head) => ({ head })),
        households.map((one) => [
          one.household,
          one.size,
          one.drop ?? '',
          one.from,
          one.to ?? '',
          one.erasedAt === null ? `kept${one.keptUntil === null ? '' : ` until ${one.keptUntil}`}` : 'erased',
        ]),
      ),
    );
  return 0;
}

async function exportOne({ store, farm }: StoreFarm, { household, to }: Asked, io: Io): Promise<ExitCode> {
  const { keptFor, keptUntil } = await loadPeople();
  const found = await store.households.household(farm, household);
  if (found === null) return refuse(io, [refusalSentence('no-such-household', { found: household })]);
  const kept = {
    farm,
    farmName: (await store.farm(farm))?.name ?? farm,
    household: found,
    exportedAt: new Date().toISOString(),
    keptFor,
    keptUntil: keptUntil(found),
  };
  if (to === undefined) {
    printJson(io, kept);
    return 0;
  }
  try {
    await writeFile(to, `${JSON.stringify(kept, null, 2)}\n`, { flag: 'wx', mode: 0o600 });
  } catch (error) {
    return refuse(io, [said.cannotWrite(to, error instanceof Error ? error.message : String(error))]);
  }
  io.out(said.householdWritten(household, to));
  return 0;
}

async function eraseOne({ store, farm }: StoreFarm, { household }: Asked, io: Io): Promise<ExitCode> {
  const wasThere = await store.households.eraseHousehold(farm, household, new Date().toISOString());
  if (!wasThere) return refuse(io, [refusalSentence('no-such-household', { found: household })]);
  io.out(said.householdErased(household));
  return 0;
}

async function eraseOver({ store, farm }: StoreFarm, { json }: Asked, io: Io): Promise<ExitCode> {
  const { eraseOverOf, keptMonths } = await loadPeople();
  const erased = await eraseOverOf(store, farm, { today: io.today(), now: new Date().toISOString() });
  if (json) printJson(io, { erased });
  else io.out(said.householdsErased(erased, keptMonths));
  return 0;
}
