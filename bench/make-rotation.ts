/**
 * Writes one random farm in the form of bench:rotation to standard output: plots of chance areas, pasts along the standard order with a few
 * swaps, some plots infected. Courses and rules are those of an instance given. For trying the planner on farms nobody has tuned it for.
 * `npx tsx bench/make-rotation.ts INSTANCE [--plots 16] [--infected 0.2] [--splits 0] [--seed 1] > FILE`
 */
import { readFileSync } from 'node:fs';
import { parseArgs } from 'node:util';
import { seeded } from './seeded.ts';

interface Instance {
  readonly order: readonly string[];
  readonly succ: Readonly<Record<string, string>>;
  readonly options: readonly { readonly id: string; readonly course: string }[];
  readonly years: number;
  readonly weights: Readonly<Record<string, number>>;
}

const { values, positionals } = parseArgs({
  allowPositionals: true,
  options: {
    plots: { type: 'string', default: '16' },
    infected: { type: 'string', default: '0.2' },
    splits: { type: 'string', default: '0' },
    seed: { type: 'string', default: '1' },
  },
});
const from = JSON.parse(readFileSync(positionals[0] ?? '', 'utf8')) as Instance & Record<string, unknown>;
const chance = seeded(Number(values.seed));
const pastYears = 8;

function courses(start: number, count: number): string[] {
  return Array.from({ length: count }, (_, at) => from.order[(start + at) % from.order.length] ?? '');
}

const optionOf = (course: string) => from.options.find((option) => option.course === course)?.id ?? course;
const plotCount = Number(values.plots);
const plots = Array.from({ length: plotCount }, (_, at) => {
  const isInfected = chance() < Number(values.infected);
  const organism = chance() < 0.5 ? { clubroot: 7 } : { whiterot: 8 };
  return {
    id: `P${at + 1}`,
    area: 3500 + Math.floor(chance() * 28) * 50,
    history: courses(at + from.order.length - 1, pastYears).map(optionOf),
    longer: isInfected ? organism : {},
    pins: {},
  };
});
const parts = plots.flatMap((plot, at) =>
  at < Number(values.splits)
    ? ['a', 'b'].map((half) => ({ ...plot, id: `${plot.id}${half}`, parent: plot.id, area: plot.area / 2 }))
    : [plot],
);
const present = parts.map((part) =>
  courses(
    plots.findIndex((plot) => part.id.replace(/[ab]$/, '') === plot.id) + from.order.length - 1 + pastYears,
    from.years,
  ),
);
const evenM2 = plots.reduce((sum, plot) => sum + plot.area, 0) / from.order.length;
const demand = Object.fromEntries(
  from.order.map((course) => [
    course,
    Array.from({ length: from.years }, () => Math.round(evenM2 * (0.95 + 0.1 * chance()))),
  ]),
);
const isEven = plotCount % from.order.length === 0;
const weights = { ...from.weights, imbFreeAbs: isEven ? 0 : Math.max(...plots.map((plot) => plot.area)) / 100 };
const { expected: _, ...rest } = from;
const name = `random-${plotCount}x${from.order.length}-${values.infected}-${values.seed}`;
console.log(JSON.stringify({ ...rest, name, plots: parts, present, demand, weights }));
