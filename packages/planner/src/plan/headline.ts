/** The numbers of each page's first sentence, from the same findings and weeks that the pictures mark. */
import type { Farm } from '@leywright/book';
import type { Finding } from './finding.ts';
import type { Headline } from './plan.ts';
import type { Supply } from './supply.ts';

export function headlineFigures(
  farm: Pick<Farm, 'plots'>,
  findings: readonly Finding[],
  supply: Supply | null,
): Headline {
  const names = new Map(farm.plots.map((plot) => [plot.id as string, plot.name]));
  const bare = findings.filter((one) => one.code === 'bare-in-leaching-season' && one.gravity === 'put-right');
  const short = (supply?.boxes ?? []).filter((week) => week.closed === null && week.shortItems > 0);
  return {
    bareWinters: bare.map(({ place }) => ({
      plot: place.plot ?? '',
      name: names.get(place.plot ?? '') ?? '',
      winter: place.year ?? 0,
    })),
    shortWeeks: short.map((week) => week.week),
    shortItems: short.reduce((sum, week) => sum + week.shortItems, 0),
    boxWeeks: supply?.boxWeeks ?? 0,
    households: supply?.households ?? 0,
    toPutRight: findings.filter((one) => one.gravity === 'put-right').length,
  };
}
