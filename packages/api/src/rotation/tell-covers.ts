/** Covers for gaps with their reasons in words, as `leywright covers --json` answers. */
import type { Farm } from '@leywright/book';
import type { Day } from '@leywright/measures';
import type { CoverChoice, GapCovers, TouchedRest } from '@leywright/planner';
import { writeDay } from '../words/en-GB/figures.ts';
import { ruleWords } from '../words/en-GB/rules.ts';

export function tellCovers(gaps: readonly GapCovers[], at: { readonly farm: Farm; readonly today: Day }) {
  return {
    farm: at.farm.about.name,
    today: at.today,
    gaps: gaps.map((gap) => ({
      ...gap,
      choices: gap.choices.map((choice) => ({ ...choice, reasons: reasonsOf(choice) })),
    })),
  };
}

export type ToldCovers = ReturnType<typeof tellCovers>;

const said = (day: Day) => writeDay(day, { year: null }, { week: false });

/** Why a cover stands where it does in the list, each reason a sentence. */
export function reasonsOf(choice: CoverChoice): readonly string[] {
  return [
    sowing(choice),
    `Seed ${figure(choice.seedLowKgHa)} to ${figure(choice.seedHighKgHa)} kg/ha.`,
    ...ground(choice),
    nitrogen(choice),
    ending(choice),
    ...(choice.isKinOfNext ? ['It is of the family of what is planted next.'] : []),
    ...choice.rests.map(rest),
  ];
}

function sowing({ way, sowOn, lastSafe, lastBy, lateDays }: CoverChoice): string {
  const begin = way === 'undersown' ? `Sow it into the crop on ${said(sowOn)}` : `Sow it on ${said(sowOn)}`;
  if (lastSafe === null) return `${begin}.`;
  if (lateDays > 0) return `${begin}, ${days(lateDays)} after its last safe day, ${said(lastSafe)}.`;
  const by = { warmth: 'by the warmth left', table: 'by the table', 'weeks-in-crop': 'by the crop’s growth' } as const;
  return `${begin}; the last safe day is ${said(lastSafe)}, ${by[lastBy ?? 'table']}.`;
}

function ground({ coverByNovemberShare, wetDaysCoveredShare, gapDaysCoveredShare }: CoverChoice): readonly string[] {
  const november =
    coverByNovemberShare === null ? [] : [`${percent(coverByNovemberShare)} of the ground is covered by 1 November.`];
  const through =
    wetDaysCoveredShare === null
      ? `A third of the ground or more is covered on ${percent(gapDaysCoveredShare)} of the days.`
      : `A third of the ground or more is covered on ${percent(wetDaysCoveredShare)} of the wet season’s days in this gap.`;
  return [...november, through];
}

function nitrogen({ heldLowKgHa, heldHighKgHa, fixedHighKgHa, fixedLowKgHa }: CoverChoice): string {
  const held = `Holds ${figure(heldLowKgHa)} to ${figure(heldHighKgHa)} kg N/ha`;
  return fixedHighKgHa < 1
    ? `${held}, none of it from the air.`
    : `${held}, ${figure(fixedLowKgHa)} to ${figure(fixedHighKgHa)} of it from the air.`;
}

function ending({ killedOn, frostKillC, turnInOn, weeksBeforeNext, missingWeeks }: CoverChoice): string {
  if (killedOn !== null)
    return `Frost of ${figure(frostKillC)} °C ends it, in an ordinary year about ${said(killedOn)}.`;
  if (turnInOn === null) return 'Nothing is planned after it.';
  const missing = missingWeeks === 0 ? '' : ` That leaves it ${weeks(missingWeeks)} too few.`;
  return `Turn it in by ${said(turnInOn)}, ${weeks(weeksBeforeNext)} before what comes next.${missing}`;
}

function rest({ rule, name, force, gapYears, needYears, infested }: TouchedRest): string {
  const about = ruleWords[rule] ?? name;
  const between = `${years(gapYears)} to the nearest host, ${years(needYears)} asked`;
  if (force === 'hard') return `It breaks the rest of ${about}: ${between}${infested ? ' where it is recorded' : ''}.`;
  return `It is a host of ${about}: ${between}${force === 'warn' ? ', a warning' : ''}.`;
}

const percent = (share: number) => `${Math.round(100 * share)} %`;
const figure = (value: number) =>
  String(Math.round(value * (Math.abs(value) < 10 ? 10 : 1)) / (Math.abs(value) < 10 ? 10 : 1));
const counted = (count: number, one: string, many: string) => `${count} ${count === 1 ? one : many}`;
const days = (count: number) => counted(count, 'day', 'days');
const weeks = (count: number) => counted(count, 'week', 'weeks');
const years = (count: number) => counted(count, 'year', 'years');
