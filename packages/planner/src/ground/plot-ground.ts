/** One plot over the years of the plan: area, stands, cover, bare ground, rests, nitrogen, and the findings that concern it alone. */

import type { Plot } from '@leywright/book';
import { dayAt, yearOf } from '@leywright/measures';
import { type BareSetting, bareCounts, bareSpells } from '../cover/bare.ts';
import { bareFindings } from '../cover/bare-findings.ts';
import { weeklyPlotCover } from '../cover/lanes.ts';
import { lateCoverFindings } from '../cover/late-cover.ts';
import { overlapFindings } from '../faults/overlap.ts';
import { plotFindings } from '../faults/plot-findings.ts';
import { sowingFindings } from '../faults/sowing-findings.ts';
import { undersowFindings } from '../faults/undersow-findings.ts';
import { plotFertility } from '../fertility/plot-fertility.ts';
import type { PlotGround, Visit } from '../plan/ground.ts';
import type { RestGround } from '../rests/host-book.ts';
import { visitsOf } from '../rests/visits.ts';
import { waitFindings } from '../rests/wait-findings.ts';
import { courseOf } from '../rotation/lay-out.ts';
import { nitrogenFindings } from '../soil/nitrogen-findings.ts';
import type { NitrogenInput } from '../soil/nitrogen-terms.ts';
import { nitrogenYears } from '../soil/nitrogen-year.ts';
import { winterShares } from '../soil/winter-ground.ts';
import { netAreaOf } from './net-area.ts';
import { placedStand } from './place-stand.ts';
import { plotCover } from './plot-cover.ts';
import type { GroundSetting, PlotCover, PlotStage } from './stage.ts';

export function plotStage(plot: Plot, setting: GroundSetting): PlotStage {
  const isTunnel = plot.kind === 'tunnel';
  const covered = plotCover(plot.id, isTunnel, setting);
  const area = plotArea(plot, setting);
  const bareAt = bareSetting(plot, area.netM2, setting);
  const ground: Omit<PlotGround, 'findings'> = {
    plot: plot.id,
    letter: plot.letter,
    name: plot.name,
    kind: plot.kind,
    area,
    soil: plot.soil,
    courses: coursesOf(plot, setting),
    stands: covered.stands.flatMap((one, at) => {
      const cover = covered.covers[at];
      return cover === undefined
        ? []
        : [
            placedStand(one, {
              netM2: area.netM2,
              planFirstDay: setting.days.fromDay,
              cover,
              harvest: covered.harvests.get(one) ?? null,
              recorded: setting.recorded.get(one.stand.id),
            }),
          ];
    }),
    coverShare: weeklyPlotCover(covered.lanes, setting.horizon.weeks),
    bare: bareSpells(covered.lanes, bareAt),
    bareCounts: bareCounts(covered.lanes, bareAt),
    visits: toldVisits(visitsOf(plot.id, setting.days.fromDay, restGround(setting)), setting.todayDay),
  };
  const input = nitrogenInput(plot, covered, { setting, netM2: area.netM2 });
  const nitrogen = plotNitrogen(plot, input, setting);
  const fertility = plotFertility(plot, input, setting);
  return { plot, ground, nitrogen, fertility, findings: findingsOf(plot, { ground, nitrogen, setting }) };
}

/** Of advice on single organisms only the next breach of each rule is told: a farm has hundreds, and none asks for a change. */
function toldVisits(visits: readonly Visit[], todayDay: number): readonly Visit[] {
  const year = yearOf(dayAt(todayDay));
  const next = new Map<string, Visit>();
  for (const visit of visits) {
    const known = next.get(visit.rule);
    if (isAdvice(visit) && visit.year >= year && (known === undefined || visit.year < known.year))
      next.set(visit.rule, visit);
  }
  return visits.filter((visit) => !isAdvice(visit) || next.get(visit.rule) === visit);
}

function isAdvice(visit: Visit): boolean {
  return visit.scope === 'organism' && visit.force === 'info';
}

function findingsOf(
  plot: Plot,
  at: {
    readonly ground: PlotStage['ground'];
    readonly nitrogen: PlotStage['nitrogen'];
    readonly setting: GroundSetting;
  },
): PlotStage['findings'] {
  const { ground, nitrogen, setting } = at;
  const stands = setting.standsOf(plot.id);
  return [
    ...plotFindings(plot, setting),
    ...overlapFindings(stands, { plot, netM2: ground.area.netM2, setting }),
    ...undersowFindings(stands, { plot, setting }),
    ...sowingFindings(stands, { plot, setting }),
    ...lateCoverFindings(stands, { plot, setting }),
    ...bareFindings(ground, { plot, setting }),
    ...waitFindings(stands, { plot, setting }),
    ...nitrogenFindings(nitrogen, { plot, setting }),
  ];
}

export function plotArea(plot: Plot, { farm }: Pick<GroundSetting, 'farm'>): PlotGround['area'] {
  const field = farm.fields.find((one) => one.id === plot.field) ?? null;
  return netAreaOf({ plot, field, place: farm.about.place, conventions: farm.about.conventions });
}

/** No rain washes through a tunnel: it has no leaching season. */
export function bareSetting(plot: Plot, netM2: number, { days, winters, farm, todayDay }: GroundSetting): BareSetting {
  return {
    plot: plot.id,
    netM2,
    days,
    winters: plot.kind === 'tunnel' ? [] : winters,
    todayDay,
    conventions: farm.about.conventions,
  };
}

export function restGround({ rules, farm, standsOf }: Pick<GroundSetting, 'rules' | 'farm' | 'standsOf'>): RestGround {
  const { restSeasonFrom, restSeasonTo } = farm.about.conventions;
  return { rules, season: { from: restSeasonFrom, to: restSeasonTo }, parts: farm.parts, marks: farm.marks, standsOf };
}

/** The rotation's course of each year; before its first year the course that the plot's stands name, where they agree. */
function coursesOf(plot: Plot, { farm, horizon, standsOf }: GroundSetting): PlotGround['courses'] {
  const courses: { year: number; course: string; name: string }[] = [];
  for (let year = horizon.fromYear; year <= horizon.toYear; year++) {
    const laidOut = courseOf(farm.rotation, plot, year);
    const said = laidOut === null ? saidCourse(standsOf(plot.id), year) : null;
    const course = laidOut ?? farm.rotation?.courses.find((one) => one.id === said) ?? null;
    if (course !== null) courses.push({ year, course: course.id, name: course.name });
    else if (said !== null) courses.push({ year, course: said, name: said });
  }
  return courses;
}

function saidCourse(stands: ReturnType<GroundSetting['standsOf']>, year: number): string | null {
  const said = new Set(
    stands
      .filter((one) => one.stand.courseYear === year && one.stand.course !== null)
      .map((one) => one.stand.course as string),
  );
  return said.size === 1 ? ([...said][0] ?? null) : null;
}

export function nitrogenInput(
  plot: Plot,
  covered: PlotCover,
  at: { readonly setting: GroundSetting; readonly netM2: number },
): NitrogenInput {
  const { setting, netM2 } = at;
  const isTunnel = plot.kind === 'tunnel';
  return {
    stands: covered.stands,
    winterShares: winterShares({
      lanes: covered.lanes,
      winters: setting.winters,
      laneFirstDay: setting.days.fromDay,
      bareCoverShare: setting.farm.about.conventions.bareCoverShare,
    }),
    climate: setting.climate,
    crops: setting.crops,
    isTunnel,
    netM2,
    recordedKgOf: (stand) => setting.recorded.get(stand)?.kg ?? null,
    harvestYearOf: (one) => {
      const harvest = covered.harvests.get(one) ?? null;
      return yearOf(dayAt(harvest === null ? one.toDay - 1 : harvest.fromDay));
    },
  };
}

function plotNitrogen(
  plot: Plot,
  input: NitrogenInput,
  { horizon, farm, standsOf }: GroundSetting,
): PlotStage['nitrogen'] {
  const years = Array.from({ length: horizon.toYear - horizon.fromYear + 1 }, (_, index) => horizon.fromYear + index);
  const ofYear = (year: number) => courseOf(farm.rotation, plot, year)?.id ?? saidCourse(standsOf(plot.id), year);
  return nitrogenYears(input, { plot: plot.id, courseOf: ofYear }, years);
}
