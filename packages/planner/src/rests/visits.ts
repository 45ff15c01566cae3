/**
 * Returns of hosts to ground that carried one before, each held against its rest.
 *
 * Rule    For every stand and every rule it is a host under: the earlier stand on any of its ground that ended last in years decides. Stands of one course
 *         year count as one. gap = planting year of the later - last occupied year of the earlier; under the rest asked for it is a breach.
 *         Where the organism is recorded on the ground its longer rest and its own force hold.
 * Holds   kept returns are told for families and own rests alone; of the many organisms only the breaches.
 */
import type { Day } from '@leywright/measures';
import type { OrganismMark, Part } from '@leywright/book';
import { ancestorsOf, leastShare, overlapShare, widthOf } from '../ground/history.ts';
import type { GroundStand } from '../ground/ground-stand.ts';
import type { Visit } from '../plan/ground.ts';
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

export interface PlotVisits {
  readonly plot: string;
  readonly visits: readonly Visit[];
}

/** All visits of stands that begin on a plot on or after a day. */
export function visitsOf(plot: string, fromDay: number, ground: RestGround): readonly Visit[] {
  const stands = ground.standsOf(plot);
  const hosts = hostBook(ground);
  const hasParents = ground.parts.some((part) => part.plot === plot && part.parents.length > 0);
  const visits: Visit[] = [];
  for (const later of stands) {
    if (later.fromDay < fromDay) continue;
    for (const rule of hosts.rulesOf(later)) {
      const visit = worstVisit(later, rule, { plot, ground, hosts, hasParents });
      if (visit !== null) visits.push(visit);
    }
  }
  return visits;
}

/** The visit of one stand under one rule, kept or not; null when it is no host, or nothing came before. */
export function visitOf(one: GroundStand, rule: string, ground: RestGround): Visit | null {
  const { plot } = one.stand;
  const hosts = hostBook(ground);
  const found = hosts.rulesOf(one).find((other) => other.id === rule);
  const hasParents = ground.parts.some((part) => part.plot === plot && part.parents.length > 0);
  const search = { plot, ground, hosts, hasParents };
  const worst = found === undefined ? null : worstFound(one, found, search);
  return found === undefined || worst === null ? null : asVisit(worst, found, found.organism !== null && isMarked(one, found, search));
}

interface HostBook {
  readonly rulesOf: (one: GroundStand) => readonly RestRule[];
  readonly occupations: (one: GroundStand) => readonly Occupation[];
  /** Host occupations of a rule on a plot. */
  readonly ofRule: (plot: string, rule: RestRule) => readonly Occupation[];
}

function hostBook(ground: RestGround): HostBook {
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
  const indexPlot = (plot: string) => {
    const index = new Map<RestRule, Occupation[]>();
    for (const one of ground.standsOf(plot)) {
      for (const rule of rulesOf(one)) {
        const list = index.get(rule) ?? [];
        index.set(rule, list);
        for (const occupation of occupations(one)) if (occupation.lastYear !== null && rule.countsAs.has(occupation.countsAs)) list.push(occupation);
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

interface Search {
  readonly plot: string;
  readonly ground: RestGround;
  readonly hosts: HostBook;
  readonly hasParents: boolean;
}

interface Found {
  readonly later: Occupation;
  readonly earlier: Occupation;
  readonly lastYear: number;
  readonly sharedShare: number;
}

function worstFound(one: GroundStand, rule: RestRule, search: Search): Found | null {
  let worst: Found | null = null;
  for (const later of search.hosts.occupations(one)) {
    if (!rule.countsAs.has(later.countsAs)) continue;
    const found = lastHost(later, rule, search);
    if (found !== null && (worst === null || gapOf(found) < gapOf(worst))) worst = found;
  }
  return worst;
}

function worstVisit(one: GroundStand, rule: RestRule, search: Search): Visit | null {
  const worst = worstFound(one, rule, search);
  if (worst === null) return null;
  const isInfested = rule.organism !== null && isMarked(one, rule, search);
  if (rule.onlyInfested && !isInfested) return null;
  const visit = asVisit(worst, rule, isInfested);
  return visit.kept && rule.scope === 'organism' ? null : visit;
}

function gapOf(found: Found): number {
  return found.later.plantingYear - found.lastYear;
}

function lastHost(later: Occupation, rule: RestRule, search: Search): Found | null {
  const { span } = later.one.stand;
  let last: Found | null = null;
  const look = (plot: string, on: { readonly span: typeof span; readonly share: number; readonly fromDay: number; readonly untilDay: number }) => {
    for (const earlier of search.hosts.ofRule(plot, rule)) {
      if (earlier.lastYear === null || earlier.fromDay >= later.fromDay || earlier.fromDay >= on.untilDay || earlier.toDay <= on.fromDay) continue;
      if (last !== null && earlier.lastYear < last.lastYear) continue;
      if (earlier.one === later.one || isSameCourseYear(earlier, later)) continue;
      const overlap = overlapShare(earlier.one.stand.span, on.span);
      if (overlap <= leastShare) continue;
      const sharedShare = Math.min(1, on.share * (overlap / widthOf(on.span)));
      if (last === null || earlier.lastYear > last.lastYear || sharedShare > last.sharedShare) last = { later, earlier, lastYear: earlier.lastYear, sharedShare };
    }
  };
  if (!search.hasParents) look(search.plot, { span, share: 1, fromDay: Number.NEGATIVE_INFINITY, untilDay: later.fromDay });
  else for (const ancestor of ancestorsOf(search.ground.parts, search.plot, span, later.fromDay)) look(ancestor.plot, ancestor);
  return last;
}

/** Sown or planted in the same rotation year of a plot: two lettuces in a summer are one return. */
function isSameCourseYear(earlier: Occupation, later: Occupation): boolean {
  const a = earlier.one.stand;
  const b = later.one.stand;
  if (a.courseYear !== null && b.courseYear !== null) return a.courseYear === b.courseYear && a.plot === b.plot;
  return earlier.plantingYear === later.plantingYear;
}

function isMarked(one: GroundStand, rule: RestRule, { plot, ground }: Search): boolean {
  return ground.marks.some((mark) => isOrganism(mark, rule) && mark.plot === plot && overlapShare(mark.span, one.stand.span) > leastShare && isOpen(mark, one.stand.from));
}

function isOrganism(mark: OrganismMark, rule: RestRule): boolean {
  return mark.organism === rule.id || mark.organism === rule.organism;
}

function isOpen(mark: OrganismMark, day: Day): boolean {
  return mark.foundOn <= day && (mark.clearedOn === null || mark.clearedOn > day);
}

function asVisit({ later, earlier, lastYear, sharedShare }: Found, rule: RestRule, isInfested: boolean): Visit {
  const { stand } = later.one;
  const needYears = isInfested ? (rule.infestedYears ?? rule.needYears) : rule.needYears;
  const gapYears = later.plantingYear - lastYear;
  return {
    rule: rule.id, ruleName: rule.name, scope: rule.scope, plot: stand.plot, stand: stand.id, year: later.plantingYear, previous: earlier.one.stand.id,
    previousName: earlier.one.plant.name, previousYear: lastYear, gapYears, needYears, force: isInfested ? rule.forceInfested : rule.force, infested: isInfested,
    earliestYear: lastYear + needYears, sharedShare, kept: gapYears >= needYears, why: `rest/${stand.id}/${rule.id}`,
  };
}

/** Whether a plant could be planted on a plot in a year under every rule that is more than advice, had it the whole plot. */
export function isLawfulOn(plot: string, plant: GroundStand['plant'], year: number, ground: RestGround): boolean {
  const rules = rulesOfPlant(ground.rules, plant).filter((rule) => rule.force !== 'info');
  for (const one of ground.standsOf(plot)) {
    for (const rule of rules) {
      const counts = rulesOfPlant([rule], one.plant).length > 0;
      if (!counts) continue;
      for (const occupation of occupationsOf(one, hostOf(one, ground.standsOf(plot)), ground.season)) {
        if (occupation.lastYear === null || occupation.plantingYear > year || !rule.countsAs.has(occupation.countsAs)) continue;
        if (year - occupation.lastYear < rule.needYears) return false;
      }
    }
  }
  return true;
}
