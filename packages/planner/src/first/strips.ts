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

export const brassicas: FirstCourse = {
  id: 'brassicas',
  name: 'Ley to June, brassicas',
  strips: [
    {
      key: 'savoy',
      what: 'cabbage-savoy',
      fromShare: 0,
      toShare: 0.3,
      plant: '07-11',
      end: '03-05',
      endYearOffset: 1,
      under: { what: low, sow: '08-10' },
    },
    {
      key: 'kale',
      what: 'kale-curly',
      fromShare: 0.3,
      toShare: 0.5,
      plant: '07-11',
      end: '04-02',
      endYearOffset: 1,
      under: { what: low, sow: '08-10' },
    },
    { key: 'cauliflower', what: 'cauliflower-autumn', fromShare: 0.5, toShare: 0.7, plant: '07-10', end: '10-08' },
    { key: 'calabrese', what: 'calabrese', fromShare: 0.7, toShare: 1, plant: '07-10', end: '10-06' },
  ],
};

/** The same, off the ground by the end of February: with four courses the years of rest allow no more. */
export const brassicasToFebruary: FirstCourse = {
  ...brassicas,
  strips: brassicas.strips.map((strip) => (strip.endYearOffset === 1 ? { ...strip, end: '02-25' } : strip)),
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

export const roots: FirstCourse = {
  id: 'roots',
  name: 'Roots and beet',
  strips: [
    { key: 'carrot', what: 'carrot-maincrop', fromShare: 0, toShare: 0.4, sow: '05-08', end: '10-03' },
    { key: 'parsnip', what: 'parsnip', fromShare: 0.4, toShare: 0.55, sow: '04-18', end: '10-08' },
    { key: 'celeriac', what: 'celeriac', fromShare: 0.55, toShare: 0.7, plant: '05-18', end: '10-08' },
    { key: 'chard', what: 'chard', fromShare: 0.7, toShare: 0.8, plant: '05-16', end: '09-20' },
    { key: 'beetroot', what: 'beetroot-maincrop', fromShare: 0.8, toShare: 0.92, sow: '06-05', end: '10-03' },
    { key: 'lettuce-1', what: 'lettuce-head', fromShare: 0.92, toShare: 1, plant: '06-01', end: '07-22' },
    { key: 'lettuce-2', what: 'lettuce-head', fromShare: 0.92, toShare: 1, plant: '07-26', end: '09-20' },
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
