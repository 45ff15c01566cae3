/** What of a lot is ready and standing in the ground, week by week, and what becomes of what nobody cut. */
import type { Bounds, Lot } from './lot.ts';

export type UncutWhy = 'stand-ended' | 'stood-too-long';

interface Ready {
  readonly week: number;
  /** Cut already, as recorded, and lying in the shed. */
  readonly isCut: boolean;
  kg: number;
}

export class StandingLot {
  readonly lot: Lot;
  /** Kilos cut, by place of the axis. */
  readonly cut = new Map<number, number>();
  /** Cut for the boxes, as recorded, beyond what the plan has in them. */
  surplusKg = 0;
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
    if (share > 0) this.#ready.push({ week, isCut: false, kg: share * this.#toComeKg });
  }

  /** Cut for the boxes and recorded: it lies in the shed this week and no longer. */
  lay(week: number, kg: number): void {
    this.#ready.unshift({ week, isCut: true, kg });
    this.#note(week, kg);
  }

  get hasLaid(): boolean {
    return this.#ready.some((ready) => ready.isCut && ready.kg > 1e-9);
  }

  /** Cuts up to that many kilos, the longest ready first, and says how many. */
  give(week: number, wantedKg: number): number {
    let given = 0;
    for (const ready of this.#ready) {
      const part = Math.min(ready.kg, wantedKg - given);
      ready.kg -= part;
      given += part;
      if (!ready.isCut) this.#note(week, part);
      if (given >= wantedKg) break;
    }
    return given;
  }

  /** At the end of a week: what has stood its time, or has to leave with the stand. Cut for the store when there is one, else left. */
  clear(week: number, hasStore: boolean): number {
    const ends = week >= this.lot.lastWeek;
    let laidKg = 0;
    let standingKg = 0;
    this.#ready = this.#ready.filter((ready) => {
      const leaves = ready.isCut || ends || week - ready.week >= this.lot.standingWeeks;
      if (leaves && ready.isCut) laidKg += ready.kg;
      else if (leaves) standingKg += ready.kg;
      return !leaves && ready.kg > 1e-9;
    });
    if (hasStore) this.#note(week, standingKg);
    else {
      this.surplusKg += laidKg;
      if (standingKg > 1e-9) this.#lose(standingKg, ends ? 'stand-ended' : 'stood-too-long');
    }
    return hasStore ? laidKg + standingKg : 0;
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
