/** A proposed rotation as text: what it is worth, plots by years, what is left to put right. */
import type { ToldRotation } from '@leywright/api';
import { findingsText } from '../commands/check.ts';
import { textTable, wrapped } from '../tables/text-table.ts';

type Proposal = Extract<ToldRotation, { kind: 'proposal' }>;
type Planned = Pick<Proposal, 'plots' | 'firstYear' | 'lastYear' | 'costs' | 'findings' | 'leftOut'>;

const costWords: Readonly<Record<string, string>> = {
  area: 'areas off what is asked',
  balance: 'areas that change from year to year',
  order: 'off the standard order',
  cover: 'dear covers and places',
  stability: 'changes against what is agreed',
  split: 'halves that differ',
};

export function rotationText(told: ToldRotation): string {
  const head = `${told.farm}, as of ${told.today}`;
  switch (told.kind) {
    case 'nothing-to-plan':
      return [head, told.sentence].join('\n\n');
    case 'proposal':
      return [head, wrapped(told.sentence), ...plannedText(told)].join('\n\n');
    case 'no-plan':
      return [
        head,
        wrapped(told.sentence),
        ...told.conflicts.map(conflictText),
        ...(told.partial === null
          ? []
          : ['For the other plots alone, which is not a plan for the farm:', ...plannedText(told.partial)]),
      ].join('\n\n');
  }
}

function plannedText(plan: Planned): readonly string[] {
  const years = Array.from({ length: plan.lastYear - plan.firstYear + 1 }, (_, at) => plan.firstYear + at);
  const halves =
    years.length > 8
      ? [years.slice(0, Math.ceil(years.length / 2)), years.slice(Math.ceil(years.length / 2))]
      : [years];
  return [
    ...halves.map((some) => yearsTable(plan, some)),
    '* moved against what is agreed    = pinned    – what stands there stays, or the land is not ours',
    costLine(plan),
    ...(plan.leftOut.length === 0
      ? []
      : [`Left out: ${plan.leftOut.map((one) => `${one.plot} (${one.why})`).join(', ')}.`]),
    findingsText(plan.findings),
  ];
}

function yearsTable(plan: Planned, years: readonly number[]): string {
  return textTable(
    [{ head: 'Plot' }, ...years.map((year) => ({ head: String(year) }))],
    plan.plots.map((plot) => [
      `${plot.letter} ${plot.name}`,
      ...years.map((year) => {
        const cell = plot.years.find((one) => one.year === year);
        if (cell === undefined || cell.course === null) return '–';
        return `${cell.course}${cell.pinned ? ' =' : cell.moved ? ' *' : ''}`;
      }),
    ]),
  );
}

function costLine({ costs }: Planned): string {
  const parts = Object.entries(costs)
    .filter(([, score]) => score > 0.005)
    .map(([rule, score]) => `${costWords[rule] ?? rule} ${score.toFixed(2)}`);
  return wrapped(parts.length === 0 ? 'Every wish is kept in full.' : `What it costs: ${parts.join(', ')}.`);
}

function conflictText(conflict: Extract<ToldRotation, { kind: 'no-plan' }>['conflicts'][number]): string {
  return [
    `${conflict.name}:`,
    ...conflict.rules.map((rule) => wrapped(`${rule.sentence} ${rule.frees}`, '    ').replace('    ', '  • ')),
  ].join('\n');
}
