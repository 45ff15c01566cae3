/** The whole farm as known: what the folder's files say, with the book's entries replayed over it. */
import type { CropId, Day, FarmId, MonthDay } from '@leywright/measures';
import type { Feature, Field, OrganismMark, Part, Plot, SoilSample } from './land.ts';
import type {
  BoxPromise,
  HarvestRecord,
  OwnStoreLoss,
  Person,
  Price,
  StorePlace,
  WeatherDay,
  WeighingRecord,
} from './promise.ts';
import type { OwnCrop, OwnRest, Rotation, Stand } from './stand.ts';
import type { Absence, OwnJob, SeedAuthorisation, SeedLot, SeedOffer } from './work.ts';

export interface Place {
  /** South is negative. */
  readonly latDeg: number;
  readonly lonDeg: number;
  readonly elevationM: number | null;
  /** Words for people, such as the nearest town. */
  readonly near: string | null;
  /** As in the rules table: England, Wales, Scotland/NI, EU, USA. */
  readonly jurisdiction: string;
  /** IANA zone. */
  readonly timeZone: string;
}

/** How this farm counts. Every default stands in `defaultConventions`; the folder's farm.json overrides. */
export interface Conventions {
  /** A stand occupies each year in which it stands on any day of this season (both days inclusive). */
  readonly restSeasonFrom: MonthDay;
  readonly restSeasonTo: MonthDay;
  /** 'reference': the table's family rests plus own ones over them; 'own': only rests.csv. */
  readonly familyRests: 'reference' | 'own';
  /** Whether rests of single organisms are looked at. */
  readonly organismRests: boolean;
  /** The farm's own policy, metres from a hedge's centre; null = only where the law asks. */
  readonly hedgeBufferM: number | null;
  readonly headlandShare: number;
  /** Weeks in which bare ground loses most; flipped by the reader for farms south of the equator. */
  readonly leachingFrom: MonthDay;
  readonly leachingTo: MonthDay;
  /** Ground counts as bare under this cover, for this many weeks on end. */
  readonly bareCoverShare: number;
  readonly bareWeeks: number;
  readonly gradingLossShare: number | null;
  readonly packingLossShare: number;
  readonly seedMarginShare: number;
  /** First week in which a store loses, when the farm ignores the curing weeks; null = from lifting. */
  readonly storeLossFrom: Day | null;
  readonly packingHBox: number | null;
  readonly deliveryHWeek: number | null;
  /** Whether `Stand.to` in the folder's files is the last day on the ground ('inclusive') or the first free day. */
  readonly lastDayCounts: boolean;
}

export interface Shows {
  readonly area: 'ha' | 'acres';
  readonly mass: 'kg' | 'lb';
  readonly weekStart: 'monday' | 'sunday';
  readonly money: string;
}

export interface About {
  readonly id: FarmId;
  readonly name: string;
  readonly place: Place;
  readonly conventions: Conventions;
  readonly shows: Shows;
  /** True for the invented sample farm: said on every page. */
  readonly sample: boolean;
  /** The day an invented farm lives on, so that its season does not run away from it; null = the day it really is. */
  readonly sampleDay: Day | null;
}

export interface Farm {
  readonly about: About;
  readonly fields: readonly Field[];
  readonly plots: readonly Plot[];
  readonly parts: readonly Part[];
  readonly features: readonly Feature[];
  readonly stands: readonly Stand[];
  readonly rotation: Rotation | null;
  readonly rests: readonly OwnRest[];
  readonly promise: BoxPromise | null;
  readonly crops: readonly OwnCrop[];
  readonly prices: readonly Price[];
  readonly stores: readonly StorePlace[];
  readonly storeLosses: readonly OwnStoreLoss[];
  readonly people: readonly Person[];
  readonly absences: readonly Absence[];
  readonly ownJobs: readonly OwnJob[];
  readonly seedLots: readonly SeedLot[];
  readonly seedOffers: readonly SeedOffer[];
  readonly seedAuthorisations: readonly SeedAuthorisation[];
  readonly soilSamples: readonly SoilSample[];
  readonly weather: readonly WeatherDay[];
  readonly marks: readonly OrganismMark[];
  readonly harvests: readonly HarvestRecord[];
  readonly weighings: readonly WeighingRecord[];
  /** Jobs done, by job id, with the share of the job that was done. */
  readonly jobsDone: readonly {
    readonly entry: string;
    readonly job: string;
    readonly on: Day;
    readonly share: number;
    readonly hours: number | null;
  }[];
  /** Crop ids by other names people wrote, lower case. */
  readonly aliases: Readonly<Record<string, CropId>>;
}
