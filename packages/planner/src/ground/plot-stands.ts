/** All stands of a plot in order: said, recorded, and those the rotation lays out. */

import type { Farm, Plot, Stand } from '@leywright/book';
import type { Day } from '@leywright/measures';
import type { CropBook } from '../plan/inputs.ts';
import { withDrift } from '../rotation/drift.ts';
import { laidOutStands } from '../rotation/lay-out.ts';
import { type GroundStand, groundStand, inOrder } from './ground-stand.ts';

/** Everything about a farm by plot, indexed once a plan. */
export interface StandIndex {
  readonly byPlot: ReadonlyMap<string, readonly Stand[]>;
  readonly ids: ReadonlySet<string>;
}

export function indexStands(stands: readonly Stand[]): StandIndex {
  const byPlot = new Map<string, Stand[]>();
  const ids = new Set<string>();
  for (const stand of stands) {
    ids.add(stand.id);
    const list = byPlot.get(stand.plot);
    if (list === undefined) byPlot.set(stand.plot, [stand]);
    else list.push(stand);
  }
  return { byPlot, ids };
}

export interface StandsWish {
  readonly farm: Pick<Farm, 'rotation' | 'about'>;
  readonly index: StandIndex;
  readonly crops: CropBook;
  readonly today: Day;
  readonly lastYear: number;
}

export function standsOfPlot(plot: Plot, wish: StandsWish): readonly GroundStand[] {
  const said = (wish.index.byPlot.get(plot.id) ?? []).map((stand) =>
    groundStand(stand, stand.state === 'recorded' ? 'recorded' : 'said', wish.crops),
  );
  const laidOut = laidOutStands(wish.farm.rotation, plot, { lastYear: wish.lastYear, said: wish.index.ids });
  const all = [...said, ...laidOut.map((stand) => groundStand(stand, 'rotation', wish.crops))].sort(inOrder);
  return withDrift(all, wish.today, wish.farm.about.place);
}
