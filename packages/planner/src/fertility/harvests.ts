/** Harvests of a plot over the plan's years: what crop, how much to the hectare, on what share of the plot. */
import type { Interval } from '@leywright/measures';
import type { GroundStand } from '../ground/ground-stand.ts';
import { type NitrogenInput, standYieldTHa } from '../soil/nitrogen-terms.ts';

export interface Harvest {
  readonly stand: string;
  readonly name: string;
  readonly year: number;
  /** Row of the crops table. */
  readonly cropId: string;
  readonly yieldTHa: Interval;
  readonly areaShare: number;
  readonly recorded: boolean;
}

export function harvestsOf(
  input: NitrogenInput,
  years: { readonly fromYear: number; readonly toYear: number },
): readonly Harvest[] {
  return input.stands.flatMap((one): readonly Harvest[] => {
    const { crop } = one.plant;
    const year = input.harvestYearOf(one);
    if (one.stand.kind !== 'crop' || crop === null || year < years.fromYear || year > years.toYear) return [];
    const yieldTHa = gaveUp(one) ? null : standYieldTHa(one, input);
    if (yieldTHa === null) return [];
    return [
      {
        stand: one.stand.id,
        name: one.plant.name,
        year,
        cropId: crop.id,
        yieldTHa,
        areaShare: widthShare(one),
        recorded: input.recordedKgOf(one.stand.id) !== null,
      },
    ];
  });
}

export function widthShare({ stand }: GroundStand): number {
  return stand.span.toShare - stand.span.fromShare;
}

/** Nothing was taken from a stand that failed. */
function gaveUp({ stand }: GroundStand): boolean {
  return stand.endedBy === 'failed' || stand.endedBy === 'lost';
}
