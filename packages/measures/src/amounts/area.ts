/** Square metres in one of each unit. Exact by definition (international yard of 0.9144 m, 1959); a rod, pole or perch is 5½ yards. */
const m2In = {
  m2: 1,
  are: 100,
  ha: 10_000,
  acre: 4046.8564224,
  'square-rod': 25.29285264,
  'square-yard': 0.83612736,
  'square-foot': 0.09290304,
} as const;

export type AreaUnit = keyof typeof m2In;
export const areaUnits = Object.keys(m2In) as readonly AreaUnit[];

/** Square metres of an area given in a unit. */
export function toM2(area: number, unit: AreaUnit): number {
  return area * m2In[unit];
}

/** An area of square metres in a unit. Round only what is shown, never what is kept. */
export function fromM2(areaM2: number, unit: AreaUnit): number {
  return areaM2 / m2In[unit];
}
