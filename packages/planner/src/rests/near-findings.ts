/**
 * Hosts close to last year's hosts, where the pest comes over the fields.
 *
 * Source  the distance row of reference/intervals.csv for carrot fly: 1 km from last year's umbellifers where it can be had. The row for cabbage root fly says
 *         that distance gives little and is not judged.
 * Rule    Only for plots whose boundaries are mapped: the shortest way between the middles of the two plots. Said once, for the year in focus, as a note.
 */
import { reference } from '@leywright/agronomy';
import type { Plot } from '@leywright/book';
import { yearOf } from '@leywright/measures';
import { finding, mend } from '../faults/say.ts';
import type { GroundStand } from '../ground/ground-stand.ts';
import type { GroundSetting } from '../ground/stage.ts';
import type { Finding } from '../plan/finding.ts';

const judgedRule = 'carrot-fly-distance';
export const carrotFlyM = 1000;

export function nearFindings(setting: GroundSetting): readonly Finding[] {
  const rule = reference.intervals.get(judgedRule);
  if (rule === undefined || !setting.farm.about.conventions.organismRests) return [];
  const hosts = new Set(rule.hostCropIds);
  const mapped = setting.farm.plots.filter((plot) => plot.ring !== null);
  const ofYear = (year: number) =>
    mapped.flatMap((plot) =>
      setting
        .standsOf(plot.id)
        .filter((one) => yearOf(one.stand.from) === year && one.plant.ids.some((id) => hosts.has(id)))
        .map((one) => ({ plot, one })),
    );
  const near = nearestPair(ofYear(setting.year), ofYear(setting.year - 1));
  return near === null || near.distanceM >= carrotFlyM ? [] : [nearNote(near, rule.organism, setting.year)];
}

interface HostAt {
  readonly plot: Plot;
  readonly one: GroundStand;
}

interface Near {
  readonly later: HostAt;
  readonly earlier: HostAt;
  readonly distanceM: number;
}

function nearestPair(later: readonly HostAt[], earlier: readonly HostAt[]): Near | null {
  let nearest: Near | null = null;
  for (const a of later) {
    for (const b of earlier) {
      if (a.plot.id === b.plot.id) continue;
      const distanceM = distanceBetweenM(a.plot, b.plot);
      if (distanceM !== null && (nearest === null || distanceM < nearest.distanceM))
        nearest = { later: a, earlier: b, distanceM };
    }
  }
  return nearest;
}

function nearNote({ later, earlier, distanceM }: Near, organism: string, year: number): Finding {
  return finding('host-too-near', {
    gravity: 'note',
    place: { plot: later.plot.id, stand: later.one.stand.id, year },
    figures: {
      plot: later.plot.id,
      stand: later.one.stand.id,
      otherPlot: earlier.plot.id,
      previous: earlier.one.stand.id,
      previousName: earlier.one.plant.name,
      distanceM: Math.round(distanceM),
      needM: carrotFlyM,
      organism,
      year,
    },
    mend: [mend('net-crop', { stand: later.one.stand.id })],
    reason: later.one.stand.reason,
  });
}

const earthRadiusM = 6_371_000;

function distanceBetweenM(a: Plot, b: Plot): number | null {
  const from = middleOf(a);
  const to = middleOf(b);
  if (from === null || to === null) return null;
  const rad = Math.PI / 180;
  const eastM = (to.lonDeg - from.lonDeg) * rad * Math.cos(((from.latDeg + to.latDeg) / 2) * rad) * earthRadiusM;
  const northM = (to.latDeg - from.latDeg) * rad * earthRadiusM;
  return Math.hypot(eastM, northM);
}

function middleOf({ ring }: Plot): { readonly latDeg: number; readonly lonDeg: number } | null {
  if (ring === null || ring.length === 0) return null;
  const sum = ring.reduce((at, [lonDeg, latDeg]) => ({ lonDeg: at.lonDeg + lonDeg, latDeg: at.latDeg + latDeg }), {
    lonDeg: 0,
    latDeg: 0,
  });
  return { lonDeg: sum.lonDeg / ring.length, latDeg: sum.latDeg / ring.length };
}
