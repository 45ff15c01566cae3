/**
 * The ground of a whole farm, each stage kept by the content of what it was given: stands of a plot, then the plot's years, then what concerns several.
 *
 * A stage's key names everything the stage reads. A plot reads itself, its field, the farm's ways of counting, the rotation, its own stands, marks
 * and harvests, the parts of the farm, and the stands of the plots its ground came from; so an edit on one plot leaves the others as they were.
 */

import type { Farm, Plot } from '@leywright/book';
import { type Day, dayNumber } from '@leywright/measures';
import { wintersOf } from '../cover/seasons.ts';
import { cropBookOf } from '../crops/crop-book.ts';
import type { ContentKeys } from '../memo/content-key.ts';
import { type Memo, makeMemo } from '../memo/memo.ts';
import type { ClimateDays, CropBook } from '../plan/inputs.ts';
import type { Horizon } from '../plan/plan.ts';
import { restRules } from '../rests/rules.ts';
import { climateDaysOf } from '../season/climate-days.ts';
import { horizonDays } from '../season/horizon.ts';
import type { GroundStand } from './ground-stand.ts';
import { recordedHarvests } from './place-stand.ts';
import { plotStage } from './plot-ground.ts';
import { indexStands, type StandIndex, standsOfPlot } from './plot-stands.ts';
import type { GroundSetting, PlotStage } from './stage.ts';

export interface GroundMemos {
  readonly keys: ContentKeys;
  readonly climates: Memo<ClimateDays>;
  readonly crops: Memo<CropBook>;
  readonly stands: Memo<readonly GroundStand[]>;
  readonly plots: Memo<PlotStage>;
}

export function makeGroundMemos(keys: ContentKeys): GroundMemos {
  return { keys, climates: makeMemo(4), crops: makeMemo(8), stands: makeMemo(400), plots: makeMemo(400) };
}

export interface GroundWish {
  readonly today: Day;
  readonly year: number;
  readonly horizon: Horizon;
}

export interface GroundStages {
  readonly setting: GroundSetting;
  readonly plots: readonly PlotStage[];
  /** Names what the stages were made of. */
  readonly key: string;
}

export function groundStages(farm: Farm, wish: GroundWish, memos: GroundMemos): GroundStages {
  const setting = groundSetting(farm, wish, memos);
  const plots: PlotStage[] = [];
  const plotKeys: string[] = [];
  const farmKey = farmKeyOf(farm, wish, memos);
  for (const plot of farm.plots.filter((one) => touches(one, setting))) {
    const key = [farmKey, memos.keys.of(plot), setting.plotKeyOf(plot.id)].join('|');
    plotKeys.push(key);
    plots.push(memos.plots.get(key, () => plotStage(plot, setting)));
  }
  return { setting, plots, key: memos.keys.of([farmKey, ...plotKeys]) };
}

/** Plots that are part of the farm on some day of the plan. */
function touches(plot: Plot, { days }: Pick<GroundSetting, 'days'>): boolean {
  return (
    (plot.from === null || dayNumber(plot.from) < days.toDay) && (plot.to === null || dayNumber(plot.to) > days.fromDay)
  );
}

interface KeyedSetting extends GroundSetting {
  readonly plotKeyOf: (plot: string) => string;
}

export function groundSetting(farm: Farm, wish: GroundWish, memos: GroundMemos): KeyedSetting {
  const { keys } = memos;
  const { about } = farm;
  const climate = memos.climates.get(
    [keys.of(about.place), keys.of(farm.weather), keys.of(wish.horizon)].join('|'),
    () => climateDaysOf(about.place, farm.weather, wish.horizon),
  );
  const crops = memos.crops.get([keys.of(farm.crops), keys.of(about.conventions)].join('|'), () => cropBookOf(farm));
  const index = indexStands(farm.stands);
  const standsKeyOf = standKeys(farm, index, { keys, wish });
  const plotById = new Map(farm.plots.map((plot) => [plot.id as string, plot]));
  const kept = new Map<string, readonly GroundStand[]>();
  const standsOf = (id: string): readonly GroundStand[] => {
    const known = kept.get(id);
    if (known !== undefined) return known;
    const plot = plotById.get(id);
    const stands =
      plot === undefined
        ? []
        : memos.stands.get(standsKeyOf(plot), () =>
            standsOfPlot(plot, { farm, index, crops, today: wish.today, lastYear: wish.horizon.toYear }),
          );
    kept.set(id, stands);
    return stands;
  };
  const marksKey = keys.of(farm.marks);
  return {
    farm,
    today: wish.today,
    todayDay: dayNumber(wish.today),
    year: wish.year,
    horizon: wish.horizon,
    days: horizonDays(wish.horizon),
    winters: wintersOf(about.conventions, wish.horizon),
    climate,
    crops,
    rules: restRules(farm),
    recorded: recordedHarvests(farm.harvests),
    standsOf,
    plotKeyOf: (id) => {
      const plot = plotById.get(id);
      const harvests = farm.harvests.filter(
        (one) => one.stand !== null && standsOf(id).some((stand) => stand.stand.id === one.stand),
      );
      const ancestors = ancestorPlots(farm, id).flatMap((other) => plotById.get(other) ?? []);
      return [
        plot === undefined ? '' : standsKeyOf(plot),
        marksKey,
        keys.of(harvests),
        keys.of(farm.soilSamples.filter((sample) => sample.plot === id)),
        ...ancestors.map(standsKeyOf),
      ].join('|');
    },
  };
}

/** Plots whose records belong to the past of this plot's ground. */
function ancestorPlots(farm: Farm, plot: string): readonly string[] {
  const found = new Set<string>();
  const open = [plot];
  for (let at = open.pop(); at !== undefined; at = open.pop()) {
    for (const part of farm.parts) {
      if (part.plot !== at) continue;
      for (const parent of part.parents) {
        if (found.has(parent.plot) || parent.plot === plot) continue;
        found.add(parent.plot);
        open.push(parent.plot);
      }
    }
  }
  return [...found].sort();
}

function standKeys(
  farm: Farm,
  index: StandIndex,
  at: { readonly keys: ContentKeys; readonly wish: GroundWish },
): (plot: Plot) => string {
  const { keys, wish } = at;
  const shared = [
    keys.of(farm.rotation),
    keys.of(farm.about.place),
    keys.of(farm.crops),
    keys.of(farm.about.conventions),
    wish.today,
    wish.horizon.toYear,
  ].join('|');
  const kept = new Map<string, string>();
  return (plot) => {
    const known = kept.get(plot.id);
    if (known !== undefined) return known;
    const own = (index.byPlot.get(plot.id) ?? []).map((stand) => keys.of(stand));
    // A stand of this plot's rotation that was moved to another plot is no longer laid out here.
    const moved = [...index.ids].filter((id) => id.startsWith(`${plot.id}-`));
    const key = keys.of([shared, keys.of(plot), own.join(','), moved.join(',')]);
    kept.set(plot.id, key);
    return key;
  };
}

/** What every plot reads of the farm. */
function farmKeyOf(farm: Farm, wish: GroundWish, { keys }: GroundMemos): string {
  const tunnels = farm.plots.filter((plot) => plot.kind === 'tunnel');
  return [
    keys.of(farm.about.place),
    keys.of(farm.about.conventions),
    keys.of(farm.fields),
    keys.of(farm.rotation),
    keys.of(farm.parts),
    keys.of(farm.rests),
    keys.of(farm.weather),
    keys.of(farm.crops),
    keys.of(tunnels),
    keys.of(wish.horizon),
    wish.today,
    wish.year,
  ].join('|');
}
