/** The plan of a farm as it leaves the server: worked out, cut to what may be seen, rounded and written as JSON. */
import { roundForJson } from '@leywright/api';
import { farmDay } from '@leywright/book';
import { type Day, type FarmId, yearOf } from '@leywright/measures';
import type { PlanWish } from '@leywright/planner';
import { type HttpProblem, refusal } from '../app/answer.ts';
import type { FarmShelf, OpenFarm, Seen } from '../farm/shelf.ts';
import { withoutMoney } from '../people/see.ts';

export interface PlanAsked {
  readonly farm: FarmId;
  readonly seen: Seen;
  /** In focus; null = the farm's own. */
  readonly year: number | null;
  readonly today: Day;
  readonly isDaySaid: boolean;
}

export interface PlanText {
  readonly status: 200 | 404 | 422;
  readonly bytes: Uint8Array;
  /** The same for who takes it: a tenth of the size, pressed once and sent often. Null where it was not pressed. */
  readonly gzipped: Uint8Array | null;
  /** The book as far as this `seq` is in it. */
  readonly seq: number;
}

/** The plan looks at ten years; further off neither rotation nor records say anything. */
const yearsAround = 30;

/** What to plan for an open farm; a problem when no plan reaches that year. */
export function planWishOf(
  open: OpenFarm,
  { seen, year, today, isDaySaid }: Pick<PlanAsked, 'seen' | 'year' | 'today' | 'isDaySaid'>,
): PlanWish | HttpProblem {
  const day = seen.knownOn ?? farmDay(open.farm.about, today, isDaySaid);
  if (year !== null && Math.abs(year - yearOf(day)) > yearsAround) return refusal('year-out-of-range', { found: year });
  return { today: day, book: open.bookFindings, ...(year === null ? {} : { year }) };
}

export async function planText(shelf: FarmShelf, asked: PlanAsked): Promise<PlanText> {
  const open = await shelf.open(asked.farm, asked.seen);
  if (open === null) return refused(404, refusal('no-such-farm', { found: asked.farm }));
  const wish = planWishOf(open, asked);
  if ('code' in wish) return refused(422, wish);
  const plan = shelf.plan(open, wish);
  // The farm was opened without prices already; this is the second lock.
  const seen = asked.seen.money ? plan : withoutMoney(plan);
  const bytes = Buffer.from(JSON.stringify(roundForJson(seen)));
  return { status: 200, bytes, gzipped: null, seq: open.stored.lastSeq };
}

function refused(status: 404 | 422, problem: HttpProblem): PlanText {
  return { status, bytes: Buffer.from(JSON.stringify({ problems: [problem] })), gzipped: null, seq: 0 };
}
