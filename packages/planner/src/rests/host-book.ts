/** Who is a host under which rule, and when: worked out once for a plot's stands and asked many times. */
import type { OrganismMark, Part } from '@leywright/book';
import type { GroundStand } from '../ground/ground-stand.ts';
import { type Occupation, occupationsOf, type RestSeason } from './occupation.ts';
import { type RestRule, rulesOfPlant } from './rules.ts';

export interface RestGround {
  readonly rules: readonly RestRule[];
  readonly season: RestSeason;
  readonly parts: readonly Part[];
  readonly marks: readonly OrganismMark[];
  /** Stands of a plot by its id, in order. */
  readonly standsOf: (plot: string) => readonly GroundStand[];
}

export interface HostBook {
  readonly rulesOf: (one: GroundStand) => readonly RestRule[];
  readonly occupations: (one: GroundStand) => readonly Occupation[];
  /** Host occupations of a rule on a plot. */
  readonly ofRule: (plot: string, rule: RestRule) => readonly Occupation[];
}

export function hostBook(ground: RestGround): HostBook {
  const byPlant = new Map<string, readonly RestRule[]>();
  const rulesOf = (one: GroundStand) => {
    const known = byPlant.get(one.plant.id) ?? rulesOfPlant(ground.rules, one.plant);
    byPlant.set(one.plant.id, known);
    return known;
  };
  const kept = new Map<GroundStand, readonly Occupation[]>();
  const occupations = (one: GroundStand) => {
    const known = kept.get(one) ?? occupationsOf(one, hostOf(one, ground.standsOf(one.stand.plot)), ground.season);
    kept.set(one, known);
    return known;
  };
  const byRule = new Map<string, Map<RestRule, Occupation[]>>();
  const hostOccupations = (one: GroundStand, rule: RestRule) =>
    occupations(one).filter((occupation) => occupation.lastYear !== null && rule.countsAs.has(occupation.countsAs));
  const indexPlot = (plot: string) => {
    const index = new Map<RestRule, Occupation[]>();
    for (const one of ground.standsOf(plot)) {
      for (const rule of rulesOf(one)) {
        const list = index.get(rule) ?? [];
        index.set(rule, list);
        list.push(...hostOccupations(one, rule));
      }
    }
    byRule.set(plot, index);
    return index;
  };
  return { rulesOf, occupations, ofRule: (plot, rule) => (byRule.get(plot) ?? indexPlot(plot)).get(rule) ?? [] };
}

/** The stand another is sown into; null when it is sown alone or its host is not known. */
export function hostOf(one: GroundStand, stands: readonly GroundStand[]): GroundStand | null {
  const id = one.stand.undersownIn;
  return id === null ? null : (stands.find((other) => other.stand.id === id) ?? null);
}
