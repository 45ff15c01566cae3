/** Faults of a plot's own description, and stands where it has no ground for them. */
import type { Plot } from '@leywright/book';
import type { GroundStand } from '../ground/ground-stand.ts';
import type { GroundSetting } from '../ground/stage.ts';
import type { Finding } from '../plan/finding.ts';
import { finding, mend } from './say.ts';

export function plotFindings(plot: Plot, setting: GroundSetting): readonly Finding[] {
  return [...courseFinding(plot, setting), ...statusFinding(plot, setting), ...outsideFindings(plot, setting)];
}

function isOnFarmNow(plot: Plot, { today }: Pick<GroundSetting, 'today'>): boolean {
  return plot.to === null || plot.to > today;
}

function courseFinding(plot: Plot, setting: GroundSetting): readonly Finding[] {
  const { rotation } = setting.farm;
  if (rotation === null || plot.kind !== 'rotation' || !isOnFarmNow(plot, setting)) return [];
  if (rotation.courses.some((course) => course.id === plot.courseAtStart)) return [];
  return [
    finding('plot-without-course', {
      gravity: 'look',
      place: { plot: plot.id },
      figures: { plot: plot.id, year: rotation.firstYear, course: plot.courseAtStart },
      mend: [
        mend('give-course', { plot: plot.id, year: rotation.firstYear }),
        mend('take-out-of-rotation', { plot: plot.id }),
      ],
    }),
  ];
}

function statusFinding(plot: Plot, setting: GroundSetting): readonly Finding[] {
  if (plot.status !== 'unknown' || !isOnFarmNow(plot, setting)) return [];
  return [
    finding('status-unknown', {
      gravity: 'note',
      place: { plot: plot.id },
      figures: { plot: plot.id },
      mend: [mend('write-status', { plot: plot.id })],
    }),
  ];
}

function outsideFindings(plot: Plot, setting: GroundSetting): readonly Finding[] {
  return setting
    .standsOf(plot.id)
    .filter((one) => one.toDay > setting.days.fromDay && isOutside(one, plot))
    .map((one) =>
      finding('stand-outside-plot', {
        gravity: one.stand.state === 'recorded' ? 'look' : 'put-right',
        place: { plot: plot.id, stand: one.stand.id, from: one.stand.from, to: one.stand.to },
        figures: { plot: plot.id, stand: one.stand.id, from: one.stand.from, to: one.stand.to },
        mend: [mend('correct-plot-or-dates', { stand: one.stand.id, plot: plot.id })],
        reason: one.stand.reason,
      }),
    );
}

const reach = 1e-6;

function isOutside({ stand }: GroundStand, plot: Plot): boolean {
  const { fromShare, toShare } = stand.span;
  if (fromShare < -reach || toShare > 1 + reach || toShare <= fromShare) return true;
  return (plot.from !== null && stand.from < plot.from) || (plot.to !== null && stand.to > plot.to);
}

/** Stands on plots that are not on the farm's list at all. */
export function strayFindings(setting: Pick<GroundSetting, 'farm'>): readonly Finding[] {
  const known = new Set(setting.farm.plots.map((plot) => plot.id as string));
  return setting.farm.stands
    .filter((stand) => !known.has(stand.plot))
    .map((stand) =>
      finding('stand-outside-plot', {
        gravity: 'put-right',
        place: { plot: stand.plot, stand: stand.id, from: stand.from, to: stand.to },
        figures: { plot: stand.plot, stand: stand.id, from: stand.from, to: stand.to },
        mend: [mend('correct-plot-or-dates', { stand: stand.id, plot: stand.plot })],
        reason: stand.reason,
      }),
    );
}
