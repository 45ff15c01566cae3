/**
 * Whether a hedge may be cut or laid on a day, by the windows of reference/habitat.csv.
 *
 * Source  reference/habitat.csv with the law each row names (England: Management of Hedgerows Regulations 2024). Advice: local law and the certifier decide.
 * Checks  test/checks/crops.csv hedge-cut-28aug, hedge-lay-15apr, hedge-lay-1may
 * Holds   what is in no closed window is open; laying has its own window, which may reach into the closed one.
 * Leaves out  exemptions by permit, and nests: a nest in use is protected on any day.
 */
import { type Day, inWindow } from '@leywright/measures';
import { reference } from '../reference/reference.ts';

export const hedgeWorks = ['trim', 'lay'] as const;
export type HedgeWork = (typeof hedgeWorks)[number];

/** Whether the work is open on a day, and whether nests must be looked for first. Throws for an unknown element. */
export function hedgeWorkOn(
  habitatId: string,
  work: HedgeWork,
  day: Day,
): { readonly open: boolean; readonly nestCheck: boolean } {
  const habitat = reference.habitat.get(habitatId);
  if (habitat === undefined) throw new Error(`There is no "${habitatId}" among the hedges and banks of the tables.`);
  const { noCutFrom, noCutTo, layFrom, layTo, nestCheckFrom, nestCheckTo } = habitat;
  const closed = noCutFrom !== null && noCutTo !== null && inWindow(day, noCutFrom, noCutTo);
  const layable = layFrom !== null && layTo !== null && inWindow(day, layFrom, layTo);
  const nestCheck = nestCheckFrom !== null && nestCheckTo !== null && inWindow(day, nestCheckFrom, nestCheckTo);
  return { open: work === 'lay' && layFrom !== null ? layable : !closed, nestCheck };
}
