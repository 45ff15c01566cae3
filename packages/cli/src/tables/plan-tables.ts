/** The parts of a plan as tables for a terminal. Null where the farm has no such part. */
import { speak, type Voice } from '@leywright/api';
import type { Plan, PlotGround } from '@leywright/planner';
import { textTable, wrapped } from './text-table.ts';

export function climateLine({ climate }: Plan): string {
  const own = climate.recordedDays > 0 ? `; ${climate.recordedDays} days of your own weather` : '';
  return `Weather of ${climate.station}, ${Math.round(climate.distanceKm)} km away, ${climate.period}${own}.`;
}

/** Each plot in the year in focus: its ground, its course, and under it what stands there in the order it comes. */
export function groundTable(plan: Plan, voice: Voice): string | null {
  if (plan.ground.length === 0) return null;
  const rows = plan.ground.map((plot) => [
    plot.letter,
    plot.name,
    speak.area(plot.area.netM2, voice),
    plot.courses.find((course) => course.year === plan.year)?.name ?? '',
  ]);
  const table = textTable(
    [{ head: '' }, { head: 'Plot' }, { head: 'Cropped', align: 'right' }, { head: `Course of ${plan.year}` }],
    rows,
  ).split('\n');
  const headLines = 2;
  return table.flatMap((line, at) => [line, ...standLines(plan.ground[at - headLines], plan.year, voice)]).join('\n');
}

function standLines(plot: PlotGround | undefined, year: number, voice: Voice): readonly string[] {
  const stands = (plot?.stands ?? []).filter((stand) => stand.from <= `${year}-12-31` && stand.to > `${year}-01-01`);
  const names = [
    ...new Set([...stands].sort((a, b) => (a.from < b.from ? -1 : 1)).map((stand) => speak.plant(stand.name, voice))),
  ];
  return names.length === 0 ? [] : [wrapped(names.join(', '), '     ')];
}

export function nitrogenTable(plan: Plan): string | null {
  const rows = plan.nitrogen
    .filter((year) => year.year === plan.year)
    .map((year) => [
      letterOf(plan, year.plot),
      between(year.fixedKgHa),
      between(year.offtakeKgHa),
      between(year.lostKgHa),
      between(year.leftKgHa),
    ]);
  if (rows.length === 0) return null;
  const right = 'right' as const;
  return textTable(
    [
      { head: '' },
      { head: `N fixed ${plan.year}, kg/ha`, align: right },
      { head: 'taken off', align: right },
      { head: 'lost', align: right },
      { head: 'left', align: right },
    ],
    rows,
  );
}

function letterOf(plan: Plan, plot: string): string {
  return plan.ground.find((one) => one.plot === plot)?.letter ?? plot;
}

function between({ low, high }: { readonly low: number; readonly high: number }): string {
  return `${Math.round(low)} to ${Math.round(high)}`;
}

/** From the promise to ground and seed, crop by crop. */
export function needsTable(plan: Plan, voice: Voice): string | null {
  const needs = plan.supply?.needs ?? [];
  if (needs.length === 0) return null;
  const rows = needs.map((need) => [
    need.name,
    massOrNot(need.demandKg, voice),
    massOrNot(need.liftKg, voice),
    need.needM2 === null ? 'not known' : speak.area(need.needM2, voice),
    speak.area(need.plannedM2, voice),
    need.rowM === null ? '' : `${Math.round(need.rowM)} m`,
    need.seedKg === null ? '' : speak.mass(need.seedKg, voice),
    need.plots.join(' '),
  ]);
  const right = 'right' as const;
  return textTable(
    [
      { head: 'Crop' },
      { head: 'Promised', align: right },
      { head: 'To lift', align: right },
      { head: 'Needs', align: right },
      { head: 'Has', align: right },
      { head: 'Rows', align: right },
      { head: 'Seed', align: right },
      { head: 'Plots' },
    ],
    rows,
  );
}

function massOrNot(kg: number | null, voice: Voice): string {
  return kg === null ? 'not known' : speak.mass(kg, voice);
}

export function reachLine(plan: Plan): string | null {
  const reach = plan.supply?.reach ?? null;
  if (reach === null || reach.households === null) return null;
  const land =
    reach.byLand === null
      ? ''
      : ` The ground feeds ${reach.byLand.households} (${reach.byLand.course}, ${reach.byLand.year}).`;
  const hands = reach.byLabour === null ? '' : ` The hands feed ${Math.floor(reach.byLabour)}.`;
  return wrapped(`This farm feeds ${reach.households} households.${land}${hands}`);
}

export function storesTable(plan: Plan, voice: Voice): string | null {
  const stores = plan.supply?.stores ?? [];
  if (stores.length === 0) return null;
  const rows = stores.map((run) => [
    run.name,
    run.store ?? '',
    speak.mass(run.intoStoreKg, voice),
    speak.mass(run.lossKg, voice),
    String(run.fullWeeks),
    run.lastFullWeek ?? '',
    String(run.gapWeeks),
  ]);
  const right = 'right' as const;
  return textTable(
    [
      { head: 'In store' },
      { head: 'Where' },
      { head: 'Put in', align: right },
      { head: 'Lost', align: right },
      { head: 'Full weeks', align: right },
      { head: 'Last full week' },
      { head: 'Weeks without', align: right },
    ],
    rows,
  );
}

/** Weeks of boxes that are short, with what is missing. */
export function boxesTable(plan: Plan): string | null {
  if (plan.supply === null) return null;
  const short = plan.supply.boxes.filter((week) => week.closed === null && week.shortItems > 0.005);
  if (short.length === 0) return null;
  const rows = short.map((week) => [
    week.week,
    week.packOn ?? '',
    String(Math.round(week.itemsPerBox * 10) / 10),
    String(Math.round(week.promised * 10) / 10),
    week.missing.map((slot) => slot.slot).join(', '),
  ]);
  return textTable(
    [
      { head: 'Short week' },
      { head: 'Packed on' },
      { head: 'Items', align: 'right' },
      { head: 'Promised', align: 'right' },
      { head: 'Missing' },
    ],
    rows,
  );
}

/** The weeks that ask for most, against the hands there are. */
export function workTable(plan: Plan): string | null {
  const weeks = plan.work.weeks.filter((week) => week.week.startsWith(String(plan.year)));
  if (weeks.length === 0 || weeks.every((week) => week.hours.typ === 0)) return null;
  const peak = [...weeks]
    .sort((a, b) => b.hours.typ - a.hours.typ)
    .slice(0, 8)
    .sort((a, b) => (a.week < b.week ? -1 : 1));
  const rows = peak.map((week) => [
    speak.weekStart(week.week),
    String(Math.round(week.hours.low)),
    String(Math.round(week.hours.typ)),
    String(Math.round(week.hours.high)),
    week.handsH === null ? 'not known' : String(Math.round(week.handsH)),
  ]);
  const right = 'right' as const;
  const table = textTable(
    [
      { head: 'Busiest weeks' },
      { head: 'Hours, low', align: right },
      { head: 'typical', align: right },
      { head: 'high', align: right },
      { head: 'Hands have', align: right },
    ],
    rows,
  );
  return `${table}\n${Math.round(plan.work.yearH)} hours in ${plan.year}.`;
}
