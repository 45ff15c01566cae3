import { calcModelNamed } from '@leywright/agronomy';

/** The outputs of a model, or what it said against its inputs. Throws for a name that is none. */
export function calc(name: string, inputs: Readonly<Record<string, unknown>>): unknown {
  const answer = calcModelNamed(name)?.run(inputs);
  if (answer === undefined) throw new Error(`There is no model "${name}".`);
  return answer.kind === 'answer'
    ? answer.outputs
    : answer.problems.map(({ key, why, found }) => `${key}: ${why} ${found}`).join('; ');
}
