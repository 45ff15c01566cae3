/** What the sample farm promises, keeps it with, and who does the work. All names and prices are invented. */
import type { BoxPromise, OwnCrop, OwnStoreLoss, Person, Price, SaleUnit, Slot, StorePlace } from '@leywright/book';
import { asId, asMonthDay } from '@leywright/measures';
import { boxPromise, ownCrop, person, price, slot, storePlace } from '../build/promise.ts';

type Portions = readonly [small: number, medium: number, large: number];

interface PlaceInBox {
  readonly from: string;
  readonly to: string;
  /** Portions by size, in the unit they are counted in. */
  readonly kg?: Portions;
  readonly head?: Portions;
  readonly bunch?: Portions;
  readonly everyWeeks?: number;
}

function place(id: string, crops: string, { from, to, everyWeeks = 1, ...counted }: PlaceInBox): Slot {
  const unit: SaleUnit = counted.kg ? 'kg' : counted.head ? 'head' : 'bunch';
  const [small, medium, large] = counted[unit] ?? [0, 0, 0];
  return slot(crops.split(' '), { id, from, to, unit, portions: { small, medium, large }, everyWeeks });
}

/** Seven places in every week of the year; places that take turns week about are two lines, begun a week apart. */
const slots: readonly Slot[] = [
  place('potatoes', 'potato-first-early potato-second-early potato-maincrop', {
    from: '01-01',
    to: '12-31',
    kg: [0.65, 0.9, 1.4],
  }),
  place('carrots', 'carrot-maincrop', { from: '09-14', to: '06-20', kg: [0.45, 0.6, 0.9] }),
  place('bunched-carrots', 'carrot-bunching', { from: '06-21', to: '09-13', bunch: [1, 1, 1] }),
  place('onions', 'onion-set', { from: '08-10', to: '06-06', kg: [0.33, 0.47, 0.7] }),
  place('spring-onions', 'spring-onion', { from: '06-07', to: '08-09', bunch: [1, 1, 1] }),
  place('leeks', 'leek-early leek-mid leek-late', { from: '09-11', to: '05-07', kg: [0.28, 0.37, 0.55] }),
  place('lettuce', 'lettuce-head', { from: '05-08', to: '08-19', head: [1, 1, 1] }),
  place('late-lettuce', 'lettuce-head', { from: '08-20', to: '09-10', head: [1, 1, 1], everyWeeks: 2 }),
  place('fennel', 'fennel-florence', { from: '08-27', to: '09-10', head: [1, 1, 1], everyWeeks: 2 }),
  place('winter-greens', 'cabbage-savoy kale-curly brussels-sprout broccoli-purple-sprouting cabbage-red', {
    from: '11-08',
    to: '04-05',
    kg: [0.38, 0.5, 0.75],
  }),
  place('spring-greens', 'broccoli-purple-sprouting cauliflower-winter cabbage-spring', {
    from: '04-06',
    to: '05-31',
    kg: [0.34, 0.44, 0.64],
  }),
  place('peas', 'broad-bean-spring pea', { from: '06-01', to: '07-27', kg: [0.3, 0.4, 0.6] }),
  place('first-beans', 'french-bean-dwarf', { from: '07-01', to: '07-10', kg: [0.2, 0.3, 0.4] }),
  place('beans', 'french-bean-dwarf runner-bean', { from: '07-28', to: '08-19', kg: [0.25, 0.35, 0.5] }),
  place('sweet-corn', 'sweet-corn', { from: '08-20', to: '09-10', head: [2, 2, 3], everyWeeks: 2 }),
  place('late-beans', 'runner-bean french-bean-dwarf', {
    from: '08-27',
    to: '09-10',
    kg: [0.25, 0.35, 0.5],
    everyWeeks: 2,
  }),
  place('autumn-brassicas', 'calabrese cauliflower-autumn cabbage-red', {
    from: '09-11',
    to: '11-07',
    kg: [0.4, 0.5, 0.7],
  }),
  place('beet', 'beetroot-maincrop swede celeriac', { from: '10-01', to: '04-12', kg: [0.4, 0.5, 0.8], everyWeeks: 2 }),
  place('roots', 'parsnip celeriac swede', { from: '10-08', to: '04-12', kg: [0.4, 0.5, 0.8], everyWeeks: 2 }),
  place('rhubarb', 'rhubarb', { from: '04-13', to: '06-30', kg: [0.2, 0.34, 0.4] }),
  place('courgettes', 'courgette', { from: '07-25', to: '09-10', kg: [0.5, 0.7, 1], everyWeeks: 2 }),
  place('cucumbers', 'cucumber-tunnel', { from: '07-18', to: '09-10', head: [1, 1, 2], everyWeeks: 2 }),
  place('squash', 'squash-pepo-winter squash-maxima', { from: '10-01', to: '02-28', head: [1, 1, 1], everyWeeks: 2 }),
  place(
    'winter-leaves',
    'endive chicory-sugarloaf lambs-lettuce winter-salad-tunnel winter-purslane lettuce-winter-tunnel',
    {
      from: '10-08',
      to: '02-28',
      kg: [0.12, 0.16, 0.25],
      everyWeeks: 2,
    },
  ),
  place('spring-leaves', 'lambs-lettuce winter-salad-tunnel winter-purslane lettuce-winter-tunnel spinach', {
    from: '03-01',
    to: '05-04',
    kg: [0.1, 0.12, 0.18],
  }),
  place('spinach', 'spinach', { from: '05-05', to: '05-28', kg: [0.14, 0.18, 0.28] }),
  place('chard', 'chard', { from: '05-29', to: '07-24', bunch: [1, 1, 1] }),
  place('autumn-chard', 'chard', { from: '09-11', to: '09-30', bunch: [1, 1, 1] }),
  place('first-cucumbers', 'cucumber-tunnel', { from: '07-11', to: '07-17', head: [1, 1, 1] }),
  place('tomatoes', 'tomato-tunnel', { from: '07-25', to: '09-30', kg: [0.3, 0.4, 0.6] }),
];

export const samplePromise: BoxPromise = boxPromise({
  sizes: [
    { id: 'small', name: 'Small', households: 118 },
    { id: 'medium', name: 'Medium', households: 104 },
    { id: 'large', name: 'Large', households: 38 },
  ],
  itemsPerBox: 7,
  packWeekday: 4,
  closedEveryYear: [1, 33, 52],
  slots,
});

export const sampleStores: readonly StorePlace[] = [
  {
    ...storePlace(
      'cold-store',
      'cold',
      [
        'potato-maincrop',
        'carrot-maincrop',
        'parsnip',
        'celeriac',
        'beetroot-maincrop',
        'swede',
        'onion-set',
        'cabbage-red',
        'endive',
        'chicory-sugarloaf',
      ],
      46_000,
    ),
    name: 'Cold store',
  },
  { ...storePlace('barn', 'ambient_frost_free', ['potato-second-early'], 6_000), name: 'Barn' },
  { ...storePlace('squash-loft', 'ambient_warm', ['squash-maxima', 'squash-pepo-winter'], 8_000), name: 'Squash loft' },
];

/** From four winters of weighings of the invented farm. */
export const sampleStoreLosses: readonly OwnStoreLoss[] = [
  { crop: asId('potato-maincrop'), from: null, lossShareWeek: 0.004 },
  { crop: asId('carrot-maincrop'), from: null, lossShareWeek: 0.006 },
  { crop: asId('onion-set'), from: null, lossShareWeek: 0.005 },
];

export const sampleCrops: readonly OwnCrop[] = [
  ownCrop('carrot-maincrop', { yieldMarketableTHa: 31, gradingLossShare: 0.16 }),
  ownCrop('potato-maincrop', { yieldMarketableTHa: 25, gradingLossShare: 0.12 }),
  ownCrop('onion-set', { yieldMarketableTHa: 17, gradingLossShare: 0.1 }),
];

/** Pence. */
export const samplePrices: readonly Price[] = [
  ...prices('kg', {
    'potato-maincrop': 150,
    'potato-first-early': 240,
    'potato-second-early': 180,
    'carrot-maincrop': 190,
    'onion-set': 210,
    'leek-early': 340,
    'leek-mid': 340,
    'leek-late': 340,
    parsnip: 260,
    'beetroot-maincrop': 210,
    celeriac: 250,
    swede: 170,
    courgette: 300,
    'french-bean-dwarf': 720,
    'runner-bean': 560,
    pea: 640,
    'broad-bean-spring': 420,
    'tomato-tunnel': 480,
    spinach: 780,
    'brussels-sprout': 420,
    'broccoli-purple-sprouting': 780,
    rhubarb: 380,
    'winter-salad-tunnel': 1400,
    'winter-purslane': 1400,
    'lambs-lettuce': 1500,
    'lettuce-winter-tunnel': 1300,
  }),
  ...prices('head', {
    'lettuce-head': 120,
    'squash-maxima': 280,
    'squash-pepo-winter': 170,
    'sweet-corn': 70,
    'cabbage-savoy': 190,
    'cabbage-red': 220,
    'cabbage-spring': 150,
    'cauliflower-autumn': 240,
    'cauliflower-winter': 230,
    calabrese: 170,
    'cucumber-tunnel': 140,
    endive: 160,
    'chicory-sugarloaf': 180,
    'fennel-florence': 150,
  }),
  ...prices('bunch', {
    'carrot-bunching': 190,
    'spring-onion': 130,
    chard: 190,
    'kale-curly': 180,
    'beetroot-bunching': 190,
  }),
];

function prices(unit: SaleUnit, each: Readonly<Record<string, number>>): readonly Price[] {
  return Object.entries(each).map(([crop, pence]) => price(crop, unit, pence));
}

export const samplePeople: readonly Person[] = [
  person('ruth', { hoursWeek: 38 }),
  person('idris', { hoursWeek: 38 }),
  person('maud', { hoursWeek: 30 }),
  person('tove', { hoursWeek: 24 }),
  person('packers', { name: 'Packing hands', role: 'bench', hoursWeek: 24 }),
  person('spring-hands', {
    name: 'Spring hands',
    role: 'hand',
    hoursWeek: 60,
    from: asMonthDay('04-01'),
    to: asMonthDay('10-31'),
  }),
  person('summer-hands', {
    name: 'Summer hands',
    role: 'hand',
    hoursWeek: 30,
    from: asMonthDay('06-01'),
    to: asMonthDay('09-30'),
  }),
  person('looker', { name: 'Certifier', role: 'looker', hoursWeek: null, paid: false }),
];
