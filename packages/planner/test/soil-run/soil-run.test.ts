import { type SoilPart, type SoilRun, type SoilStand, soilAccount } from '@leywright/agronomy';
import type { Stand } from '@leywright/book';
import { cover, day, farmWith, plot, span, stand } from '@leywright/farm-kit';
import { dayNumber } from '@leywright/measures';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { groundSetting, makeGroundMemos } from '../../src/ground/ground-stages.ts';
import { plotCover } from '../../src/ground/plot-cover.ts';
import { whyOf } from '../../src/index.ts';
import { makeContentKeys } from '../../src/memo/content-key.ts';
import { horizonOf } from '../../src/season/horizon.ts';
import { runLinked } from '../../src/soil-run/linked-runs.ts';
import { firstChangedDay, makePartRuns } from '../../src/soil-run/part-runs.ts';
import { partsOfPlot } from '../../src/soil-run/plot-parts.ts';

const today = day('2027-01-14');

function groundOf(stands: readonly Stand[]) {
  const farm = farmWith({ plots: [plot('A')], stands });
  const { year, horizon } = horizonOf({ today });
  const setting = groundSetting(farm, { today, year, horizon }, makeGroundMemos(makeContentKeys()));
  const [first] = farm.plots;
  if (first === undefined) throw new Error('The farm has a plot.');
  const found = partsOfPlot(first, plotCover(first.id, false, setting), setting);
  return { farm, setting, ...found, weather: setting.climate.ofSoil() };
}

const rotation = [
  cover('a', 'mix-ley-clover-grass', ['2024-04-10', '2026-03-10'], { kind: 'ley', id: 'ley' }),
  stand('a', 'potato-maincrop', ['2026-04-20', '2026-09-20'], { id: 'potato' }),
  cover('a', 'grazing-rye', ['2026-09-28', '2027-04-10'], { id: 'rye' }),
  stand('a', 'cabbage-autumn', ['2027-06-10', '2027-11-01'], { id: 'cabbage', span: span(0, 0.5) }),
  stand('a', 'carrot-maincrop', ['2027-05-10', '2027-10-20'], { id: 'carrot', span: span(0.5, 1) }),
];

const bytes = (run: SoilRun) => Buffer.from(run.kept.rows.buffer, run.kept.rows.byteOffset, run.kept.rows.byteLength);

describe('a plot’s stands as the ground’s account takes them', () => {
  test('stretches that carried the same stands are one part; halves of a year are two', () => {
    const { parts } = groundOf(rotation);
    expect(parts.map(({ span: { fromShare, toShare } }) => [fromShare, toShare])).toEqual([
      [0, 0.5],
      [0.5, 1],
    ]);
    expect(parts.map(({ part }) => part.stands.map((one) => one.id as string))).toEqual([
      ['ley', 'potato', 'rye', 'cabbage'],
      ['ley', 'potato', 'rye', 'carrot'],
    ]);
  });

  test('a ley is mown on the plan’s days and turned in, a crop is sold, what is undersown leaves the ground unworked', () => {
    const { parts } = groundOf([
      ...rotation,
      stand('a', 'sweet-corn', ['2028-05-15', '2028-09-20'], { id: 'corn' }),
      cover('a', 'mix-undersow-ley', ['2028-07-01', '2030-03-01'], {
        kind: 'ley',
        id: 'under',
        undersownIn: 'corn' as never,
      }),
    ]);
    const of = (id: string) => parts[0]?.part.stands.find((one) => one.id === id);
    expect(of('ley')?.cuts.length).toBeGreaterThan(2);
    expect(of('ley')?.ending).toBe('turned-in');
    expect(of('potato')?.ending).toBe('sold');
    expect([of('corn')?.groundWorked, of('under')?.groundWorked]).toEqual([true, false]);
  });

  test('a plant that no table knows leaves its ground bare and is told', () => {
    const { parts, unknownStands } = groundOf([stand('a', 'marshmallow', ['2027-05-01', '2027-09-01'], { id: 'odd' })]);
    expect(parts[0]?.part.stands).toEqual([]);
    expect(unknownStands).toEqual(['odd']);
  });

  test('more stands at once than the account holds do not stop it', () => {
    const heap = Array.from({ length: 12 }, (_, at) =>
      stand('a', 'leek-mid', ['2027-05-01', '2027-11-01'], { id: `leek-${at}` }),
    );
    const { parts, weather } = groundOf(heap);
    expect(parts[0]?.part.stands).toHaveLength(soilAccount.mostStands);
    expect(() => soilAccount.runSoil(parts[0]?.part as SoilPart, weather)).not.toThrow();
  });
});

describe('runs that are kept', () => {
  const { parts, weather } = groundOf(rotation);
  const part = parts[0]?.part as SoilPart;

  test('the same part is the same run; a changed one is, bit for bit, a run from the start', () => {
    const runs = makePartRuns(4);
    const first = runs.runOf(part, weather);
    expect(runs.runOf({ ...part, stands: [...part.stands] }, weather)).toBe(first);
    fc.assert(
      fc.property(
        fc.integer({ min: 0, max: part.stands.length - 1 }),
        fc.integer({ min: -20, max: 20 }),
        fc.constantFrom('start', 'end', 'gone', 'share'),
        (at, days, how) => {
          const change = (one: SoilStand): readonly SoilStand[] => {
            if (how === 'gone') return [];
            if (how === 'share') return [{ ...one, establishedShare: 0.5 }];
            return how === 'start'
              ? [{ ...one, startDayNumber: one.startDayNumber + days }]
              : [{ ...one, endDayNumber: one.endDayNumber + days }];
          };
          const changed = { ...part, stands: part.stands.flatMap((one, nth) => (nth === at ? change(one) : [one])) };
          const kept = runs.runOf(changed, weather);
          const fresh = soilAccount.runSoil(changed, weather, { stepDays: 7 });
          expect(Buffer.compare(bytes(kept), bytes(fresh))).toBe(0);
          expect(kept.outcomes).toEqual(fresh.outcomes);
        },
      ),
      { numRuns: 40 },
    );
  });

  test('the first changed day of a later end is the earlier end, of a new cut its day, of a change of nothing none', () => {
    const [ley] = part.stands as readonly [SoilStand, ...SoilStand[]];
    const later = { ...ley, endDayNumber: ley.endDayNumber + 9 };
    expect(firstChangedDay([ley], [later])).toBe(ley.endDayNumber);
    expect(firstChangedDay([ley], [{ ...ley }])).toBeNull();
    const cut = { dayNumber: ley.startDayNumber + 200, use: 'taken' } as const;
    expect(firstChangedDay([ley], [{ ...ley, cuts: [...ley.cuts, cut] }])).toBe(cut.dayNumber);
    expect(firstChangedDay([ley], [])).toBe(ley.startDayNumber);
  });
});

describe('a ley cut carried to other ground', () => {
  const { parts, weather } = groundOf(rotation);
  const giver = parts[0]?.part as SoilPart;
  const cutDay = dayNumber(day('2025-06-10'));
  const taken = {
    ...giver,
    id: 'ley-ground',
    stands: giver.stands.map((one) =>
      one.id === 'ley' ? { ...one, cuts: [{ dayNumber: cutDay, use: 'taken' as const }] } : one,
    ),
  };
  const receiver = { ...giver, id: 'leek-ground', stands: [] };
  const gift = { fromPart: 'ley-ground', stand: 'ley', cutDayNumber: cutDay, toPart: 'leek-ground', herbageShare: 1 };
  const sum = (run: SoilRun | undefined, name: 'movedNKgHa' | 'broughtNKgHa') =>
    [...(run?.column(name) ?? [])].reduce((total, one) => total + one, 0);

  test('is in both accounts, kilo for kilo, by area', () => {
    const linked = runLinked(
      [
        { part: receiver, areaM2: 2500 },
        { part: taken, areaM2: 5000 },
      ],
      [gift],
      { weather, runs: makePartRuns(4) },
    );
    if (linked.kind !== 'runs') throw new Error('No circle was made.');
    const movedKg = sum(linked.runs.get('ley-ground'), 'movedNKgHa') * 0.5;
    const broughtKg = sum(linked.runs.get('leek-ground'), 'broughtNKgHa') * 0.25;
    expect(movedKg).toBeGreaterThan(20);
    expect(broughtKg).toBeCloseTo(movedKg, 9);
  });

  test('parts that give to each other are told as a circle', () => {
    const back = { ...gift, fromPart: 'leek-ground', toPart: 'ley-ground' };
    const both = [
      { part: receiver, areaM2: 2500 },
      { part: taken, areaM2: 5000 },
    ];
    expect(runLinked(both, [gift, back], { weather, runs: makePartRuns(4) })).toEqual({
      kind: 'circle',
      parts: ['leek-ground', 'ley-ground'],
    });
  });
});

describe('why the ground gained or lost', () => {
  const farm = farmWith({ plots: [plot('A')], stands: rotation });
  const ask = (figure: string) => whyOf(farm, { today }, figure);

  test('nitrogen: every term has its model and, where one is published, its source; the sum is the value', () => {
    const told = ask('account/a/2026');
    expect(told?.inputs.map((one) => one.name)).toContain('− washed out at the base of the profile');
    expect(told?.inputs.find((one) => one.name.includes('residues'))?.source).toMatch(/Nicolardot/);
    expect(told?.sum.endsWith(`= ${String(Number((told.value ?? 0).toPrecision(4))).replace('-', '−')}`)).toBe(true);
    expect(told?.low).toBeLessThanOrEqual(told?.value ?? 0);
    expect(told?.high).toBeGreaterThanOrEqual(told?.value ?? 0);
    expect(told?.doubt).toContain('soil-not-named');
  });

  test('water: in less out is what the ground gained', () => {
    const told = ask('water/a/2026');
    const of = (name: string) => Number(String(told?.inputs.find((one) => one.name === name)?.value).replace('−', '-'));
    const gained = of('water in the ground at its end') - of('water in the ground before the year');
    expect(gained).toBeCloseTo(told?.value ?? Number.NaN, 0);
  });

  test('a year outside the plan has no account', () => {
    expect(ask('account/a/1999')).toBeNull();
    expect(ask('account/nowhere/2026')).toBeNull();
  });
});
