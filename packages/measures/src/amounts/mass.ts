/** Kilograms in one of each unit. Exact by definition (international pound, 1959); a hundredweight is the British one of 112 lb. */
const kgIn = { kg: 1, g: 0.001, t: 1000, lb: 0.45359237, oz: 0.028349523125, cwt: 50.80234544 } as const;

export type MassUnit = keyof typeof kgIn;
export const massUnits = Object.keys(kgIn) as readonly MassUnit[];

/** Kilograms of a mass given in a unit. */
export function toKg(mass: number, unit: MassUnit): number {
  return mass * kgIn[unit];
}

/** A mass of kilograms in a unit. */
export function fromKg(massKg: number, unit: MassUnit): number {
  return massKg / kgIn[unit];
}
