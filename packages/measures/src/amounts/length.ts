/** Metres in one of each unit. Exact by definition (international yard of 0.9144 m, 1959). */
const mIn = { m: 1, cm: 0.01, mm: 0.001, km: 1000, inch: 0.0254, foot: 0.3048, yard: 0.9144 } as const;

export type LengthUnit = keyof typeof mIn;
export const lengthUnits = Object.keys(mIn) as readonly LengthUnit[];

/** Metres of a length given in a unit. */
export function toM(length: number, unit: LengthUnit): number {
  return length * mIn[unit];
}

/** A length of metres in a unit. */
export function fromM(lengthM: number, unit: LengthUnit): number {
  return lengthM / mIn[unit];
}
