/** Findings of the ground that need more than one plot: rests with plots to move to, hosts too near, stands without a plot, borrowed weather. */

import { strayFindings } from '../faults/plot-findings.ts';
import { finding, mend } from '../faults/say.ts';
import type { Finding, FindingCode } from '../plan/finding.ts';
import type { PlotGround } from '../plan/ground.ts';
import { nearFindings } from '../rests/near-findings.ts';
import { restFindings } from '../rests/rest-findings.ts';
import type { GroundStages } from './ground-stages.ts';
import { restGround } from './plot-ground.ts';
import type { GroundSetting } from './stage.ts';

export interface FarmGround {
  readonly ground: readonly PlotGround[];
  /** Findings of all plots and those of none. */
  readonly findings: readonly Finding[];
}

export function farmGround({ setting, plots }: GroundStages): FarmGround {
  const rests = restGround(setting);
  const near = nearFindings(setting);
  const all = plots.flatMap((stage) => [
    ...stage.findings,
    ...restFindings({ plot: stage.plot, visits: stage.ground.visits, setting, ground: rests }),
  ]);
  const told = [...saidOnce(all, plots), ...near];
  const ground = plots.map(
    (stage): PlotGround => ({ ...stage.ground, findings: told.filter((one) => one.place.plot === stage.plot.id) }),
  );
  return {
    ground,
    findings: [...ground.flatMap((plot) => plot.findings), ...strayFindings(setting), ...climateFinding(setting)],
  };
}

/**
 * What the rotation repeats is said once. A fault of a course comes back on every plot in its turn, and is mended in the course; advice on an organism
 * holds wherever its hosts come. Both are told for the next time, with how often they come in the plan's years.
 */
function saidOnce(findings: readonly Finding[], plots: GroundStages['plots']): readonly Finding[] {
  const courseKeys = new Map(
    plots.flatMap(({ ground }) =>
      ground.stands.map(
        (stand) =>
          [
            stand.id,
            stand.origin === 'rotation' && stand.courseYear !== null
              ? stand.id.slice(`${stand.plot}-${stand.courseYear}-`.length)
              : null,
          ] as const,
      ),
    ),
  );
  const groups = new Map<string, Finding[]>();
  for (const one of findings) {
    const key = repeatKey(one, courseKeys);
    const group = groups.get(key);
    if (group === undefined) groups.set(key, [one]);
    else group.push(one);
  }
  return [...groups.values()].map((group) => {
    const first = group.reduce((a, b) => ((b.place.from ?? '') < (a.place.from ?? '') ? b : a));
    return group.length === 1 ? first : { ...first, figures: { ...first.figures, times: group.length } };
  });
}

const repeated: readonly FindingCode[] = [
  'undersow-out-of-window',
  'sown-out-of-season',
  'cover-sown-too-late',
  'wait-after-cover-too-short',
  'tunnel-crop-outside',
];
const advised: readonly FindingCode[] = [
  'organism-back-too-soon',
  'family-back-too-soon',
  'wait-after-cover-too-short',
];
function repeatKey(one: Finding, courseKeys: ReadonlyMap<string, string | null>): string {
  if (one.gravity === 'note' && advised.includes(one.code)) return `${one.code}/${one.figures['rule']}`;
  const courseKey =
    repeated.includes(one.code) && one.place.stand !== undefined ? courseKeys.get(one.place.stand) : null;
  return courseKey == null
    ? `single/${JSON.stringify([one.code, one.place, one.figures])}`
    : `${one.code}/${courseKey}`;
}

const ownWeatherDays = 365;

/** Said while less than a year of own weather stands against a station that is far, or in another climate. */
function climateFinding({ climate }: Pick<GroundSetting, 'climate'>): readonly Finding[] {
  const { used, doubt } = climate;
  if (doubt === 'near' || used.recordedDays >= ownWeatherDays) return [];
  return [
    finding('climate-assumed', {
      gravity: 'note',
      place: {},
      figures: {
        station: used.station,
        distanceKm: used.distanceKm,
        period: used.period,
        recordedDays: used.recordedDays,
        elevationDifferenceM: used.elevationDifferenceM,
        doubt,
      },
      mend: [mend('record-weather')],
    }),
  ];
}
