/**
 * Net area: what of a plot can be cropped.
 *
 * Source  reference/rules.csv HE-02 (2 m from the hedge's centre), HE-04 (fields of 2 ha or less are exempt), HE-04.2 (hedges under five years are exempt),
 *         for England; elsewhere and for exempt fields the farm's own policy.
 * Rule    gross - buffer - bank, then less the headland share of what is left. The boundary runs along the hedge's centre.
 */
import { reference } from '@leywright/agronomy';
import type { Conventions, Field, Place, Plot } from '@leywright/book';
import { area } from '@leywright/measures';
import type { NetArea } from '../plan/ground.ts';

export interface BufferDue {
  readonly bufferM: number;
  readonly by: NetArea['bufferBy'];
  /** What the law would ask if its conditions hold; null where there is no such law. */
  readonly lawM: number | null;
}

export interface PlotLaw {
  readonly plot: Plot;
  readonly field: Field | null;
  readonly place: Pick<Place, 'jurisdiction'>;
  readonly conventions: Pick<Conventions, 'hedgeBufferM' | 'headlandShare'>;
}

/** Strip along the hedges that stays uncropped, and who asks for it. The wider of law and policy holds. */
export function bufferDue({ plot, field, place, conventions }: PlotLaw): BufferDue {
  const ownM = conventions.hedgeBufferM;
  const lawM = lawBufferM(place);
  if (plot.hedgeM <= 0) return { bufferM: 0, by: 'none', lawM };
  const applies = lawM === null ? false : lawApplies(field);
  if (lawM !== null && applies === true && lawM >= (ownM ?? 0)) return { bufferM: lawM, by: 'law', lawM };
  if (ownM !== null) return { bufferM: ownM, by: 'own-policy', lawM };
  return { bufferM: 0, by: applies === null ? 'unknown' : 'none', lawM };
}

/** The farm's own share for headlands and bed ends of a plot. */
export function headlandShareOf(plot: Plot, conventions: Pick<Conventions, 'headlandShare'>): number {
  return plot.headlandShare ?? conventions.headlandShare;
}

export function netAreaOf(input: PlotLaw): NetArea {
  const { plot, conventions } = input;
  const { bufferM, by } = bufferDue(input);
  const bufferM2 = Math.min(plot.hedgeM * bufferM, plot.grossM2);
  const bankM2 = Math.min(plot.bankM2, plot.grossM2 - bufferM2);
  const leftM2 = plot.grossM2 - bufferM2 - bankM2;
  const headlandM2 = leftM2 * headlandShareOf(plot, conventions);
  return {
    grossM2: plot.grossM2,
    bufferM2,
    bufferBy: by,
    bankM2,
    headlandM2,
    netM2: leftM2 - headlandM2,
    why: `net/${plot.id}`,
  };
}

function lawBufferM(place: Pick<Place, 'jurisdiction'>): number | null {
  const rule = reference.rules.get('HE-02');
  return rule === undefined || rule.jurisdiction !== place.jurisdiction ? null : rule.value;
}

/** null = the field's size or its hedges' age is not written down. */
function lawApplies(field: Field | null): boolean | null {
  const exemptHa = reference.rules.get('HE-04')?.value ?? null;
  if (field === null || exemptHa === null) return null;
  if (field.areaM2 !== null && field.areaM2 <= area.toM2(exemptHa, 'ha')) return false;
  if (field.hedgesOver5Years === false) return false;
  return field.areaM2 === null || field.hedgesOver5Years === null ? null : true;
}
