/** The farm that is open on this machine: its book, its day, the year in view, and the plan worked out from them. */
import { voiceOf } from '@leywright/api';
import {
  aboutFarm,
  type BookFinding,
  type Entry,
  type EntryBody,
  emptyFarm,
  type Farm,
  farmDay,
  replay,
} from '@leywright/book';
import type { Day } from '@leywright/measures';
import { makePlanner, type Plan, type PlanWish, whyOf } from '@leywright/planner';
import { dayAndMonth } from '../look/head/year-weeks.ts';
import { words } from '../words.ts';
import {
  type BookTools,
  enter,
  keptBook,
  type LocalBook,
  learnWho,
  pullBook,
  sendBook,
  type ToEnter,
} from './book/book.ts';
import type { KeptFarm } from './book/keep.ts';
import type { FarmOnList, FarmView, Seen, ToldWhy } from './plan-source.ts';
import { seenBefore, toldRecords } from './record/told-records.ts';
import { tellView, tellWhy } from './tell/tell-view.ts';

/** What a change may look at. */
export interface Known {
  readonly farm: Farm;
  readonly plan: Plan;
  /** The whole book, with what waits to be sent. */
  readonly entries: readonly Entry[];
}

export type Entering = Omit<ToEnter, 'farm' | 'doneOn'> & Partial<Pick<ToEnter, 'doneOn'>>;

interface OpenFarm {
  readonly kept: KeptFarm;
  readonly book: LocalBook;
  readonly farm: Farm;
  readonly findings: readonly BookFinding[];
}

export class FarmDesk {
  readonly #tools: BookTools;
  readonly #show: (seen: Seen) => void;
  readonly #planner = makePlanner();
  #open: OpenFarm | null = null;
  #view: FarmView | null = null;
  #today: Day;
  /** Whether the server was told which day it is. */
  #isDaySaid = false;
  #year: number | null = null;
  #isReached = true;
  #turn: Promise<void> = Promise.resolve();

  constructor(tools: BookTools, show: (seen: Seen) => void) {
    this.#tools = tools;
    this.#show = show;
    this.#today = tools.clock.today();
  }

  /** Opens the farm that was open last, else the newest there is; says so when there is none. */
  start(): Promise<void> {
    return this.#inTurn(async () => {
      await this.#askDay();
      await learnWho(this.#tools);
      const farms = await this.#list();
      const last = await this.#tools.keep.fact('farm');
      const farm = farms.find(({ id }) => id === last) ?? farms[0];
      if (farm === undefined) this.#show({ kind: 'no-farm', today: this.#isReached ? this.#today : null });
      else await this.#openKept(farm);
    });
  }

  openFarm(farm: KeptFarm): Promise<void> {
    return this.#inTurn(() => this.#openKept(farm));
  }

  /** Sends what waits, brings what is new, and plans again when the book or the day has changed. */
  lookAgain(): Promise<void> {
    return this.#inTurn(async () => {
      const before = { today: this.#today, isReached: this.#isReached };
      await this.#askDay();
      if (this.#open === null) return;
      const isNew = await this.#exchange();
      if (isNew || before.today !== this.#today || before.isReached !== this.#isReached) this.#plan();
    });
  }

  /** Years asked for while one is worked out are passed over but for the last. */
  focusYear(isoYear: number): Promise<void> {
    this.#year = isoYear;
    return this.#inTurn(async () => {
      if (this.#year === isoYear && this.#view?.plan.year !== isoYear) this.#plan();
    });
  }

  why(figureId: string): ToldWhy | null {
    if (this.#open === null || this.#view === null) return null;
    const why = whyOf(this.#open.farm, this.#wish(this.#open), figureId);
    return why === null ? null : tellWhy(why, this.#view.plan, this.#open.farm);
  }

  /** Enters a change that is made here, on the day it really is; shows it at once, and sends it when the server is reached. */
  async enter(change: (farm: Farm) => EntryBody): Promise<void> {
    await this.enterAll(({ farm }) => [{ body: change(farm) }]);
  }

  /** The same for several at once; gives the ids they got, none when no farm is open. */
  async enterAll(change: (known: Known) => readonly Entering[]): Promise<readonly string[]> {
    const ids: string[] = [];
    await this.#inTurn(async () => {
      if (this.#open === null || this.#view === null) return;
      const { kept, farm } = this.#open;
      let { book } = this.#open;
      const now = this.#tools.clock.now();
      const entries = [...book.entries, ...book.unsent];
      for (const entering of change({ farm, plan: this.#view.plan, entries })) {
        book = await enter(this.#tools, book, { farm: kept.id, doneOn: this.#today, now, ...entering });
        ids.push(book.unsent.at(-1)?.id ?? '');
      }
      if (ids.length === 0) return;
      this.#take(kept, book);
      this.#plan();
      await this.#exchange();
      this.#plan(); // what waited may be sent, or the server out of reach
    });
    return ids;
  }

  /** Where whoever waits for news stands; null while no farm is open. */
  standing(): { readonly farm: string; readonly seq: number } | null {
    if (this.#open === null) return null;
    return { farm: this.#open.kept.id, seq: this.#open.book.entries.at(-1)?.seq ?? 0 };
  }

  async farms(): Promise<readonly FarmOnList[]> {
    const farms = await this.#list();
    return farms.map(({ id, name, sample }) => ({ id, name, sample, isOpen: id === this.#open?.kept.id }));
  }

  #inTurn(work: () => Promise<void>): Promise<void> {
    this.#turn = this.#turn.then(work).catch((fault: unknown) => this.#fail(fault));
    return this.#turn;
  }

  async #openKept(kept: KeptFarm): Promise<void> {
    if (this.#view === null) this.#show({ kind: 'working', sentence: words.state.opening });
    this.#year = null;
    this.#take(kept, await keptBook(this.#tools, kept.id));
    await this.#exchange();
    await this.#tools.keep.putFarm(kept);
    await this.#tools.keep.putFact('farm', kept.id);
    this.#plan();
  }

  /** Whether the book has changed. */
  async #exchange(): Promise<boolean> {
    if (this.#open === null) return false;
    const { kept, book } = this.#open;
    const sent = await sendBook(this.#tools, kept.id, book);
    if (sent.kind === 'refused') console.warn('Not taken by the server:', sent.problems);
    const pulled = await pullBook(this.#tools, kept.id, sent.kind === 'unreachable' ? book : sent.book);
    this.#isReached = pulled.kind !== 'unreachable';
    if (pulled.kind === 'pulled' && (pulled.isNew || sent.kind === 'refused')) this.#take(kept, pulled.book);
    return pulled.kind === 'pulled' && (pulled.isNew || sent.kind === 'refused');
  }

  #take(kept: KeptFarm, book: LocalBook): void {
    const base = emptyFarm(aboutFarm(kept.id, kept.name, nowhere));
    const { farm, findings } = replay(base, [...book.entries, ...book.unsent]);
    this.#open = { kept, book, farm, findings };
  }

  #plan(): void {
    if (this.#open === null) return;
    const plan: Plan = this.#planner.plan(this.#open.farm, this.#wish(this.#open));
    this.#view = { ...tellView(plan, this.#open.farm), ...this.#toldBook(this.#open, plan) };
    this.#show({ kind: 'ready', view: this.#view, offline: this.#isReached ? null : offlineSince(this.#open) });
  }

  #toldBook({ book, farm }: OpenFarm, plan: Plan): Pick<FarmView, 'records' | 'seenBefore'> {
    const waiting = new Set<string>(book.unsent.map(({ id }) => id));
    const entries = [...book.entries, ...book.unsent];
    const records = toldRecords(entries, { plan, voice: voiceOf(plan, farm), waiting, today: this.#today });
    return { records, seenBefore: seenBefore(entries) };
  }

  /** An invented farm lives on its own day. */
  #dayOf({ farm }: OpenFarm): Day {
    return farmDay(farm.about, this.#today, this.#isDaySaid);
  }

  #wish(open: OpenFarm): PlanWish {
    const { findings } = open;
    return { today: this.#dayOf(open), book: findings, ...(this.#year === null ? {} : { year: this.#year }) };
  }

  /** The day as the server reckons it; without it this machine's, but never a day that was over already. */
  async #askDay(): Promise<void> {
    const { server, keep, clock } = this.#tools;
    const answer = await server.today();
    this.#isReached = answer.kind !== 'unreachable';
    if (answer.kind === 'answered') {
      this.#today = answer.value.today;
      this.#isDaySaid = answer.value.isDaySaid;
      await keep.putFact('today', this.#today);
      return;
    }
    const [known, own] = [await keep.fact('today'), clock.today()];
    this.#today = known !== null && known > own ? known : own;
  }

  /** Farms of the server, newest first; those kept here while it is out of reach. */
  async #list(): Promise<readonly KeptFarm[]> {
    const answer = await this.#tools.server.farms();
    if (answer.kind !== 'answered') return this.#tools.keep.farms();
    return [...answer.value.farms].sort((a, b) => (a.createdAt < b.createdAt ? 1 : -1));
  }

  #fail(fault: unknown): void {
    console.error(fault);
    this.#show({ kind: 'failed', view: this.#view, sentence: words.state.failed });
  }
}

/** Before its first entry a farm is a name; its place comes with the entry that describes it. */
const nowhere = {
  latDeg: 0,
  lonDeg: 0,
  elevationM: null,
  near: null,
  jurisdiction: 'England',
  timeZone: 'Europe/London',
} as const;

function offlineSince({ book }: OpenFarm): string {
  const last = book.entries.at(-1);
  const unsent = book.unsent.length;
  return words.state.offline(last === undefined ? null : dayAndMonth(last.receivedAt.slice(0, 10) as Day), unsent);
}
