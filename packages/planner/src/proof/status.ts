/** What a plot's produce may be sold as on a day. */
import type { Farm, GoodsStatus } from '@leywright/book';
import type { Day } from '@leywright/measures';

/** By the plot's status and since when; not known where the plot, or its status, is not. */
export function statusOn(farm: Pick<Farm, 'plots'>, plotId: string | null, on: Day): GoodsStatus {
  const plot = farm.plots.find((one) => one.id === plotId);
  if (plot === undefined || plot.status === 'unknown') return 'unknown';
  if (plot.status === 'in-conversion') return 'in-conversion';
  // Organic since a day: before it the ground was still in conversion.
  return plot.statusSince === null || plot.statusSince <= on ? 'organic' : 'in-conversion';
}
