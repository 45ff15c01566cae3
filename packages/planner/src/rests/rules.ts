/**
 * The rests a farm is held to: the reference's families and organisms, and the farm's own over them.
 *
 * Source  reference/intervals.csv; rests.csv of the farm. An own rest of a family, or one that bears a rule's id, takes that rule's place.
 *         Sequence and distance rows are judged by their notes, elsewhere.
 */
import { type RestInterval, reference } from '@leywright/agronomy';
import type { Conventions, Farm, OwnRest } from '@leywright/book';
import type { Plant } from '../crops/plant.ts';
import type { Visit } from '../plan/ground.ts';

export const waysOfStanding = ['own', 'cover', 'undersown'] as const;
/** How a stand counts as a host: for itself, as a cover between crops, or sown into another crop. */
export type WayOfStanding = (typeof waysOfStanding)[number];

export interface RestRule {
  readonly id: string;
  readonly name: string;
  readonly scope: Visit['scope'];
  readonly hosts: ReadonlySet<string>;
  readonly family: string | null;
  readonly countsAs: ReadonlySet<WayOfStanding>;
  readonly needYears: number;
  /** On ground where the organism is recorded; null = no difference. */
  readonly infestedYears: number | null;
  readonly force: Visit['force'];
  readonly forceInfested: Visit['force'];
  readonly organism: string | null;
  /** Looked at on recorded ground alone, when the farm does not look at organisms otherwise. */
  readonly onlyInfested: boolean;
}

export function restRules(
  farm: Pick<Farm, 'rests' | 'marks'> & {
    readonly about: { readonly conventions: Pick<Conventions, 'familyRests' | 'organismRests'> };
  },
): readonly RestRule[] {
  const { familyRests, organismRests } = farm.about.conventions;
  const own = farm.rests.map(ownRule);
  const isReplaced = (rule: RestRule) =>
    own.some(
      (one) => one.id === rule.id || (one.family !== null && rule.scope === 'family' && rule.family === one.family),
    );
  const families = familyRests === 'own' ? [] : tableRules('family');
  const isRecorded = (rule: RestRule) =>
    farm.marks.some((mark) => mark.organism === rule.id || mark.organism === rule.organism);
  const organisms = organismRests
    ? tableRules('organism')
    : tableRules('organism')
        .filter(isRecorded)
        .map((rule) => ({ ...rule, onlyInfested: true }));
  return [...own, ...[...families, ...organisms].filter((rule) => !isReplaced(rule))];
}

/** Rules under which this plant is a host. */
export function rulesOfPlant(rules: readonly RestRule[], plant: Plant): readonly RestRule[] {
  return rules.filter((rule) => isHost(rule, plant));
}

export function isHost(rule: Pick<RestRule, 'hosts' | 'family' | 'scope'>, plant: Plant): boolean {
  if (plant.ids.some((id) => rule.hosts.has(id))) return true;
  // A family rule knows the crops of its table; own crops and own rests are hosts by the family they name.
  const goesByFamily = rule.scope === 'own' || (rule.scope === 'family' && plant.crop === null && plant.cover === null);
  return goesByFamily && rule.family !== null && plant.families.includes(rule.family);
}

const kept = new Map<RestInterval['ruleScope'], readonly RestRule[]>();

function tableRules(scope: 'family' | 'organism'): readonly RestRule[] {
  const known = kept.get(scope);
  if (known !== undefined) return known;
  const rules = [...reference.intervals.values()]
    .filter((row) => row.ruleScope === scope)
    .map((row) => tableRule(row, scope));
  kept.set(scope, rules);
  return rules;
}

function tableRule(row: RestInterval, scope: 'family' | 'organism'): RestRule {
  return {
    id: row.id,
    name: scope === 'family' ? row.family : row.organism,
    scope,
    hosts: new Set([...row.hostCropIds, ...row.hostCoverIds]),
    family: scope === 'family' ? row.family : null,
    countsAs: new Set(row.countsAs as readonly WayOfStanding[]),
    needYears: row.returnYearsMin,
    infestedYears: row.returnYearsInfestedLow,
    force: row.forceClean,
    forceInfested: row.forceInfested,
    organism: scope === 'organism' ? row.organism : null,
    onlyInfested: false,
  };
}

function ownRule(rest: OwnRest): RestRule {
  const countsAs = new Set<WayOfStanding>(['own']);
  if (rest.countsCovers) countsAs.add('cover');
  if (rest.countsUndersown) countsAs.add('undersown');
  return {
    id: rest.id,
    name: rest.name,
    scope: 'own',
    hosts: new Set(rest.hosts),
    family: rest.family,
    countsAs,
    needYears: rest.years,
    infestedYears: null,
    force: rest.force,
    forceInfested: rest.force,
    organism: null,
    onlyInfested: false,
  };
}
