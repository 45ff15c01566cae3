import { reference, referenceCell, referenceProblems } from '@leywright/agronomy';
import { describe, expect, test } from 'vitest';
import { readRow } from '../src/reference/columns.ts';
import { tableNames, tableText } from '../src/reference/table-text.ts';
import { waysOfKnowing } from '../src/reference/ways-of-knowing.ts';

describe('the reference tables', () => {
  test('hold the rows they should', () => {
    const sizes = Object.fromEntries(
      Object.entries(reference).map(([name, rows]) => [name, (rows as ReadonlyMap<string, unknown>).size]),
    );
    expect(sizes).toEqual({
      crops: 75,
      covers: 30,
      storage: 68,
      intervals: 47,
      labour: 60,
      weeds: 37,
      pests: 32,
      pestModels: 25,
      habitat: 20,
      demand: 98,
      rules: 147,
      sources: 114,
    });
  });

  test('have no faults: ids resolve, low is not above high, dates are days, shares sum to 1, every source exists', () => {
    expect(referenceProblems()).toEqual([]);
  });

  test.each(tableNames)('say of every single cell of %s how it is known and from where', (name) => {
    const table = tableText(name);
    const byNumber = name.startsWith('science/');
    const cells = table.rows.flatMap((row, at) =>
      table.columns.map((column) => referenceCell(name, byNumber ? `#${at + 1}` : (row[0] ?? ''), column)),
    );
    expect(cells).toHaveLength(table.rows.length * table.columns.length);
    expect(cells.filter(({ howKnown }) => !waysOfKnowing.includes(howKnown))).toEqual([]);
    expect(cells.flatMap(({ sources }) => sources).filter(({ citation }) => citation === '')).toEqual([]);
  });

  test('tell a figure that was read from one that was recalled, and from our own judgement', () => {
    expect(referenceCell('crops', 'potato-first-early', 'kc_mid')).toMatchObject({
      value: '1.15',
      howKnown: 'verified',
      sources: [{ id: 'fao56' }],
    });
    expect(referenceCell('crops', 'potato-first-early', 'yield_typ_t_ha').howKnown).toBe('common practice');
    expect(referenceCell('crops', 'potato-first-early', 'yield_low_t_ha').howKnown).toBe('verified');
    expect(referenceCell('crops', 'potato-first-early', 'tt_derived_cd').howKnown).toBe('derived');
    expect(referenceCell('storage', 'potato-maincrop-cold', 'life_high_weeks').howKnown).toBe('verified');
    expect(referenceCell('storage', 'potato-maincrop-cold', 'loss_low_pct_month')).toMatchObject({
      howKnown: 'memory',
      sources: [],
    });
    expect(referenceCell('covers', 'lucerne', 'latest_winter_cover_sow').howKnown).toBe('memory');
    expect(() => referenceCell('crops', 'carot', 'yield_typ_t_ha')).toThrow(/no row/);
    expect(() => referenceCell('crop', 'carrot', 'yield')).toThrow(/no reference table/);
  });

  test('give names with their unit, dates, lists and mixtures', () => {
    const carrot = reference.crops.get('carrot-maincrop');
    expect(carrot).toMatchObject({ yieldTypTHa: 30, saleUnit: 'kg', plantFrom: null, dtmFrom: 'sow' });
    expect(reference.intervals.get('fam-brassicaceae')?.hostCropIds).toContain('kale-curly');
    expect(reference.covers.get('mix-rye-vetch')?.mixOf).toEqual([
      { coverId: 'grazing-rye', share: 0.6 },
      { coverId: 'winter-vetch', share: 0.4 },
    ]);
  });

  test.each([
    ['crops', 'carrot-maincrop', 'yield_low_t_ha', '99', 'low-above-high'],
    ['crops', 'carrot-maincrop', 'storage_ids', 'no-such-store', 'no-such-row'],
    ['crops', 'carrot-maincrop', 'source', 'hearsay', 'no-such-row'],
    ['crops', 'carrot-maincrop', 'verified_cells', 'colour', 'no-such-column'],
    ['crops', 'carrot-maincrop', 'share_cut_typ', '1.2', 'not-a-share'],
    ['crops', 'carrot-maincrop', 'harvest_from', '02-31', 'not-a-date'],
    ['covers', 'lucerne', 'id', 'red-clover', 'id-twice'],
    ['intervals', 'fam-brassicaceae', 'force_clean', 'perhaps', 'not-in-list'],
  ])('in %s, row %s, a fault planted in %s (%s) is found', (...[name, row, column, fault, why]) => {
    const table = tableText(name);
    const cells = table.rows.find(([id]) => id === row) as string[];
    const at = table.columns.indexOf(column);
    const sound = cells[at] ?? '';
    cells[at] = fault;
    const found = referenceProblems().map((problem) => problem.why);
    cells[at] = sound;
    expect(found).toContain(why);
    expect(referenceProblems()).toEqual([]);
  });

  test('a bad cell of each kind is found', () => {
    const columns = {
      words: ['id'],
      amounts: ['a'],
      maybeAmounts: ['b'],
      dates: ['c'],
      yesNo: ['d'],
      oneOf: { e: ['x', 'y'] },
    } as const;
    const cells: Record<string, string> = { id: '', a: '', b: '1,5', c: '02-30', d: 'perhaps', e: 'z' };
    const found: string[] = [];
    readRow(
      columns,
      (column) => cells[column] ?? '',
      ({ column, why }) => found.push(`${column}: ${why}`),
    );
    expect(found).toEqual([
      'id: empty',
      'a: empty',
      'b: not-a-number',
      'c: not-a-date',
      'd: not-yes-or-no',
      'e: not-in-list',
    ]);
  });
});
