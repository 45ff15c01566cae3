/** The records of a book that hold, each with the entry first made; for proofs that look at records one by one. */
export {
  animalFreeAnswers,
  goodsBodyKinds,
  goodsKinds,
  goodsStatuses,
  heldKinds,
  isGoodsBody,
  outKinds,
} from '../entry/goods.ts';

import type { Entry } from '../entry/entry.ts';
import { type InForce, settle } from '../replay/amendments.ts';
import { gather } from '../replay/gather.ts';
import { byPlace, placeOf } from '../replay/order.ts';

/** Records in force in the order they count in: amended ones in their corrected form, in the place of the first. */
export function recordsInForce(entries: readonly Entry[]): readonly InForce[] {
  return settle(gather(entries).byId)
    .inForce.map((record) => ({ record, place: placeOf(record.entry, record.root) }))
    .sort((one, other) => byPlace(one.place, other.place))
    .map((one) => one.record);
}
