/**
 * A farm with nothing to be found: whole plots in one crop each, every cover in its season, a promise that two crops out of a store
 * keep with plenty, own weather, more hands than work. Faults are planted in it, one at a time, to prove that each is found and nothing else.
 */
import type { Farm, Plot, Rotation, WeatherDay } from '@leywright/book';
import { addDays, asDay, type Day, dayOfYear } from '@leywright/measures';
import type { PlanWish } from '@leywright/planner';
import { farmWith, plot } from '../build/farm.ts';
import { boxPromise, boxSize, person, slotOnce, storePlace } from '../build/promise.ts';
import { course, courseStand, rotation } from '../build/stand.ts';

export const cleanToday: Day = asDay('2027-01-14');

/**
 * Nine courses in which no family and no organism comes back too soon, even as advice, and which fix more nitrogen than they lose even
 * in a bad turn: six years of a clover that harms no carrot, carrots with rye after them, chicory to keep clover away from itself.
 * Begun long enough ago that everything on the ground today has its past.
 */
const courses: Rotation['courses'] = [
  course('chicory-1', [
    courseStand('chicory', 'forage-chicory', { kind: 'cover', sow: '05-20', end: '02-28', endYearOffset: 2 }),
  ]),
  course('chicory-2'),
  course('clover-1', [
    courseStand('clover', 'sweet-clover', { kind: 'ley', sow: '04-12', end: '02-27', endYearOffset: 6 }),
  ]),
  course('clover-2'),
  course('clover-3'),
  course('clover-4'),
  course('clover-5'),
  course('clover-6'),
  course('roots', [
    courseStand('carrot', 'carrot-maincrop', { sow: '05-08', end: '10-04' }),
    courseStand('rye', 'grazing-rye', { kind: 'cover', sow: '10-05', end: '04-26', endYearOffset: 1 }),
  ]),
];

/** Nine years, so that the plan sees a whole turn of the rotation. */
export const cleanWish: PlanWish = { today: cleanToday, year: 2027, fromYear: 2026, toYear: 2035 };

export function cleanFarm(): Farm {
  return farmWith({
    about: { id: 'clean-farm', name: 'Clean farm', conventions: { headlandShare: 0 } },
    plots: [
      ...courses.map((one, at) =>
        plot('ABCDEFGHI'.charAt(at), {
          name: `Piece ${at + 1}`,
          courseAtStart: one.id,
          bedCount: 50,
          ring: farApart(at),
        }),
      ),
      plot('T', { id: 'tunnel', name: 'Tunnel', kind: 'tunnel', grossM2: 300, bedCount: 4 }),
    ],
    rotation: rotation(2014, courses, { agreedOn: asDay('2014-01-10') }),
    promise: boxPromise({
      sizes: [boxSize('box', 40)],
      closedEveryYear: Array.from({ length: 34 }, (_, at) => at + 9),
      slots: [slotOnce('carrot-maincrop', ['2027-10-15', '2028-02-28'], { id: 'carrots', portions: { box: 0.5 } })],
    }),
    stores: [storePlace('cold-store', 'cold', ['carrot-maincrop'], 200_000)],
    people: [
      person('ruth', { hoursWeek: 160 }),
      person('idris', { hoursWeek: 160 }),
      person('maud', { hoursWeek: 160 }),
    ],
    weather: mildWeather(asDay('2025-06-01'), cleanToday),
  });
}

/** A hectare for each plot, one and a half kilometres from the next, so that no pest of one finds another. */
export function farApart(place: number): Plot['ring'] {
  const south = 52.6 + 0.0135 * place;
  const [west, east, north] = [0.9, 0.901478, south + 0.000899];
  return [
    [west, south],
    [east, south],
    [east, north],
    [west, north],
    [west, south],
  ];
}

/** Made-up weather without surprises, more than a year of it, so that nothing has to be taken from elsewhere. */
function mildWeather(from: Day, to: Day): readonly WeatherDay[] {
  const days: WeatherDay[] = [];
  for (let day = from; day < to; day = addDays(day, 1)) {
    const meanC = 10.5 - 6.2 * Math.cos((2 * Math.PI * (dayOfYear(day) - 20)) / 365.25);
    days.push({
      day,
      tMaxC: round(meanC + 4),
      tMinC: round(meanC - 4),
      rainMm: 1.7,
      sunH: 4,
      radiationMjM2: null,
      windMS: 3,
      humidityPct: 80,
    });
  }
  return days;
}

function round(degreesC: number): number {
  return Math.round(degreesC * 10) / 10;
}
