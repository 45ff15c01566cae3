/**
 * Hours of a job: so much ground, row, mass or number, times a row of the labour table in that row's own unit.
 *
 * Source  reference/labour.csv (person-hours per unit, low, typical, high), weeds.csv, harvest rates of crops.csv.
 * Checks  test/work/rates.test.ts
 * Holds   hours grow with the amount; low <= typical <= high.
 */
import { type Crop, reference } from '@leywright/agronomy';
import type { PlannedCrop } from '../plan/inputs.ts';

export interface Hours {
  readonly low: number;
  readonly typ: number;
  readonly high: number;
}

export interface Rated {
  readonly hours: Hours;
  /** Table and row. */
  readonly basis: string;
}

/** What a job is measured by; a labour row takes the measure of its own unit. */
export interface Measures {
  readonly areaM2?: number;
  readonly rowM?: number;
  readonly bedM?: number;
  readonly plants?: number;
  readonly trays?: number;
  readonly kg?: number;
  readonly units?: number;
  readonly boxes?: number;
  readonly drops?: number;
}

const perUnit: Readonly<Record<string, (measures: Measures) => number | undefined>> = {
  ha: ({ areaM2 }) => scaled(areaM2, 10_000),
  '100 m2': ({ areaM2 }) => scaled(areaM2, 100),
  '100 m row': ({ rowM }) => scaled(rowM, 100),
  '100 m': ({ rowM }) => scaled(rowM, 100),
  '100 m bed': ({ bedM }) => scaled(bedM, 100),
  '1000 plants': ({ plants }) => scaled(plants, 1000),
  '100 plants': ({ plants }) => scaled(plants, 100),
  '100 plants week': ({ plants }) => scaled(plants, 100),
  tray: ({ trays }) => trays,
  'tray week': ({ trays }) => trays,
  'ha shift': ({ areaM2 }) => scaled(areaM2, 10_000),
  t: ({ kg }) => scaled(kg, 1000),
  '100 kg': ({ kg }) => scaled(kg, 100),
  '10 kg': ({ kg }) => scaled(kg, 10),
  '100 heads': ({ units }) => scaled(units, 100),
  '100 bunches': ({ units }) => scaled(units, 100),
  box: ({ boxes }) => boxes,
  drop: ({ drops }) => drops,
};

function scaled(amount: number | undefined, per: number): number | undefined {
  return amount === undefined ? undefined : amount / per;
}

/** Hours by a row of the labour table. Null when the measure its unit asks for is not known. Throws for a row that is not there. */
export function labourHours(rowId: string, measures: Measures): Rated | null {
  const row = reference.labour.get(rowId);
  if (row === undefined) throw new Error(`The labour table has no row "${rowId}".`);
  const amount = perUnit[row.unit]?.(measures);
  if (amount === undefined) return null;
  return {
    hours: { low: row.personHLow * amount, typ: row.personHTyp * amount, high: row.personHHigh * amount },
    basis: `labour/${rowId}`,
  };
}

/** Whether a tractor is at work in a row of the labour table. */
export function isMachineWork(rowId: string): boolean {
  return (reference.labour.get(rowId)?.tractorHLow ?? 0) > 0;
}

/** Hours to lift or cut so many kilos: the labour table's row for the crop, else the crop's own rate by hand. */
export function harvestHours(crop: PlannedCrop, kg: number, units: number): Rated | null {
  if (crop.reference === null) return null;
  const row = harvestRow(crop.reference.id);
  const byRow = row === null ? null : labourHours(row, { kg, units });
  return byRow ?? byCropRate(crop.reference, kg);
}

const harvestRows = new Map<string, string | null>();

function harvestRow(crop: string): string | null {
  const known = harvestRows.get(crop);
  if (known !== undefined) return known;
  const row =
    [...reference.labour.values()].find((one) => one.group === 'harvest' && one.cropIds.includes(crop))?.id ?? null;
  harvestRows.set(crop, row);
  return row;
}

function byCropRate(crop: Crop, kg: number): Rated {
  const { harvestLowKgH, harvestHighKgH } = crop;
  return {
    hours: { low: kg / harvestHighKgH, typ: kg / ((harvestLowKgH + harvestHighKgH) / 2), high: kg / harvestLowKgH },
    basis: `crops/${crop.id}/harvest_low_kg_h`,
  };
}

export function addHours(a: Hours, b: Hours): Hours {
  return { low: a.low + b.low, typ: a.typ + b.typ, high: a.high + b.high };
}

export function partOf(hours: Hours, share: number): Hours {
  return { low: hours.low * share, typ: hours.typ * share, high: hours.high * share };
}
