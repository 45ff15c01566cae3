/**
 * Crops and covers to be sown out of their season, and tunnel crops outdoors.
 *
 * Source  sowing and planting windows of reference/crops.csv and covers.csv, moved to the farm's place (crops/season.ts); a week either side is no fault.
 *         Tunnels are warmer than the tables' outdoors and are not judged; site_needs tunnel of crops.csv says what belongs in one.
 */

import type { Plot } from '@leywright/book';
import { dayAt } from '@leywright/measures';
import { lateDay } from '../cover/late-cover.ts';
import { distanceTo, startOf, windowOfStand } from '../crops/season.ts';
import type { GroundStand } from '../ground/ground-stand.ts';
import { type GroundSetting, isAhead } from '../ground/stage.ts';
import type { Finding } from '../plan/finding.ts';
import { finding, mend } from './say.ts';

export const toleranceDays = 7;

interface At {
  readonly plot: Plot;
  readonly setting: GroundSetting;
}

export function sowingFindings(stands: readonly GroundStand[], at: At): readonly Finding[] {
  return stands.flatMap((one) => {
    if (!isAhead(one, at.setting)) return [];
    const outside = tunnelFinding(one, at);
    return outside.length > 0 ? outside : seasonFinding(one, at);
  });
}

export function needsTunnel(one: Pick<GroundStand, 'plant'>): boolean {
  return one.plant.crop?.siteNeeds.includes('tunnel') ?? false;
}

function tunnelFinding(one: GroundStand, { plot, setting }: At): readonly Finding[] {
  if (plot.kind === 'tunnel' || !needsTunnel(one)) return [];
  const tunnels = setting.farm.plots.filter(
    (other) => other.kind === 'tunnel' && (other.to === null || other.to > one.stand.from),
  );
  return [
    finding('tunnel-crop-outside', {
      gravity: 'look',
      place: { plot: plot.id, stand: one.stand.id, from: one.stand.from },
      figures: { plot: plot.id, stand: one.stand.id, from: one.stand.from },
      mend:
        tunnels.length > 0
          ? tunnels.slice(0, 3).map((tunnel) => mend('move-to-tunnel', { stand: one.stand.id, plot: tunnel.id }))
          : [mend('correct-plot-or-dates', { stand: one.stand.id, plot: plot.id })],
      reason: one.stand.reason,
    }),
  ];
}

function seasonFinding(one: GroundStand, { plot, setting }: At): readonly Finding[] {
  // What is sown into a crop follows that crop, and a cover late for winter has a finding of its own.
  if (plot.kind === 'tunnel' || one.stand.undersownIn !== null || lateDay(one, setting) !== null) return [];
  const window = windowOfStand(one.plant, one.stand, setting.farm.about.place);
  const start = startOf(one.stand);
  if (window === null || distanceTo(window, one.fromDay) <= toleranceDays) return [];
  const windowFrom = dayAt(window.fromDay);
  const windowTo = dayAt(window.toDay);
  return [
    finding('sown-out-of-season', {
      gravity: 'look',
      place: { plot: plot.id, stand: one.stand.id, from: start },
      figures: {
        plot: plot.id,
        stand: one.stand.id,
        from: start,
        windowFrom,
        windowTo,
        days: distanceTo(window, one.fromDay),
      },
      mend: [
        mend('sow-between', { stand: one.stand.id, from: windowFrom, to: windowTo }),
        mend('give-reason', { stand: one.stand.id }),
      ],
      reason: one.stand.reason,
    }),
  ];
}
