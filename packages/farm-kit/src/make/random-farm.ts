/**
 * Farms of any size from a seed, for benches and for tests that want many farms: plots with their past, a plan, a promise, stores
 * and hands. Each plot goes through crops and covers one after another, sometimes in halves, sometimes undersown. Nothing about
 * them is good husbandry; all of them can be read, planned and written.
 */
import type { Farm, Plot, Stand } from '@leywright/book';
import { addDays, asDay, asId, type Day, yearOf } from '@leywright/measures';
import { farmWith, plot, span } from '../build/farm.ts';
import { boxPromise, boxSize, person, slot, storePlace } from '../build/promise.ts';
import { stand } from '../build/stand.ts';
import { type Chance, chanceFrom } from './chance.ts';

export interface FarmSize {
  readonly seed: number;
  readonly plots: number;
  readonly years: number;
  /** Different crops, at most as many as are listed here. */
  readonly crops: number;
  readonly firstYear?: number;
}

interface GrownCrop {
  readonly id: string;
  readonly from: string;
  readonly days: number;
  readonly planted: boolean;
  readonly undersow?: string;
}

/** Crops of the reference with a usual day and length of stay. */
const grown: readonly GrownCrop[] = [
  { id: 'potato-maincrop', from: '04-25', days: 150, planted: true },
  { id: 'onion-set', from: '04-08', days: 130, planted: true, undersow: 'trefoil' },
  { id: 'carrot-maincrop', from: '05-08', days: 150, planted: false },
  { id: 'cabbage-autumn', from: '06-10', days: 130, planted: true },
  { id: 'squash-maxima', from: '05-27', days: 124, planted: true, undersow: 'mix-undersow-ley' },
  { id: 'beetroot-maincrop', from: '05-22', days: 130, planted: false },
  { id: 'leek-mid', from: '06-05', days: 210, planted: true, undersow: 'trefoil' },
  { id: 'lettuce-head', from: '05-10', days: 55, planted: true },
  { id: 'french-bean-dwarf', from: '06-01', days: 80, planted: false },
  { id: 'kale-curly', from: '07-05', days: 220, planted: true },
  { id: 'parsnip', from: '04-20', days: 175, planted: false },
  { id: 'sweet-corn', from: '05-28', days: 110, planted: true },
  { id: 'celeriac', from: '05-20', days: 140, planted: true },
  { id: 'chard', from: '05-01', days: 140, planted: true },
  { id: 'broad-bean-spring', from: '03-20', days: 115, planted: false },
  { id: 'calabrese', from: '06-15', days: 85, planted: true },
];

export function randomFarm(size: FarmSize): Farm {
  const chance = chanceFrom(size.seed);
  const firstYear = size.firstYear ?? 2020;
  const crops = grown.slice(0, Math.max(1, Math.min(size.crops, grown.length)));
  const plots = Array.from({ length: size.plots }, (_, at) => randomPlot(at, chance));
  return farmWith({
    about: { id: `random-${size.seed}`, name: `Random farm ${size.seed}` },
    plots,
    stands: plots.flatMap((one) => standsOf(one, { crops, firstYear, years: size.years, chance })),
    promise: boxPromise({
      sizes: [boxSize('small', chance.whole(5, 120)), boxSize('large', chance.whole(5, 60))],
      itemsPerBox: Math.min(7, crops.length),
      closedEveryYear: [1, 52],
      slots: crops.map((crop) =>
        slot(crop.id, {
          from: '01-01',
          to: '12-31',
          portions: { small: chance.between(0.2, 1), large: chance.between(0.5, 2) },
        }),
      ),
    }),
    stores: [
      storePlace(
        'cold',
        'cold',
        crops.map((crop) => crop.id),
        chance.whole(5, 60) * 1000,
      ),
    ],
    people: [person('grower', { hoursWeek: chance.whole(20, 160) })],
  });
}

function randomPlot(at: number, chance: Chance): Plot {
  return plot(`P${at + 1}`, {
    id: `p${at + 1}`,
    grossM2: chance.whole(1500, 15_000),
    hedgeM: chance.happens(0.5) ? chance.whole(0, 200) : 0,
    bankM2: chance.happens(0.3) ? chance.whole(0, 300) : 0,
    headlandShare: chance.oneOf([null, 0, 0.06, 0.12]),
    bedCount: chance.oneOf([null, 20, 40]),
  });
}

interface Growing {
  readonly crops: readonly GrownCrop[];
  readonly firstYear: number;
  readonly years: number;
  readonly chance: Chance;
}

function standsOf(one: Plot, growing: Growing): readonly Stand[] {
  const halves = growing.chance.happens(0.4) ? [span(0, 0.5), span(0.5, 1)] : [span()];
  return halves.flatMap((where, half) => {
    const stands: Stand[] = [];
    let free = asDay(`${growing.firstYear}-01-01`);
    while (yearOf(free) < growing.firstYear + growing.years) {
      const next = nextStands(one.id, free, growing).map((it) => ({
        ...it,
        id: asId<Stand['id']>(`${it.id}-${half + 1}`),
        span: where,
        undersownIn: it.undersownIn === null ? null : asId<Stand['id']>(`${it.undersownIn}-${half + 1}`),
      }));
      stands.push(...next);
      free = [free, ...next.map((it) => it.to)].sort().at(-1) ?? free;
    }
    return stands;
  });
}

/** A crop, what is sown into it or after it, from the first of its usual days that lies far enough on. */
function nextStands(plotId: string, free: Day, { crops, chance }: Growing): readonly Stand[] {
  const crop = chance.oneOf(crops);
  const thisYear = asDay(`${yearOf(free)}-${crop.from}`);
  const from = addDays(thisYear >= free ? thisYear : asDay(`${yearOf(free) + 1}-${crop.from}`), chance.whole(0, 5));
  const to = addDays(from, crop.days + chance.whole(-4, 4));
  const id = `${plotId}-${yearOf(from)}-${crop.id}`;
  const own = stand(plotId, crop.id, [from, to], { id, ...(crop.planted ? { plantedOn: from } : {}) });
  if (crop.undersow !== undefined && chance.happens(0.6)) {
    const sown = addDays(from, 33);
    return [
      own,
      stand(plotId, crop.undersow, [sown, addDays(to, chance.whole(120, 400))], {
        id: `${id}-undersown`,
        kind: crop.undersow.includes('ley') ? 'ley' : 'cover',
        undersownIn: id,
      }),
    ];
  }
  const coverFrom = addDays(to, chance.whole(1, 20));
  return chance.happens(0.7)
    ? [
        own,
        stand(
          plotId,
          chance.oneOf(['grazing-rye', 'mix-rye-vetch', 'phacelia']),
          [coverFrom, addDays(coverFrom, chance.whole(60, 190))],
          { id: `${id}-cover`, kind: 'cover' },
        ),
      ]
    : [own];
}
