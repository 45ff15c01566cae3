/** Why a week asks for so many hours: its jobs, each by its row of the labour or weeding table. */
import { referenceCell } from '@leywright/agronomy';
import type { Lever, Why, WhyInput } from '../plan/why.ts';
import type { Job } from '../plan/work.ts';
import type { SupplyRun } from '../supply/supply-run.ts';
import { ofSums, why, written } from '../why/terms.ts';
import { workOf } from '../work/plan-work.ts';
import { again, householdsTimes } from './supply-again.ts';

const shown = 12;

export function whyHours(week: string, run: SupplyRun): Why | null {
  const work = workOf(run);
  const found = work.weeks.find((one) => one.week === week);
  if (found === undefined) return null;
  const jobs = work.jobs.filter((job) => job.week === week).toSorted((a, b) => b.hours.typ - a.hours.typ);
  const top = jobs.slice(0, shown);
  const restH = jobs.slice(shown).reduce((sum, job) => sum + job.hours.typ, 0);
  const terms = [...top.map((job) => job.hours.typ), ...(restH > 0 ? [restH] : [])];
  return why(found.why, 'hours', {
    figures: { week, handsH: found.handsH, jobs: jobs.length },
    value: found.hours.typ,
    low: found.hours.low,
    high: found.hours.high,
    unit: 'h',
    formula: 'hours = sum over the jobs of the week of amount × hours for each',
    sum: `${terms.map(written).join(' + ') || '0'} = ${written(found.hours.typ)}`,
    inputs: [
      ...top.map(jobInput),
      ...(restH > 0 ? [ofSums({ name: `${jobs.length - shown} smaller jobs`, value: restH, unit: 'h' })] : []),
    ],
    doubt: ['hours-of-the-table', 'hours-all-low-or-all-high', 'hours-leave-out'],
    levers: leversOf(run, week),
  });
}

function jobInput(job: Job): WhyInput {
  const [table = '', row = ''] = job.basis.split('/');
  const name = `${job.kind} ${job.name}`.trim();
  const amount = { name, value: job.hours.typ, unit: 'h' };
  if (table !== 'labour' && table !== 'weeds')
    return {
      ...ofSums(amount),
      from: table.endsWith('.csv') || table.endsWith('.json') ? 'farm' : 'derived',
      where: job.basis,
    };
  const cell = referenceCell(table, row, table === 'labour' ? 'person_h_typ' : 'hand_high_h_ha');
  return {
    ...amount,
    from: 'reference',
    where: `${table}.csv, ${row}`,
    source: cell.sources.map((one) => one.citation).join('; ') || null,
    howKnown: cell.howKnown === 'derived' ? null : cell.howKnown,
    why: null,
  };
}

function leversOf(run: SupplyRun, week: string): readonly Lever[] {
  const at = (changed: SupplyRun) => workOf(changed).weeks.find((one) => one.week === week)?.hours.typ ?? 0;
  const faster = again(run, (farm) => ({
    ...farm,
    about: { ...farm.about, conventions: { ...farm.about.conventions, packingHBox: 0.04 } },
  }));
  return [
    { change: 'households', value: 0.9, unit: 'times', result: at(again(run, householdsTimes(0.9))) },
    { change: 'packing', value: 0.04, unit: 'h a box', result: at(faster) },
  ];
}
