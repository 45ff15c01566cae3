import { asDay, type Day } from '@leywright/measures';

/** The day it is where the app runs. Only the screen asks; the plan is told. */
export function todayHere(): Day {
  const now = new Date();
  const two = (number: number) => String(number).padStart(2, '0');
  return asDay(`${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`);
}
