/** More households than the ground, or the hands, can feed in every year of the rotation. */
import type { Finding, Mend } from '../plan/finding.ts';
import type { Reach } from '../plan/supply.ts';
import { householdsOf } from '../promise/demand.ts';
import type { SupplyRun } from '../supply/supply-run.ts';
import { mend, supplyFinding } from './say.ts';

/** Not told again where crops of the year itself are already said to lack ground. */
export function reachFindings(run: SupplyRun, reach: Reach | null, others: readonly Finding[]): readonly Finding[] {
  const promised = householdsOf(run.promise);
  if (reach === null || reach.households === null || reach.households >= promised) return [];
  const isTold = others.some((one) => one.code === 'ground-too-small' || one.code === 'crop-not-on-ground');
  if (reach.binding === 'land' && reach.byLand?.year === run.input.year && isTold) return [];
  const byLand = reach.binding === 'land' ? reach.byLand : null;
  const course = run.input.farm.rotation?.courses.find((one) => one.id === byLand?.course);
  return [
    supplyFinding('households-over-reach', {
      gravity: 'put-right',
      place: { year: run.input.year, ...(byLand?.plot == null ? {} : { plot: byLand.plot }) },
      figures: {
        promisedHouseholds: promised,
        reachHouseholds: reach.households,
        year: byLand?.year ?? null,
        binding: reach.binding,
        bindingName: course?.name ?? null,
        course: byLand?.course ?? null,
      },
      mend: [mend('fewer-households', { households: reach.households }), ...freeing(reach, promised)],
      why: reach.why,
    }),
  ];
}

/** The smallest change that frees it: ground for the course that binds, or hours. */
function freeing(reach: Reach, promised: number): readonly Mend[] {
  if (reach.binding === 'land' && reach.byLand !== null) {
    const { year, course } = reach.byLand;
    const at = reach.years.find((one) => one.year === year)?.courses.find((one) => one.course === course);
    return at === undefined
      ? []
      : [mend('ground-for-course', { course, areaM2: promised * at.m2Household - at.netM2, year })];
  }
  if (reach.hours === null || reach.byLand === null) return [];
  return [
    mend('find-hours', {
      hoursH: reach.hours.totalH - reach.hours.availableH,
      households: Math.min(promised, reach.byLand.households),
    }),
  ];
}
