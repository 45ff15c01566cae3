/**
 * Rests that are broken, as findings.
 *
 * Rule    Hard breaches ahead are to put right, warned ones worth a look, advice a note; a breach already sown is worth a look, one gone by is told in the
 *         plot's visits alone. One finding for a rule, plot and year, with the stands it touches counted. Where a family's rest is broken the rests of
 *         its organisms on clean ground are not said again, but the earliest year keeps them all. Advice is given once for a rule and
 *         plot: for the next stand it touches.
 */
import type { Plot } from '@leywright/book';
import { finding, mend } from '../faults/say.ts';
import type { GroundStand } from '../ground/ground-stand.ts';
import type { GroundSetting } from '../ground/stage.ts';
import type { Finding, Gravity, Mend } from '../plan/finding.ts';
import type { Visit } from '../plan/ground.ts';
import type { RestGround } from './host-book.ts';
import { isLawfulOn } from './lawful.ts';

export interface RestFindingInput {
  readonly plot: Plot;
  readonly visits: readonly Visit[];
  readonly setting: GroundSetting;
  readonly ground: RestGround;
}

export function restFindings({ plot, visits, setting, ground }: RestFindingInput): readonly Finding[] {
  const stands = new Map(setting.standsOf(plot.id).map((one) => [one.stand.id as string, one]));
  const broken = visits.filter((visit) => !visit.kept && isStillThere(stands.get(visit.stand), setting));
  const byFamily = new Set(
    broken.filter((visit) => visit.scope !== 'organism' && visit.force === 'hard').map((visit) => visit.stand),
  );
  const said = broken.filter((visit) => visit.scope !== 'organism' || visit.infested || !byFamily.has(visit.stand));
  return grouped(said).flatMap((group) => {
    const worst = group.reduce((a, b) => (b.gapYears - b.needYears < a.gapYears - a.needYears ? b : a));
    const stand = stands.get(worst.stand);
    return stand === undefined ? [] : [restFinding(worst, { group, stand, plot, setting, ground, broken })];
  });
}

function isStillThere(one: GroundStand | undefined, { todayDay }: GroundSetting): boolean {
  return one !== undefined && one.toDay > todayDay;
}

/** By rule and year; advice by rule alone, for the year it comes next. */
function grouped(visits: readonly Visit[]): readonly (readonly Visit[])[] {
  const groups = new Map<string, Visit[]>();
  for (const visit of visits) {
    const key = visit.force === 'info' ? visit.rule : `${visit.rule}/${visit.year}`;
    const group = groups.get(key);
    if (group === undefined) groups.set(key, [visit]);
    else if (visit.force !== 'info' || visit.year === group[0]?.year) group.push(visit);
  }
  return [...groups.values()];
}

interface At {
  readonly group: readonly Visit[];
  readonly stand: GroundStand;
  readonly plot: Plot;
  readonly setting: GroundSetting;
  readonly ground: RestGround;
  readonly broken: readonly Visit[];
}

function restFinding(visit: Visit, at: At): Finding {
  const { stand, plot, setting, broken } = at;
  const isSown = stand.stand.state === 'recorded' || stand.fromDay < setting.todayDay;
  const binding = broken.filter((one) => one.stand === visit.stand && one.force !== 'info');
  const earliestYear = binding.reduce((year, one) => Math.max(year, one.earliestYear), visit.earliestYear);
  return finding(visit.scope === 'organism' ? 'organism-back-too-soon' : 'family-back-too-soon', {
    gravity: gravityOf(visit, isSown),
    place: { plot: plot.id, stand: visit.stand, year: visit.year, from: stand.stand.from },
    figures: {
      plot: plot.id,
      stand: visit.stand,
      rule: visit.rule,
      ruleName: visit.ruleName,
      year: visit.year,
      gapYears: visit.gapYears,
      needYears: visit.needYears,
      previous: visit.previous,
      previousName: visit.previousName,
      previousYear: visit.previousYear,
      earliestYear,
      sharedShare: visit.sharedShare,
      stands: new Set(at.group.map((one) => one.stand)).size,
      infested: visit.infested ? 1 : 0,
    },
    mend: isSown ? [mend('give-reason', { stand: visit.stand })] : mendsOf(visit, earliestYear, at),
    reason: stand.stand.reason,
    why: visit.why,
  });
}

function gravityOf(visit: Visit, isSown: boolean): Gravity {
  if (visit.force === 'info') return 'note';
  return visit.force === 'hard' && !isSown ? 'put-right' : 'look';
}

const mostPlotsNamed = 3;

function mendsOf(visit: Visit, earliestYear: number, { plot, stand, setting, ground }: At): readonly Mend[] {
  const isWelcome = (other: Plot) =>
    other.id !== plot.id &&
    other.kind === plot.kind &&
    (other.to === null || other.to > stand.stand.from) &&
    (other.from === null || other.from <= stand.stand.from);
  const elsewhere =
    visit.force === 'info'
      ? []
      : setting.farm.plots
          .filter((other) => isWelcome(other) && isLawfulOn(stand.plant, { plot: other.id, year: visit.year }, ground))
          .slice(0, mostPlotsNamed);
  return [
    mend('move-to-year', { stand: visit.stand, year: earliestYear }),
    ...elsewhere.map((other) => mend('move-to-plot', { stand: visit.stand, plot: other.id, year: visit.year })),
    mend('give-reason', { stand: visit.stand }),
  ];
}
