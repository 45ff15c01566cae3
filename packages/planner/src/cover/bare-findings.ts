/**
 * Winters in which ground lies bare.
 *
 * Rule    A finding is a spell of bare ground with twice the farm's bare weeks or more of it inside the leaching season; the spells of one plot in one
 *         winter are one finding. Ahead it is to put right; gone by it is worth a look until the book gives the reason, then a note. Tunnels and
 *         ground outside the rotation are not judged: no rain washes through the one, and perennials rest in the other.
 */

import { reference } from '@leywright/agronomy';
import type { Plot } from '@leywright/book';
import { type Day, dayNumber } from '@leywright/measures';
import { lastDayNear } from '../crops/season.ts';
import { finding, mend } from '../faults/say.ts';
import type { GroundSetting } from '../ground/stage.ts';
import type { Finding, Gravity, Mend } from '../plan/finding.ts';
import type { BareSpell, PlotGround } from '../plan/ground.ts';
import { commonDays, type Winter } from './seasons.ts';

const leastWinterMultiple = 2;

export function bareFindings(
  ground: Pick<PlotGround, 'bare' | 'stands'>,
  { plot, setting }: { readonly plot: Plot; readonly setting: GroundSetting },
): readonly Finding[] {
  if (plot.kind !== 'rotation') return [];
  const leastDays = leastWinterMultiple * 7 * setting.farm.about.conventions.bareWeeks;
  return setting.winters.flatMap((winter) => {
    const spells = ground.bare.filter(
      (spell) => daysIn(spell, winter) >= leastDays && mainWinter(spell, setting.winters) === winter,
    );
    return spells.length === 0
      ? []
      : [winterFinding(spells, winter, { plot, setting, stands: ground.stands, leastDays })];
  });
}

function daysIn(spell: Pick<BareSpell, 'from' | 'to'>, winter: Winter): number {
  return commonDays(dayNumber(spell.from), dayNumber(spell.to), winter);
}

function mainWinter(spell: BareSpell, winters: readonly Winter[]): Winter | undefined {
  let main: Winter | undefined;
  for (const winter of winters) if (main === undefined || daysIn(spell, winter) > daysIn(spell, main)) main = winter;
  return main;
}

interface At {
  readonly plot: Plot;
  readonly setting: GroundSetting;
  readonly stands: PlotGround['stands'];
}

interface Together {
  readonly from: Day;
  readonly to: Day;
  readonly areaM2: number;
}

/** Days on which the worst spell's ground and that of the others lie bare together. What lies bare at other times is not said: its dates would be wrong. */
function together(
  worst: BareSpell,
  spells: readonly BareSpell[],
  { winter, leastDays }: { readonly winter: Winter; readonly leastDays: number },
): Together {
  return spells.reduce<Together>((sum, spell) => {
    if (spell === worst) return sum;
    const both = { from: later(spell.from, sum.from), to: earlier(spell.to, sum.to) };
    return daysIn(both, winter) < leastDays ? sum : { ...both, areaM2: sum.areaM2 + spell.areaM2 };
  }, worst);
}

function later(one: Day, other: Day): Day {
  return one < other ? other : one;
}

function earlier(one: Day, other: Day): Day {
  return one < other ? one : other;
}

function winterFinding(
  spells: readonly BareSpell[],
  winter: Winter,
  { plot, setting, stands, leastDays }: At & { readonly leastDays: number },
): Finding {
  const worst = spells.reduce((a, b) => (b.areaM2 * daysIn(b, winter) > a.areaM2 * daysIn(a, winter) ? b : a));
  const { from, to, areaM2 } = together(worst, spells, { winter, leastDays });
  const [fromDay, toDay] = [dayNumber(from), dayNumber(to)];
  const answered = spells.find((spell) => spell.answered !== null)?.answered ?? null;
  return finding('bare-in-leaching-season', {
    gravity: gravityOf(worst, winter, { setting, answered }),
    place: {
      plot: plot.id,
      from,
      to,
      year: winter.winter,
      ...(worst.before === null ? {} : { stand: worst.before }),
    },
    figures: {
      plot: plot.id,
      winter: winter.winter,
      areaM2,
      from,
      to,
      days: toDay - fromDay,
      weeks: Math.floor((toDay - fromDay) / 7),
      // Of the days that are said, in whichever winter they lie: records may leave ground bare over several.
      leachingDays: setting.winters.reduce((sum, one) => sum + commonDays(fromDay, toDay, one), 0),
      before: worst.before,
      after: worst.after,
    },
    mend: mendsOf(worst, { plot, setting, stands }),
    reason: answered,
    why: `bare/${plot.id}/${winter.winter}`,
  });
}

/** Ahead while enough of the leaching season is still to come for something to be sown in it. */
function gravityOf(
  spell: BareSpell,
  winter: Winter,
  { setting, answered }: { readonly setting: GroundSetting; readonly answered: string | null },
): Gravity {
  if (dayNumber(spell.from) >= setting.todayDay && winter.toDay > setting.todayDay) return 'put-right';
  return answered === null ? 'look' : 'note';
}

const winterCovers = ['mix-rye-vetch', 'grazing-rye'] as const;

function mendsOf(spell: BareSpell, { plot, setting, stands }: At): readonly Mend[] {
  if (dayNumber(spell.from) < setting.todayDay) return [mend('give-reason', { plot: plot.id })];
  const { place } = setting.farm.about;
  const latestOf = (id: string) => {
    const latest = reference.covers.get(id)?.latestWinterCoverSow ?? null;
    return latest === null ? null : lastDayNear(latest, spell.from, place);
  };
  const sowable = winterCovers.flatMap((id) => {
    const on = latestOf(id);
    return on === null || on < spell.from ? [] : [mend('sow-cover-by', { plot: plot.id, cover: id, on })];
  });
  const before = stands.find((one) => one.id === spell.before);
  const into =
    before === undefined || before.kind !== 'crop'
      ? []
      : [mend('undersow-crop', { stand: before.id, cover: 'mix-undersow-low' })];
  const ryeBy = latestOf('grazing-rye');
  const earlier =
    before === undefined || ryeBy === null || sowable.length > 0 || before.from >= ryeBy
      ? []
      : [mend('end-earlier', { stand: before.id, on: ryeBy })];
  return [...sowable, ...into, ...earlier, mend('give-reason', { plot: plot.id })];
}
