/** The covers for every gap of a farm, from its day on. */
import type { Farm, Span } from '@leywright/book';
import { type Day, dayAt } from '@leywright/measures';
import { groundSetting, makeGroundMemos } from '../ground/ground-stages.ts';
import { plotCover } from '../ground/plot-cover.ts';
import { plotArea } from '../ground/plot-ground.ts';
import type { GroundSetting } from '../ground/stage.ts';
import { makeContentKeys } from '../memo/content-key.ts';
import { horizonOf } from '../season/horizon.ts';
import { type CoverChoice, chooseCovers } from './choose.ts';
import { type CoverGap, coverGaps } from './gaps.ts';

export interface GapCovers {
  readonly plot: string;
  readonly name: string;
  readonly span: Span;
  readonly areaM2: number;
  readonly from: Day;
  readonly to: Day;
  readonly before: string | null;
  readonly after: string | null;
  /** Best first. */
  readonly choices: readonly CoverChoice[];
}

export interface CoversWish {
  readonly today: Day;
  readonly fromYear?: number;
  readonly toYear: number;
}

export function coversForFarm(farm: Farm, wish: CoversWish): readonly GapCovers[] {
  const setting = groundSetting(farm, { today: wish.today, ...horizonOf(wish) }, makeGroundMemos(makeContentKeys()));
  return farm.plots
    .filter((plot) => plot.kind === 'rotation')
    .flatMap((plot) => {
      const { netM2 } = plotArea(plot, setting);
      const stands = setting.standsOf(plot.id);
      return gapsOnPlot(plot.id, setting).map(
        (gap): GapCovers => ({
          plot: plot.id,
          name: plot.name,
          span: gap.span,
          areaM2: netM2 * (gap.span.toShare - gap.span.fromShare),
          from: dayAt(gap.fromDay),
          to: dayAt(gap.toDay),
          before: gap.before?.stand.id ?? null,
          after: gap.after?.stand.id ?? null,
          choices: chooseCovers({ gap, stands, setting }),
        }),
      );
    });
}

export function gapsOnPlot(plot: string, setting: GroundSetting): readonly CoverGap[] {
  return coverGaps(plotCover(plot, false, setting).lanes, {
    plot,
    todayDay: setting.todayDay,
    lastDay: setting.days.toDay,
    winters: setting.winters,
  });
}
