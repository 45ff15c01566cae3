/**
 * Covers in pencil for the gaps that a proposal leaves in the wet season, where a sound one can be sown.
 *
 * Rule    A gap with four weeks or more of the wet season gets the best sound cover of the cover chooser, sown after the crop or into it, and turned in as many weeks
 *         before the next planting as its table asks. Where none is sound the gap stays, and is among the proposal's findings.
 */
import type { Farm, Stand } from '@leywright/book';
import { asId, yearOf } from '@leywright/measures';
import { commonDays } from '../cover/seasons.ts';
import { type CoverChoice, chooseCovers } from '../cover-choice/choose.ts';
import { gapsOnPlot } from '../cover-choice/farm-covers.ts';
import type { CoverGap } from '../cover-choice/gaps.ts';
import { groundSetting, makeGroundMemos } from '../ground/ground-stages.ts';
import type { GroundSetting } from '../ground/stage.ts';
import { makeContentKeys } from '../memo/content-key.ts';
import { horizonOf } from '../season/horizon.ts';
import type { FarmProblem } from './farm-problem.ts';
import type { FarmRotationWish } from './rotation-farm.ts';

const leastWetDays = 28;
/** Covers people sow for the winter; the summer's are the grower's to choose. */
const winterCovers: readonly string[] = [
  'mix-rye-vetch',
  'grazing-rye',
  'winter-vetch',
  'italian-ryegrass',
  'phacelia',
  'white-mustard',
  'oat-winterkill',
  'mix-undersow-low',
  'trefoil',
];

export function withGapsFilled(farm: Farm, wish: Pick<FarmRotationWish, 'today'>, asked: FarmProblem): Farm {
  const { firstYear, problem } = asked;
  const years = { today: wish.today, fromYear: firstYear - 1, toYear: firstYear + problem.years - 1 };
  const setting = groundSetting(farm, { today: wish.today, ...horizonOf(years) }, makeGroundMemos(makeContentKeys()));
  const planned = asked.plots.filter((_, at) => problem.plots[at]?.isRotated === true);
  const covers = planned.flatMap((plot) => coversOn(plot.id, setting, firstYear));
  return covers.length === 0 ? farm : { ...farm, stands: [...farm.stands, ...covers] };
}

function coversOn(plot: string, setting: GroundSetting, firstYear: number): readonly Stand[] {
  const stands = setting.standsOf(plot);
  return gapsOnPlot(plot, setting).flatMap((gap, at): readonly Stand[] => {
    if ((gap.before?.stand.courseYear ?? 0) < firstYear || wetDaysIn(gap, setting) < leastWetDays) return [];
    const [best] = chooseCovers({ gap, stands, setting, among: winterCovers });
    return best?.isSound === true ? [coverStand(best, gap, at)] : [];
  });
}

function wetDaysIn(gap: CoverGap, { winters }: GroundSetting): number {
  return winters.reduce((sum, winter) => sum + commonDays(gap.fromDay, gap.toDay, winter), 0);
}

function coverStand(choice: CoverChoice, gap: CoverGap, at: number): Stand {
  const until = choice.turnInOn !== null && choice.turnInOn > choice.sowOn ? choice.turnInOn : null;
  return {
    id: asId(`${gap.plot}-${yearOf(choice.sowOn)}-cover-${at + 1}`),
    succession: null,
    plot: asId(gap.plot),
    span: gap.span,
    what: choice.cover,
    kind: 'cover',
    variety: null,
    state: 'pencil',
    sownOn: choice.sowOn,
    plantedOn: null,
    from: choice.sowOn,
    to: until ?? choice.until,
    undersownIn: choice.into === null ? null : asId(choice.into),
    course: null,
    courseYear: null,
    establishedShare: null,
    endedBy: null,
    reason: null,
    yieldTHa: null,
  };
}
