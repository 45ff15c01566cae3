/** Inputs and outputs written as one line each, so that the list of a model can be read at a glance: "z_m m height of the place". */
import type { CalcInput, CalcOutput } from './calc-model.ts';

/** Inputs from lines of key, unit, meaning; a key ending in `?` may be left out. A unit of `-` is none. */
export function inputs(...lines: readonly string[]): readonly CalcInput[] {
  return lines.map((line) => {
    const { key, unit, meaning } = partsOf(line);
    const kind = /^(text|number-or-text|series|rows|words|object|file|label):/.exec(unit)?.[1] as
      | CalcInput['kind']
      | undefined;
    const plainUnit = unit.replace(/^(text|number-or-text|series|rows|words|object|file|label):/, '');
    return {
      key: key.replace(/\?$/, ''),
      unit: plainUnit,
      meaning,
      ...(key.endsWith('?') ? { optional: true } : {}),
      ...(kind === undefined ? {} : { kind }),
    };
  });
}

/** Outputs from lines of key, unit, meaning. */
export function outputs(...lines: readonly string[]): readonly CalcOutput[] {
  return lines.map(partsOf);
}

function partsOf(line: string): { key: string; unit: string; meaning: string } {
  const [key = '', unit = '', ...meaning] = line.split(' ');
  return { key, unit: unit === '-' ? '' : unit.replaceAll('_', ' '), meaning: meaning.join(' ') };
}
