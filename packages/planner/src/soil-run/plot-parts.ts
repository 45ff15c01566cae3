/**
 * A plot cut into parts for the ground's daily account: stretches that carried the same stands from side to side, from three years before the plan on.
 *
 * Rule    Of more stands at once than the account holds, those that began last are left out (such a plot has overlaps to put right anyway).
 * Leaves out  what lay there before those years: the account begins at field capacity with 50 kg mineral nitrogen (common practice).
 */
import { type SoilPart, type SoilStand, soilAccount } from '@leywright/agronomy';
import type { Plot, Span } from '@leywright/book';
import type { GroundStand } from '../ground/ground-stand.ts';
import { leastShare } from '../ground/history.ts';
import { coverOfStand } from '../ground/plot-cover.ts';
import type { GroundSetting, PlotCover } from '../ground/stage.ts';
import { type PlotProfile, profileOf } from './soil-profile-of.ts';
import { standOfGround } from './stand-of-ground.ts';

/** Nitrogen from rain and air: the middle of the yearly balance's band. */
const depositionKgHaYear = 15;
const startMineralNKgHa = 50;

export interface PlotPart {
  readonly span: Span;
  readonly part: SoilPart;
}

export interface PlotParts {
  readonly profile: PlotProfile;
  readonly parts: readonly PlotPart[];
  /** Stands whose plant no table knows. */
  readonly unknownStands: readonly string[];
}

export function partsOfPlot(plot: Plot, covered: PlotCover, setting: GroundSetting): PlotParts {
  const isTunnel = plot.kind === 'tunnel';
  const all = setting.standsOf(plot.id).filter((one) => one.toDay > setting.climate.firstDay);
  const unknownStands: string[] = [];
  const stands = all.flatMap((one) => {
    const at = covered.stands.indexOf(one);
    const cover = covered.covers[at] ?? coverOfStand(one, all, { setting, isTunnel });
    const stand = standOfGround(one, cover, setting.crops);
    if (stand === null) unknownStands.push(one.stand.id);
    return stand === null ? [] : [{ one, stand }];
  });
  const profile = profileOf(plot, setting.farm.soilSamples);
  const parts = spansOf(stands.map(({ one }) => one)).map((span, nth): PlotPart => {
    const middle = (span.fromShare + span.toShare) / 2;
    const here = stands.filter(({ one }) => one.stand.span.fromShare < middle && one.stand.span.toShare > middle);
    return {
      span,
      part: {
        id: `${plot.id}/${nth}`,
        profile: profile.profile,
        latDeg: setting.climate.latDeg,
        stands: asManyAsFit(here.map(({ stand }) => stand)),
        brought: [],
        irrigation: { kind: 'none' },
        tunnel: isTunnel,
        depositionKgHaYear,
        startMineralNKgHa,
        startAvailableShare: 1,
      },
    };
  });
  return { profile, parts, unknownStands };
}

function spansOf(stands: readonly GroundStand[]): readonly Span[] {
  const borders = new Set([0, 1]);
  for (const { stand } of stands) for (const at of [stand.span.fromShare, stand.span.toShare]) borders.add(held(at));
  const sorted = [...borders].sort((a, b) => a - b);
  return sorted.flatMap((toShare, at) => {
    const fromShare = sorted[at - 1];
    return fromShare !== undefined && toShare - fromShare > leastShare ? [{ fromShare, toShare }] : [];
  });
}

function held(share: number): number {
  return Math.min(1, Math.max(0, share));
}

function asManyAsFit(stands: readonly SoilStand[]): readonly SoilStand[] {
  const inOrder = [...stands].sort((a, b) => a.startDayNumber - b.startDayNumber || (a.id < b.id ? -1 : 1));
  const kept: SoilStand[] = [];
  for (const stand of inOrder) {
    const atOnce = kept.filter((other) => other.endDayNumber > stand.startDayNumber).length;
    if (atOnce < soilAccount.mostStands) kept.push(stand);
  }
  return kept;
}
