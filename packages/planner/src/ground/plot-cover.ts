/** The cover of one plot: every stand's own, and the lanes they make together. */
import { lanesOf } from '../cover/lanes.ts';
import { type StandCover, standCover } from '../cover/stand-cover.ts';
import { hostOf } from '../rests/host-book.ts';
import type { GroundStand } from './ground-stand.ts';
import { type HarvestDays, harvestDaysOf } from './place-stand.ts';
import { dayOrNull, type GroundSetting, type PlotCover } from './stage.ts';

/** Harvest days of a stand as the plan takes them: recorded ones first. */
export function harvestOf(
  one: GroundStand,
  setting: Pick<GroundSetting, 'climate' | 'recorded'>,
  isTunnel: boolean,
): HarvestDays | null {
  const expected = harvestDaysOf(one, setting.climate, isTunnel);
  const recordedFrom = dayOrNull(setting.recorded.get(one.stand.id)?.from ?? null);
  return expected === null || recordedFrom === null
    ? expected
    : { fromDay: recordedFrom, toDay: Math.max(recordedFrom, expected.toDay) };
}

export function coverOfStand(
  one: GroundStand,
  stands: readonly GroundStand[],
  at: { readonly setting: GroundSetting; readonly isTunnel: boolean; readonly harvest?: HarvestDays | null },
): StandCover {
  const { setting, isTunnel } = at;
  const host = hostOf(one, stands);
  const days = at.harvest === undefined ? harvestOf(one, setting, isTunnel) : at.harvest;
  const harvest = one.plant.crop?.establishment === 'crown' ? null : days;
  return standCover(one, {
    climate: setting.climate,
    fromDay: setting.days.fromDay,
    toDay: setting.days.toDay,
    isTunnel,
    aloneFromDay: host === null ? one.fromDay : Math.max(one.fromDay, host.toDay),
    harvestFromDay: harvest?.fromDay ?? null,
    harvestToDay: harvest?.toDay ?? null,
  });
}

export function plotCover(plot: string, isTunnel: boolean, setting: GroundSetting): PlotCover {
  const all = setting.standsOf(plot);
  const stands = all.filter((one) => one.fromDay < setting.days.toDay && one.toDay > setting.days.fromDay);
  const harvests = new Map(stands.map((one) => [one, harvestOf(one, setting, isTunnel)]));
  const covers = stands.map((one) => coverOfStand(one, all, { setting, isTunnel, harvest: harvests.get(one) ?? null }));
  const covered = stands.flatMap((one, at) => {
    const cover = covers[at];
    return cover === undefined ? [] : [{ one, cover }];
  });
  return { stands, covers, harvests, lanes: lanesOf(covered, setting.days) };
}
