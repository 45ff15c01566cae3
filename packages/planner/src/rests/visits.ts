/**
 * Returns of hosts to ground that carried one before, each held against its rest.
 *
 * Rule    For every stand and every rule it is a host under: the earlier stand on any of its ground that ended last in years decides. Stands of one course
 *         year count as one. gap = planting year of the later - last occupied year of the earlier; under the rest asked for it is a breach.
 *         Where the organism is recorded on the ground its longer rest and its own force hold.
 * Holds   kept returns are told for families and own rests alone; of the many organisms only the breaches.
 */

import type { OrganismMark, Span } from '@leywright/book';
import type { Day } from '@leywright/measures';
import type { GroundStand } from '../ground/ground-stand.ts';
import { type Ancestor, ancestorsOf, leastShare, overlapShare, widthOf } from '../ground/history.ts';
import type { Visit } from '../plan/ground.ts';
import { type HostBook, hostBook, type RestGround } from './host-book.ts';
import type { Occupation } from './occupation.ts';
import type { RestRule } from './rules.ts';

/** All visits of stands that begin on a plot on or after a day. */
export function visitsOf(plot: string, fromDay: number, ground: RestGround): readonly Visit[] {
  const stands = ground.standsOf(plot);
  const hosts = hostBook(ground);
  const hasParents = ground.parts.some((part) => part.plot === plot && part.parents.length > 0);
  const visits: Visit[] = [];
  for (const later of stands) {
    if (later.fromDay < fromDay) continue;
    for (const rule of hosts.rulesOf(later)) {
      const visit = worstVisit(later, rule, { plot, ground, hosts, hasParents, onlyBroken: rule.scope === 'organism' });
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
  const search = { plot, ground, hosts, hasParents, onlyBroken: false };
  const worst = found === undefined ? null : worstFound(one, found, search);
  return found === undefined || worst === null
    ? null
    : asVisit(worst, found, found.organism !== null && isMarked(one, found, search));
}

interface Search {
  readonly plot: string;
  readonly ground: RestGround;
  readonly hosts: HostBook;
  readonly hasParents: boolean;
  /** Of organisms only the breaches are told, so hosts of long ago need not be looked at. */
  readonly onlyBroken: boolean;
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
  const infested = rule.organism !== null && isMarked(one, rule, search);
  if (rule.onlyInfested && !infested) return null;
  const visit = asVisit(worst, rule, infested);
  return visit.kept && rule.scope === 'organism' ? null : visit;
}

function gapOf(found: Found): number {
  return found.later.plantingYear - found.lastYear;
}

/** Where to look for earlier hosts: a stretch of a plot's records, and how much of the later stand's ground it stands for. */
type Stretch = Pick<Ancestor, 'plot' | 'span' | 'share' | 'fromDay' | 'untilDay'>;

function lastHost(later: Occupation, rule: RestRule, search: Search): Found | null {
  const longestYears = search.onlyBroken ? Math.max(rule.needYears, rule.infestedYears ?? 0) : Number.POSITIVE_INFINITY;
  let last: Found | null = null;
  for (const stretch of stretchesOf(later, search)) {
    for (const earlier of search.hosts.ofRule(stretch.plot, rule)) {
      const leastYear = last?.lastYear ?? Number.NEGATIVE_INFINITY;
      const lastYear = earlier.lastYear ?? Number.NEGATIVE_INFINITY;
      if (lastYear < leastYear || later.plantingYear - lastYear >= longestYears) continue;
      last = laterOf(last, foundOn(stretch, earlier, later));
    }
  }
  return last;
}

function foundOn(stretch: Stretch, earlier: Occupation, later: Occupation): Found | null {
  if (earlier.lastYear === null || !cameBefore(earlier, later, stretch)) return null;
  const sharedShare = shareOf(earlier, stretch);
  return sharedShare <= leastShare ? null : { later, earlier, lastYear: earlier.lastYear, sharedShare };
}

/** The one that ended later; of two of one year the one on more of the ground. */
function laterOf(a: Found | null, b: Found | null): Found | null {
  if (a === null || b === null) return a ?? b;
  return b.lastYear > a.lastYear || (b.lastYear === a.lastYear && b.sharedShare > a.sharedShare) ? b : a;
}

function stretchesOf(later: Occupation, { plot, ground, hasParents }: Search): readonly Stretch[] {
  const { span } = later.one.stand;
  if (hasParents) return ancestorsOf(ground.parts, plot, span, later.fromDay);
  return [{ plot, span, share: 1, fromDay: Number.NEGATIVE_INFINITY, untilDay: later.fromDay }];
}

function cameBefore(earlier: Occupation, later: Occupation, stretch: Stretch): boolean {
  if (earlier.fromDay >= later.fromDay || earlier.fromDay >= stretch.untilDay || earlier.toDay <= stretch.fromDay)
    return false;
  return earlier.one !== later.one && !isSameCourseYear(earlier, later);
}

function shareOf(earlier: Occupation, stretch: Stretch): number {
  return Math.min(1, (stretch.share * overlapShare(earlier.one.stand.span, stretch.span)) / widthOf(stretch.span));
}

/** Sown or planted in the same rotation year of a plot: two lettuces in a summer are one return. */
function isSameCourseYear(earlier: Occupation, later: Occupation): boolean {
  const a = earlier.one.stand;
  const b = later.one.stand;
  if (a.courseYear !== null && b.courseYear !== null) return a.courseYear === b.courseYear && a.plot === b.plot;
  return earlier.plantingYear === later.plantingYear;
}

function isMarked(one: GroundStand, rule: RestRule, { plot, ground }: Search): boolean {
  return isInfested(ground.marks, rule, { plot, span: one.stand.span, day: one.stand.from });
}

/** Whether an organism is recorded, and not cleared, on some of this ground on a day. */
export function isInfested(
  marks: readonly OrganismMark[],
  rule: RestRule,
  on: { readonly plot: string; readonly span: Span; readonly day: Day },
): boolean {
  return marks.some(
    (mark) =>
      isOrganism(mark, rule) &&
      mark.plot === on.plot &&
      overlapShare(mark.span, on.span) > leastShare &&
      isOpen(mark, on.day),
  );
}

function isOrganism(mark: OrganismMark, rule: RestRule): boolean {
  return mark.organism === rule.id || mark.organism === rule.organism;
}

function isOpen(mark: OrganismMark, day: Day): boolean {
  return mark.foundOn <= day && (mark.clearedOn === null || mark.clearedOn > day);
}

function asVisit({ later, earlier, lastYear, sharedShare }: Found, rule: RestRule, infested: boolean): Visit {
  const { stand } = later.one;
  const needYears = infested ? (rule.infestedYears ?? rule.needYears) : rule.needYears;
  const gapYears = later.plantingYear - lastYear;
  return {
    rule: rule.id,
    ruleName: rule.name,
    scope: rule.scope,
    plot: stand.plot,
    stand: stand.id,
    year: later.plantingYear,
    previous: earlier.one.stand.id,
    previousName: earlier.one.plant.name,
    previousYear: lastYear,
    gapYears,
    needYears,
    force: infested ? rule.forceInfested : rule.force,
    infested,
    earliestYear: lastYear + needYears,
    sharedShare,
    kept: gapYears >= needYears,
    why: `rest/${stand.id}/${rule.id}`,
  };
}
