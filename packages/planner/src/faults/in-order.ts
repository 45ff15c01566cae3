/** The one order of findings on every page: worst first, then by plot as the farm lists them, then by day, then by code. */
import type { Farm } from '@leywright/book';
import { type Finding, findingCodes, gravities } from '../plan/finding.ts';

export function findingsInOrder(findings: readonly Finding[], farm: Pick<Farm, 'plots'>): readonly Finding[] {
  const plotRank = new Map(farm.plots.map((plot, rank) => [plot.id as string, rank]));
  const keyed = findings.map((finding) => ({ finding, key: keyOf(finding, plotRank) }));
  return keyed.sort((a, b) => (a.key < b.key ? -1 : a.key > b.key ? 1 : 0)).map((one) => one.finding);
}

function keyOf({ gravity, code, place }: Finding, plotRank: ReadonlyMap<string, number>): string {
  const plot = place.plot === undefined ? plotRank.size : (plotRank.get(place.plot) ?? plotRank.size);
  const when = place.from ?? place.week ?? String(place.year ?? '');
  return [
    gravities.indexOf(gravity),
    padded(plot),
    when,
    padded(findingCodes.indexOf(code)),
    place.stand ?? '',
    place.crop ?? '',
    place.store ?? '',
  ].join('~');
}

function padded(rank: number): string {
  return String(rank).padStart(5, '0');
}
