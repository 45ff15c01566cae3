/** Farms, days and edits for properties that must hold for every farm; failures shrink to the smallest farm that shows them. */
import type { Farm, Span, Stand } from '@leywright/book';
import { addDays, asDay, type Day, daysBetween } from '@leywright/measures';
import fc from 'fast-check';
import { farmWith, plot } from '../build/farm.ts';
import { boxPromise, boxSize, person, slot, storePlace } from '../build/promise.ts';
import { stand } from '../build/stand.ts';

/** Days between two, as the farm counts them. */
export function anyDay(from = '2019-01-01', to = '2031-12-31'): fc.Arbitrary<Day> {
  const first = asDay(from);
  const days = daysBetween(first, asDay(to));
  return fc.integer({ min: 0, max: days }).map((count) => addDays(first, count));
}

/** Stretches of a plot on a grid of twelfths, so that neighbours can touch. */
export function anySpan(): fc.Arbitrary<Span> {
  return fc
    .tuple(fc.integer({ min: 0, max: 11 }), fc.integer({ min: 1, max: 12 }))
    .map(([from, width]) => ({ fromShare: from / 12, toShare: Math.min(12, from + width) / 12 }));
}

const cropIds = [
  'potato-maincrop',
  'onion-set',
  'carrot-maincrop',
  'cabbage-autumn',
  'squash-maxima',
  'beetroot-maincrop',
  'leek-mid',
  'lettuce-head',
  'french-bean-dwarf',
  'kale-curly',
];
const coverIds = ['grazing-rye', 'mix-rye-vetch', 'phacelia', 'white-mustard', 'mix-ley-clover-grass'];

/** Any stand on one of the plots, in season or not, over others or not: people write all of it. */
export function anyStand(plotIds: readonly string[]): fc.Arbitrary<Stand> {
  return fc
    .record({
      plotId: fc.constantFrom(...plotIds),
      what: fc.constantFrom(...cropIds, ...coverIds),
      from: anyDay(),
      days: fc.integer({ min: 1, max: 800 }),
      where: anySpan(),
      state: fc.constantFrom('agreed' as const, 'recorded' as const, 'pencil' as const),
      key: fc.nat({ max: 1e9 }),
      established: fc.option(fc.integer({ min: 0, max: 10 }), { freq: 4 }),
    })
    .map(({ plotId, what, from, days, where, state, key, established }) =>
      stand(plotId, what, [from, addDays(from, days)], {
        id: `${plotId}-${what}-${key}`,
        kind: coverIds.includes(what) ? 'cover' : 'crop',
        span: where,
        state,
        establishedShare: established === null ? null : established / 10,
      }),
    );
}

/** Small farms of every sort: none to five plots, none to twenty stands, with or without promise, stores and hands. */
export function anyFarm(): fc.Arbitrary<Farm> {
  const plots = fc.array(
    fc.record({
      grossM2: fc.integer({ min: 50, max: 30_000 }),
      hedgeM: fc.integer({ min: 0, max: 300 }),
      bankM2: fc.integer({ min: 0, max: 500 }),
    }),
    { minLength: 1, maxLength: 5 },
  );
  return plots.chain((sizes) => {
    const ids = sizes.map((_, at) => `p${at + 1}`);
    return fc
      .record({
        stands: fc.uniqueArray(anyStand(ids), { maxLength: 20, selector: (one) => one.id }),
        households: fc.integer({ min: 0, max: 500 }),
        hasPromise: fc.boolean(),
        hasStore: fc.boolean(),
        hoursWeek: fc.option(fc.integer({ min: 0, max: 200 })),
        closed: fc.uniqueArray(fc.integer({ min: 1, max: 53 }), { maxLength: 4 }),
      })
      .map(({ stands, households, hasPromise, hasStore, hoursWeek, closed }) =>
        farmWith({
          plots: sizes.map((size, at) => plot(`P${at + 1}`, { ...size, id: ids[at] ?? '' })),
          stands,
          promise: hasPromise
            ? boxPromise({
                sizes: [boxSize('box', households)],
                closedEveryYear: closed,
                slots: cropIds.slice(0, 4).map((id) => slot(id)),
              })
            : null,
          stores: hasStore ? [storePlace('cold', 'cold', cropIds.slice(0, 4), 5000)] : [],
          people: hoursWeek === null ? [] : [person('grower', { hoursWeek })],
        }),
      );
  });
}

/** One change a person might make to a farm: a stand moved, lengthened, taken away, added, put on other ground; a plot's size; a portion. */
export interface Edit {
  readonly kind: 'move' | 'length' | 'remove' | 'add' | 'span' | 'gross' | 'households' | 'what';
  readonly place: number;
  readonly amount: number;
  readonly added: Stand;
}

export function anyEdit(): fc.Arbitrary<Edit> {
  return fc.record({
    kind: fc.constantFrom(
      'move' as const,
      'length' as const,
      'remove' as const,
      'add' as const,
      'span' as const,
      'gross' as const,
      'households' as const,
      'what' as const,
    ),
    place: fc.nat({ max: 1000 }),
    amount: fc.integer({ min: -60, max: 60 }),
    added: anyStand(['p1']),
  });
}

/** The farm after the edit; the same farm when there is nothing of that kind to change. */
export function edited(farm: Farm, edit: Edit): Farm {
  const at = farm.stands.length === 0 ? -1 : edit.place % farm.stands.length;
  const change = (to: (one: Stand) => Stand): Farm => ({
    ...farm,
    stands: farm.stands.map((one, place) => (place === at ? to(one) : one)),
  });
  switch (edit.kind) {
    case 'move':
      return change((one) => ({
        ...one,
        from: addDays(one.from, edit.amount),
        to: addDays(one.to, edit.amount),
        sownOn: one.sownOn && addDays(one.sownOn, edit.amount),
        plantedOn: one.plantedOn && addDays(one.plantedOn, edit.amount),
      }));
    case 'length':
      return change((one) => ({ ...one, to: addDays(one.to, Math.max(0, edit.amount)) }));
    case 'remove':
      return { ...farm, stands: farm.stands.filter((_, place) => place !== at) };
    case 'add':
      return farm.plots[0] === undefined || farm.stands.some((one) => one.id === edit.added.id)
        ? farm
        : { ...farm, stands: [...farm.stands, { ...edit.added, plot: farm.plots[0].id }] };
    case 'span':
      return change((one) => ({ ...one, span: edit.added.span }));
    case 'what':
      return change((one) => (one.kind === edit.added.kind ? { ...one, what: edit.added.what } : one));
    case 'gross':
      return {
        ...farm,
        plots: farm.plots.map((one, place) =>
          place === edit.place % farm.plots.length
            ? { ...one, grossM2: Math.max(50, one.grossM2 + 10 * edit.amount) }
            : one,
        ),
      };
    case 'households':
      return farm.promise === null
        ? farm
        : {
            ...farm,
            promise: {
              ...farm.promise,
              sizes: farm.promise.sizes.map((size) => ({
                ...size,
                households: Math.max(0, size.households + edit.amount),
              })),
            },
          };
  }
}
