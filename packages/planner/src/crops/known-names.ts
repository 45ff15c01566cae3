/** Every name the reference knows, for reading a farm's files and for finding the nearest right one. */
import { reference } from '@leywright/agronomy';

export interface KnownNames {
  /** Name by id. */
  readonly crops: ReadonlyMap<string, string>;
  readonly covers: ReadonlyMap<string, string>;
  readonly organisms: ReadonlyMap<string, string>;
  readonly families: readonly string[];
  readonly storeKinds: readonly string[];
}

let kept: KnownNames | null = null;

export function knownNames(): KnownNames {
  kept ??= readNames();
  return kept;
}

function readNames(): KnownNames {
  const organisms = [...reference.intervals.values()].filter((rule) => rule.ruleScope !== 'family');
  const families = [...reference.crops.values(), ...reference.covers.values()]
    .map((one) => one.family)
    .filter((family) => family !== 'mixed');
  return {
    crops: namesOf(reference.crops.values()),
    covers: namesOf(reference.covers.values()),
    organisms: new Map(organisms.map((rule) => [rule.id, rule.organism])),
    families: [...new Set(families)].sort(),
    storeKinds: [...new Set([...reference.storage.values()].map((row) => row.store))].sort(),
  };
}

function namesOf(rows: Iterable<{ readonly id: string; readonly name: string }>): ReadonlyMap<string, string> {
  return new Map([...rows].map((row) => [row.id, row.name]));
}
