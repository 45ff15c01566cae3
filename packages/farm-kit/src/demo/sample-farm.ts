/** Oddlethorpe Growers: an invented farm, complete, for trying the program and for its tests. */
import type { Farm } from '@leywright/book';
import { asDay, asId, type Day } from '@leywright/measures';
import { aboutWith, cropId, farmWith } from '../build/farm.ts';
import { rotation, stand } from '../build/stand.ts';
import { sampleCourses } from './courses.ts';
import { standsOfThePast } from './history.ts';
import { sampleFeatures, sampleFields, sampleParts, samplePlots, sampleSoil } from './land.ts';
import { sampleCrops, samplePeople, samplePrices, samplePromise, sampleStoreLosses, sampleStores } from './promise.ts';
import { tunnelStands } from './tunnel.ts';

/** The day the sample farm is looked at: Thursday of the second week of 2027. */
export const sampleToday: Day = asDay('2027-01-14');

export function sampleFarm(today: Day = sampleToday): Farm {
  const plots = samplePlots();
  const startOf = Object.fromEntries(
    plots
      .filter((one) => one.courseAtStart !== null)
      .map((one) => [one.id, sampleCourses.findIndex((course) => course.id === one.courseAtStart)]),
  );
  const past = standsOfThePast({ courses: sampleCourses, startOf, agreedYear: 2027, firstYear: 2019 }, today);
  return farmWith({
    about: aboutWith({
      id: 'oddlethorpe-growers',
      name: 'Oddlethorpe Growers',
      sample: true,
      sampleDay: sampleToday,
      place: {
        latDeg: 52.6,
        lonDeg: 0.9,
        elevationM: 90,
        near: 'Oddlethorpe (invented)',
        jurisdiction: 'England',
        timeZone: 'Europe/London',
      },
    }),
    fields: sampleFields,
    plots,
    parts: sampleParts,
    features: sampleFeatures,
    stands: [...past, ...tunnelStands(2022, 2031, today), ...rhubarb(), ...lateRootsOnF()],
    rotation: rotation(2027, sampleCourses, { state: 'agreed', agreedOn: asDay('2027-01-09') }),
    promise: samplePromise,
    crops: sampleCrops,
    prices: samplePrices,
    stores: sampleStores,
    storeLosses: sampleStoreLosses,
    people: samplePeople,
    soilSamples: sampleSoil,
    aliases: {
      jerusalem: cropId('jerusalem-artichoke'),
      greens: cropId('cabbage-spring'),
      psb: cropId('broccoli-purple-sprouting'),
    },
  });
}

function rhubarb(): Farm['stands'] {
  return [
    stand('rhubarb', 'rhubarb', ['2018-11-12', '2034-11-01'], {
      id: 'rhubarb-2018',
      state: 'recorded',
      sownOn: null,
      plantedOn: '2018-11-12',
    }),
  ];
}

/** A fault left in on purpose: Far Ridding's carrots of 2028 are meant to be lifted in November, and nothing follows before spring. */
function lateRootsOnF(): Farm['stands'] {
  const roots = { course: 'roots', courseYear: 2028, span: { fromShare: 0, toShare: 0.34 } };
  return [
    stand('f', 'carrot-maincrop', ['2028-05-20', '2028-11-10'], { id: 'f-2028-carrot', ...roots }),
    stand('f', 'mix-oat-pea-vetch', ['2029-03-18', '2029-04-28'], { id: 'f-2028-carrot-rye', kind: 'cover', ...roots }),
  ];
}

export const sampleFarmId = asId('oddlethorpe-growers');
