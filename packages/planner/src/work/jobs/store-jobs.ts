/** Crops carted into store, and graded or washed as they come out of it, week by week of the plan. */
import type { Job } from '../../plan/work.ts';
import type { CropFlow } from '../../supply/fill.ts';
import type { SupplyRun } from '../../supply/supply-run.ts';
import { labourHours, type Rated } from '../rates.ts';
import { jobOf } from './job.ts';

const leastKg = 0.5;

/** Of all crops but those whose hours the farm counts as a whole. */
export function storeJobs(run: SupplyRun, isCounted: (crop: string) => boolean): readonly (Job | null)[] {
  const flows = [...run.typ.flows.values()].filter(({ crop }) => !isCounted(crop.id));
  return flows.flatMap((flow) => flow.stocks.flatMap((stock) => jobsOfStock(run, flow, stock)));
}

function jobsOfStock(run: SupplyRun, { crop }: CropFlow, stock: CropFlow['stocks'][number]): (Job | null)[] {
  return stock.weeks
    .filter(({ week }) => week >= run.fromWeek && week < run.toWeek)
    .flatMap(({ week, inKg, outKg }) => {
      const pieces = (kg: number) => ({
        run,
        nth: `${crop.id}-${stock.harvestYear}-${run.axis.nameOf(week)}`,
        fromDay: run.axis.dayOf(week),
        toDay: run.axis.dayOf(week) + 6,
        name: crop.name,
        amount: kg,
        amountUnit: 'kg' as const,
      });
      const carted = inKg < leastKg ? null : labourHours('cart-store', { kg: inKg });
      const graded = outKg < leastKg ? null : gradeHours(crop.reference?.rotationGroup ?? '', outKg);
      return [
        jobOf({ ...pieces(inKg), kind: 'into-store', rated: carted }),
        jobOf({ ...pieces(outKg), kind: 'grade', rated: graded }),
      ].map((job) => (job === null ? null : { ...job, crop: crop.id }));
    });
}

/** Potatoes are graded and roots washed; other crops are trimmed as they are cut, or in the packing (the tables have no row for them). */
function gradeHours(group: string, kg: number): Rated | null {
  if (group === 'potato') return labourHours('grade-potato', { kg });
  return group === 'umbellifer' || group === 'chenopod' ? labourHours('wash-roots', { kg }) : null;
}
