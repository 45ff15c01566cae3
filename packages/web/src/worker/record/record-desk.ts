/** Records made by people on this machine: planned jobs, what they did, what they saw; taken back, or corrected. */
import type { EntryBody } from '@leywright/book';
import type { FarmDesk } from '../farm-desk.ts';
import { bodiesOf } from './bodies.ts';
import type { Correction, RecordWish } from './wish.ts';

/** Written as the reason of a record that was taken back at once. */
export const undone = 'undone at once';

export class RecordDesk {
  readonly #desk: FarmDesk;
  /** "10:42" by this machine. */
  readonly #timeOfDay: () => string;

  constructor(desk: FarmDesk, timeOfDay: () => string) {
    this.#desk = desk;
    this.#timeOfDay = timeOfDay;
  }

  /** Gives the ids of what was entered, so that it can be taken back. */
  record(wish: RecordWish): Promise<readonly string[]> {
    const doneAt = this.#timeOfDay();
    return this.#desk.enterAll(({ plan }) => bodiesOf(wish, plan).map((body) => ({ body, doneAt })));
  }

  /** An entry is never taken out: one that names it strikes it out. */
  async undo(ids: readonly string[]): Promise<void> {
    await this.#strikeOut(ids, undone);
  }

  async correct(ids: readonly string[], correction: Correction): Promise<void> {
    const { reason } = correction;
    if (correction.kind === 'strike-out') await this.#strikeOut(ids, reason);
    else
      await this.#desk.enterAll(({ entries }) =>
        entries
          .filter(({ id }) => ids.includes(id))
          .flatMap((entry) => {
            const body = withKg(entry.body, correction.kg);
            const { doneOn, doneAt } = entry;
            return body === null ? [] : [{ body, doneOn, doneAt, amends: entry.id, reason }];
          }),
      );
  }

  async #strikeOut(ids: readonly string[], reason: string): Promise<void> {
    await this.#desk.enterAll(({ entries }) =>
      entries
        .filter(({ id }) => ids.includes(id))
        .map(({ id, doneOn }) => ({ body: { kind: 'struck-out' }, amends: id, doneOn, reason })),
    );
  }
}

function withKg(body: EntryBody | null, kg: number): EntryBody | null {
  if (body?.kind === 'harvest') return { ...body, grossKg: kg };
  return body?.kind === 'weighing' ? { ...body, kg } : null;
}
