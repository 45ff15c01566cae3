/** A plan whose plants are called as people say them: "Winter squash" where the table has its botany too. */
import { speak, type Voice } from '@leywright/api';
import type { Plan } from '@leywright/planner';

export function sayNames(plan: Plan, voice: Voice): Plan {
  const said = new Map<string, string>();
  const say = <T extends { readonly name: string }>(one: T): T => {
    const name = said.get(one.name) ?? asHeading(speak.plant(one.name, voice));
    said.set(one.name, name);
    return name === one.name ? one : { ...one, name };
  };
  return {
    ...plan,
    ground: plan.ground.map((plot) => ({ ...plot, stands: plot.stands.map(say) })),
    supply:
      plan.supply === null
        ? null
        : { ...plan.supply, boxes: plan.supply.boxes.map((box) => ({ ...box, items: box.items.map(say) })) },
    work: { ...plan.work, jobs: plan.work.jobs.map(say) },
  };
}

function asHeading(name: string): string {
  const bare = name.replace(/^the /, '');
  return bare.charAt(0).toLocaleUpperCase('en') + bare.slice(1);
}
