/** Rests that a cover would break on its ground: with what stood before it, and with what is planned after it. */
import type { Day } from '@leywright/measures';
import { type GroundStand, inOrder } from '../ground/ground-stand.ts';
import { restGround } from '../ground/plot-ground.ts';
import type { GroundSetting } from '../ground/stage.ts';
import type { Visit } from '../plan/ground.ts';
import { visitsOf } from '../rests/visits.ts';

export interface TouchedRest {
  readonly rule: string;
  readonly name: string;
  readonly force: Visit['force'];
  readonly infested: boolean;
  /** The other stand: earlier or later than the cover. */
  readonly with: string;
  readonly withFrom: Day | null;
  readonly gapYears: number;
  readonly needYears: number;
}

export function touchedRests(
  cover: GroundStand,
  { stands, setting }: { readonly stands: readonly GroundStand[]; readonly setting: GroundSetting },
): readonly TouchedRest[] {
  const all = [...stands, cover].sort(inOrder);
  const byId = new Map(all.map((one) => [one.stand.id as string, one]));
  const ground = { ...restGround(setting), standsOf: () => all };
  const own = cover.stand.id;
  const visits = visitsOf(cover.stand.plot, cover.fromDay, ground).filter(
    (visit) => !visit.kept && (visit.stand === own || visit.previous === own),
  );
  const worst = new Map<string, TouchedRest>();
  for (const visit of visits) {
    const other = visit.stand === own ? visit.previous : visit.stand;
    const known = worst.get(visit.rule);
    if (known !== undefined && known.gapYears <= visit.gapYears) continue;
    worst.set(visit.rule, {
      rule: visit.rule,
      name: visit.ruleName,
      force: visit.force,
      infested: visit.infested,
      with: other,
      withFrom: byId.get(other)?.stand.from ?? null,
      gapYears: visit.gapYears,
      needYears: visit.needYears,
    });
  }
  return [...worst.values()].sort((a, b) => (a.rule < b.rule ? -1 : 1));
}
