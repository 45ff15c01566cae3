import {
  nitrogenModels,
  type SoilPart,
  type SoilRun,
  type SoilStand,
  type SoilWeather,
  soilAccount,
} from '@leywright/agronomy';
import { describe, expect, test } from 'vitest';
import { numberOf, partOf, roughWeather, standOf, sumOver, valueOn } from './soil-samples.ts';

/**
 * What fields have shown, as ranges the run must lie in. Means over six drawn weathers; suction cups sit at about a metre, so the account ends there.
 * Sources were read as abstracts or reports; where a figure is recalled or common practice the test's name says so.
 */
const seeds = [1, 2, 3, 4, 5, 6];
const usual = seeds.map((seed) => roughWeather('2026-01-01', '2030-12-31', seed));
/** Denmark's wet west: a third more rain. */
const wet = seeds.map((seed) => roughWeather('2026-01-01', '2030-12-31', seed, 1.35));

const metre = { ...soilAccount.profiles.profileOfTexture('sandy loam'), depthCm: 100 };

function meanOf(
  weathers: readonly SoilWeather[],
  stands: readonly SoilStand[],
  at: { readonly ask: (run: SoilRun) => number; readonly part?: Partial<SoilPart> },
): number {
  const part = partOf(stands, { profile: metre, ...at.part });
  const asked = weathers.map((weather) => at.ask(soilAccount.runSoil(part, weather, { stepDays: 1 })));
  return asked.reduce((sum, one) => sum + one, 0) / asked.length;
}

const cutDays = ['2026-07-15', '2026-09-05', '2027-05-25', '2027-07-10', '2027-08-25'];

function leyUntil(day: string, use: 'left' | 'taken' = 'left'): SoilStand {
  return standOf('mix-ley-clover-grass', ['2026-04-20', day], {
    habit: soilAccount.habitOfCover('mix-ley-clover-grass', 'second'),
    cuts: cutDays.filter((one) => one < day).map((one) => ({ dayNumber: numberOf(one), use })),
  });
}

const leachedBetween = (from: string, to: string) => (run: SoilRun) => sumOver(run, 'leachedNKgHa', from, to);

describe('a ley turned in', () => {
  const after = [
    standOf('sweet-corn', ['2028-05-15', '2028-09-10']),
    standOf('grazing-rye', ['2028-09-20', '2029-04-10']),
    standOf('cabbage-autumn', ['2029-06-01', '2029-10-20']),
  ];
  const threeYears = leachedBetween('2027-09-15', '2030-09-15');
  const [september, november, march] = ['2027-09-15', '2027-11-10', '2028-03-10'].map((day) =>
    meanOf(wet, [leyUntil(day), ...after], { ask: threeYears }),
  ) as [number, number, number];

  test('loses 129 to 233 kg N/ha in three years on sandy loam (Djurhuus & Olsen 1997, Soil Use and Management 13:61)', () => {
    for (const lost of [september, november, march]) {
      expect(lost).toBeGreaterThan(129);
      expect(lost).toBeLessThan(233);
    }
  });

  test('loses least when it is left until spring (Djurhuus & Olsen 1997)', () => {
    expect(march).toBeLessThan(november);
    expect(march).toBeLessThan(0.95 * september);
  });

  test('loses less in late autumn than in early autumn (trial at Lanna, Swedish University of Agricultural Sciences 2012)', () => {
    expect(november).toBeLessThan(0.95 * september);
  });

  test('and left bare leaches more than any other winter ground in the two winters after (common practice)', () => {
    const twoWinters = leachedBetween('2027-09-15', '2029-04-15');
    const bare = meanOf(wet, [leyUntil('2027-09-15')], { ask: twoWinters });
    const standing = meanOf(wet, [leyUntil('2029-04-15')], { ask: twoWinters });
    const covered = meanOf(wet, [leyUntil('2027-09-15'), standOf('grazing-rye', ['2027-09-25', '2028-04-10'])], {
      ask: twoWinters,
    });
    expect(bare).toBeGreaterThan(covered);
    expect(bare).toBeGreaterThan(1.3 * standing);
  });

  test('feeds less from course to course after it (common practice)', () => {
    const ley = leyUntil('2028-03-01');
    const freed = (year: number) =>
      meanOf(usual, [ley], { ask: (run) => sumOver(run, 'residueReleaseNKgHa', `${year}-05-01`, `${year + 1}-05-01`) });
    const [first, second] = [freed(2028), freed(2029)];
    expect(first).toBeGreaterThan(second);
    expect(second).toBeGreaterThan(0);
  });
});

describe('a winter cover on ground that would lie bare', () => {
  const before = [
    standOf('cabbage-storage-white', ['2026-05-25', '2026-11-01']),
    standOf('grazing-rye', ['2026-11-05', '2027-04-10']),
    standOf('potato-second-early', ['2027-04-25', '2027-08-10']),
  ];
  const winter = leachedBetween('2027-10-01', '2028-05-01');
  const lean = { profile: { ...metre, totalNPct: 0.12 } };
  const bare = meanOf(wet, before, { ask: winter, part: lean });
  const keptShare = (cover: SoilStand) => 1 - meanOf(wet, [...before, cover], { ask: winter, part: lean }) / bare;

  test('keeps about half of the nitrate from leaching, where it is a grass: 52 % in 41 studies (Nouri et al. 2022, Global Change Biology 28:4736)', () => {
    const rye = keptShare(standOf('grazing-rye', ['2027-08-25', '2028-04-10']));
    const ryegrass = keptShare(standOf('italian-ryegrass', ['2027-08-20', '2028-04-15']));
    for (const share of [rye, ryegrass]) {
      expect(share).toBeGreaterThan(0.35);
      expect(share).toBeLessThan(0.7);
    }
  });

  test('keeps more where it is a brassica: 75 % (Nouri et al. 2022), 70 % for all that are no legumes (Tonitto et al. 2006, Agriculture, Ecosystems and Environment 112:58)', () => {
    const radish = keptShare(standOf('fodder-radish', ['2027-08-20', '2028-03-01']));
    expect(radish).toBeGreaterThan(0.6);
    expect(radish).toBeLessThan(0.95);
    expect(radish).toBeGreaterThan(keptShare(standOf('grazing-rye', ['2027-08-25', '2028-04-10'])));
  });

  test('keeps less, the later it is sown (common practice)', () => {
    expect(keptShare(standOf('grazing-rye', ['2027-09-25', '2028-04-10']))).toBeLessThan(
      keptShare(standOf('grazing-rye', ['2027-08-25', '2028-04-10'])),
    );
  });

  test('hardly changes the water that drains (Nouri et al. 2022: no effect)', () => {
    const drained = (run: SoilRun) => sumOver(run, 'drainedMm', '2027-10-01', '2028-04-01');
    const open = meanOf(wet, before, { ask: drained });
    const covered = meanOf(wet, [...before, standOf('grazing-rye', ['2027-08-25', '2028-04-10'])], { ask: drained });
    expect(Math.abs(covered / open - 1)).toBeLessThan(0.2);
  });

  test('takes 40 to 72 % of the mineral nitrogen out of the profile by winter (Gentsch et al. 2022, Soil 8:269: phacelia, mustard and bristle oat, their mean)', () => {
    const fed = [leyUntil('2027-03-01'), standOf('potato-second-early', ['2027-04-25', '2027-08-10'])];
    const left = (stands: readonly SoilStand[]) =>
      meanOf(usual, stands, { ask: (run) => valueOn(run, 'mineralNKgHa', '2027-11-15') });
    const fallow = left(fed);
    const shares = ['phacelia', 'white-mustard', 'black-oat'].map(
      (cover) => 1 - left([...fed, standOf(cover, ['2027-08-25', '2028-03-01'])]) / fallow,
    );
    const mean = shares.reduce((sum, share) => sum + share, 0) / shares.length;
    expect(mean).toBeGreaterThan(0.4);
    expect(mean).toBeLessThan(0.72);
  });
});

describe('what leys bring and keep', () => {
  test('clover in a ley that is carried off holds 60 to 160 kg N/ha a year from the air in its herbage (Oberson et al. 2013, Plant and Soil 371:237)', () => {
    const fixed = meanOf(usual, [leyUntil('2028-03-01', 'taken')], {
      ask: (run) => sumOver(run, 'fixedNKgHa', '2027-01-01', '2028-01-01'),
    });
    const inHerbage = fixed / 1.7; // below-ground factor of Anglade et al. 2015
    expect(inHerbage).toBeGreaterThan(60);
    expect(inHerbage).toBeLessThan(160);
  });

  test('mulching it where it grows makes it fix 10 to 30 % less or lower still by what comes back (recalled)', () => {
    const fixed = (use: 'left' | 'taken') =>
      meanOf(usual, [leyUntil('2028-03-01', use)], {
        ask: (run) => sumOver(run, 'fixedNKgHa', '2026-08-01', '2028-01-01'),
      });
    expect(fixed('left') / fixed('taken')).toBeGreaterThan(0.6);
    expect(fixed('left') / fixed('taken')).toBeLessThan(0.92);
  });

  test('of clover-grass mulched where it grew 1 to 10 % of the nitrogen goes off as ammonia (Weber et al. 2018: 2.2 %; Larsson et al. 1998 for thick mulches)', () => {
    const cut = meanOf(usual, [leyUntil('2028-03-01', 'taken')], {
      ask: (run) => sumOver(run, 'movedNKgHa', '2027-01-01', '2028-01-01'),
    });
    const lost = meanOf(usual, [leyUntil('2028-03-01')], {
      ask: (run) => sumOver(run, 'ammoniaNKgHa', '2027-01-01', '2028-01-01'),
    });
    expect(lost / cut).toBeGreaterThan(0.01);
    expect(lost / cut).toBeLessThan(0.1);
  });

  const lucerne = standOf('lucerne', ['2026-04-20', '2028-03-01'], {
    habit: soilAccount.habitOfCover('lucerne', 'second'),
    cuts: ['2026-07-20', '2027-06-01', '2027-07-15', '2027-09-01'].map((day) => ({
      dayNumber: numberOf(day),
      use: 'taken' as const,
    })),
  });
  const deep = { profile: soilAccount.profiles.profileOfTexture('sandy loam'), startMineralNKgHa: 200 };

  test('roots of lucerne reach two metres or more in a two-year ley (common practice; nitrate taken to 1.8 m in the first year: Mathers, Stewart & Blair 1975)', () => {
    const depthCm = (day: string) =>
      meanOf(usual, [lucerne], { ask: (run) => valueOn(run, 'rootDepthCm', day), part: deep });
    expect(depthCm('2027-10-01')).toBeGreaterThanOrEqual(200);
    expect(depthCm('2026-11-15')).toBeGreaterThanOrEqual(150);
  });

  test('and fetch back nitrate that has gone down: less of it is left below 60 cm, and less is lost at the base (Mathers, Stewart & Blair 1975)', () => {
    const fetched = meanOf(usual, [lucerne], {
      ask: (run) => sumOver(run, 'deepUptakeNKgHa', '2026-01-01', '2028-01-01'),
      part: deep,
    });
    expect(fetched).toBeGreaterThan(40);
    const lost = (stands: readonly SoilStand[]) =>
      meanOf(usual, stands, { ask: leachedBetween('2026-01-01', '2030-12-31'), part: deep });
    expect(lost([lucerne])).toBeLessThan(0.8 * lost([]));
  });
});

describe('what residues and humus free', () => {
  test.each([
    [12, 0.35, 0.45],
    [25, -0.02, 0.1],
  ])(
    'residue of C:N %i frees %f to %f of its nitrogen in 168 warm, moist days (Nicolardot, Recous & Mary 2001)',
    (cn, low, high) => {
      const { residueAfter, residueRates } = nitrogenModels.residue;
      const freed = residueAfter(1000, { cnRatio: cn, rates: residueRates(cn) }, 168).mineralNKgHa / (1000 / cn);
      expect(freed).toBeGreaterThan(low);
      expect(freed).toBeLessThan(high);
    },
  );

  test('winter goes at a third of the pace of summer, or a little more (5 °C against 15 °C; Brisson et al. 2008)', () => {
    const { residueWarmthFactor, humusWarmthFactor } = nitrogenModels.release;
    for (const factor of [residueWarmthFactor, humusWarmthFactor]) {
      expect(factor(5) / factor(15)).toBeGreaterThan(0.28);
      expect(factor(5) / factor(15)).toBeLessThan(0.4);
    }
    const freed = (from: string, to: string) =>
      meanOf(usual, [], { ask: (run) => sumOver(run, 'humusReleaseNKgHa', from, to) });
    const ratio = freed('2027-12-01', '2028-03-01') / freed('2028-06-01', '2028-09-01');
    expect(ratio).toBeGreaterThan(0.1);
    expect(ratio).toBeLessThan(0.45);
  });

  test('ground left bare over winter loses more than the same ground under a cover or a ley (common practice)', () => {
    const yearsOfThree = leachedBetween('2027-10-01', '2028-10-01');
    const crop = standOf('potato-second-early', ['2027-04-25', '2027-08-10']);
    const bare = meanOf(usual, [crop], { ask: yearsOfThree });
    const rye = meanOf(usual, [crop, standOf('grazing-rye', ['2027-08-25', '2028-04-10'])], { ask: yearsOfThree });
    const ley = meanOf(usual, [leyUntil('2029-03-01')], { ask: yearsOfThree });
    expect(bare).toBeGreaterThan(rye);
    expect(bare).toBeGreaterThan(ley);
  });

  test('wet, poorly drained clay loses 2 to 30 kg N/ha a year as gas, free-draining loam next to nothing (recalled)', () => {
    const gas = (part: Partial<SoilPart>) =>
      meanOf(usual, [leyUntil('2027-09-15')], {
        ask: (run) => sumOver(run, 'denitrifiedNKgHa', '2028-01-01', '2029-01-01'),
        part,
      });
    const clay = gas({ profile: { ...soilAccount.profiles.profileOfTexture('clay'), drainingFraction: 0.3 } });
    expect(clay).toBeGreaterThan(2);
    expect(clay).toBeLessThan(30);
    expect(gas({})).toBeLessThan(3);
  });
});
