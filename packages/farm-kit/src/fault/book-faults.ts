/** Faults of the book: records that contradict one another, are missing, or name what is not there. */
import type { Entry, Farm } from '@leywright/book';
import { wholePlot } from '@leywright/book';
import type { FindingCode, Place } from '@leywright/planner';
import { observation, record, recordId } from '../build/record.ts';
import type { Planted, Planter } from './planted.ts';

function recorded(farm: Farm, entries: readonly Entry[], place: Place): Planted {
  return { farm, entries: entries.map((one) => ({ ...one, farm: farm.about.id })), place };
}

const seen = (count: number) => observation('b', 'earthworms', count);

export const bookFaults = {
  'rival-amendments': (farm, chance) =>
    recorded(
      farm,
      [
        record(1, '2026-10-02', seen(chance.whole(10, 20))),
        record(2, '2026-10-03', seen(5), { amends: recordId(1), reason: 'Counted again.' }),
        record(3, '2026-10-03', seen(7), { amends: recordId(1), reason: 'Misread.' }),
      ],
      { entry: recordId(1) },
    ),
  'amendments-in-a-ring': (farm) =>
    recorded(
      farm,
      [
        record(1, '2026-10-02', seen(3), { amends: recordId(2) }),
        record(2, '2026-10-02', seen(4), { amends: recordId(1) }),
      ],
      {},
    ),
  'original-not-received': (farm, chance) =>
    recorded(farm, [record(1, '2026-10-02', seen(chance.whole(1, 9)), { amends: recordId(99), reason: 'Misread.' })], {
      entry: recordId(99),
    }),
  'one-id-two-entries': (farm) =>
    recorded(farm, [record(1, '2026-10-02', seen(3)), record(1, '2026-10-02', seen(4))], { entry: recordId(1) }),
  'records-not-received': (farm, chance) =>
    recorded(farm, [record(1, '2026-10-02', seen(3)), record(chance.whole(3, 9), '2026-10-09', seen(4))], {}),
  'device-number-twice': (farm) =>
    recorded(farm, [record(1, '2026-10-02', seen(3)), record(2, '2026-10-02', seen(4), { deviceSeq: 1 })], {}),
  'device-clock-wrong': (farm, chance) =>
    recorded(
      farm,
      [record(1, '2026-10-02', seen(3), { enteredAt: `${chance.whole(2016, 2025)}-01-01T12:00:00.000Z` })],
      {},
    ),
  'record-without-stand': (farm, chance) =>
    recorded(
      farm,
      [
        record(1, '2026-10-02', {
          kind: 'stand-ended',
          stand: `stand-${chance.whole(1, 99)}-of-nowhere`,
          by: 'lifted',
          why: null,
        }),
      ],
      { entry: recordId(1) },
    ),
  'record-without-plot': (farm) =>
    recorded(
      farm,
      [
        record(1, '2026-09-02', {
          kind: 'sowing',
          stand: null,
          plot: 'nowhere',
          span: wholePlot,
          what: 'phacelia',
          standKind: 'cover',
          variety: null,
          seedLot: null,
          seedKg: null,
          undersownIn: null,
          expectedTo: null,
        }),
      ],
      { entry: recordId(1) },
    ),
  'stand-end-assumed': (farm) =>
    recorded(
      farm,
      [
        record(1, '2026-09-02', {
          kind: 'sowing',
          stand: null,
          plot: 'tunnel',
          span: wholePlot,
          what: 'phacelia',
          standKind: 'cover',
          variety: null,
          seedLot: null,
          seedKg: null,
          undersownIn: null,
          expectedTo: null,
        }),
      ],
      { plot: 'tunnel', entry: recordId(1) },
    ),
  'no-rotation-to-agree': (farm) =>
    recorded(
      { ...farm, rotation: null, promise: null, plots: farm.plots.map((plot) => ({ ...plot, courseAtStart: null })) },
      [record(1, '2027-01-09', { kind: 'rotation-agreed', reasons: {} })],
      { entry: recordId(1) },
    ),
  'harvest-perhaps-twice': (farm) => {
    const body = {
      kind: 'harvest',
      stand: null,
      plot: 'tunnel',
      crop: 'carrot-maincrop',
      grossKg: 120,
      count: null,
      unit: 'kg',
      gradedOutShare: null,
      into: 'store',
      store: null,
    } as const;
    const [one, other] = [record(1, '2026-09-02', body), record(1, '2026-09-02', { ...body, grossKg: 122 })];
    return recorded(farm, [one, { ...other, id: recordId(2), device: 'other-phone' as typeof other.device }], {
      plot: 'tunnel',
      entry: recordId(1),
    });
  },
} as const satisfies Partial<Record<FindingCode, Planter>>;
