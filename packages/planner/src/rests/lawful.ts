/** Whether a plant could stand on another plot in a year: what a mend may offer. */
import { wholePlot } from '@leywright/book';
import { dayOf } from '@leywright/measures';
import type { Plant } from '../crops/plant.ts';
import type { GroundStand } from '../ground/ground-stand.ts';
import { hostOf, type RestGround } from './host-book.ts';
import { type Occupation, occupationsOf } from './occupation.ts';
import { isHost, type RestRule, rulesOfPlant } from './rules.ts';
import { isInfested } from './visits.ts';

/** Held to every rule that is more than advice, as if it had the whole plot; hosts that come after that year are not looked at. */
export function isLawfulOn(
  plant: Plant,
  on: { readonly plot: string; readonly year: number },
  ground: RestGround,
): boolean {
  const day = dayOf(on.year, 7, 1);
  const asked = rulesOfPlant(ground.rules, plant).map((rule) => {
    const infested = rule.organism !== null && isInfested(ground.marks, rule, { plot: on.plot, span: wholePlot, day });
    return {
      rule,
      force: infested ? rule.forceInfested : rule.force,
      needYears: infested ? (rule.infestedYears ?? rule.needYears) : rule.needYears,
    };
  });
  const stands = ground.standsOf(on.plot);
  return asked
    .filter((one) => one.force !== 'info')
    .every(({ rule, needYears }) =>
      hostYears(rule, stands, ground).every((lastYear) => lastYear > on.year || on.year - lastYear >= needYears),
    );
}

function hostYears(rule: RestRule, stands: readonly GroundStand[], ground: RestGround): readonly number[] {
  return stands
    .filter((one) => isHost(rule, one.plant))
    .flatMap((one): readonly Occupation[] => occupationsOf(one, hostOf(one, stands), ground.season))
    .filter((one) => rule.countsAs.has(one.countsAs))
    .flatMap((one) => (one.lastYear === null ? [] : [one.lastYear]));
}
