/** A farm of a store, for commands that change what lies beside its book: people and households. */
import { type FarmId, readId } from '@leywright/measures';
import { loadServer } from '@leywright/server';
import { type ExitCode, type Io, refuse } from '../io.ts';
import { said } from '../words.ts';

type Opened = Awaited<ReturnType<Awaited<ReturnType<typeof loadServer>>['openFolder']>>;
export type StoreOpen = Extract<Opened, { kind: 'open' }>['store'];

export interface StoreFarm {
  readonly store: StoreOpen;
  readonly farm: FarmId;
  readonly folder: string;
}

/** Opens the store, finds the farm, does the work and closes; or says why not. */
export async function withStoreFarm(
  asked: { readonly farm: string | undefined; readonly data: string | undefined },
  io: Io,
  work: (open: StoreFarm) => Promise<ExitCode>,
): Promise<ExitCode> {
  const folder = asked.data ?? io.env['LEYWRIGHT_DATA'] ?? null;
  if (folder === null) return refuse(io, [said.needsData]);
  const opened = await (await loadServer()).openFolder(folder);
  if (opened.kind === 'refused') return refuse(io, [opened.sentence]);
  const { store } = opened;
  try {
    const ids = (await store.farms()).map(({ id }) => id);
    const farm = asked.farm === undefined ? null : readId<FarmId>(asked.farm);
    if (farm !== null && ids.includes(farm)) return await work({ store, farm, folder });
    return refuse(io, [asked.farm === undefined ? said.whichFarm(ids) : said.noStoreFarm(asked.farm, ids)]);
  } finally {
    await store.close();
  }
}
