/** Boxes, work and nitrogen of the farm that does not exist: invented, for the shape of pictures only. */
import { addDays, asIsoWeek, mondayOf } from '@leywright/measures';
import type { BoxItem, BoxWeek, Job, JobKind, Look, NitrogenYear, PlotGround, Supply, Work } from '@leywright/planner';

type Source = 'field' | 'tunnel' | 'store';
type Weeks = readonly (readonly [from: number, to: number, source: Source])[];

const crops: readonly (readonly [
  name: string,
  look: Look,
  share: number,
  portion: number,
  unit: 'kg' | 'head' | 'bunch',
  weeks: Weeks,
])[] = [
  [
    'Squash',
    'squash',
    0.7,
    1,
    'kg',
    [
      [38, 40, 'field'],
      [41, 53, 'store'],
      [1, 8, 'store'],
    ],
  ],
  [
    'Leeks',
    'allium',
    0.9,
    0.5,
    'kg',
    [
      [38, 53, 'field'],
      [1, 15, 'field'],
    ],
  ],
  [
    'Kale',
    'brassica',
    0.7,
    0.25,
    'kg',
    [
      [38, 53, 'field'],
      [1, 13, 'field'],
    ],
  ],
  ['Cauliflower', 'brassica', 0.5, 1, 'head', [[39, 47, 'field']]],
  [
    'Celeriac',
    'root',
    0.4,
    1,
    'head',
    [
      [41, 46, 'field'],
      [47, 53, 'store'],
      [1, 11, 'store'],
    ],
  ],
  [
    'Parsnips',
    'root',
    0.6,
    0.6,
    'kg',
    [
      [43, 53, 'field'],
      [1, 9, 'field'],
      [10, 13, 'store'],
    ],
  ],
  [
    'Winter salad',
    'salad',
    0.8,
    0.15,
    'kg',
    [
      [43, 53, 'tunnel'],
      [1, 21, 'tunnel'],
    ],
  ],
  [
    'Swede',
    'brassica',
    0.3,
    0.7,
    'kg',
    [
      [44, 53, 'field'],
      [1, 7, 'field'],
      [8, 12, 'store'],
    ],
  ],
  [
    'Winter cabbage',
    'brassica',
    0.6,
    1,
    'head',
    [
      [44, 53, 'field'],
      [1, 12, 'field'],
      [13, 16, 'store'],
    ],
  ],
  ['Purple sprouting', 'brassica', 0.9, 0.3, 'kg', [[6, 13, 'field']]],
  ['Spinach', 'beet', 0.8, 0.25, 'kg', [[11, 22, 'tunnel']]],
  [
    'Chard',
    'beet',
    0.7,
    0.3,
    'kg',
    [
      [12, 16, 'tunnel'],
      [17, 26, 'field'],
      [29, 45, 'field'],
    ],
  ],
  ['Rhubarb', 'salad', 0.8, 0.4, 'kg', [[14, 25, 'field']]],
  [
    'Lettuce',
    'salad',
    0.9,
    1,
    'head',
    [
      [14, 19, 'tunnel'],
      [20, 42, 'field'],
    ],
  ],
  [
    'Radish',
    'brassica',
    0.5,
    1,
    'bunch',
    [
      [15, 19, 'tunnel'],
      [20, 26, 'field'],
    ],
  ],
  ['Spring cabbage', 'brassica', 0.7, 1, 'head', [[15, 24, 'tunnel']]],
  ['Spring onions', 'allium', 0.7, 1, 'bunch', [[21, 35, 'field']]],
  [
    'Carrots',
    'root',
    1,
    0.6,
    'kg',
    [
      [1, 20, 'store'],
      [23, 25, 'tunnel'],
      [26, 45, 'field'],
      [46, 53, 'store'],
    ],
  ],
  [
    'Potatoes',
    'potato',
    1,
    0.8,
    'kg',
    [
      [1, 23, 'store'],
      [24, 26, 'tunnel'],
      [27, 38, 'field'],
      [39, 53, 'store'],
    ],
  ],
  ['Broad beans', 'pulse', 0.8, 0.6, 'kg', [[25, 30, 'field']]],
  ['Cucumbers', 'squash', 0.7, 1, 'head', [[25, 38, 'tunnel']]],
  ['Peas', 'pulse', 0.7, 0.4, 'kg', [[26, 32, 'field']]],
  [
    'Beetroot',
    'beet',
    0.6,
    0.5,
    'kg',
    [
      [1, 16, 'store'],
      [27, 44, 'field'],
      [45, 53, 'store'],
    ],
  ],
  ['Tomatoes', 'salad', 0.9, 0.4, 'kg', [[27, 41, 'tunnel']]],
  ['Courgettes', 'squash', 0.8, 0.5, 'kg', [[27, 40, 'field']]],
  [
    'Onions',
    'allium',
    1,
    0.5,
    'kg',
    [
      [1, 22, 'store'],
      [30, 33, 'field'],
      [34, 53, 'store'],
    ],
  ],
  ['French beans', 'pulse', 0.7, 0.35, 'kg', [[30, 39, 'field']]],
  ['Sweet corn', 'squash', 0.7, 2, 'head', [[33, 38, 'field']]],
];

const promised = 7;
const closed: readonly number[] = [1, 33, 52];

export function inventedSupply(ground: readonly PlotGround[], year: number): Supply {
  const boxes = Array.from({ length: 52 }, (_, index) => boxOf(index + 1, year, ground));
  return {
    year,
    boxWeeks: 49,
    households: 260,
    needs: [],
    harvests: [],
    stores: [],
    boxes,
    reach: null,
    hungryGap: { from: asIsoWeek(`${year}-w23`), to: asIsoWeek(`${year}-w27`) },
  };
}

function boxOf(number: number, year: number, ground: readonly PlotGround[]): BoxWeek {
  const week = asIsoWeek(`${year}-w${String(number).padStart(2, '0')}`);
  const isClosed = closed.includes(number);
  const items = isClosed ? [] : fill(number, ground);
  const itemsPerBox = items.reduce((sum, { boxesShare }) => sum + boxesShare, 0);
  const short = Math.max(0, promised - itemsPerBox);
  const doubt = number > 18 && number < 30 ? 1.1 : 0.6;
  return {
    week,
    weekIndex: (year - 2022) * 52 + number,
    packOn: addDays(mondayOf(week), 3),
    closed: isClosed ? 'closed' : null,
    boxes: isClosed ? 0 : 260,
    promised: isClosed ? 0 : promised,
    items,
    missing: Array.from({ length: Math.round(short) }, (_, slot) => ({
      slot: `slot-${slot}`,
      crops: [],
      boxesShare: 1,
    })),
    itemsPerBox,
    shortItems: short < 0.3 ? 0 : short,
    low: Math.max(0, itemsPerBox - doubt),
    high: itemsPerBox + doubt * 0.7,
    why: `box/${week}`,
  };
}

function fill(number: number, ground: readonly PlotGround[]): readonly BoxItem[] {
  const scarce = number >= 23 && number <= 27;
  let room = scarce ? ([6, 6, 5.6, 5, 6][number - 23] ?? 6) : promised;
  const wanted = crops
    .flatMap(([name, look, share, portion, unit, weeks]) => {
      const source = weeks.find(([from, to]) => number >= from && number <= to)?.[2];
      return source === undefined ? [] : [{ name, look, share, portion, unit, source }];
    })
    .filter(({ share }) => share > 0)
    .sort((a, b) => Number(a.source === 'store') - Number(b.source === 'store') || b.share - a.share);
  return wanted.flatMap(({ name, look, share, portion, unit, source }): BoxItem[] => {
    const boxesShare = Math.min(share, room);
    room -= boxesShare;
    if (boxesShare < 0.15) return [];
    const plot = ground[(name.length * 5) % ground.length];
    return [
      {
        slot: name,
        crop: name.toLowerCase(),
        name,
        look,
        from: source,
        plots: source === 'field' && plot !== undefined ? [plot.plot] : [],
        boxesShare,
        kg: 200 * portion * boxesShare,
        portions: { small: portion * 0.75, medium: portion, large: portion * 1.5 },
        unit,
      },
    ];
  });
}

const jobSketches: readonly (readonly [
  JobKind,
  string,
  number | null,
  number,
  number | null,
  Job['amountUnit'],
  boolean,
])[] = [
  ['net', 'Carrots', 3, 3, null, null, true],
  ['cut', 'Lettuce', 3, 4, 234, 'kg', false],
  ['hoe', 'Carrots', 3, 6, null, null, false],
  ['undersow', 'Trefoil', 5, 1.5, 11, 'kg', false],
  ['plant', 'Squash', 1, 9, 860, 'plants', false],
  ['mow', 'Ley', 2, 2, null, null, true],
  ['sow-modules', 'Kale', null, 2.5, 12, 'trays', false],
  ['pack', 'Boxes', null, 26, 260, 'boxes', false],
  ['deliver', 'Three rounds', null, 9, null, null, false],
];

export function inventedWork(ground: readonly PlotGround[], year: number): Work {
  const weeks = Array.from({ length: 52 }, (_, index) => asIsoWeek(`${year}-w${String(index + 1).padStart(2, '0')}`));
  const jobs = weeks.flatMap((week, at) =>
    jobSketches
      .filter((_, index) => (at + index) % 4 !== 1)
      .map(([kind, name, plotAt, hours, amount, amountUnit, isDone], index): Job => {
        const plot = plotAt === null ? null : (ground[plotAt] ?? null);
        const from = mondayOf(week);
        return {
          id: `${week}-${index}`,
          kind,
          plot: plot?.plot ?? null,
          letter: plot?.letter ?? null,
          stand: null,
          crop: null,
          name,
          from,
          to: addDays(from, 4),
          week,
          areaM2: kind === 'hoe' ? 2400 : null,
          rowM: null,
          amount,
          amountUnit,
          hours: { low: hours * 0.7, typ: hours, high: hours * 1.4 },
          basis: '',
          doneShare: isDone ? 1 : 0,
          caution: null,
          course: null,
          window: { from, to: addDays(from, 6) },
          tools: [],
          skill: null,
          after: [],
          waitsFor: [],
        };
      }),
  );
  return {
    year,
    jobs,
    yearH: 4100,
    weeks: weeks.map((week, index) => {
      const hours = 60 + 55 * Math.max(0, Math.sin(((index - 8) / 40) * Math.PI));
      return {
        week,
        hours: { low: hours * 0.8, typ: hours, high: hours * 1.25 },
        handsH: 96,
        byKind: {},
        why: `hours/${week}`,
      };
    }),
  };
}

export function inventedNitrogen(ground: readonly PlotGround[]): readonly NitrogenYear[] {
  return ground.flatMap((plot, index) =>
    plot.courses.map(({ year, course }): NitrogenYear => {
      const at = Number(course.slice(-1));
      const fixed = [190, 110, 20, 30, 25, 60][at] ?? 0;
      const off = [0, 120, 95, 60, 85, 70][at] ?? 0;
      const wide = 0.3 + index * 0.02;
      return {
        plot: plot.plot,
        year,
        course,
        fixedKgHa: { low: fixed * (1 - wide), high: fixed * (1 + wide) },
        otherInKgHa: { low: 10, high: 20 },
        offtakeKgHa: { low: off * 0.85, high: off * 1.15 },
        lostKgHa: { low: 8, high: 26 },
        leftKgHa: { low: fixed * (1 - wide) + 10 - off * 1.15 - 26, high: fixed * (1 + wide) + 20 - off * 0.85 - 8 },
        doubt: [],
        why: `nitrogen/${plot.plot}/${year}`,
      };
    }),
  );
}
