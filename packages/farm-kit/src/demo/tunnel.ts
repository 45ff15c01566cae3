/** The tunnel's own rotation: six bays, each a year behind the next, so that tomatoes come back to a bay in the seventh year. */
import type { Stand } from '@leywright/book';
import { type Day, yearOf } from '@leywright/measures';
import { span } from '../build/farm.ts';
import { stand } from '../build/stand.ts';

interface BayStand {
  readonly key: string;
  readonly what: string;
  readonly kind?: 'cover';
  readonly from: string;
  readonly to: string;
  readonly toNextYear?: true;
  readonly planted?: true;
  /** Half of the bay; the whole when left out. */
  readonly half?: 0 | 1;
}

const bayYears: readonly (readonly BayStand[])[] = [
  [
    { key: 'spinach-1', what: 'spinach', from: '02-21', to: '05-12', half: 0 },
    { key: 'spinach-2', what: 'spinach', from: '03-18', to: '05-26', half: 1 },
    { key: 'tomato-1', what: 'tomato-tunnel', from: '05-13', to: '10-18', planted: true, half: 0 },
    { key: 'tomato-2', what: 'tomato-tunnel', from: '05-27', to: '10-18', planted: true, half: 1 },
    { key: 'purslane', what: 'winter-purslane', from: '10-20', to: '04-16', toNextYear: true, planted: true },
  ],
  [
    { key: 'french-bean', what: 'french-bean-dwarf', from: '04-20', to: '07-25' },
    { key: 'catch', what: 'phacelia', kind: 'cover', from: '08-01', to: '09-20' },
    { key: 'lambs-lettuce', what: 'lambs-lettuce', from: '09-28', to: '02-18', toNextYear: true },
  ],
  [
    { key: 'lettuce-1', what: 'lettuce-head', from: '02-26', to: '05-14', planted: true, half: 0 },
    { key: 'lettuce-2', what: 'lettuce-head', from: '02-26', to: '05-30', planted: true, half: 1 },
    { key: 'cucumber-1', what: 'cucumber-tunnel', from: '05-15', to: '10-05', planted: true, half: 0 },
    { key: 'cucumber-2', what: 'cucumber-tunnel', from: '06-01', to: '10-05', planted: true, half: 1 },
    { key: 'salad', what: 'winter-salad-tunnel', from: '10-08', to: '03-14', toNextYear: true, planted: true },
  ],
  [
    { key: 'chard-1', what: 'chard', from: '03-16', to: '07-24', planted: true, half: 0 },
    { key: 'catch', what: 'mix-phacelia-buckwheat', kind: 'cover', from: '07-28', to: '09-18', half: 0 },
    { key: 'chard-2', what: 'chard', from: '04-08', to: '09-24', planted: true, half: 1 },
    { key: 'lambs-lettuce', what: 'lambs-lettuce', from: '09-28', to: '01-31', toNextYear: true },
  ],
  [
    { key: 'carrot', what: 'carrot-bunching', from: '02-08', to: '07-05', half: 0 },
    { key: 'spring-onion-1', what: 'spring-onion', from: '02-08', to: '07-05', half: 1 },
    { key: 'spring-onion-2', what: 'spring-onion', from: '07-08', to: '10-12' },
    {
      key: 'winter-lettuce',
      what: 'lettuce-winter-tunnel',
      from: '10-14',
      to: '04-28',
      toNextYear: true,
      planted: true,
    },
  ],
  [
    { key: 'courgette', what: 'courgette', from: '05-01', to: '09-20', planted: true },
    { key: 'lambs-lettuce', what: 'lambs-lettuce', from: '09-25', to: '02-08', toNextYear: true },
  ],
];

/** Every stand of the tunnel that reaches into the years asked for: recorded up to today, agreed after. */
export function tunnelStands(fromYear: number, toYear: number, today: Day): readonly Stand[] {
  const stands: Stand[] = [];
  for (let year = fromYear - 1; year <= toYear; year += 1) {
    for (let bay = 0; bay < bayYears.length; bay += 1) {
      const ofYear = bayYears[(bay + year) % bayYears.length] ?? [];
      stands.push(...ofYear.map((one) => bayStand(one, bay, year)).filter((one) => yearOf(one.to) >= fromYear));
    }
  }
  return stands.map((one) => ({
    ...one,
    state: one.from <= today ? 'recorded' : 'agreed',
    endedBy: one.to <= today ? (one.kind === 'crop' ? 'cut' : 'turned-in') : null,
  }));
}

function bayStand(one: BayStand, bay: number, year: number): Stand {
  const from = `${year}-${one.from}`;
  const left = bay + (one.half ?? 0) / 2;
  const right = one.half === 0 ? left + 0.5 : bay + 1;
  const to = `${one.toNextYear ? year + 1 : year}-${one.to}`;
  return stand('tunnel', one.what, [from, to], {
    id: `tunnel-${year}-bay-${bay + 1}-${one.key}`,
    kind: one.kind ?? 'crop',
    span: span(twelfth(left), twelfth(right)),
    courseYear: year,
    ...(one.planted ? { sownOn: null, plantedOn: from } : {}),
  });
}

/** Bays of a sixth: two of the twelve beds each. */
function twelfth(bays: number): number {
  return Math.round((bays / 6) * 1e6) / 1e6;
}
