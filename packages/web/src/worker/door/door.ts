/** The ways in: a farm begun from a sentence, from a folder, or the sample. */
import { knownPlaces } from '@leywright/planner';
import { words } from '../../words.ts';
import type { Answer, FarmInStore, SentenceSent, Server, ServerProblem } from '../book/server.ts';
import type { FarmDesk } from '../farm-desk.ts';
import type { Beginning, FolderAnswer, FolderFile, FolderMend, FolderProblem, Problem } from '../plan-source.ts';
import { draftOf, type FolderDraft, mended, tellFolder } from './folder-draft.ts';

type Blank = keyof Beginning;
const blanks = ['plots', 'areaHa', 'near', 'items', 'households', 'weeks'] as const satisfies readonly Blank[];

export class Door {
  readonly #server: Server;
  readonly #desk: FarmDesk;
  #draft: FolderDraft | null = null;
  #problems: readonly FolderProblem[] = [];

  constructor(server: Server, desk: FarmDesk) {
    this.#server = server;
    this.#desk = desk;
  }

  knownPlaces(): readonly string[] {
    return knownPlaces();
  }

  async begin(beginning: Beginning): Promise<readonly Problem[]> {
    const left = blanks.filter((blank) => beginning[blank] === null);
    if (left.length > 0)
      return left.map((blank) => ({ id: blank, where: labelOf(blank), sentence: words.first.leftBlank }));
    return this.#enter(await this.#server.begin(sentenceOf(beginning)));
  }

  async openSample(): Promise<readonly Problem[]> {
    return this.#enter(await this.#server.openSample());
  }

  async openFarm(id: string): Promise<readonly Problem[]> {
    const farm = (await this.#desk.farms()).find((one) => one.id === id);
    if (farm === undefined) return [{ id, where: '', sentence: words.first.noSuchFarm }];
    await this.#desk.openFarm(farm);
    return [];
  }

  async readFolder(files: readonly FolderFile[]): Promise<FolderAnswer> {
    if (files.length === 0)
      return { kind: 'not-read', problems: [{ id: 'none', where: '', sentence: words.folder.noFiles }] };
    return this.#read(draftOf(files));
  }

  async mendFolder(mends: readonly FolderMend[]): Promise<FolderAnswer> {
    if (this.#draft === null) return { kind: 'not-read', problems: [] };
    return this.#read(mended(this.#draft, this.#problems, mends));
  }

  async takeFolder(): Promise<readonly Problem[]> {
    if (this.#draft === null) return [];
    const problems = await this.#enter(await this.#server.takeFolder(this.#draft.zip));
    if (problems.length === 0) this.#draft = null;
    return problems;
  }

  async #read(draft: FolderDraft): Promise<FolderAnswer> {
    this.#draft = draft;
    const answer = await this.#server.checkFolder(draft.zip);
    if (answer.kind !== 'answered') return { kind: 'not-read', problems: problemsOf(answer) };
    const { wouldImport, name, problems } = answer.value;
    this.#problems = tellFolder(draft, problems);
    return { kind: 'read', reading: { canBeTaken: wouldImport, name, problems: this.#problems } };
  }

  async #enter(answer: Answer<{ readonly farm: FarmInStore }>): Promise<readonly Problem[]> {
    if (answer.kind !== 'answered') return problemsOf(answer);
    const { id, name, sample } = answer.value.farm;
    await this.#desk.openFarm({ id, name, sample });
    return [];
  }
}

function sentenceOf({ plots, areaHa, near, items, households, weeks }: Beginning): SentenceSent {
  const latDeg = near !== null && /^-?\d+([.,]\d+)?$/.test(near) ? Number(near.replace(',', '.')) : null;
  return {
    plots: plots ?? 0,
    areaHa: areaHa ?? 0,
    near: latDeg === null ? near : null,
    latDeg,
    items: items ?? 0,
    households: households ?? 0,
    weeks: weeks ?? 0,
  };
}

function problemsOf(answer: Exclude<Answer<unknown>, { kind: 'answered' }>): readonly Problem[] {
  if (answer.kind === 'unreachable') return [{ id: 'unreachable', where: '', sentence: words.state.notReached }];
  return answer.problems.map((problem, at) => ({ id: `${at}`, where: whereOf(problem), sentence: problem.sentence }));
}

function whereOf({ column }: ServerProblem): string {
  const blank = column === 'latDeg' ? 'near' : blanks.find((one) => one === column);
  return blank === undefined ? '' : labelOf(blank);
}

function labelOf(blank: Blank): string {
  return words.first.labels[blank === 'areaHa' ? 'area' : blank];
}
