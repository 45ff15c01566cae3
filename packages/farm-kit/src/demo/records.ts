/**
 * The sample farm's book: two years of sowings, plantings, liftings, cuttings, weighings, looks and corrections, on four devices.
 * Made from the stands by chance from a seed; nobody's records were used.
 */
import { reference } from '@leywright/agronomy';
import {
  chain,
  type Entry,
  type EntryBody,
  type Farm,
  newEntryId,
  type ReceivedEntry,
  type Stand,
} from '@leywright/book';
import { addDays, asId, type Day, dayNumber, daysBetween, weekdayOf, yearOf } from '@leywright/measures';
import { type Chance, chanceFrom } from '../make/chance.ts';
import type { Done } from './done.ts';
import { looksAround } from './looks-around.ts';
import { weighings } from './weighings.ts';

const hands = [
  ['ruth', 'ruths-phone'],
  ['idris', 'idriss-phone'],
  ['maud', 'mauds-phone'],
  ['tove', 'shed-tablet'],
] as const;

/** The book as received: in order of typing, numbered on each device, sealed one to the next. */
export function sampleBook(farm: Farm, today: Day, seed = 20_270_114): readonly ReceivedEntry[] {
  const chance = chanceFrom(seed);
  const work = worked(farm, today, chance);
  const done = [
    ...work,
    ...weighings(farm, today, { lifted: work, chance }),
    ...looksAround(today, chance),
    ...corrections,
    agreed,
  ]
    .map((one) => ({
      ...one,
      typedOn: addDays(one.on, one.lateDays ?? (chance.happens(0.08) ? chance.whole(1, 5) : 0)),
    }))
    .filter((one) => one.typedOn <= today)
    .sort((a, b) =>
      a.typedOn < b.typedOn
        ? -1
        : a.typedOn > b.typedOn
          ? 1
          : Number(a.amends !== undefined) - Number(b.amends !== undefined),
    );
  return sealed(farm, done, chance);
}

type Typed = Done & { readonly typedOn: Day };

function sealed(farm: Farm, done: readonly Typed[], chance: Chance): readonly ReceivedEntry[] {
  const numbers = new Map<string, number>();
  const ids = new Map<string, Entry['id']>();
  const book: ReceivedEntry[] = [];
  done.forEach((one, at) => {
    const [by, device] = one.body.kind === 'weighing' ? hands[3] : chance.oneOf(hands);
    const deviceSeq = (numbers.get(device) ?? 0) + 1;
    numbers.set(device, deviceSeq);
    // Minutes of the working day grow with the place in the list, so that typing order and time agree.
    const minute = 6 * 60 + ((at * 7) % (14 * 60));
    const enteredAt = `${one.typedOn}T${two(Math.floor(minute / 60))}:${two(minute % 60)}:${two(at % 60)}.000Z`;
    const id = newEntryId(
      Uint8Array.from({ length: 10 }, () => chance.whole(0, 255)),
      Date.parse(enteredAt),
    );
    if (one.key !== undefined) ids.set(one.key, id);
    const entry: Entry = {
      v: 1,
      id,
      farm: farm.about.id,
      doneOn: one.on,
      doneAt: null,
      enteredAt,
      by: asId(by),
      device: asId(device),
      deviceSeq,
      body: one.body,
      amends: one.amends === undefined ? null : (ids.get(one.amends) ?? null),
      reason: one.reason ?? null,
    };
    const salt = Array.from({ length: 16 }, () => chance.whole(0, 255).toString(16).padStart(2, '0')).join('');
    book.push(chain(book.at(-1)?.hash ?? null, entry, { receivedAt: enteredAt, seq: at + 1, salt }));
  });
  return book;
}

function two(number: number): string {
  return String(number).padStart(2, '0');
}

/** Sowings, plantings, endings and harvests of every stand in the field and the tunnel since the book was begun. */
function worked(farm: Farm, today: Day, chance: Chance): readonly Done[] {
  return farm.stands
    .filter((one) => one.state === 'recorded')
    .flatMap((one) => {
      const done: Done[] = [];
      if (yearOf(one.from) >= 2025 && one.from <= today)
        done.push({ on: one.from, body: startOf(one), key: `start ${one.id}` });
      if (yearOf(one.to) >= 2025 && one.to <= today)
        done.push({
          on: one.to,
          body: { kind: 'stand-ended', stand: one.id, by: one.endedBy ?? 'turned-in', why: one.reason },
        });
      if (one.kind === 'crop' && yearOf(one.to) >= 2025)
        done.push(...harvestsOf(farm, one, chance).filter((harvest) => harvest.on <= today));
      return done;
    });
}

function startOf(one: Stand): EntryBody {
  const where = {
    stand: one.id,
    plot: one.plot,
    span: one.span,
    what: one.what,
    variety: one.variety,
    expectedTo: one.to,
  };
  if (one.plantedOn !== null) return { kind: 'planting', ...where, plants: null };
  return { kind: 'sowing', ...where, standKind: one.kind, seedLot: null, seedKg: null, undersownIn: one.undersownIn };
}

const lifted = [
  'potato-maincrop',
  'potato-second-early',
  'carrot-maincrop',
  'parsnip',
  'celeriac',
  'beetroot-maincrop',
  'swede',
  'onion-set',
  'squash-maxima',
  'squash-pepo-winter',
  'cabbage-red',
];

/** One lifting into store at the end, or cuttings for the box each Wednesday of the weeks it is ready. Yields vary by a seventh about the table's. */
function harvestsOf(farm: Farm, one: Stand, chance: Chance): readonly Done[] {
  const crop = reference.crops.get(one.what);
  const plot = farm.plots.find((it) => it.id === one.plot);
  if (crop === undefined || plot === undefined || crop.establishment === 'crown' || one.endedBy === 'lost') return [];
  const netM2 =
    (plot.grossM2 - 2 * plot.hedgeM - plot.bankM2) *
    (1 - (plot.headlandShare ?? 0)) *
    (one.span.toShare - one.span.fromShare);
  const kg = netM2 * 0.1 * crop.yieldTypTHa * chance.between(0.9, 1.18);
  if (lifted.includes(one.what)) {
    const gradedOutShare = chance.between(0.08, 0.16);
    return [
      {
        on: addDays(one.to, -2),
        key: `lift ${one.id}`,
        body: harvest(one, Math.round(kg / (1 - gradedOutShare)), {
          into: 'store',
          store: storeOf(farm, one.what),
          gradedOutShare,
        }),
      },
    ];
  }
  const ready = addDays(one.plantedOn ?? one.from, Math.round((crop.dtmLowDays + crop.dtmHighDays) / 2));
  const first = addDays(one.to, -Math.max(7, Math.min(daysBetween(ready, one.to), 7 * 16)));
  const days = Array.from({ length: daysBetween(first, one.to) }, (_, at) => addDays(first, at)).filter(
    (day) => weekdayOf(day) === 3 && (yearOf(day) >= 2026 || (yearOf(day) === 2025 && dayNumber(day) % 14 < 7)),
  );
  return days.map((day) => ({
    on: day,
    body: harvest(one, Math.max(1, Math.round((kg / Math.max(1, days.length)) * chance.between(0.7, 1.3))), {
      into: 'box',
      store: null,
      gradedOutShare: null,
    }),
  }));
}

function harvest(
  one: Stand,
  grossKg: number,
  how: Pick<Extract<EntryBody, { kind: 'harvest' }>, 'into' | 'store' | 'gradedOutShare'>,
): EntryBody {
  return { kind: 'harvest', stand: one.id, plot: one.plot, crop: one.what, grossKg, count: null, unit: 'kg', ...how };
}

function storeOf(farm: Farm, crop: string): string | null {
  return farm.stores.find((store) => store.crops.some((one) => one === crop))?.id ?? null;
}

/** Mistakes that were put right: the wrong figure stays in the book, and so does who mended it and why. */
const corrections: readonly Done[] = [
  {
    on: '2026-10-03' as Day,
    key: 'mistyped',
    lateDays: 0,
    body: { kind: 'observation', plot: 'b', what: 'earthworms', count: 140, of: 10, words: null },
  },
  {
    on: '2026-10-03' as Day,
    amends: 'mistyped',
    lateDays: 2,
    reason: 'A nought too many.',
    body: { kind: 'observation', plot: 'b', what: 'earthworms', count: 14, of: 10, words: null },
  },
  {
    on: '2026-08-12' as Day,
    key: 'twice',
    lateDays: 0,
    body: { kind: 'observation', plot: 'f', what: 'potato blight', count: 0, of: 40, words: 'None seen.' },
  },
  {
    on: '2026-08-12' as Day,
    amends: 'twice',
    lateDays: 1,
    reason: 'Written twice, by Idris and by me.',
    body: { kind: 'struck-out' },
  },
];

const agreed: Done = {
  on: '2027-01-09' as Day,
  lateDays: 0,
  body: {
    kind: 'rotation-agreed',
    reasons: {
      'f-2028-carrot': 'The carrots go in late after the leeks; we will see about a cover when the time comes.',
    },
  },
};
