/** Faults of the promise, the stores, the yields and the hands. */
import type { BoxPromise, Farm } from '@leywright/book';
import type { FindingCode } from '@leywright/planner';
import { span } from '../build/farm.ts';
import { ownCrop, slotOnce } from '../build/promise.ts';
import { cover, stand } from '../build/stand.ts';
import { type Planter, planted, withStands, yearsOnCourse } from './planted.ts';

function withPromise(farm: Farm, change: (promise: BoxPromise) => BoxPromise): Farm {
  if (farm.promise === null) throw new Error('The clean farm has a promise.');
  return { ...farm, promise: change(farm.promise) };
}

/** The plot that carries carrots in the year in focus. */
function carrotPlot(farm: Farm, year = 2027): string {
  return yearsOnCourse(farm, 'roots', year, year)[0]?.plot ?? '';
}

export const promiseFaults = {
  'box-short': (farm, chance) => {
    const early = chance.oneOf([34, 35, 36]);
    const monday = { 34: '2027-08-23', 35: '2027-08-30', 36: '2027-09-06' }[early] ?? '';
    const sunday = { 34: '2027-08-29', 35: '2027-09-05', 36: '2027-09-12' }[early] ?? '';
    const opened = withPromise(farm, (promise) => ({
      ...promise,
      closedEveryYear: promise.closedEveryYear.filter((week) => week !== early),
      slots: [...promise.slots, slotOnce('carrot-maincrop', [monday, sunday], { id: 'too-early' })],
    }));
    return planted(opened, { week: `2027-w${early}`, from: monday, to: sunday });
  },
  'crop-not-on-ground': (farm, chance) => {
    const crop = chance.oneOf(['chard', 'kale-curly', 'leek-mid']);
    return planted(
      withPromise(farm, (promise) => ({
        ...promise,
        slots: [...promise.slots, slotOnce(crop, ['2027-10-25', '2027-11-21'])],
      })),
      { crop, year: 2027 },
    );
  },
  'ground-too-small': (farm, chance) => {
    const plot = carrotPlot(farm);
    const edge = chance.oneOf([0.004, 0.006, 0.008]);
    const carrots = stand(plot, 'carrot-maincrop', ['2027-05-08', '2027-10-04'], {
      id: `${plot}-2027-carrot`,
      span: span(0, edge),
      courseYear: 2027,
    });
    const phacelia = cover(plot, 'phacelia', ['2027-04-05', '2027-10-04'], {
      id: 'phacelia-instead',
      span: span(edge, 1),
      courseYear: 2027,
    });
    return planted(withStands(farm, [carrots, phacelia]), { crop: 'carrot-maincrop', year: 2027, plot });
  },
  'store-runs-out': (farm, chance) => {
    const until = chance.oneOf(['2028-05-28', '2028-06-04']);
    const longer = withPromise(farm, (promise) => ({
      ...promise,
      closedEveryYear: promise.closedEveryYear.filter((week) => week > 23),
      slots: [slotOnce('carrot-maincrop', ['2027-10-15', until], { id: 'carrots', portions: { box: 0.5 } })],
    }));
    return planted(longer, { crop: 'carrot-maincrop' });
  },
  'store-over-full': (farm, chance) =>
    planted(
      { ...farm, stores: farm.stores.map((store) => ({ ...store, capacityKg: chance.whole(5, 20) * 1000 })) },
      { store: 'cold-store' },
    ),
  'no-store-for-crop': (farm) => planted({ ...farm, stores: [] }, { crop: 'carrot-maincrop' }),
  'yield-implausible': (farm, chance) =>
    planted(
      { ...farm, crops: [ownCrop('carrot-maincrop', { yieldMarketableTHa: chance.whole(4, 9) })] },
      { crop: 'carrot-maincrop' },
    ),
  'no-yield-known': (farm) => {
    const unheardOf = ownCrop('sea-holly', { name: 'Sea holly', family: 'Eryngium', unit: 'kg' });
    const promised = withPromise(farm, (promise) => ({
      ...promise,
      slots: [...promise.slots, slotOnce('sea-holly', ['2027-11-01', '2027-11-14'])],
    }));
    return planted({ ...promised, crops: [unheardOf] }, { crop: 'sea-holly' });
  },
  'households-over-reach': (farm, chance) => {
    const { plot } = chance.oneOf(yearsOnCourse(farm, 'roots', 2028, 2030));
    return planted(
      { ...farm, plots: farm.plots.map((one) => (one.id === plot ? { ...one, grossM2: 90 } : one)) },
      { year: 2027, plot },
    );
  },
  'hours-over-hands': (farm, chance) =>
    planted(
      { ...farm, people: farm.people.slice(0, 1).map((one) => ({ ...one, hoursWeek: chance.whole(140, 168) })) },
      { week: '2027-w39' },
    ),
  'hands-unknown': (farm) => planted({ ...farm, people: [] }, {}),
} as const satisfies Partial<Record<FindingCode, Planter>>;
