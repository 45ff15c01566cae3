/** A first promise: lines of the box in the order people miss them most, portions of the demand table, weeks without a box by season. */
import { reference } from '@leywright/agronomy';
import type { BoxPromise, Course, SaleUnit, Slot, StorePlace } from '@leywright/book';
import { asId, asMonthDay, type CropId, type StoreId } from '@leywright/measures';
import type { FirstSentence } from './sentence.ts';

interface FirstSlot {
  readonly id: string;
  readonly crops: readonly string[];
  readonly from: string;
  readonly to: string;
  readonly unit: SaleUnit;
  /** Row of the demand table whose typical figure is the portion. */
  readonly portion: string;
  readonly everyWeeks?: number;
}

/** One line fills about one place in the box; what it holds changes with the season. */
const lines: readonly (readonly FirstSlot[])[] = [
  [
    {
      id: 'potatoes',
      crops: ['potato-second-early', 'potato-maincrop'],
      from: '07-10',
      to: '04-30',
      unit: 'kg',
      portion: 'box-potato',
    },
  ],
  [
    { id: 'carrots', crops: ['carrot-maincrop'], from: '09-20', to: '04-15', unit: 'kg', portion: 'box-carrot' },
    { id: 'courgettes', crops: ['courgette'], from: '07-15', to: '09-19', unit: 'kg', portion: 'box-courgette-summer' },
  ],
  [{ id: 'onions', crops: ['onion-set'], from: '08-10', to: '03-31', unit: 'kg', portion: 'box-onion' }],
  [
    {
      id: 'autumn-brassicas',
      crops: ['calabrese', 'cauliflower-autumn'],
      from: '09-15',
      to: '10-31',
      unit: 'kg',
      portion: 'box-brassica-summer',
    },
    {
      id: 'winter-greens',
      crops: ['cabbage-savoy', 'kale-curly'],
      from: '11-01',
      to: '02-20',
      unit: 'kg',
      portion: 'box-brassica-winter',
    },
  ],
  [
    {
      id: 'leeks',
      crops: ['leek-mid', 'leek-late'],
      from: '10-05',
      to: '04-25',
      unit: 'kg',
      portion: 'box-leek-winter',
      everyWeeks: 2,
    },
    { id: 'lettuce', crops: ['lettuce-head'], from: '07-10', to: '09-15', unit: 'head', portion: 'box-salad-summer' },
  ],
  [
    {
      id: 'roots',
      crops: ['celeriac', 'parsnip', 'beetroot-maincrop'],
      from: '10-10',
      to: '03-10',
      unit: 'kg',
      portion: 'box-root-spring',
    },
    {
      id: 'beans',
      crops: ['french-bean-dwarf', 'runner-bean'],
      from: '08-01',
      to: '09-25',
      unit: 'kg',
      portion: 'box-bean-summer',
    },
  ],
  [
    {
      id: 'squash',
      crops: ['squash-maxima'],
      from: '10-01',
      to: '01-31',
      unit: 'kg',
      portion: 'box-squash-winter',
      everyWeeks: 2,
    },
    {
      id: 'corn',
      crops: ['sweet-corn'],
      from: '08-20',
      to: '09-20',
      unit: 'head',
      portion: 'box-corn-autumn',
      everyWeeks: 2,
    },
  ],
  [{ id: 'chard', crops: ['chard'], from: '07-10', to: '09-15', unit: 'bunch', portion: 'box-beet-summer' }],
];

/** Weeks that go without a box first: the feast, the new year, the summer holiday, then the hungry gap from its middle outward. */
const closingOrder: readonly number[] = [
  52,
  1,
  33,
  ...Array.from({ length: 52 }, (_, at) => 21 + (at % 2 === 0 ? at / 2 : -(at + 1) / 2)).map(
    (week) => ((week - 1 + 52) % 52) + 1,
  ),
];

export function firstPromise(sentence: FirstSentence, courses: readonly Course[]): BoxPromise {
  const grown = new Set(courses.flatMap((course) => course.stands.map((stand) => stand.what)));
  const slots = lines
    .slice(0, sentence.items)
    .flat()
    .flatMap((line) => slotOf(line, grown));
  return {
    sizes: [{ id: 'box', name: 'Box', households: sentence.households }],
    itemsPerBox: sentence.items,
    packWeekday: 4,
    from: null,
    to: null,
    closedWeeks: [],
    closedEveryYear: [...new Set(closingOrder)].slice(0, 52 - sentence.weeks).sort((a, b) => a - b),
    movedPackDays: [],
    slots,
    needs: [],
    boxWeeksPerYear: null,
  };
}

function slotOf(line: FirstSlot, grown: ReadonlySet<string>): readonly Slot[] {
  const crops = line.crops.filter((crop) => grown.has(crop)).map((crop) => asId<CropId>(crop));
  const portion = reference.demand.get(line.portion)?.qtyTyp;
  if (portion === undefined) throw new Error(`The demand table has no row "${line.portion}".`);
  if (crops.length === 0) return [];
  const window = { kind: 'yearly', from: asMonthDay(line.from), to: asMonthDay(line.to) } as const;
  return [
    { id: line.id, crops, window, everyWeeks: line.everyWeeks ?? 1, unit: line.unit, portions: { box: portion } },
  ];
}

/** Stores of the kinds the crops of the first rotation keep in. How much they hold is not known. */
export const firstStores: readonly StorePlace[] = [
  store('cold-store', 'Cold store', 'cold', [
    'potato-maincrop',
    'carrot-maincrop',
    'parsnip',
    'celeriac',
    'beetroot-maincrop',
  ]),
  store('dry-store', 'Dry store', 'ambient_frost_free', ['onion-set']),
  store('warm-loft', 'Warm loft', 'ambient_warm', ['squash-maxima']),
];

function store(id: string, name: string, kind: string, crops: readonly string[]): StorePlace {
  return { id: asId<StoreId>(id), name, kind, crops: crops.map((crop) => asId<CropId>(crop)), capacityKg: null };
}
