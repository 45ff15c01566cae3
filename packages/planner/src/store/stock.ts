/** The stock of one crop from one season in store: loss on the opening stock first, then what comes in, then what goes out. */
import type { StoreWeek } from '../plan/supply.ts';
import type { WeekAxis } from '../supply/week-axis.ts';

/** What a slot asked of a stock in a week, what it gave, and what the slot was left without when all had been asked. */
export interface StoreAsk {
  readonly week: number;
  readonly slot: string;
  readonly askedKg: number;
  readonly gaveKg: number;
  readonly missingShare: number;
}

interface Bin {
  readonly inWeek: number;
  kg: number;
}

/** Kilos below this are dust on the floor. */
export const dustKg = 1e-9;

/** Bins by week of coming in, the oldest used first. One season's stock; the next harvest begins another. */
export class Stock {
  readonly harvestYear: number;
  readonly weeks: { week: number; openKg: number; inKg: number; lossKg: number; outKg: number; closeKg: number }[] = [];
  readonly asks: StoreAsk[] = [];
  #bins: Bin[] = [];
  #week = { openKg: 0, inKg: 0, lossKg: 0, outKg: 0 };

  constructor(harvestYear: number) {
    this.harvestYear = harvestYear;
  }

  get kg(): number {
    return this.#bins.reduce((sum, bin) => sum + bin.kg, 0);
  }

  /** The next harvest is there: what is left leaves the store, and the ledger ends with it. */
  clearOut(): void {
    this.#bins = [];
  }

  /** Begins a week: what is too old goes, the rest loses its share. */
  open(week: number, lossShare: number, lifeWeeks: number | null): void {
    const openKg = this.kg;
    this.#bins = this.#bins.filter((bin) => lifeWeeks === null || week - bin.inWeek <= lifeWeeks);
    for (const bin of this.#bins) bin.kg *= 1 - lossShare;
    this.#week = { openKg, inKg: 0, lossKg: openKg - this.kg, outKg: 0 };
  }

  take(week: number, kg: number): void {
    if (kg <= 0) return;
    this.#bins.push({ inWeek: week, kg });
    this.#week.inKg += kg;
  }

  /** Gives up to that many kilos, oldest first, and says how many. */
  give(wantedKg: number): number {
    let given = 0;
    for (const bin of this.#bins) {
      const part = Math.min(bin.kg, wantedKg - given);
      bin.kg -= part;
      given += part;
      if (given >= wantedKg) break;
    }
    this.#bins = this.#bins.filter((bin) => bin.kg > dustKg);
    this.#week.outKg += given;
    return given;
  }

  /** A weighing puts the stock right: the difference is a loss of that week, or a find when negative. */
  weigh(kg: number): void {
    const before = this.kg;
    this.#week.lossKg += before - kg;
    if (before > 0) for (const bin of this.#bins) bin.kg *= kg / before;
    else this.#bins = kg > 0 ? [{ inWeek: this.weeks.at(-1)?.week ?? 0, kg }] : [];
  }

  close(week: number): void {
    const { openKg, inKg, lossKg, outKg } = this.#week;
    if (openKg + inKg > 0 || lossKg !== 0) this.weeks.push({ week, openKg, inKg, lossKg, outKg, closeKg: this.kg });
  }

  ledger(axis: WeekAxis): StoreWeek[] {
    return this.weeks.map((row) => ({
      week: axis.nameOf(row.week),
      openKg: row.openKg,
      inKg: row.inKg,
      lossKg: row.lossKg,
      outKg: row.outKg,
      closeKg: row.closeKg,
    }));
  }
}
