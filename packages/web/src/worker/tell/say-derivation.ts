/** A derivation as people read it: days with their month, stands by their name, figures no longer than they are sure. */
import { speak, type Voice } from '@leywright/api';
import { readDay } from '@leywright/measures';
import type { Why, WhyInput } from '@leywright/planner';
import { dayAndMonth } from '../../look/head/year-weeks.ts';

export function sayDerivation(why: Why, voice: Voice): Why {
  return {
    ...why,
    value: why.value === null ? null : rounded(why.value),
    formula: sayIds(why.formula, voice),
    sum: sayIds(why.sum, voice),
    inputs: why.inputs.map((input) => sayInput(input, voice)),
    levers: why.levers.map((lever) => ({
      ...lever,
      change: sayIds(lever.change, voice),
      value: typeof lever.value === 'number' ? rounded(lever.value) : sayIds(lever.value, voice),
      result: rounded(lever.result),
    })),
  };
}

function sayInput(input: WhyInput, voice: Voice): WhyInput {
  const { name, value } = input;
  return {
    ...input,
    name: sayIds(name, voice),
    value: typeof value === 'number' ? rounded(value) : value === null ? null : sayIds(value, voice),
  };
}

/** Words joined by hyphens are days or ids; those that are known are said. */
function sayIds(text: string, voice: Voice): string {
  return text.replace(/[\p{L}\p{N}]+(?:-[\p{L}\p{N}]+)+/gu, (word) => {
    const day = readDay(word);
    if (day !== null) return `${dayAndMonth(day)} ${day.slice(0, 4)}`;
    const stand = voice.names.stands.get(word);
    return stand === undefined ? word : speak.plant(stand, voice);
  });
}

/** Four figures. */
function rounded(figure: number): number {
  return Number.isInteger(figure) ? figure : Number(figure.toPrecision(4));
}
