/** What of a lot is ready and standing in the ground, week by week, and what becomes of what nobody cut. */
import type { Bounds, Lot } from './lot.ts';

export type UncutWhy = 'stand-ended' | 'stood-too-long';

interface Ready {
  readonly week: number;
  kg: number;
}

export class StandingLot {
  readonly lot: Lot;
  /** Kilos cut by place of the axis from `lot`'s first cut on. */
  readonly cut = new Map<number, number>();
  uncutKg = 0;
  uncutWhy: UncutWhy | null = null;
  readonly #toComeKg: number;
  #ready: Ready[] = [];

  constructor(lot: Lot, bounds: Bounds) {
    this.lot = lot;
    this.#toComeKg = lot.toComeKg[bounds];
    const lost = this.#toComeKg * (1 - lot.readyShare.reduce((sum, share) => sum + share, 0));
    if (lost > 1e-6) this.#lose(lost, 'stand-ended');
  }

  get kg(): number {
    return this.#ready.reduce((sum, ready) => sum + ready.kg, 0);
  }

  /** What became ready in this week joins what stands. */
  ripen(week: number): void {
    const share = this.lot.readyShare[week - this.lot.readyWeek] ?? 0;
    if (share > 0) this.#ready.push({ week, kg: share * this.#toComeKg });
  }

  /** Cut and recorded: it lies in the shed this week and no longer. */
  lay(week: number, kg: number): void {
    this.#ready.push({ week: week - this.lot.standingWeeks, kg });
  }

  /** Cuts up to that many kilos, the longest ready first, and says how many. */
  give(week: number, wantedKg: number): number {
    let given = 0;
    for (const ready of this.#ready) {
      const part = Math.min(ready.kg, wantedKg - given);
      ready.kg -= part;
      given += part;
      if (given >= wantedKg) break;
    }
    this.#note(week, given);
    return given;
  }

  /** At the end of a week: what has stood its time, or has to leave with the stand. Cut for the store when there is one, else left. */
  clear(week: number, hasStore: boolean): number {
    const ends = week >= this.lot.lastWeek;
    const leaving = this.#ready.filter((ready) => ends || week - ready.week >= this.lot.standingWeeks);
    const kg = leaving.reduce((sum, ready) => sum + ready.kg, 0);
    this.#ready = this.#ready.filter((ready) => ready.kg > 1e-9 && !leaving.includes(ready));
    if (kg <= 1e-9) return 0;
    if (hasStore) this.#note(week, kg);
    else this.#lose(kg, ends ? 'stand-ended' : 'stood-too-long');
    return hasStore ? kg : 0;
  }

  note(week: number, kg: number): void {
    this.#note(week, kg);
  }

  #note(week: number, kg: number): void {
    if (kg > 0) this.cut.set(week, (this.cut.get(week) ?? 0) + kg);
  }

  #lose(kg: number, why: UncutWhy): void {
    this.uncutKg += kg;
    this.uncutWhy ??= why;
  }
}
