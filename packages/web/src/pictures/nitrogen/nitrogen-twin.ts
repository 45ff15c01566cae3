import type { NitrogenYear, PlotGround } from '@leywright/planner';
import type { TwinTable } from '../../look/page/table-twin.tsx';
import { signed } from './nitrogen-bars.tsx';

/** The yearly nitrogen of every plot and year of the plan, each figure with its doubt. */
export function nitrogenTwin(ground: readonly PlotGround[], nitrogen: readonly NitrogenYear[]): TwinTable {
  const range = ({ low, high }: { readonly low: number; readonly high: number }) =>
    Math.round(low) === Math.round(high) ? signed(low) : `${signed(low)} to ${signed(high)}`;
  return {
    caption: 'Nitrogen, kg/ha in the year',
    columns: ['Plot', 'Year', 'Fixed', 'Brought in otherwise', 'Carried off', 'Lost', 'Left'],
    rows: nitrogen.map((one) => ({
      id: `${one.plot}-${one.year}`,
      cells: [
        ground.find(({ plot }) => plot === one.plot)?.name ?? one.plot,
        one.year,
        range(one.fixedKgHa),
        range(one.otherInKgHa),
        range(one.offtakeKgHa),
        range(one.lostKgHa),
        range(one.leftKgHa),
      ],
    })),
  };
}
