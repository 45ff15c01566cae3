import { type Day, yearOf } from '@leywright/measures';

/** Years in which anything of a farm may lie; a day outside them is a slip of the fingers. */
export const farmYears = { least: 1900, most: 2199 } as const;

export function inFarmYears(day: Day): boolean {
  return yearOf(day) >= farmYears.least && yearOf(day) <= farmYears.most;
}
