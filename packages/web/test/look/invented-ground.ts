/**
 * Ground of a farm that does not exist, to look at the pictures with. Every figure, name and date is invented and its growth a toy: for the
 * shape of pictures only, never passed off as agronomy. Nothing under test/ is shipped.
 */
import { addDays, asDay, type Day, dayNumber, dayOf } from '@leywright/measures';
import type { Horizon, Look, PlacedStand, PlotGround } from '@leywright/planner';

export const today = asDay('2027-01-12');
export const horizon: Horizon = { fromYear: 2022, toYear: 2031, firstMonday: asDay('2022-01-03'), weeks: 521 };

const plots = [
  ['A', 'Ash Piece', 9800],
  ['B', 'Brook Doles', 7400],
  ['C', 'Cinder Hill', 10_800],
  ['D', 'Dovecote', 8600],
  ['E', 'Elder Stubs', 6200],
  ['F', 'Far Ridding', 9200],
] as const;

interface Sketch {
  readonly name: string;
  readonly look: Look;
  readonly from: readonly [yearOffset: number, month: number, day: number];
  readonly to: readonly [yearOffset: number, month: number, day: number];
  readonly span?: readonly [number, number];
  readonly harvest?: readonly [yearOffset: number, month: number, day: number];
  readonly under?: string;
  readonly full: number;
  readonly riseWeeks: number;
  readonly mown?: boolean;
}

const courses = [
  'Ley, first year',
  'Ley to June, brassicas',
  'Potatoes',
  'Alliums',
  'Roots and beet',
  'Squash, corn, beans',
] as const;

const sketches: readonly (readonly Sketch[])[] = [
  [],
  [
    {
      name: 'Cabbages',
      look: 'brassica',
      from: [0, 6, 28],
      to: [1, 3, 20],
      harvest: [0, 10, 10],
      span: [0, 0.34],
      full: 0.95,
      riseWeeks: 9,
    },
    {
      name: 'Kale',
      look: 'brassica',
      from: [0, 6, 20],
      to: [1, 3, 25],
      harvest: [0, 10, 20],
      span: [0.34, 0.62],
      full: 0.9,
      riseWeeks: 9,
    },
    {
      name: 'Purple sprouting',
      look: 'brassica',
      from: [0, 7, 5],
      to: [1, 4, 2],
      harvest: [1, 2, 10],
      span: [0.62, 1],
      full: 0.95,
      riseWeeks: 10,
    },
  ],
  [
    { name: 'Potatoes', look: 'potato', from: [0, 4, 16], to: [0, 9, 2], harvest: [0, 8, 8], full: 1, riseWeeks: 8 },
    { name: 'Rye, vetch', look: 'cover', from: [0, 9, 6], to: [1, 3, 22], full: 0.9, riseWeeks: 9 },
  ],
  [
    {
      name: 'Onions',
      look: 'allium',
      from: [0, 3, 28],
      to: [0, 8, 14],
      harvest: [0, 7, 26],
      span: [0, 0.55],
      full: 0.62,
      riseWeeks: 16,
    },
    {
      name: 'Leeks',
      look: 'allium',
      from: [0, 6, 14],
      to: [1, 4, 4],
      harvest: [0, 10, 1],
      span: [0.55, 1],
      full: 0.5,
      riseWeeks: 14,
    },
    {
      name: 'Trefoil',
      look: 'undersown',
      from: [0, 6, 10],
      to: [1, 4, 10],
      span: [0, 0.55],
      under: 'Onions',
      full: 0.92,
      riseWeeks: 8,
    },
  ],
  [
    {
      name: 'Carrots',
      look: 'root',
      from: [0, 5, 6],
      to: [0, 10, 30],
      harvest: [0, 9, 24],
      span: [0, 0.5],
      full: 0.92,
      riseWeeks: 11,
    },
    {
      name: 'Beetroot',
      look: 'beet',
      from: [0, 5, 18],
      to: [0, 10, 22],
      harvest: [0, 9, 10],
      span: [0.5, 0.8],
      full: 0.95,
      riseWeeks: 9,
    },
    {
      name: 'Parsnips',
      look: 'root',
      from: [0, 4, 12],
      to: [0, 12, 1],
      harvest: [0, 10, 25],
      span: [0.8, 1],
      full: 0.9,
      riseWeeks: 13,
    },
    { name: 'Rye, vetch', look: 'cover', from: [0, 9, 10], to: [1, 5, 1], under: 'Carrots', full: 0.9, riseWeeks: 12 },
  ],
  [
    {
      name: 'Squash',
      look: 'squash',
      from: [0, 5, 30],
      to: [0, 9, 30],
      harvest: [0, 9, 15],
      span: [0, 0.6],
      full: 0.95,
      riseWeeks: 6,
    },
    {
      name: 'Sweet corn',
      look: 'squash',
      from: [0, 5, 26],
      to: [0, 9, 20],
      harvest: [0, 8, 20],
      span: [0.6, 0.8],
      full: 0.8,
      riseWeeks: 8,
    },
    {
      name: 'French beans',
      look: 'pulse',
      from: [0, 6, 1],
      to: [0, 9, 25],
      harvest: [0, 8, 1],
      span: [0.8, 1],
      full: 0.85,
      riseWeeks: 6,
    },
    {
      name: 'Ley',
      look: 'ley',
      from: [0, 7, 4],
      to: [2, 6, 14],
      under: 'Squash',
      full: 0.98,
      riseWeeks: 9,
      mown: true,
    },
  ],
];

/** Six plots on six courses, with one winter left bare on F and one on E. */
export function inventedGround(): readonly PlotGround[] {
  return plots.map(([letter, name, grossM2], index) => groundOf({ letter, name, grossM2, index }));
}

function groundOf({
  letter,
  name,
  grossM2,
  index,
}: {
  readonly letter: string;
  readonly name: string;
  readonly grossM2: number;
  readonly index: number;
}): PlotGround {
  const plot = name.toLowerCase().replace(' ', '-');
  const years = Array.from({ length: 12 }, (_, at) => 2021 + at);
  const courseOf = (year: number) => (year - 2027 + ([0, 5, 1, 4, 2, 3][index] ?? 0) + 60) % 6;
  const isBareWinter = (year: number) => (letter === 'F' && year === 2028) || (letter === 'E' && year === 2023);
  const stands = years
    .flatMap((year) =>
      (sketches[courseOf(year)] ?? [])
        .filter((sketch) => !(sketch.look === 'cover' && sketch.under === 'Carrots' && isBareWinter(year)))
        .map((sketch) => standOf(sketch, { plot, year, areaM2: grossM2 })),
    )
    .filter((stand) => stand.to > horizon.firstMonday && stand.from < '2032-01-01');
  const bare =
    letter === 'F' || letter === 'E'
      ? [
          letter === 'F'
            ? bareOf(plot, ['2028-11-02', '2029-04-20'], null, grossM2)
            : bareOf(plot, ['2023-11-02', '2024-04-10'], 'too wet to drill', grossM2),
        ]
      : [];
  return {
    plot,
    letter,
    name,
    kind: 'rotation',
    soil: null,
    stands,
    bare,
    visits: [],
    findings: [],
    coverShare: [],
    area: {
      grossM2,
      bufferM2: 0,
      bufferBy: 'none',
      bankM2: 0,
      headlandM2: grossM2 * 0.06,
      netM2: grossM2 * 0.94,
      why: `net/${plot}`,
    },
    courses: years
      .filter((year) => year > 2021)
      .map((year) => ({ year, course: `course-${courseOf(year)}`, name: courses[courseOf(year)] ?? '' })),
    bareCounts: years
      .slice(1, 11)
      .map((year) => ({ plot, winter: year, bareDays: isBareWinter(year - 1) ? 150 : courseOf(year) * 3 })),
  };
}

function bareOf(plot: string, [from, to]: readonly [string, string], answered: string | null, areaM2: number) {
  return {
    plot,
    span: { fromShare: 0, toShare: 1 },
    from: asDay(from),
    to: asDay(to),
    days: dayNumber(asDay(to)) - dayNumber(asDay(from)),
    leachingDays: 140,
    areaM2,
    before: 'Carrots',
    after: null,
    answered,
  };
}

function standOf(
  sketch: Sketch,
  { plot, year, areaM2 }: { readonly plot: string; readonly year: number; readonly areaM2: number },
): PlacedStand {
  const shift = Math.round(Math.sin(year * 7 + plot.length * 3) * 8);
  const on = ([offset, month, day]: readonly [number, number, number]): Day =>
    addDays(dayOf(year + offset, month, day), shift);
  const from = on(sketch.from);
  const to = on(sketch.to);
  const [fromShare, toShare] = sketch.span ?? [0, 1];
  const coverFromWeek = Math.floor((dayNumber(from) - dayNumber(horizon.firstMonday)) / 7);
  const weeks = Math.ceil((dayNumber(to) - dayNumber(from)) / 7) + 1;
  const harvestFrom = sketch.harvest === undefined ? null : on(sketch.harvest);
  const harvestWeek = harvestFrom === null ? null : (dayNumber(harvestFrom) - dayNumber(from)) / 7;
  return {
    id: `${plot}.${year}.${sketch.name.toLowerCase().replace(/[^a-z]+/g, '-')}`,
    succession: null,
    plot,
    span: { fromShare, toShare },
    areaM2: areaM2 * (toShare - fromShare),
    what: sketch.name,
    kind: sketch.look === 'ley' ? 'ley' : sketch.look === 'cover' || sketch.look === 'undersown' ? 'cover' : 'crop',
    look: sketch.look,
    family: null,
    name: sketch.name,
    variety: null,
    state:
      from < today
        ? 'recorded'
        : year === 2029 && plot === 'brook-doles' && sketch.look === 'brassica'
          ? 'pencil'
          : 'agreed',
    origin: 'rotation',
    from,
    to,
    sownOn: from,
    plantedOn: null,
    harvestFrom,
    harvestTo: harvestFrom === null ? null : to,
    driftDays: 0,
    undersownIn: sketch.under === undefined ? null : `${plot}.${year}.${sketch.under.toLowerCase()}`,
    course: `course-${year}`,
    courseYear: year,
    endedBy: null,
    establishedShare: null,
    reason: null,
    coverFromWeek,
    coverShare: Array.from({ length: weeks }, (_, week) => toyCover(sketch, { week, weeks, harvestWeek })),
    coverBasis: 'derived',
  };
}

function toyCover(
  { full, riseWeeks, mown }: Sketch,
  { week, weeks, harvestWeek }: { readonly week: number; readonly weeks: number; readonly harvestWeek: number | null },
): number {
  const grown = full / (1 + Math.exp(-(week - riseWeeks * 0.62) / (riseWeeks * 0.13)));
  const cut = mown === true && week > 20 && week % 11 < 2 ? 0.68 + (week % 11) * 0.14 : 1;
  if (harvestWeek === null || week < harvestWeek) return grown * cut;
  const left = 1 - ((week - harvestWeek) / Math.max(1, weeks - harvestWeek)) ** 1.1;
  return grown * Math.max(0, Math.ceil(left * 7) / 7);
}
