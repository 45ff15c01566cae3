/**
 * A first promise: what this ground has ready, week by week, as many lines a week as were said, in the order people miss them most; portions
 * of the demand table; the leanest weeks without a box.
 */
import { reference } from '@leywright/agronomy';
import type { BoxPromise, Farm, SaleUnit, Slot, StorePlace } from '@leywright/book';
import { addDays, asDay, asId, asIsoWeek, type CropId, mondayOf, monthDayOf, type StoreId } from '@leywright/measures';
import { type Ready, readyWeeks } from './ready-weeks.ts';
import type { FirstSentence } from './sentence.ts';

interface FirstItem {
  /** Names its places in the box. */
  readonly name: string;
  readonly crop: string;
  /** Row of the demand table whose typical figure is the portion. */
  readonly portion: string;
  readonly unit: SaleUnit;
  /** Whether it is kept for the lean end of winter. */
  readonly isKept: boolean;
}

function item(name: string, crop: string, portion: string, pieces: Partial<FirstItem> = {}): FirstItem {
  return { name, crop, portion, unit: 'kg', isKept: false, ...pieces };
}

/** In the order in which people miss them. */
const items: readonly FirstItem[] = [
  item('early-potatoes', 'potato-second-early', 'box-potato'),
  item('potatoes', 'potato-maincrop', 'box-potato'),
  item('carrots', 'carrot-maincrop', 'box-carrot'),
  item('onions', 'onion-set', 'box-onion'),
  item('lettuce', 'lettuce-head', 'box-salad-summer', { unit: 'head' }),
  item('savoy', 'cabbage-savoy', 'box-brassica-winter'),
  item('cabbage', 'cabbage-autumn', 'box-brassica-winter'),
  item('leeks', 'leek-mid', 'box-leek-winter'),
  item('late-leeks', 'leek-late', 'box-leek-winter'),
  item('courgettes', 'courgette', 'box-courgette-summer'),
  item('french-beans', 'french-bean-dwarf', 'box-bean-summer'),
  item('runner-beans', 'runner-bean', 'box-bean-summer'),
  item('sprouting', 'broccoli-purple-sprouting', 'box-green-spring', { isKept: true }),
  item('calabrese', 'calabrese', 'box-brassica-summer'),
  item('celeriac', 'celeriac', 'box-root-spring', { isKept: true }),
  item('parsnips', 'parsnip', 'box-root-spring', { isKept: true }),
  item('beetroot', 'beetroot-maincrop', 'box-root-spring', { isKept: true }),
  item('kale', 'kale-curly', 'box-green-spring'),
  item('squash', 'squash-maxima', 'box-squash-winter'),
  item('sweet-corn', 'sweet-corn', 'box-corn-autumn', { unit: 'head' }),
  item('chard', 'chard', 'box-beet-summer', { unit: 'bunch' }),
];

const weeksInYear = 52;
/** The week of the feast goes without a box before all others. */
const feastWeek = 52;
/** What is kept is best eaten before it; the first week of a run that was there all year. */
const newHarvestWeek = 23;

/** What is kept to the end of winter loses more than what is eaten as it comes. */
const keptShare = 0.7;

/** The farm is as it will be, but for its promise. */
export function firstPromise(sentence: FirstSentence, farm: Farm, firstYear: number): BoxPromise {
  const grown = new Set(farm.rotation?.courses.flatMap((course) => course.stands.map((stand) => stand.what)));
  const ours = items.filter((item) => grown.has(item.crop));
  const ready = readyWeeks(
    farm,
    ours.map((item) => item.crop),
    firstYear,
  );
  const layFor = (households: number) => laidOut(ours, ready, { ...sentence, households });
  const { slots, counts } = layFor(householdsFilled(sentence.households, layFor));
  const leanest = Array.from({ length: weeksInYear }, (_, at) => at + 1).sort(
    (a, b) => fill(counts, a) - fill(counts, b) || a - b,
  );
  return {
    sizes: [{ id: 'box', name: 'Box', households: sentence.households }],
    itemsPerBox: sentence.items,
    packWeekday: 4,
    // What the years before left is not known: the first box is that of the first harvest.
    from: firstBoxOn(counts, sentence.items, firstYear),
    to: null,
    closedWeeks: [],
    closedEveryYear: leanest.slice(0, weeksInYear - sentence.weeks).sort((a, b) => a - b),
    movedPackDays: [],
    slots,
    needs: [],
    boxWeeksPerYear: null,
  };
}

function fill(counts: ReadonlyMap<number, number>, week: number): number {
  return week === feastWeek ? -1 : (counts.get(week) ?? 0);
}

interface Laid {
  readonly slots: readonly Slot[];
  readonly counts: ReadonlyMap<number, number>;
}

function laidOut(ours: readonly FirstItem[], ready: ReadonlyMap<string, Ready>, sentence: FirstSentence): Laid {
  const counts = new Map<number, number>();
  return { slots: ours.flatMap((item) => slotsOf(item, ready.get(item.crop), { sentence, counts })), counts };
}

/** Of the fullest box this ground has for a single household, what a box may fall to before there are too many of them. */
const fullEnoughShare = 0.8;

/**
 * For how many households the box is laid out: those that were said, or the most this ground fills a box for. Laid out for more than that the box
 * would shrink to what there is, and a farm that promises far too much would look as if it kept its word.
 */
function householdsFilled(said: number, layFor: (households: number) => Laid): number {
  const itemWeeks = (households: number) => [...layFor(households).counts.values()].reduce((sum, one) => sum + one, 0);
  const enough = fullEnoughShare * itemWeeks(1);
  if (itemWeeks(said) >= enough) return said;
  let [fed, notFed] = [1, said];
  while (notFed - fed > 1) {
    const middle = Math.floor((fed + notFed) / 2);
    if (itemWeeks(middle) >= enough) fed = middle;
    else notFed = middle;
  }
  return fed;
}

interface Filling {
  readonly sentence: FirstSentence;
  /** Items given to each week so far; grows with every crop. */
  readonly counts: Map<number, number>;
}

/** Runs of weeks in which the crop is there and the box still has a place, as far as its kilos reach. */
function slotsOf(item: FirstItem, ready: Ready | undefined, { sentence, counts }: Filling): readonly Slot[] {
  const portion = portionOf(item);
  let left = boxWeeksOf(item, ready?.packedKg ?? 0, portion * sentence.households);
  const open = [...(ready?.weeks ?? [])].filter((week) => (counts.get(week) ?? 0) < sentence.items);
  const slots: Slot[] = [];
  for (const run of runsOf(open)) {
    const weeks = item.isKept ? run.slice(Math.max(0, run.length - left)) : run.slice(0, left);
    if (weeks.length === 0) break;
    left -= weeks.length;
    for (const week of weeks) counts.set(week, (counts.get(week) ?? 0) + 1);
    slots.push(
      slotOf(item, weeks, { portion, id: slots.length === 0 ? item.name : `${item.name}-${slots.length + 1}` }),
    );
  }
  return slots;
}

/** In the item's own unit, by the demand table. */
function portionOf(item: FirstItem): number {
  const portion = reference.demand.get(item.portion)?.qtyTyp;
  if (portion === undefined) throw new Error(`The demand table has no row "${item.portion}".`);
  return portion;
}

/** Weeks for which the kilos fill every box. */
function boxWeeksOf(item: FirstItem, packedKg: number, unitsAWeek: number): number {
  const unitKg = item.unit === 'kg' ? 1 : (reference.crops.get(item.crop)?.unitKg ?? 1);
  return Math.floor((packedKg * (item.isKept ? keptShare : 1)) / (unitKg * unitsAWeek));
}

function slotOf(
  { crop, unit }: FirstItem,
  weeks: readonly number[],
  { portion, id }: { readonly portion: number; readonly id: string },
): Slot {
  return {
    id,
    crops: [asId<CropId>(crop)],
    window: {
      kind: 'yearly',
      from: monthDayOf(mondayOfNumber(weeks[0] ?? 1)),
      to: monthDayOf(addDays(mondayOfNumber(weeks.at(-1) ?? 1), 6)),
    },
    everyWeeks: 1,
    unit,
    portions: { box: portion },
  };
}

/** The Monday of a week in a year that begins on one, so that week 1 to 52 are its months. */
function mondayOfNumber(week: number) {
  return mondayOf(asIsoWeek(`2029-w${String(week).padStart(2, '0')}`));
}

/** Weeks that follow one another, over new year too; the year of a harvest begins in June. */
function runsOf(weeks: readonly number[]): readonly (readonly number[])[] {
  const fromHarvest = (week: number) => (week - newHarvestWeek + weeksInYear) % weeksInYear;
  const sorted = [...weeks].sort((a, b) => fromHarvest(a) - fromHarvest(b));
  const runs: number[][] = [];
  for (const week of sorted) {
    const run = runs.at(-1);
    if (run !== undefined && fromHarvest(week) === fromHarvest(run.at(-1) ?? week) + 1) run.push(week);
    else runs.push([week]);
  }
  return runs;
}

/** The first week of the first harvest in which half the box is filled, or half of what the fullest one holds. */
function firstBoxOn(counts: ReadonlyMap<number, number>, itemsABox: number, firstYear: number) {
  const fullest = Math.min(itemsABox, Math.max(0, ...counts.values()));
  for (let week = newHarvestWeek; week <= weeksInYear; week += 1) {
    if (fullest > 0 && (counts.get(week) ?? 0) * 2 >= fullest)
      return asDay(`${firstYear}-${monthDayOf(mondayOfNumber(week))}`);
  }
  return null;
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
  store('dry-store', 'Dry store', 'ambient_frost_free', ['onion-set', 'potato-second-early']),
  store('warm-loft', 'Warm loft', 'ambient_warm', ['squash-maxima']),
];

function store(id: string, name: string, kind: string, crops: readonly string[]): StorePlace {
  return { id: asId<StoreId>(id), name, kind, crops: crops.map((crop) => asId<CropId>(crop)), capacityKg: null };
}
