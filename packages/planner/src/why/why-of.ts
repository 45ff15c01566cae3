/**
 * The derivation of one figure: runs that one calculation again, with its terms kept.
 *
 * Figure ids are made where the figure is (`net/a`, `rest/<stand>/<rule>`); what comes before the first stroke says who derives it.
 */
import type { Farm, Plot } from '@leywright/book';
import { farmGround } from '../ground/farm-findings.ts';
import { groundSetting, groundStages, makeGroundMemos } from '../ground/ground-stages.ts';
import type { GroundSetting } from '../ground/stage.ts';
import { makeContentKeys } from '../memo/content-key.ts';
import type { PlanWish } from '../plan/plan.ts';
import { supplyInput } from '../plan/planner.ts';
import type { Why } from '../plan/why.ts';
import { horizonOf } from '../season/horizon.ts';
import { isSupplyFigure, whySupply } from '../why-supply/supply-whys.ts';
import { whyAccount, whyWater } from './why-account.ts';
import { whyBare } from './why-bare.ts';
import { whyCover } from './why-cover.ts';
import { fertilityWords, whyFertility } from './why-fertility.ts';
import { whyNet } from './why-net.ts';
import { whyNitrogen } from './why-nitrogen.ts';
import { whyRest } from './why-rest.ts';

/** The derivation of a figure by its id; null when the farm has no such figure. */
export function whyOf(farm: Farm, wish: PlanWish, figureId: string): Why | null {
  const { year, horizon } = horizonOf(wish);
  const [family = '', ...rest] = figureId.split('/');
  const memos = makeGroundMemos(makeContentKeys());
  if (isSupplyFigure(family)) {
    const stages = groundStages(farm, { today: wish.today, year, horizon }, memos);
    return whySupply(supplyInput(farm, stages, farmGround(stages).ground), figureId);
  }
  const setting = groundSetting(farm, { today: wish.today, year, horizon }, memos);
  const whys = { ...groundWhys, ...fertilityWhys };
  return Object.hasOwn(whys, family) ? (whys[family]?.(rest, setting) ?? null) : null;
}

type Deriver = (rest: readonly string[], setting: GroundSetting) => Why | null;

const groundWhys: Readonly<Record<string, Deriver>> = {
  net: ([plot], setting) => onPlot(plot, setting, (found) => whyNet(found, setting)),
  rest: ([stand, rule], setting) => (stand === undefined || rule === undefined ? null : whyRest(stand, rule, setting)),
  nitrogen: ([plot, year], setting) =>
    onPlot(plot, setting, (found) => (isYear(year) ? whyNitrogen(found, Number(year), setting) : null)),
  account: ([plot, year], setting) =>
    onPlot(plot, setting, (found) => (isYear(year) ? whyAccount(found, Number(year), setting) : null)),
  water: ([plot, year], setting) =>
    onPlot(plot, setting, (found) => (isYear(year) ? whyWater(found, Number(year), setting) : null)),
  cover: ([stand, week], setting) =>
    stand === undefined || week === undefined ? null : whyCover(stand, week, setting),
  bare: ([plot, winter], setting) =>
    onPlot(plot, setting, (found) => (isYear(winter) ? whyBare(found, Number(winter), setting) : null)),
};

const fertilityWhys: Readonly<Record<string, Deriver>> = Object.fromEntries(
  fertilityWords.map((word): [string, Deriver] => [
    word,
    ([plot], setting) => onPlot(plot, setting, (found) => whyFertility(word, found, setting)),
  ]),
);

export const groundFigures: readonly string[] = [...Object.keys(groundWhys), ...fertilityWords];

function onPlot(id: string | undefined, { farm }: GroundSetting, derive: (plot: Plot) => Why | null): Why | null {
  const plot = farm.plots.find((one) => one.id === id);
  return plot === undefined ? null : derive(plot);
}

function isYear(text: string | undefined): text is string {
  return text !== undefined && /^\d{4}$/.test(text);
}
