/**
 * Winters in which ground lies bare.
 *
 * Rule    A finding is a spell of bare ground with twice the farm's bare weeks or more of it inside the leaching season; the spells of one plot in one
 *         winter are one finding. Ahead it is to put right; gone by it is worth a look until the book gives the reason, then a note. Tunnels and
 *         ground outside the rotation are not judged: no rain washes through the one, and perennials rest in the other.
 */

import { reference } from '@leywright/agronomy';
import type { Plot } from '@leywright/book';
import { dayNumber } from '@leywright/measures';
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
    return spells.length === 0 ? [] : [winterFinding(spells, winter, { plot, setting, stands: ground.stands })];
  });
}

function daysIn(spell: BareSpell, winter: Winter): number {
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

function winterFinding(spells: readonly BareSpell[], winter: Winter, { plot, setting, stands }: At): Finding {
  const worst = spells.reduce((a, b) => (b.areaM2 * daysIn(b, winter) > a.areaM2 * daysIn(a, winter) ? b : a));
  const answered = spells.find((spell) => spell.answered !== null)?.answered ?? null;
  return finding('bare-in-leaching-season', {
    gravity: gravityOf(worst, winter, { setting, answered }),
    place: {
      plot: plot.id,
      from: worst.from,
      to: worst.to,
      year: winter.winter,
      ...(worst.before === null ? {} : { stand: worst.before }),
    },
    figures: {
      plot: plot.id,
      winter: winter.winter,
      areaM2: spells.reduce((sum, spell) => sum + spell.areaM2, 0),
      from: worst.from,
      to: worst.to,
      days: worst.days,
      weeks: Math.floor(worst.days / 7),
      leachingDays: daysIn(worst, winter),
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
