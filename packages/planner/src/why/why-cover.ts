/** Why a stand covers what it does in a week: the warmth since it came up, its curve, and what took some of it away. */
import { canopyCurve } from '@leywright/agronomy';
import { asIsoWeek, type Day, dayAt, dayNumber, mondayOf, readIsoWeek, weekOf } from '@leywright/measures';
import { canopyOf, weeklyCover } from '../cover/stand-cover.ts';
import { coverOfStand } from '../ground/plot-cover.ts';
import type { GroundSetting } from '../ground/stage.ts';
import type { Why, WhyInput } from '../plan/why.ts';
import { ofRecord, ofSums, why, written } from './terms.ts';

/** `week` is an ISO week, or a place counted from the plan's first Monday. */
export function whyCover(standId: string, week: string, setting: GroundSetting): Why | null {
  const monday = mondayNumber(week, setting);
  const plot = setting.farm.plots.find((one) => setting.standsOf(one.id).some((stand) => stand.stand.id === standId));
  if (plot === undefined || monday === null) return null;
  const stands = setting.standsOf(plot.id);
  const one = stands.find((stand) => stand.stand.id === standId);
  if (one === undefined || one.fromDay >= monday + 7 || one.toDay <= monday) return null;
  const cover = coverOfStand(one, stands, { setting, isTunnel: plot.kind === 'tunnel' });
  const { choice, basis } = canopyOf(one);
  const middle = Math.min(Math.max(monday + 3, cover.firstDay), cover.firstDay + cover.dayShare.length - 1);
  const share = cover.dayShare[middle - cover.firstDay] ?? 0;
  const warmthCd = setting.climate.degreeDays(choice.curve.baseC, cover.emergedOnDay, middle);
  const weekly = weeklyCover(cover, setting.days.fromDay);
  const value = weekly.coverShare[Math.floor((monday - setting.days.fromDay) / 7) - weekly.coverFromWeek];
  if (value === undefined) return null;
  return why(`cover/${standId}/${weekOf(dayAt(monday))}`, 'cover', {
    figures: { stand: standId, plot: plot.id, week: weekOf(dayAt(monday)), from: dayAt(monday) },
    value,
    unit: '',
    formula:
      'cover = start × e^(rate × warmth) up to half of full, then full − ¼ full² ÷ start × e^(−rate × warmth); × what took × what is not yet cleared; the week’s figure is the mean of its days',
    sum: `start ${written(choice.curve.startCoverShare)}, full ${written(choice.curve.fullCoverShare)}, rate ${written(canopyCurve.canopyRate(choice.curve.startCoverShare, choice.curve.fullCoverShare, choice.curve.tFullCd))} per °C day, warmth ${written(warmthCd)} → ${written(share)} in the middle of the week; mean ${written(value)}`,
    inputs: inputsOf({ one, cover, choice, warmthCd, setting }),
    doubt: [
      `cover-${basis}`,
      'no-growth-on-short-days',
      ...(cover.killedOnDay === null ? [] : ['frost-day-expected']),
      ...(setting.climate.recorded[middle - setting.climate.firstDay] === 1 ? [] : ['climate-normals']),
    ],
  });
}

interface Parts {
  readonly one: Parameters<typeof canopyOf>[0];
  readonly cover: ReturnType<typeof coverOfStand>;
  readonly choice: ReturnType<typeof canopyOf>['choice'];
  readonly warmthCd: number;
  readonly setting: GroundSetting;
}

function inputsOf({ one, cover, choice, warmthCd, setting }: Parts): readonly WhyInput[] {
  const { used } = setting.climate;
  const curve = (name: string, value: number, unit: string): WhyInput => ({
    name,
    value,
    unit,
    from: 'reference',
    where: choice.from,
    source: null,
    howKnown: choice.basis === 'derived' ? null : choice.basis === 'published' ? 'verified' : 'common practice',
    why: null,
  });
  return [
    ofRecord({ name: 'on its ground from', value: one.stand.from, unit: '' }, `stand ${one.stand.id}`),
    ofSums({ name: 'up or planted on', value: dayAt(cover.emergedOnDay) as Day, unit: '' }),
    {
      name: 'warmth since',
      value: warmthCd,
      unit: `°C days above ${written(choice.curve.baseC)}`,
      from: 'climate',
      where: `${used.station}, ${used.period}`,
      source: null,
      howKnown: null,
      why: null,
    },
    curve('cover at the start', choice.curve.startCoverShare, ''),
    curve('full cover', choice.curve.fullCoverShare, ''),
    curve('warmth to full cover', choice.curve.tFullCd, '°C days'),
    ...(one.stand.establishedShare === null
      ? []
      : [ofRecord({ name: 'share that took', value: one.stand.establishedShare, unit: '' }, `stand ${one.stand.id}`)]),
    ...(cover.killedOnDay === null
      ? []
      : [ofSums({ name: 'killed by frost about', value: dayAt(cover.killedOnDay), unit: '' })]),
    ...(cover.mownOnDays.length === 0
      ? []
      : [ofSums({ name: 'cuts up to its end', value: cover.mownOnDays.length, unit: '' })]),
  ];
}

function mondayNumber(week: string, { days, horizon }: GroundSetting): number | null {
  const iso = readIsoWeek(week);
  if (iso !== null) return dayNumber(mondayOf(asIsoWeek(week)));
  const place = /^\d+$/.test(week) ? Number(week) : -1;
  return place >= 0 && place < horizon.weeks ? days.fromDay + 7 * place : null;
}
