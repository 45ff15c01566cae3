import { type Crop, reference, type SoilStand, type StandHabit, soilAccount } from '@leywright/agronomy';
import { describe, expect, test } from 'vitest';
import { numberOf, partOf, roughWeather, standOf } from './soil-samples.ts';

const mild = roughWeather('2025-01-01', '2028-12-31', 5);
// The station's normals are of a cooler century: 1.0 to 1.5 °C are to be added, its own row says.
for (let at = 0; at < mild.dayCount; at++) {
  mild.tMaxC[at] = (mild.tMaxC[at] ?? 0) + 1.2;
  mild.tMinC[at] = (mild.tMinC[at] ?? 0) + 1.2;
}

const shares = (habit: StandHabit) =>
  [
    habit.rootNShare,
    habit.legumeShare,
    habit.airShare,
    habit.soldMassShare,
    habit.soldNShare,
    habit.shortDayShare,
    habit.youngGainShare,
    habit.depletionFraction,
  ] as const;

/** A stand of the middle of the table's dates, for the table's days. */
function standOfTable(crop: Crop): SoilStand | null {
  const from = crop.plantFrom ?? crop.sowOutFrom;
  const to = crop.plantTo ?? crop.sowOutTo;
  if (from === null || to === null) return null;
  const [first, last] = [from, to].map((one) => numberOf(`2026-${one.slice(-5)}`)) as [number, number];
  const toComeUp = crop.plantFrom === null ? 12 : 0;
  const startDayNumber = Math.round((first + (last < first ? last + 365 : last)) / 2) + toComeUp;
  const days = Math.round((crop.dtmLowDays + crop.dtmHighDays) / 2) - toComeUp;
  return { ...standOf(crop.id, ['2026-01-01', '2026-01-02']), startDayNumber, endDayNumber: startDayNumber + days };
}

/** Grows on under ten hours of day, where the run's crops stand still: its autumn is undervalued, and the page on the run says so. */
const growsInShortDays = new Set(['lambs-lettuce']);

/** Field crops that stand a summer or an autumn; those of a few weeks or over winter hang on the year they get. */
const ofASeason = [...reference.crops.values()].flatMap((crop) => {
  const stand = /tunnel/.test(crop.id) ? null : standOfTable(crop);
  const days = stand === null ? 0 : stand.endDayNumber - stand.startDayNumber;
  return stand !== null && !growsInShortDays.has(crop.id) && days > 60 && days < 180
    ? [[crop.id, crop, stand] as const]
    : [];
});

describe('what a stand is to the ground, from the tables', () => {
  test('every crop and cover has a habit with shares between nought and one', () => {
    const habits = [
      ...[...reference.crops.keys()].map((id) => soilAccount.habitOfCrop(id)),
      ...[...reference.covers.keys()].flatMap((id) => [
        soilAccount.habitOfCover(id, 'main'),
        soilAccount.habitOfCover(id, 'second'),
      ]),
    ];
    expect(habits.length).toBeGreaterThan(120);
    for (const habit of habits) {
      for (const share of shares(habit)) {
        expect(share).toBeGreaterThanOrEqual(0);
        expect(share).toBeLessThanOrEqual(1);
      }
      expect(habit.gainPerCdTHa).toBeGreaterThan(0);
      expect(habit.nitrogenRootM).toBeGreaterThan(0.2);
    }
  });

  test('there are enough crops of a season to judge by', () => expect(ofASeason.length).toBeGreaterThan(30));

  test.each(ofASeason)(
    'well fed and watered, %s reaches the table’s mass and nitrogen within a third',
    (_, crop, stand) => {
      const irrigation = { kind: 'rule', roomForRainMm: 5, mostADayMm: 30 } as const;
      const run = soilAccount.runSoil(partOf([stand], { startMineralNKgHa: 400, irrigation }), mild, { stepDays: 7 });
      const outcome = run.outcomes[0];
      const tableTHa = (crop.yieldTypTHa / crop.harvestIndexFresh) * (crop.dmPct / 100);
      expect(Math.abs((outcome?.massTHa ?? 0) / tableTHa - 1)).toBeLessThan(1 / 3);
      expect(Math.abs((outcome?.nGotKgHa ?? 0) / crop.nUptakeTypKgHa - 1)).toBeLessThan(1 / 3);
    },
  );

  test.each([
    // Second year of a ley: with its first; tables' spans of dry matter added.
    ['mix-ley-clover-grass', 'second', ['2026-05-01', '2027-11-15'], [14, 23]],
    ['mix-ley-lucerne-grass', 'second', ['2026-05-01', '2027-11-15'], [15, 24]],
    ['red-clover', 'second', ['2026-05-01', '2027-11-15'], [12, 21]],
    ['mix-ley-clover-grass', 'main', ['2026-05-01', '2026-11-01'], [5, 9]],
    ['mix-rye-vetch', 'main', ['2026-09-15', '2027-04-25'], [3.2, 5]],
    ['winter-vetch', 'main', ['2026-09-10', '2027-04-22'], [1.8, 4]],
    ['phacelia', 'main', ['2026-06-15', '2026-08-17'], [2.5, 4.5]],
    ['fodder-radish', 'main', ['2026-08-10', '2026-10-20'], [3, 5.5]],
    ['mix-oat-pea-vetch', 'main', ['2026-05-10', '2026-07-20'], [4, 6]],
  ] as const)('%s (%s use) grows what its table says of it', (id, use, [from, to], [low, high]) => {
    const days = use === 'second' ? ['2027-05-25', '2027-07-10', '2027-08-30'] : ['2026-08-05'];
    const cuts = /ley|clover/.test(id) ? days.map((day) => ({ dayNumber: numberOf(day), use: 'taken' as const })) : [];
    const stand = { ...standOf(id, [from, to]), habit: soilAccount.habitOfCover(id, use), cuts };
    const run = soilAccount.runSoil(partOf([stand], { startMineralNKgHa: 100 }), mild, { stepDays: 7 });
    const massTHa = run.outcomes[0]?.massTHa ?? 0;
    expect(massTHa).toBeGreaterThanOrEqual(0.9 * low);
    expect(massTHa).toBeLessThanOrEqual(1.1 * high);
  });
});
