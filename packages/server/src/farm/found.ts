/** Makes a farm in the store: from its first sentence, or from the files of a farm folder. All of it or nothing. */
import { type Farm, type FolderReading, newEntryId, type ReceivedEntry } from '@leywright/book';
import { asId, type DeviceId, type FarmId, type PersonId, readId } from '@leywright/measures';
import { type FirstSentence, firstFarm } from '@leywright/planner';
import type { StoredFarm } from '@leywright/store';
import { type HttpProblem, refusal } from '../app/answer.ts';
import { type Desk, hexOf } from '../app/desk.ts';
import { firstProblem, folderProblem } from './problems.ts';
import { tablesAsEntries } from './tables-as-entries.ts';

export type Founding =
  | {
      readonly kind: 'founded';
      readonly farm: StoredFarm;
      readonly assumed: readonly string[];
      readonly problems: readonly HttpProblem[];
    }
  | { readonly kind: 'refused'; readonly status: 409 | 422; readonly problems: readonly HttpProblem[] };

/** Who enters what comes from files and from the first sentence. */
const importer = asId<PersonId>('import');

export async function foundFromSentence(desk: Desk, sentence: FirstSentence): Promise<Founding> {
  const id = freshId(desk, sentence.name ?? 'farm');
  const reading = firstFarm(sentence, { id, today: desk.clock.today() });
  if (reading.kind === 'problems')
    return { kind: 'refused', status: 422, problems: reading.problems.map(firstProblem) };
  return write(desk, { farm: reading.farm, book: [], assumed: reading.assumed, problems: [] });
}

export async function foundFromFolder(desk: Desk, reading: FolderReading): Promise<Founding> {
  const problems = reading.problems.map(folderProblem);
  if (reading.farm === null) return { kind: 'refused', status: 422, problems };
  return write(desk, { farm: reading.farm, book: reading.entries, assumed: [], problems });
}

interface Founder {
  readonly farm: Farm;
  readonly book: readonly ReceivedEntry[];
  readonly assumed: readonly string[];
  readonly problems: readonly HttpProblem[];
}

async function write(desk: Desk, { farm, book, assumed, problems }: Founder): Promise<Founding> {
  const receivedAt = desk.clock.now();
  const today = desk.clock.today();
  const entries = tablesAsEntries(farm, book, {
    farm: farm.about.id,
    by: importer,
    device: asId<DeviceId>(`import-${hexOf(desk.random(4))}`),
    doneOn: today,
    enteredAt: receivedAt,
    deviceSeqFrom: 1,
    newId: () => newEntryId(desk.random(10), Date.parse(receivedAt)),
  });
  const receipt = { receivedAt, newSalt: () => hexOf(desk.random(16)) };
  const founded = await desk.store.foundFarm(
    { id: farm.about.id, name: farm.about.name, sample: farm.about.sample, book, entries },
    receipt,
  );
  if (founded.kind === 'id-taken')
    return { kind: 'refused', status: 409, problems: [refusal('id-taken', { found: farm.about.id })] };
  return { kind: 'founded', farm: founded.farm, assumed, problems };
}

/** `our-farm-3f9a2c`: readable, and no two farms of one name meet. */
function freshId(desk: Desk, name: string): FarmId {
  const plain = name
    .normalize('NFC')
    .toLocaleLowerCase('en')
    .replace(/[^\p{L}\p{N}]+/gu, '-')
    .replace(/^-|-$/g, '')
    .slice(0, 40);
  return readId<FarmId>(`${plain}-${hexOf(desk.random(3))}`) ?? asId<FarmId>(`farm-${hexOf(desk.random(3))}`);
}
