/** Follows a book's records and builds the way of the goods. Records of a day count in the order of the work: in, lifted, moved, weighed, packed, handed over. */
import { type Entry, type EntryBody, type InForce, records } from '@leywright/book';
import { yearOf } from '@leywright/measures';
import { goodsIn, harvest } from './bring.ts';
import type { GoodsChain } from './chain.ts';
import { type Following, type FollowWith, poolOf } from './following.ts';
import { chainFaults } from './link-faults.ts';
import { binned, held, letGo, packed, weigh } from './move.ts';
import { heapKg } from './take.ts';

const order: Readonly<Partial<Record<EntryBody['kind'], number>>> = {
  'goods-in': 0,
  harvest: 1,
  binned: 2,
  'bin-weighed': 3,
  weighing: 3,
  'let-go': 4,
  packed: 5,
  'handed-over': 6,
};

export function followGoods(entries: readonly Entry[], given: FollowWith): GoodsChain {
  const inForce = records.recordsInForce(entries);
  const ranked = inForce
    .map((record, at) => ({ record, at, rank: order[record.entry.body?.kind ?? 'set'] ?? 0 }))
    .sort((one, other) => {
      const [a, b] = [one.record.entry.doneOn, other.record.entry.doneOn];
      return a < b ? -1 : a > b ? 1 : one.rank - other.rank || one.at - other.at;
    });
  const following = begin(given, labelsOf(inForce));
  for (const { record } of ranked) followOne(following, record);
  const chain = finished(following);
  return { ...chain, faults: [...following.faults, ...chainFaults(chain)] };
}

function begin(given: FollowWith, labels: ReadonlyMap<string, string>): Following {
  return {
    ...given,
    labels,
    lots: new Map(),
    left: new Map(),
    bins: new Map(),
    runs: new Map(),
    handings: [],
    flows: [],
    batches: new Map(),
    uses: [],
    sowings: [],
    touches: [],
    holds: [],
    faults: [],
  };
}

function finished(following: Following): GoodsChain {
  const { left, bins, ...rest } = following;
  return {
    ...rest,
    leftKg: new Map([...left].map(([id, heap]) => [id, heapKg(heap)])),
    bins: new Map([...bins].map(([id, bin]) => [id, { id, store: bin.store, everKg: bin.ever, nowKg: bin.now }])),
  };
}

/** Year and number of each lot, in the order the book received them: a lot keeps its number whatever comes in later. */
function labelsOf(inForce: readonly InForce[]): ReadonlyMap<string, string> {
  const seq = (entry: Entry) => ('seq' in entry ? Number(entry.seq) : Number.POSITIVE_INFINITY);
  const isLot = ({ entry }: InForce) =>
    entry.body?.kind === 'harvest' || (entry.body?.kind === 'goods-in' && entry.body.what === 'produce');
  const lots = inForce.filter(isLot).map(({ root }) => root);
  const received = lots.sort((one, other) => seq(one) - seq(other) || (one.id < other.id ? -1 : 1));
  const counts = new Map<number, number>();
  return new Map(
    received.map((root) => {
      const year = yearOf(root.doneOn);
      const number = (counts.get(year) ?? 0) + 1;
      counts.set(year, number);
      return [root.id, `${year}-${String(number).padStart(3, '0')}`];
    }),
  );
}

function followOne(to: Following, record: InForce): void {
  const { body } = record.entry;
  if (body === null) return;
  touch(to, record, body);
  switch (body.kind) {
    case 'sowing':
      to.sowings.push({ ...body, on: record.entry.doneOn, entry: record.root.id });
      return;
    case 'planting':
      to.sowings.push({ ...body, seedLot: null, on: record.entry.doneOn, entry: record.root.id });
      return;
    case 'harvest':
      harvest(to, record, body);
      return;
    case 'weighing':
      if (body.store !== null) weigh(to, record, { bin: poolOf(body.store, body.crop), kg: body.kg });
      return;
    case 'goods-in':
      goodsIn(to, record, body);
      return;
    case 'goods-used':
      to.uses.push({
        batch: body.batch,
        plot: body.plot,
        on: record.entry.doneOn,
        amount: body.amount,
        entry: record.root.id,
      });
      return;
    case 'binned':
      binned(to, record, body);
      return;
    case 'let-go':
      letGo(to, record, body);
      return;
    case 'packed':
      packed(to, record, body);
      return;
    case 'handed-over':
      to.handings.push({
        run: body.run,
        round: body.round,
        drop: body.drop,
        boxes: body.boxes,
        on: record.entry.doneOn,
        entry: record.root.id,
      });
      return;
    case 'bin-weighed':
      weigh(to, record, body);
      return;
    case 'held':
      held(to, record, body);
      return;
    default:
  }
}

/** Everything that names a plot touched that ground. */
function touch(to: Following, { entry, root }: InForce, body: EntryBody): void {
  const plot = 'plot' in body ? body.plot : body.kind === 'organism-found' ? body.mark.plot : null;
  if (plot === null || body.kind === 'set') return;
  const what =
    'what' in body ? String(body.what) : 'crop' in body ? body.crop : 'batch' in body ? body.batch : body.kind;
  to.touches.push({ plot, on: entry.doneOn, kind: body.kind, what, by: entry.by, entry: root.id });
}
