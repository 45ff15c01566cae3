/**
 * The crops of a first rotation: what stands on which stretch of a plot, course by course. A beginning in pencil, of common practice, to be
 * changed. Its dates keep to the sowing and planting windows of the reference tables (a test holds them to it).
 */

/** One crop of a course, and what is sown into it. The cover after it is chosen by `courses.ts`. */
export interface Strip {
  readonly key: string;
  readonly what: string;
  readonly fromShare: number;
  readonly toShare: number;
  readonly sow?: string;
  readonly plant?: string;
  readonly end: string;
  readonly endYearOffset?: 1;
  /** Cover or ley sown into it. */
  readonly under?: { readonly what: string; readonly sow: string };
}

export interface FirstCourse {
  readonly id: string;
  readonly name: string;
  readonly strips: readonly Strip[];
}

const low = 'mix-undersow-low';
/** Day on which a ley is turned in: five weeks before the first planting after it. */
export const leyEnd = '06-05';
export const undersownLey = 'mix-undersow-ley';
export const soleLey = 'mix-ley-clover-grass';

const overwintered = (end: string) => ({ end, endYearOffset: 1 as const, under: { what: low, sow: '08-10' } });

export const brassicas: FirstCourse = {
  id: 'brassicas',
  name: 'Ley to June, brassicas',
  strips: [
    { key: 'savoy', what: 'cabbage-savoy', fromShare: 0, toShare: 0.3, plant: '07-11', ...overwintered('03-05') },
    {
      key: 'sprouting',
      what: 'broccoli-purple-sprouting',
      fromShare: 0.3,
      toShare: 0.45,
      plant: '07-11',
      ...overwintered('04-08'),
    },
    { key: 'kale', what: 'kale-curly', fromShare: 0.45, toShare: 0.65, plant: '07-11', ...overwintered('04-02') },
    {
      key: 'cabbage',
      what: 'cabbage-autumn',
      fromShare: 0.65,
      toShare: 0.82,
      plant: '07-05',
      ...overwintered('01-10'),
      under: { what: low, sow: '08-05' },
    },
    { key: 'calabrese', what: 'calabrese', fromShare: 0.82, toShare: 1, plant: '07-10', end: '10-06' },
  ],
};

/** The same, off the ground by the end of February: with four courses the years of rest allow no more. */
export const brassicasToFebruary: FirstCourse = {
  ...brassicas,
  strips: brassicas.strips.map((strip) =>
    strip.endYearOffset === 1 && strip.end > '02-25' ? { ...strip, end: '02-25' } : strip,
  ),
};

export const potatoes: FirstCourse = {
  id: 'potatoes',
  name: 'Potatoes',
  strips: [
    { key: 'second-early', what: 'potato-second-early', fromShare: 0, toShare: 0.3, plant: '04-14', end: '08-24' },
    { key: 'maincrop', what: 'potato-maincrop', fromShare: 0.3, toShare: 1, plant: '05-02', end: '09-18' },
  ],
};

export const alliums: FirstCourse = {
  id: 'alliums',
  name: 'Onions and leeks',
  strips: [
    {
      key: 'onion',
      what: 'onion-set',
      fromShare: 0,
      toShare: 0.55,
      plant: '04-08',
      end: '08-24',
      under: { what: 'trefoil', sow: '06-10' },
    },
    {
      key: 'leek',
      what: 'leek-mid',
      fromShare: 0.55,
      toShare: 0.8,
      plant: '06-05',
      end: '01-28',
      endYearOffset: 1,
      under: { what: low, sow: '07-08' },
    },
    {
      key: 'leek-late',
      what: 'leek-late',
      fromShare: 0.8,
      toShare: 1,
      plant: '06-20',
      end: '05-02',
      endYearOffset: 1,
      under: { what: low, sow: '07-22' },
    },
  ],
};

/** Four narrow strips of lettuce follow one another, each planted twice, so that some is ready in most weeks of summer. */
const lettuces: readonly Strip[] = [
  ['05-08', '06-28', '07-02', '08-22'],
  ['05-20', '07-10', '07-14', '09-04'],
  ['06-02', '07-24', '07-28', '09-20'],
  ['06-14', '08-05', '08-09', '10-06'],
].flatMap(([plant = '', end = '', plantAgain = '', endAgain = ''], at) => {
  const fromShare = round(at * 0.02);
  const strip = { what: 'lettuce-head', fromShare, toShare: round(fromShare + 0.02) };
  return [
    { key: `lettuce-${at + 1}`, ...strip, plant, end },
    { key: `lettuce-${at + 5}`, ...strip, plant: plantAgain, end: endAgain },
  ];
});

export const roots: FirstCourse = {
  id: 'roots',
  name: 'Roots and beet',
  // Late leeks hold the right-hand fifth until May, so beetroot, sown last, lies there.
  strips: [
    ...lettuces,
    { key: 'chard', what: 'chard', fromShare: 0.08, toShare: 0.16, plant: '05-16', end: '10-06' },
    { key: 'carrot', what: 'carrot-maincrop', fromShare: 0.16, toShare: 0.54, sow: '05-08', end: '10-03' },
    { key: 'parsnip', what: 'parsnip', fromShare: 0.54, toShare: 0.64, sow: '04-18', end: '10-08' },
    { key: 'celeriac', what: 'celeriac', fromShare: 0.64, toShare: 0.8, plant: '05-18', end: '10-08' },
    { key: 'beetroot', what: 'beetroot-maincrop', fromShare: 0.8, toShare: 1, sow: '06-05', end: '10-03' },
  ],
};

const into = (sow: string) => ({ what: undersownLey, sow });

export const squash: FirstCourse = {
  id: 'squash',
  name: 'Squash, corn and beans',
  strips: [
    {
      key: 'squash',
      what: 'squash-maxima',
      fromShare: 0,
      toShare: 0.45,
      plant: '05-28',
      end: '09-26',
      under: into('06-28'),
    },
    {
      key: 'courgette',
      what: 'courgette',
      fromShare: 0.45,
      toShare: 0.6,
      plant: '05-29',
      end: '09-30',
      under: into('06-30'),
    },
    {
      key: 'corn',
      what: 'sweet-corn',
      fromShare: 0.6,
      toShare: 0.75,
      plant: '05-29',
      end: '09-24',
      under: into('07-01'),
    },
    {
      key: 'runner-bean',
      what: 'runner-bean',
      fromShare: 0.75,
      toShare: 0.9,
      sow: '06-01',
      end: '10-02',
      under: into('07-12'),
    },
    {
      key: 'french-bean',
      what: 'french-bean-dwarf',
      fromShare: 0.9,
      toShare: 1,
      sow: '06-01',
      end: '09-10',
      under: into('07-12'),
    },
  ],
};

/** Stretches of one course beside those of another on the same plot, for rotations of fewer courses. */
export function sideBySide(id: string, name: string, [left, right]: readonly [FirstCourse, FirstCourse]): FirstCourse {
  const half = (strip: Strip, at: number): Strip => ({
    ...strip,
    fromShare: round(at + strip.fromShare / 2),
    toShare: round(at + strip.toShare / 2),
  });
  return {
    id,
    name,
    strips: [...left.strips.map((strip) => half(strip, 0)), ...right.strips.map((strip) => half(strip, 0.5))],
  };
}

/** A course of the crops of another, without some. The ground is shared out anew in the same proportions. */
export function without(course: FirstCourse, keys: readonly string[]): FirstCourse {
  const kept = course.strips.filter((strip) => !keys.includes(strip.key));
  const edges = [...new Set(kept.flatMap((strip) => [`${strip.fromShare}-${strip.toShare}`]))].map(
    (edge) => edge.split('-').map(Number) as [number, number],
  );
  const total = edges.reduce((sum, [from, to]) => sum + to - from, 0);
  const moved = new Map<string, readonly [number, number]>();
  let at = 0;
  for (const [from, to] of edges) {
    const next = at + (to - from) / total;
    moved.set(`${from}-${to}`, [round(at), round(next)]);
    at = next;
  }
  return {
    ...course,
    strips: kept.map((strip) => {
      const [from, to] = moved.get(`${strip.fromShare}-${strip.toShare}`) ?? [strip.fromShare, strip.toShare];
      return { ...strip, fromShare: from, toShare: to };
    }),
  };
}

function round(share: number): number {
  return Math.round(share * 10_000) / 10_000;
}
