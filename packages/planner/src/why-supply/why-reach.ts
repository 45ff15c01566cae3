/** Why this farm feeds so many households: the least course of the least year, and the hours. */

import type { Reach } from '../plan/supply.ts';
import type { Lever, Why, WhyInput } from '../plan/why.ts';
import { reachOf } from '../reach/reach.ts';
import type { SupplyRun } from '../supply/supply-run.ts';
import { ofConvention, ofFarm, ofSums, why, written } from '../why/terms.ts';
import { again } from './supply-again.ts';

export function whyReach(run: SupplyRun): Why | null {
  const reach = reachOf(run);
  if (reach === null || reach.households === null) return null;
  const at =
    reach.byLand === null
      ? null
      : (reach.years
          .find((one) => one.year === reach.byLand?.year)
          ?.courses.find((one) => one.course === reach.byLand?.course) ?? null);
  const land = at === null ? 'not known' : `⌊${written(at.netM2)} / ${written(at.m2Household)}⌋ = ${at.households}`;
  return why(reach.why, 'reach', {
    figures: {
      year: run.input.year,
      course: reach.byLand?.course ?? null,
      plot: reach.byLand?.plot ?? null,
      binding: reach.binding,
    },
    value: reach.households,
    unit: 'households',
    formula:
      'households = the least of: ground of a course / ground of it for a household, in every year; hours there are less hours that stay / hours of a household',
    sum: reach.byLabour === null ? land : `${land}; by hours ${reach.byLabour}; the least ${reach.households}`,
    inputs: [
      ...(at === null
        ? []
        : [
            ofSums(
              { name: 'ground of the course', value: at.netM2, unit: 'm²' },
              at.plot === null ? null : `net/${at.plot}`,
            ),
            ofSums({ name: 'ground of it for a household', value: at.m2Household, unit: 'm²' }),
          ]),
      ...hourInputs(run, reach),
    ],
    doubt: [reach.hours === null ? 'hours-not-reckoned' : 'hours-as-given', 'yields-as-planned'],
    levers: leversOf(run),
  });
}

function hourInputs(run: SupplyRun, { hours }: Reach): readonly WhyInput[] {
  if (hours === null) return [];
  const { packingHBox } = run.input.farm.about.conventions;
  return [
    ofFarm({ name: 'hours there are', value: hours.availableH, unit: 'h' }, 'people.csv'),
    ofFarm({ name: 'field hours', value: hours.fieldH, unit: 'h' }, 'courses.csv, hours_per_ha'),
    ...(packingHBox === null
      ? []
      : [ofConvention({ name: 'packing', value: packingHBox, unit: 'h a box' }, 'packing_h_box')]),
    ofConvention({ name: 'delivery', value: hours.deliveryH, unit: 'h' }, 'delivery_h_week'),
  ];
}

function leversOf(run: SupplyRun): readonly Lever[] {
  const at = (changed: SupplyRun) => reachOf(changed)?.households ?? 0;
  const smaller = again(run, (farm) =>
    farm.promise === null
      ? farm
      : {
          ...farm,
          promise: {
            ...farm.promise,
            slots: farm.promise.slots.map((slot) => ({
              ...slot,
              portions: Object.fromEntries(
                Object.entries(slot.portions).map(([size, portion]) => [size, portion * 0.9]),
              ),
            })),
            needs: farm.promise.needs.map((need) => ({
              ...need,
              kgHousehold: need.kgHousehold === null ? null : need.kgHousehold * 0.9,
              m2Household: need.m2Household === null ? null : need.m2Household * 0.9,
            })),
          },
        },
  );
  const moreHands = again(run, (farm) => ({
    ...farm,
    people: farm.people.map((person) => ({
      ...person,
      hoursYear: person.hoursYear === null ? null : person.hoursYear * 1.1,
      hoursWeek: person.hoursWeek === null ? null : person.hoursWeek * 1.1,
    })),
  }));
  return [
    { change: 'portions', value: 0.9, unit: 'times', result: at(smaller) },
    { change: 'hours of the hands', value: 1.1, unit: 'times', result: at(moreHands) },
  ];
}
