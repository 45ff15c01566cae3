import { type Farm, problemCodes, replay } from '@leywright/book';
import { farmWith, plot, randomFarm, sampleBook, sampleFarm, sampleToday, stand } from '@leywright/farm-kit';
import { asDay } from '@leywright/measures';
import { findingCodes, firstFarm, type Plan, planFarm } from '@leywright/planner';
import { describe, expect, test } from 'vitest';
import { headlineOf, headlinePlaces, problemSentence, tellFinding, voiceOf } from '../src/index.ts';
import { wordTables } from '../src/words/tables.ts';
import { unknownFigure } from '../src/words/template.ts';

const words = wordTables['en-GB'];

interface Told {
  readonly plan: Plan;
  readonly farm: Farm;
}

function told(farm: Farm, today: string, year?: number): Told {
  return { farm, plan: planFarm(farm, { today: asDay(today), ...(year === undefined ? {} : { year }) }) };
}

/** Farms with few faults and with many, so that findings of most kinds turn up as the planner really makes them. */
function manyPlans(): readonly Told[] {
  const tables = sampleFarm();
  const sample = replay(tables, sampleBook(tables, sampleToday)).farm;
  const first = firstFarm(
    {
      name: null,
      plots: 6,
      areaHa: 5.2,
      plotAreasHa: null,
      near: 'Cambridge',
      latDeg: null,
      lonDeg: null,
      items: 7,
      households: 400,
      weeks: 49,
    },
    { id: 'ours', today: asDay('2027-06-08') },
  );
  const random = [1, 2, 3, 4, 5, 6].map((seed) =>
    told(randomFarm({ seed, plots: 4, years: 6, crops: 9, firstYear: 2024 }), '2026-03-01'),
  );
  return [
    told(sample, sampleToday),
    told(sample, sampleToday, 2029),
    ...(first.kind === 'farm' ? [told(first.farm, '2027-06-08')] : []),
    ...random,
  ];
}

describe('words for findings', () => {
  test('are there for every code, as whole sentences', () => {
    for (const code of findingCodes) {
      const { title, sentence, cause, remedy } = words.findings[code];
      expect(title, code).not.toMatch(/[.{]/);
      for (const text of [sentence, cause, remedy]) expect(text, code).toMatch(/^[A-Z{[].*[.]\]?$/s);
    }
  });

  test('have every figure they ask for, in every finding a plan really makes', () => {
    const seen = new Set<string>();
    for (const { plan, farm } of manyPlans()) {
      const voice = voiceOf(plan, farm);
      for (const finding of plan.findings) {
        const { title, sentence, mends } = tellFinding(finding, voice);
        for (const text of [title, sentence, ...mends]) {
          expect(text, JSON.stringify(finding)).not.toContain(unknownFigure);
          expect(text, JSON.stringify(finding)).not.toMatch(/undefined|null|NaN|[{}[\]]/);
        }
        expect(mends.length, finding.code).toBeGreaterThan(0);
        seen.add(finding.code);
      }
    }
    expect(seen.size).toBeGreaterThan(10);
  });

  test('name plots and crops by their names, never by their ids', () => {
    const farm = farmWith({
      plots: [plot('A', { name: 'Ash Piece' })],
      stands: [
        stand('a', 'leek-mid', ['2027-06-01', '2028-01-20']),
        stand('a', 'kale-curly', ['2027-06-10', '2028-02-20']),
      ],
    });
    const { plan } = told(farm, '2027-03-01');
    const overlap = plan.findings.find((finding) => finding.code === 'stands-overlap');
    if (overlap === undefined) throw new Error('no overlap found');
    const { sentence } = tellFinding(overlap, voiceOf(plan, farm));
    expect(sentence).toBe(
      'Curly kale and mid-season leek stand on the same ground on Ash Piece, 1 ha of it, from Thu 10 June, week 23 to Thu 20 January 2028, week 3.',
    );
  });
});

describe('words for problems of a folder', () => {
  test('are there for every code, with the place before and the right answer after', () => {
    for (const code of problemCodes) {
      const sentence = problemSentence({
        code,
        gravity: 'stops',
        file: 'plots.csv',
        line: 3,
        column: 'gross_ha',
        found: 'x',
        nearest: ['y'],
        figures: {},
      });
      expect(sentence, code).toMatch(/^plots\.csv, line 3, gross_ha: .*y[?.]$/);
    }
  });

  test('ask back a name that is nearly right', () => {
    const sentence = problemSentence({
      code: 'unknown-name',
      gravity: 'stops',
      file: 'agreed.csv',
      line: 3,
      column: 'what',
      found: 'carot',
      nearest: ['Carrot'],
      figures: { of: 'crop' },
    });
    expect(sentence).toBe('agreed.csv, line 3, what: There is no crop "carot". Did you mean Carrot?');
  });
});

describe('the first sentence of each place', () => {
  const base = told(farmWith({ plots: [plot('A', { name: 'Ash Piece' })] }), '2027-06-08');
  const voice = voiceOf(base.plan, base.farm);
  const withNumbers = (headline: Partial<Plan['headline']>): Plan => ({
    ...base.plan,
    headline: { ...base.plan.headline, ...headline },
    supply: {
      year: 2027,
      boxWeeks: 49,
      households: 260,
      needs: [],
      harvests: [],
      stores: [],
      boxes: [],
      hungryGap: null,
      reach: null,
    },
  });
  const weeks = ['2027-w23', '2027-w24', '2027-w25', '2027-w26', '2027-w27'].map(
    (week) => week as Plan['headline']['shortWeeks'][number],
  );

  test('says which winters lie bare and from when the box is short', () => {
    const plan = withNumbers({
      bareWinters: [{ plot: 'f', name: 'Far Ridding', winter: 2029 }],
      shortWeeks: weeks,
      shortItems: 6,
      boxWeeks: 49,
      households: 260,
    });
    expect(headlineOf(plan, 'ground', voice)).toBe(
      'One winter lies bare, on Far Ridding. The box is short for five weeks from June.',
    );
    expect(headlineOf(plan, 'boxes', voice)).toBe(
      'The box is short in five weeks of 49: 6 items missing in all, first in week 23 (from Mon 7 June).',
    );
  });

  test('says so when nothing lies bare and nothing is short', () => {
    const plan = withNumbers({ bareWinters: [], shortWeeks: [], boxWeeks: 49, households: 260 });
    expect(headlineOf(plan, 'ground', voice)).toBe('No winter lies bare. The box is full in all 49 weeks.');
    expect(headlineOf(plan, 'boxes', voice)).toBe('Every box of 2027 is full: 260 households, 49 weeks.');
  });

  test('counts winters, not plots, and names at most three plots', () => {
    const bare = (names: readonly string[]) =>
      withNumbers({
        bareWinters: names.map((name, at) => ({ plot: name, name, winter: at < 2 ? 2028 : 2029 })),
        shortWeeks: weeks.slice(0, 1),
        boxWeeks: 49,
      });
    expect(headlineOf(bare(['Ash', 'Brook']), 'ground', voice)).toBe(
      'One winter lies bare, on Ash and Brook. The box is short for one week from June.',
    );
    expect(headlineOf(bare(['Ash', 'Brook', 'Cinder', 'Dove']), 'ground', voice)).toBe(
      'Two winters lie bare, on four plots. The box is short for one week from June.',
    );
  });

  test.each(headlinePlaces)('of %s is a whole sentence for a farm that has said almost nothing', (place) => {
    expect(headlineOf(base.plan, place, voice)).toMatch(/^[A-Z].*\.$/);
    const empty = told(farmWith(), '2027-06-08');
    expect(headlineOf(empty.plan, place, voiceOf(empty.plan, empty.farm))).toMatch(/^[A-Z].*\.$/);
  });
});
