/** Lifting and cutting, in the weeks in which the plan has it done; a farm that promises by the year lifts as its crops get ready. */
import type { PlotGround } from '../../plan/ground.ts';
import type { Job } from '../../plan/work.ts';
import { unitKgOf } from '../../promise/demand.ts';
import type { StandingLot } from '../../supply/standing.ts';
import type { SupplyRun } from '../../supply/supply-run.ts';
import { harvestHours } from '../rates.ts';
import { jobOf, type StandAt, standAt } from './job.ts';

const lifted = new Set(['potato', 'allium', 'umbellifer', 'chenopod']);
const leastKg = 0.5;

export function harvestJobs(
  run: SupplyRun,
  plot: PlotGround,
  skip: (stand: string) => boolean,
): readonly (Job | null)[] {
  const lots = [...run.typ.flows.values()]
    .flatMap((flow) => flow.lots)
    .filter(({ lot }) => lot.plot === plot.plot && lot.areaM2 > 0 && !skip(lot.stand));
  return lots.flatMap((standing) => {
    const stand = plot.stands.find((one) => one.id === standing.lot.stand);
    return stand === undefined ? [] : jobsOfLot(run, standing, standAt(run, plot, stand));
  });
}

function jobsOfLot(run: SupplyRun, standing: StandingLot, at: StandAt): (Job | null)[] {
  const { crop } = standing.lot;
  const kind = lifted.has(crop.reference?.rotationGroup ?? '') && crop.unit !== 'bunch' ? 'lift' : 'cut';
  const unitKg = unitKgOf(crop, crop.unit);
  return [...kilosByWeek(run, standing)]
    .filter(([, kg]) => kg >= leastKg)
    .map(([week, kg]) =>
      jobOf({
        kind,
        nth: run.axis.nameOf(week),
        stand: at,
        fromDay: run.axis.dayOf(week),
        toDay: run.axis.dayOf(week) + 6,
        amount: kg,
        amountUnit: 'kg',
        areaM2: null,
        rated: harvestHours(crop, kg, unitKg === null || unitKg === 0 ? 0 : kg / unitKg),
        caution: kind === 'lift' ? 'heavy lifting' : null,
      }),
    );
}

function kilosByWeek(run: SupplyRun, { lot, cut }: StandingLot): ReadonlyMap<number, number> {
  if (run.promise.slots.length > 0) return cut;
  return new Map(lot.readyShare.map((share, at) => [lot.readyWeek + at, share * lot.toComeKg.typ] as const));
}
