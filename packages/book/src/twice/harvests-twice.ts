/** The same harvest recorded by two devices: both count, and somebody is asked. Nothing is ever taken out by itself. */
import type { EntryBody } from '../entry/entry.ts';
import type { InForce } from '../replay/amendments.ts';
import { type BookFinding, bookFinding } from '../replay/findings.ts';

/** Two weighings of one load differ by less than this. Common practice: a field scale, a damp crate. */
const LIKE_SHARE = 0.05;

type Harvest = Extract<EntryBody, { kind: 'harvest' }>;

interface Told {
  readonly record: InForce;
  readonly body: Harvest;
}

/**
 * Pairs of harvests of one crop off one plot on one day (and of one stand, where both name it), from different devices and of like amount. A record that was looked at and corrected,
 * be it to the same amount, is past asking.
 */
export function harvestsTwice(records: readonly InForce[]): readonly BookFinding[] {
  const alike = new Map<string, Told[]>();
  for (const record of records) {
    const { body, doneOn } = record.entry;
    if (body?.kind !== 'harvest' || record.entry !== record.root) continue;
    const key = `${body.crop} ${body.plot} ${doneOn} ${body.unit}`;
    const before = alike.get(key);
    if (before === undefined) alike.set(key, [{ record, body }]);
    else before.push({ record, body });
  }
  return [...alike.values()].filter((told) => told.length > 1).flatMap(pairs);
}

function pairs(told: readonly Told[]): readonly BookFinding[] {
  return told.flatMap((one, at) =>
    told.slice(at + 1).flatMap((other) => (isTwice(one, other) ? [finding(one, other)] : [])),
  );
}

function isTwice(one: Told, other: Told): boolean {
  if (one.record.root.device === other.record.root.device) return false;
  // Two stands of one crop on a plot are lifted one after the other.
  if (one.body.stand !== null && other.body.stand !== null && one.body.stand !== other.body.stand) return false;
  const [a, b] = [amountOf(one.body), amountOf(other.body)];
  return a !== null && b !== null && Math.abs(a - b) <= LIKE_SHARE * Math.max(a, b);
}

function amountOf({ unit, grossKg, count }: Harvest): number | null {
  return unit === 'kg' ? grossKg : (count ?? grossKg);
}

function finding(one: Told, other: Told): BookFinding {
  const ids = [one.record.entry.id, other.record.entry.id].sort();
  const { crop, plot } = one.body;
  return bookFinding('harvest-perhaps-twice', ids, {
    plot,
    figures: {
      what: crop,
      on: one.record.entry.doneOn,
      firstKg: one.body.grossKg,
      secondKg: other.body.grossKg,
      firstBy: one.record.entry.by,
      secondBy: other.record.entry.by,
    },
  });
}
