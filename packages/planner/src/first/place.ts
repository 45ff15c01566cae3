/** Where a first farm lies: degrees as typed, or a place whose name is known because it has climate normals. */
import { type ClimateStation, climate } from '@leywright/agronomy';
import type { Place } from '@leywright/book';
import type { FirstProblem, FirstSentence } from './sentence.ts';

export type PlaceReading =
  | { readonly kind: 'place'; readonly place: Place }
  | { readonly kind: 'unknown'; readonly problem: FirstProblem };

/** Names known without degrees. */
export function knownPlaces(): readonly string[] {
  return climate.climateStations().map((station) => station.name);
}

export function placeOf(sentence: FirstSentence): PlaceReading {
  const { near, latDeg } = sentence;
  if (latDeg !== null) {
    const lonDeg = sentence.lonDeg ?? nearestByLatitude(latDeg).lonDeg;
    return {
      kind: 'place',
      place: placeAt({ latDeg, lonDeg, near, elevationM: null }, climate.climateNear(latDeg, lonDeg).station),
    };
  }
  const station = near === null ? null : stationNamed(near);
  if (station !== null)
    return {
      kind: 'place',
      place: placeAt({ latDeg: station.latDeg, lonDeg: station.lonDeg, near, elevationM: station.elevationM }, station),
    };
  const problem: FirstProblem =
    near === null
      ? {
          code: 'not-as-asked',
          field: 'near',
          found: null,
          figures: { said: 'say near which place, or give the latitude' },
        }
      : { code: 'place-unknown', field: 'near', found: near, figures: { found: near } };
  return { kind: 'unknown', problem };
}

function placeAt(at: Pick<Place, 'latDeg' | 'lonDeg' | 'near' | 'elevationM'>, station: ClimateStation): Place {
  return { ...at, jurisdiction: jurisdictionOf(station.country), timeZone: timeZoneOf(station.country) };
}

function nearestByLatitude(latDeg: number): ClimateStation {
  const [first, ...rest] = climate.climateStations();
  if (first === undefined) throw new Error('The table of climate normals is empty.');
  return rest.reduce(
    (best, station) => (Math.abs(station.latDeg - latDeg) < Math.abs(best.latDeg - latDeg) ? station : best),
    first,
  );
}

/** "Cambridge" finds "Cambridge (NIAB)", "brussels" finds "Uccle (Brussels)"; part of a word finds nothing. */
function stationNamed(near: string): ClimateStation | null {
  const asked = plain(near);
  if (asked === '') return null;
  const stations = climate.climateStations();
  return (
    stations.find((station) => plain(station.name) === asked) ??
    stations.find((station) => ` ${plain(station.name)} `.includes(` ${asked} `)) ??
    null
  );
}

function plain(name: string): string {
  return name
    .toLocaleLowerCase('en')
    .normalize('NFD')
    .replace(/\p{M}/gu, '')
    .replace(/[^\p{L}\p{N}]+/gu, ' ')
    .trim();
}

const union = ['Netherlands', 'Germany', 'France', 'Denmark', 'Italy', 'Belgium', 'Ireland'];

/** As the rules table names them; the grower sets it right in the settings. */
function jurisdictionOf(country: string): string {
  if (union.includes(country)) return 'EU';
  if (country.startsWith('USA')) return 'USA';
  if (country === 'Scotland' || country === 'Northern Ireland') return 'Scotland/NI';
  if (country.startsWith('England')) return 'England';
  return country;
}

const zones: Readonly<Record<string, string>> = {
  Netherlands: 'Europe/Amsterdam',
  Germany: 'Europe/Berlin',
  France: 'Europe/Paris',
  Denmark: 'Europe/Copenhagen',
  Italy: 'Europe/Rome',
  Belgium: 'Europe/Brussels',
  Ireland: 'Europe/Dublin',
  Australia: 'Australia/Hobart',
  'New Zealand': 'Pacific/Auckland',
  'USA, Northeast': 'America/New_York',
  'USA, Pacific Northwest': 'America/Los_Angeles',
};

function timeZoneOf(country: string): string {
  return zones[country] ?? 'Europe/London';
}
