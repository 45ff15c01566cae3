/**
 * Covers for a gap, ranked, each with its reasons: sown after the crop, or into it where it may be undersown.
 *
 * Rule    A cover is sown on the first day its ground is free and its season open; undersown in the middle of its weeks in the crop. It is weighed by the share of the wet season's
 *         days in the gap on which it keeps a third of the ground covered (100 points; outside the wet season of all the gap's days, 60), nitrogen held over winter and fixed (0.1 a kg/ha), whether it
 *         is sown in time (20), weeks missing between turning it in and the next planting (5 each), kinship with what comes next (30), and rests of families and organisms it touches (hard: it is not
 *         offered as sound; warned: 15; advice: 2). The weights are ours.
 * Source  seasons, seed rates, nitrogen, frost and weeks before planting of reference/covers.csv; nitrogen falls to six tenths when sown two and a half weeks late (Lawson
 *         et al. 2015); rests of reference/intervals.csv.
 * Holds   a cover that breaks a hard rest, before or behind, is never sound; one after its last safe day says so.
 */
import { type Cover, fixation, reference } from '@leywright/agronomy';
import type { Stand } from '@leywright/book';
import { asId, type Day, dayAt, dayNumber, dayOf, yearOf } from '@leywright/measures';
import { killedOn } from '../cover/frost.ts';
import { commonDays } from '../cover/seasons.ts';
import { standCover } from '../cover/stand-cover.ts';
import { hasTableSeasons, lastDayNear, windowAround } from '../crops/season.ts';
import { undersowWeeks } from '../faults/undersow-findings.ts';
import { type GroundStand, groundStand } from '../ground/ground-stand.ts';
import type { GroundSetting } from '../ground/stage.ts';
import type { CoverGap } from './gaps.ts';
import { lastSafeSowing } from './last-day.ts';
import { type TouchedRest, touchedRests } from './touched-rests.ts';

export interface CoverChoice {
  readonly cover: string;
  readonly name: string;
  readonly way: 'after' | 'undersown';
  /** The stand it is sown into; null when sown after it. */
  readonly into: string | null;
  readonly sowOn: Day;
  /** First day its ground is wanted again, or the gap's end. */
  readonly until: Day;
  /** Last safe day, and whether the warmth left or the table's own date sets it; null where neither is known, or none is needed. */
  readonly lastSafe: Day | null;
  readonly lastBy: 'warmth' | 'table' | 'weeks-in-crop' | null;
  readonly lateDays: number;
  readonly seedLowKgHa: number;
  readonly seedHighKgHa: number;
  readonly coverByNovemberShare: number | null;
  /** Of the wet season's days inside the gap: the share on which a third of the ground or more is covered; null when none of it lies in the gap. */
  readonly wetDaysCoveredShare: number | null;
  /** The same of all days of the gap. */
  readonly gapDaysCoveredShare: number;
  readonly heldLowKgHa: number;
  readonly heldHighKgHa: number;
  readonly fixedLowKgHa: number;
  readonly fixedHighKgHa: number;
  readonly killedOn: Day | null;
  readonly frostKillC: number;
  /** Day to turn it in, so many weeks before what comes next; null when frost has killed it, or nothing is planned. */
  readonly turnInOn: Day | null;
  readonly weeksBeforeNext: number;
  readonly missingWeeks: number;
  readonly rests: readonly TouchedRest[];
  /** Of the family of what is planted next. */
  readonly isKinOfNext: boolean;
  readonly isSound: boolean;
  readonly value: number;
}

export interface ChooseSetting {
  readonly gap: CoverGap;
  /** Only these are looked at; left out = all of the table. */
  readonly among?: readonly string[];
  readonly stands: readonly GroundStand[];
  readonly setting: GroundSetting;
}

const coveredFrom = 0.3;
const leastWeeks = 4;

/** Best first; what cannot be sown in the gap at all is left out. */
export function chooseCovers(at: ChooseSetting): readonly CoverChoice[] {
  const { among } = at;
  const covers = [...reference.covers.values()].filter((cover) => among === undefined || among.includes(cover.id));
  const found = covers.flatMap((cover) => [...sownAfter(cover, at), ...sownInto(cover, at)]);
  return found.sort(
    (a, b) => Number(b.isSound) - Number(a.isSound) || b.value - a.value || (a.cover < b.cover ? -1 : 1),
  );
}

function sownAfter(cover: Cover, at: ChooseSetting): readonly CoverChoice[] {
  const { gap, setting } = at;
  const { place } = setting.farm.about;
  if (cover.id.startsWith('mix-undersow') || cover.life.includes('two year') || !hasTableSeasons(place)) return [];
  const window = windowAround([cover.sowFrom, cover.sowTo], dayAt(gap.fromDay), place);
  const sowDay = Math.max(gap.fromDay, window.fromDay);
  if (sowDay > window.toDay || gap.toDay - sowDay < 7 * leastWeeks) return [];
  return [choice(cover, at, { sowDay, into: null })];
}

function sownInto(cover: Cover, at: ChooseSetting): readonly CoverChoice[] {
  const host = at.gap.before;
  if (host === null || host.stand.kind !== 'crop' || host.stand.undersownIn !== null) return [];
  const weeks = undersowWeeks(standOf(cover, at, { sowDay: host.fromDay, into: host }), host);
  if (weeks === null) return [];
  const sowDay = host.fromDay + Math.round((7 * (weeks.lowWeeks + weeks.highWeeks)) / 2);
  if (sowDay < at.setting.todayDay || sowDay >= host.toDay) return [];
  return [choice(cover, at, { sowDay, into: host })];
}

const growthBaseC = 4;

/** How much of its usual season it gets, by warmth; 1 at most. */
function grownFactor(cover: Cover, one: GroundStand, { climate }: GroundSetting): number {
  const usualCd = climate.degreeDays(growthBaseC, one.fromDay, one.fromDay + Math.round(7 * cover.mainWeeks));
  return usualCd <= 0 ? 0 : Math.min(1, climate.degreeDays(growthBaseC, one.fromDay, one.toDay) / usualCd);
}

interface Sowing {
  readonly sowDay: number;
  readonly into: GroundStand | null;
}

/** The cover as a stand of the plan, up to the day its ground is wanted. */
function standOf(cover: Cover, { gap, setting }: ChooseSetting, { sowDay, into }: Sowing): GroundStand {
  const stand: Stand = {
    id: asId(`cover-${cover.id}`),
    succession: null,
    plot: asId(gap.plot),
    span: gap.span,
    what: cover.id,
    kind: 'cover',
    variety: null,
    state: 'pencil',
    sownOn: dayAt(sowDay),
    plantedOn: null,
    from: dayAt(sowDay),
    to: dayAt(gap.toDay),
    undersownIn: into?.stand.id ?? null,
    course: into?.stand.course ?? null,
    courseYear: into?.stand.courseYear ?? null,
    establishedShare: null,
    endedBy: null,
    reason: null,
    yieldTHa: null,
  };
  return groundStand(stand, 'said', setting.crops);
}

function choice(cover: Cover, at: ChooseSetting, sowing: Sowing): CoverChoice {
  const { setting, gap } = at;
  const one = standOf(cover, at, sowing);
  const last = lastOf(cover, at, sowing);
  const lateDays = last.day === null ? 0 : Math.max(0, sowing.sowDay - dayNumber(last.day));
  const seen = coverOverWinter(one, at);
  const heldFactor = 0.6 ** (lateDays / 17.5) * grownFactor(cover, one, setting);
  const fixed = fixation.fixedByCoverKgHa(cover.id);
  const killed = killedOn(one.plant, setting.climate, { fromDay: one.fromDay, toDay: one.toDay });
  const weeksBeforeNext = cover.weeksBeforeNextLow;
  const isToTurnIn = gap.after !== null && killed === null;
  const roomWeeks = (gap.toDay - sowing.sowDay) / 7 - leastWeeks;
  const rests = touchedRests(one, at);
  const figures = {
    coverByNovemberShare: seen.byNovemberShare,
    gapDaysCoveredShare: seen.gapShare,
    wetDaysCoveredShare: seen.wetShare,
    heldLowKgHa: cover.nLowKgHa * heldFactor,
    heldHighKgHa: cover.nHighKgHa * heldFactor,
    fixedLowKgHa: (fixed?.low ?? 0) * heldFactor,
    fixedHighKgHa: (fixed?.high ?? 0) * heldFactor,
    lateDays,
    missingWeeks: isToTurnIn ? Math.max(0, Math.ceil(weeksBeforeNext - roomWeeks)) : 0,
    rests,
    isKinOfNext: one.plant.families.some((family) => gap.after?.plant.families.includes(family) === true),
  };
  return {
    cover: cover.id,
    name: cover.name,
    way: sowing.into === null ? 'after' : 'undersown',
    into: sowing.into?.stand.id ?? null,
    sowOn: dayAt(sowing.sowDay),
    until: dayAt(gap.toDay),
    lastSafe: last.day,
    lastBy: last.by,
    seedLowKgHa: cover.seedRateLowKgHa,
    seedHighKgHa: cover.seedRateHighKgHa,
    ...figures,
    killedOn: killed === null ? null : dayAt(killed),
    frostKillC: cover.frostKillC,
    turnInOn: isToTurnIn ? dayAt(gap.toDay - 7 * weeksBeforeNext) : null,
    weeksBeforeNext,
    isSound: rests.every((rest) => rest.force !== 'hard') && lateDays <= 7,
    value: pointsOf(figures),
  };
}

type Weighed = Pick<
  CoverChoice,
  | 'wetDaysCoveredShare'
  | 'gapDaysCoveredShare'
  | 'heldLowKgHa'
  | 'heldHighKgHa'
  | 'fixedLowKgHa'
  | 'fixedHighKgHa'
  | 'lateDays'
  | 'missingWeeks'
  | 'rests'
  | 'isKinOfNext'
>;

const restPoints: Readonly<Record<TouchedRest['force'], number>> = { hard: 100, warn: 15, info: 2 };

function pointsOf(figures: Weighed): number {
  const held = (figures.heldLowKgHa + figures.heldHighKgHa) / 2;
  const fixed = (figures.fixedLowKgHa + figures.fixedHighKgHa) / 2;
  const rests = figures.rests.reduce((sum, rest) => sum + restPoints[rest.force], 0);
  return (
    (figures.wetDaysCoveredShare === null ? 60 * figures.gapDaysCoveredShare : 100 * figures.wetDaysCoveredShare) +
    0.1 * (held + fixed) +
    (figures.lateDays === 0 ? 20 : 0) -
    5 * figures.missingWeeks -
    (figures.isKinOfNext ? 30 : 0) -
    rests
  );
}

function lastOf(cover: Cover, { gap, setting }: ChooseSetting, { sowDay, into }: Sowing) {
  if (into !== null) {
    const weeks = undersowWeeks(standOf(cover, { gap, setting, stands: [] }, { sowDay, into }), into);
    return { day: weeks === null ? null : dayAt(into.fromDay + 7 * weeks.highWeeks), by: 'weeks-in-crop' as const };
  }
  const winter = setting.winters.find((one) => commonDays(gap.fromDay, gap.toDay, one) > 0);
  // What is sown after midwinter is sown for the spring.
  if (winter === undefined || sowDay > (winter.fromDay + winter.toDay) / 2) return { day: null, by: null };
  const autumnYear = yearOf(dayAt(winter.fromDay));
  const warmth = lastSafeSowing(cover, autumnYear, setting.climate);
  const { place } = setting.farm.about;
  const table =
    cover.latestWinterCoverSow === null
      ? null
      : lastDayNear(cover.latestWinterCoverSow, dayOf(autumnYear, 9, 15), place);
  if (table !== null && (warmth === null || table < warmth)) return { day: table, by: 'table' as const };
  return { day: warmth, by: warmth === null ? null : ('warmth' as const) };
}

function coverOverWinter(one: GroundStand, { gap, setting }: ChooseSetting) {
  const { dayShare, firstDay } = standCover(one, {
    climate: setting.climate,
    fromDay: setting.days.fromDay,
    toDay: setting.days.toDay,
    isTunnel: false,
    aloneFromDay: gap.fromDay,
    harvestFromDay: null,
    harvestToDay: null,
  });
  let wetDays = 0;
  let coveredDays = 0;
  for (const winter of setting.winters)
    for (let day = Math.max(winter.fromDay, gap.fromDay); day < Math.min(winter.toDay, gap.toDay); day++) {
      wetDays++;
      if ((dayShare[day - firstDay] ?? 0) >= coveredFrom) coveredDays++;
    }
  const gapDays = gap.toDay - gap.fromDay;
  let gapCoveredDays = 0;
  for (let day = gap.fromDay; day < gap.toDay; day++)
    if ((dayShare[day - firstDay] ?? 0) >= coveredFrom) gapCoveredDays++;
  const november = dayNumber(dayOf(yearOf(dayAt(gap.fromDay)), 11, 1));
  const inGap = november >= one.fromDay && november < one.toDay;
  return {
    byNovemberShare: inGap ? (dayShare[november - firstDay] ?? 0) : null,
    wetShare: wetDays === 0 ? null : coveredDays / wetDays,
    gapShare: gapCoveredDays / gapDays,
  };
}
