import { asMonthDay, type Day, type FarmId, type MonthDay } from '@leywright/measures';
import type { About, Conventions, Farm, Place, Shows } from './farm.ts';

/** How a farm counts unless its farm.json says otherwise. Shares of loss are common practice and give way to the farm's own. */
export const defaultConventions: Conventions = {
  restSeasonFrom: asMonthDay('03-01'),
  restSeasonTo: asMonthDay('10-31'),
  familyRests: 'reference',
  organismRests: true,
  hedgeBufferM: null,
  headlandShare: 0.12,
  leachingFrom: asMonthDay('10-01'),
  leachingTo: asMonthDay('03-25'),
  bareCoverShare: 0.15,
  bareWeeks: 3,
  gradingLossShare: null,
  packingLossShare: 0.03,
  seedMarginShare: 0.1,
  storeLossFrom: null,
  packingHBox: null,
  deliveryHWeek: null,
  lastDayCounts: false,
};

/** The same seasons half a year away, for farms south of the equator. */
export function conventionsAt(latDeg: number): Conventions {
  if (latDeg >= 0) return defaultConventions;
  return {
    ...defaultConventions,
    restSeasonFrom: halfYearOn(defaultConventions.restSeasonFrom),
    restSeasonTo: halfYearOn(defaultConventions.restSeasonTo),
    leachingFrom: halfYearOn(defaultConventions.leachingFrom),
    leachingTo: halfYearOn(defaultConventions.leachingTo),
  };
}

function halfYearOn(monthDay: MonthDay): MonthDay {
  const month = ((Number(monthDay.slice(0, 2)) + 5) % 12) + 1;
  const lastDay = [31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31][month - 1] ?? 28;
  return asMonthDay(
    `${String(month).padStart(2, '0')}-${String(Math.min(Number(monthDay.slice(3)), lastDay)).padStart(2, '0')}`,
  );
}

export const defaultShows: Shows = { area: 'ha', mass: 'kg', weekStart: 'monday', money: 'GBP' };

/** A farm about which nothing is known but its name and place. */
export function aboutFarm(id: string, name: string, place: Place): About {
  return {
    id: id as FarmId,
    name,
    place,
    conventions: conventionsAt(place.latDeg),
    shows: defaultShows,
    sample: false,
    sampleDay: null,
  };
}

export function emptyFarm(about: About): Farm {
  return {
    about,
    fields: [],
    plots: [],
    parts: [],
    features: [],
    stands: [],
    rotation: null,
    rests: [],
    promise: null,
    crops: [],
    prices: [],
    stores: [],
    storeLosses: [],
    people: [],
    absences: [],
    ownJobs: [],
    seedLots: [],
    seedOffers: [],
    seedAuthorisations: [],
    soilSamples: [],
    weather: [],
    marks: [],
    harvests: [],
    weighings: [],
    jobsDone: [],
    aliases: {},
  };
}

/** The day a farm is looked at: the day it is, but for an invented farm its own, unless somebody said which day. */
export function farmDay(about: About, day: Day, isSaid: boolean): Day {
  return isSaid ? day : (about.sampleDay ?? day);
}
