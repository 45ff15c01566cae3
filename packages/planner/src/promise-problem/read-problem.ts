/** Reads a promise problem from its JSON form `o2-1`, and says everything that is wrong with it at once. */
import { type Fields, type ProblemFault, readFields } from '../rotation-problem/read-fields.ts';
import type {
  BoxLimits,
  PromiseCrop,
  PromiseHands,
  PromiseProblem,
  PromiseSlot,
  PromiseSuccession,
} from './problem.ts';
import { promiseFaults } from './problem-faults.ts';

export type ReadPromise =
  | { readonly kind: 'problem'; readonly problem: PromiseProblem }
  | { readonly kind: 'faults'; readonly faults: readonly ProblemFault[] };

export const promiseSchema = 'o2-1';
const mostWeeks = 160;
/** The form counts ground in hundreds of square metres, and lifting and packing by the hundred. */
const hundred = 100;

interface Reading {
  readonly weeks: number;
  readonly faults: ProblemFault[];
}

/** What was said, as a problem; or all faults, each with its place and what was found there. */
export function readPromiseProblem(said: unknown): ReadPromise {
  const faults: ProblemFault[] = [];
  const root = readFields(said, '', faults);
  const schema = root.text('schema', promiseSchema);
  if (schema !== promiseSchema) faults.push({ place: 'schema', found: schema, need: `"${promiseSchema}"` });
  const reading = { weeks: root.whole('W', { least: 1, most: mostWeeks }), faults };
  const problem: PromiseProblem = {
    name: root.text('name'),
    weeks: reading.weeks,
    isCyclic: root.has('cyclic') ? root.flag('cyclic') : true,
    households: byWeek(root, 'households', reading),
    crops: root.list('crops').map((one, at) => readCrop(readFields(one, `crops.${at}`, faults), reading)),
    successions: readSuccessions(root, reading),
    slots: readSlots(root, reading),
    slotMostFactor: root.number('slotMaxFactor', { least: 1, absent: 1.6 }),
    box: readBox(readFields(root.raw('box') ?? {}, 'box', faults)),
    groundM2: scaled(root.numbersByName('area', 0), hundred),
    storesKg: readStores(root, faults),
    hands: readHands(readFields(root.raw('labour') ?? {}, 'labour', faults), reading),
    groundCostWeight: root.number('areaCost', { least: 0, absent: 1 }),
    shortPrices: readShortPrices(readFields(root.raw('penalty') ?? {}, 'penalty', faults)),
    gradedOutShare: root.number('harvestWaste', { least: 0, most: 1, absent: 0 }),
    trimmedShare: root.number('storeTrim', { least: 0, most: 1, absent: 0 }),
  };
  faults.push(...(faults.length === 0 ? promiseFaults(problem) : []));
  return faults.length > 0 ? { kind: 'faults', faults } : { kind: 'problem', problem };
}

function readCrop(fields: Fields, reading: Reading): PromiseCrop {
  return {
    id: fields.text('id'),
    slot: fields.text('slot'),
    ground: fields.text('group'),
    portionLeastKg: fields.number('portionMin', { least: 0 }),
    portionMostKg: fields.number('portionMax', { least: 0 }),
    worthPerKg: fields.number('value', { least: 0, absent: 0 }),
    mostRunWeeks: fields.whole('maxRun', { least: 1, absent: mostWeeks }),
    store: readCropStore(fields, reading.faults),
    harvestHoursPerKg: fields.number('harvestHoursPer100kg', { least: 0, absent: 0 }) / hundred,
    likedShare: fields.has('pref') ? byWeek(fields, 'pref', reading) : new Array<number>(reading.weeks).fill(1),
    openingStoreKg: fields.number('openingKg', { least: 0, absent: 0 }),
  };
}

function readCropStore(fields: Fields, faults: ProblemFault[]): PromiseCrop['store'] {
  const said = fields.raw('store');
  if (said === undefined || said === null) return null;
  const store = readFields(said, `${fields.text('id')}.store`, faults);
  return { kind: store.text('type'), lossShare: store.number('loss', { least: 0, most: 1 }) };
}

function readSuccessions(root: Fields, { faults }: Reading): readonly PromiseSuccession[] {
  const bedM2 = root.number('bed', { least: 0.001, absent: 1 }) * hundred;
  const leastBeds = root.whole('minBeds', { least: 0, absent: 1 });
  return root.list('succ').map((one, at) => {
    const fields = readFields(one, `succ.${at}`, faults);
    return {
      id: fields.text('id'),
      cropIndex: fields.whole('crop', { least: 0 }),
      sowWeek: fields.whole('sow', {}),
      groundFromWeek: fields.whole('ground', {}),
      harvestFromWeek: fields.whole('harvest0', {}),
      readyKgM2: numbers(fields, 'yield', faults).map((kg) => kg / hundred),
      keepShare: fields.number('keep', { least: 0, most: 1 }),
      costPerM2: fields.number('costPerUnit', { least: 0, absent: 0 }) / hundred,
      plantHoursPerM2: fields.number('plantHours', { least: 0, absent: 0 }) / hundred,
      bedM2,
      leastBeds,
      pinnedM2: fields.has('area') ? fields.number('area', { least: 0 }) * hundred : null,
    };
  });
}

function readSlots(root: Fields, reading: Reading): readonly PromiseSlot[] {
  const lists = root.numberListsByName('slotNeed');
  return Object.entries(lists).map(([id, needKgHousehold]) => {
    if (needKgHousehold.length !== reading.weeks)
      reading.faults.push({
        place: `slotNeed.${id}`,
        found: `${needKgHousehold.length} weeks`,
        need: `${reading.weeks}`,
      });
    return { id, needKgHousehold };
  });
}

function readBox(fields: Fields): BoxLimits {
  return {
    leastKg: fields.number('minKg', { least: 0, absent: 0 }),
    mostKg: fields.number('maxKg', { least: 0, absent: 1e6 }),
    leastItems: fields.number('minItems', { least: 0, absent: 0 }),
    mostItems: fields.number('maxItems', { least: 0, absent: 1e6 }),
    leastWorthPerBox: fields.number('minValue', { least: 0, absent: 0 }),
  };
}

function readHands(fields: Fields, reading: Reading): PromiseHands {
  return {
    hours: byWeek(fields, 'hours', reading),
    packHoursPerBox: fields.number('packHoursPer100Box', { least: 0, absent: 0 }) / hundred,
    wagePerH: fields.number('wage', { least: 0, absent: 0 }),
    overtimeMostH: fields.number('overtimeMax', { least: 0, absent: 0 }),
    overtimeWagePerH: fields.number('overtimeWage', { least: 0, absent: 0 }),
  };
}

function readShortPrices(fields: Fields): PromiseProblem['shortPrices'] {
  return {
    slotPerKg: fields.number('slotKg', { least: 0, absent: 6 }),
    boxPerKg: fields.number('boxKg', { least: 0, absent: 6 }),
    missingPerItem: fields.number('item', { least: 0, absent: 0.8 }),
    worthWeight: fields.number('value', { least: 0, absent: 1 }),
  };
}

function readStores(root: Fields, faults: ProblemFault[]): Readonly<Record<string, number>> {
  const said = root.raw('stores') ?? {};
  if (typeof said !== 'object' || said === null || Array.isArray(said)) {
    faults.push({ place: 'stores', found: JSON.stringify(said), need: 'stores by name' });
    return {};
  }
  return Object.fromEntries(
    Object.entries(said).map(([name, store]) => [
      name,
      readFields(store, `stores.${name}`, faults).number('capKg', { least: 0 }),
    ]),
  );
}

/** A number for every week. */
function byWeek(fields: Fields, name: string, { weeks, faults }: Reading): readonly number[] {
  const list = numbers(fields, name, faults);
  if (list.length !== weeks) faults.push({ place: name, found: `${list.length} weeks`, need: `${weeks}` });
  return list;
}

function numbers(fields: Fields, name: string, faults: ProblemFault[]): readonly number[] {
  const list = fields.list(name);
  if (list.every((one): one is number => typeof one === 'number' && Number.isFinite(one) && one >= 0)) return list;
  faults.push({ place: name, found: JSON.stringify(list).slice(0, 80), need: 'numbers of at least 0' });
  return list.map(() => 0);
}

function scaled(amounts: Readonly<Record<string, number>>, factor: number): Readonly<Record<string, number>> {
  return Object.fromEntries(Object.entries(amounts).map(([name, amount]) => [name, amount * factor]));
}
