/**
 * The farm as known from its book. The same set of entries gives the same farm, in whatever order and however often they came.
 *
 * Entries that describe the farm (rows set, the rotation agreed, organisms found) go first, records of what was done after them, so that no
 * later description takes back what was really done. Within each they count by the day and time done, then as entered.
 */

import { unreachable } from '@leywright/measures';
import type { Entry } from '../entry/entry.ts';
import { isGoodsBody } from '../entry/goods.ts';
import type { Farm } from '../farm/farm.ts';
import { harvestsTwice } from '../twice/harvests-twice.ts';
import { type InForce, settle } from './amendments.ts';
import { bringIn } from './bring-in.ts';
import { describe, isDescribing } from './describe.ts';
import { closeDraft, type Draft, openDraft } from './draft.ts';
import { type BookFinding, inOrder } from './findings.ts';
import { gather } from './gather.ts';
import { grow } from './grow.ts';
import { byPlace, clockFindings, clockIsWrong, placeOf } from './order.ts';

export interface ReplayOptions {
  /** `descriptions`: only what describes the farm, without records; what the tables of a farm folder hold. */
  readonly only?: 'descriptions';
}

export interface Replayed {
  readonly farm: Farm;
  readonly findings: readonly BookFinding[];
}

/** Puts entries over a farm (`emptyFarm`, or the farm of a folder's tables). */
export function replay(base: Farm, entries: readonly Entry[], options: ReplayOptions = {}): Replayed {
  const gathered = gather(entries);
  const settled = settle(gathered.byId);
  const wrongClocks = [...gathered.byId.values()].filter(clockIsWrong);
  const records = sorted(settled.inForce);
  const draft = openDraft(base);
  for (const record of records)
    if (record.entry.body !== null && isDescribing(record.entry.body)) describe(draft, record.entry.body, record);
  if (options.only !== 'descriptions') for (const record of records) applyRecord(draft, record);
  const aboutRecords = [...clockFindings(wrongClocks), ...harvestsTwice(records)];
  const findings = [...gathered.findings, ...settled.findings, ...aboutRecords, ...draft.findings];
  return { farm: closeDraft(draft), findings: inOrder(findings) };
}

/** An amended record keeps the moment at which its first version was entered. */
function sorted(inForce: readonly InForce[]): InForce[] {
  const placed = inForce.map((record) => ({ record, place: placeOf(record.entry, record.root) }));
  return placed.sort((a, b) => byPlace(a.place, b.place)).map((one) => one.record);
}

function applyRecord(draft: Draft, record: InForce): void {
  const { body } = record.entry;
  // What came on the farm, was packed and handed over is the proof's; it changes nothing on the ground.
  if (body === null || isDescribing(body) || isGoodsBody(body)) return;
  switch (body.kind) {
    case 'sowing':
    case 'planting':
    case 'stand-ended':
    case 'establishment':
      grow(draft, body, record);
      return;
    case 'harvest':
    case 'weighing':
    case 'job-done':
      bringIn(draft, body, record);
      return;
    case 'observation':
    case 'struck-out':
    case 'withdrawn':
      return; // An observation stays in the book; it changes nothing on the farm.
    default:
      unreachable(body);
  }
}
