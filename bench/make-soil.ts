/** A made farm for the soil bench: eight parts, each a course further on in a six-course rotation, and drawn weathers. Invented. */
import {
  climate,
  drawnWeather,
  type SoilPart,
  type SoilStand,
  type SoilWeather,
  soilAccount,
} from '@leywright/agronomy';
import { asDay, type Day, dayNumber } from '@leywright/measures';

interface Course {
  readonly plant: string;
  readonly isCover?: true;
  readonly from: string;
  readonly to: string;
  /** Years the end lies after the beginning. */
  readonly years: number;
  readonly cuts?: readonly string[];
}

/** Six years: a two-year ley, then four crops with winter covers between. */
const courses: readonly (readonly Course[])[] = [
  [
    {
      plant: 'mix-ley-clover-grass',
      isCover: true,
      from: '04-15',
      to: '03-10',
      years: 2,
      cuts: ['0-07-10', '0-09-01', '1-05-25', '1-07-10', '1-08-30'],
    },
  ],
  [],
  [
    { plant: 'potato-maincrop', from: '05-05', to: '09-15', years: 0 },
    { plant: 'grazing-rye', isCover: true, from: '09-25', to: '04-10', years: 1 },
  ],
  [
    { plant: 'cabbage-autumn', from: '06-01', to: '10-25', years: 0 },
    { plant: 'mix-rye-vetch', isCover: true, from: '10-30', to: '04-20', years: 1 },
  ],
  [{ plant: 'leek-mid', from: '06-10', to: '02-10', years: 1 }],
  [
    { plant: 'carrot-maincrop', from: '05-20', to: '10-20', years: 0 },
    { plant: 'grazing-rye', isCover: true, from: '10-25', to: '04-01', years: 1 },
  ],
];

export const firstYear = 2027;
export const partCount = 8;

/** The stands of a part over so many years. */
function standsOf(partAt: number, years: number): readonly SoilStand[] {
  const day = (year: number, monthDay: string): number => dayNumber(asDay(`${year}-${monthDay}`));
  return Array.from({ length: years + 1 }, (_, at) => at).flatMap((at) => {
    const year = firstYear - 1 + at;
    return (courses[(at + partAt) % courses.length] ?? []).map(
      (course): SoilStand => ({
        id: `${partAt}-${year}-${course.plant}`,
        habit: course.isCover
          ? soilAccount.habitOfCover(course.plant, course.years > 1 ? 'second' : 'main')
          : soilAccount.habitOfCrop(course.plant),
        startDayNumber: day(year, course.from),
        endDayNumber: day(year + course.years, course.to),
        ending: course.isCover ? 'turned-in' : 'sold',
        seedNKgHa: 2,
        establishedShare: 1,
        cuts: (course.cuts ?? []).map((cut) => ({
          dayNumber: day(year + Number(cut.slice(0, 1)), cut.slice(2)),
          use: 'left',
        })),
        groundWorked: true,
      }),
    );
  });
}

/** The farm's parts. */
export function makeParts(years: number): readonly SoilPart[] {
  return Array.from({ length: partCount }, (_, partAt) => ({
    id: `part-${partAt}`,
    profile: soilAccount.profiles.profileOfTexture(partAt % 2 === 0 ? 'sandy loam' : 'silt loam'),
    latDeg: 51.81,
    stands: standsOf(partAt, years),
    brought: [],
    irrigation: { kind: 'none' },
    tunnel: false,
    depositionKgHaYear: 15,
    startMineralNKgHa: 50,
    startAvailableShare: 1,
  }));
}

/** Weathers drawn for the place by the seeded generator: run `runIndex` of a span. */
export function weatherDraws(span: { readonly from: Day; readonly days: number }, seed: number) {
  const { station } = climate.climateNear(51.81, -0.36);
  const draw = drawnWeather.prepareGenerator(drawnWeather.generatorFromStation(station), seed);
  return (runIndex: number): SoilWeather => {
    const series = draw(runIndex, drawnWeather.emptyWeather(dayNumber(span.from), span.days));
    return soilAccount.soilWeather(series, { latDeg: 51.81, elevationM: 128 });
  };
}
