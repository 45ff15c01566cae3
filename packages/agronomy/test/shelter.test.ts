import { runCheckTable } from '@leywright/agronomy';
import { describe, expect, test } from 'vitest';
import { calc } from './calc-of.ts';

describe('wind behind a belt', () => {
  test.each([
    ['loose', [5, 10, 15, 20, 30], [50, 65, 80, 85, 100]],
    ['dense', [5, 10, 15, 20, 30], [25, 35, 65, 85, 95]],
    ['solid', [5, 10, 15, 20, 30], [25, 70, 90, 95, 100]],
    // Half-way between loose and dense; not in what was read.
    ['medium', [5, 10, 15, 20, 30], [37.5, 50, 72.5, 85, 97.5]],
  ])('of a %s one is as Univ. Nebraska EC1763 has it (recalled)', (kind, dist_H, wanted) => {
    expect(calc('relative_wind', { class: kind, dist_H })).toEqual({ pct_of_open: wanted });
  });

  test('density may be given as a range or a figure; capitals are no matter', () => {
    expect(calc('relative_wind', { class: '25-35 %', dist_H: 10 })).toEqual({ pct_of_open: 65 });
    expect(calc('relative_wind', { class: '60–80%', dist_H: 10 })).toEqual({ pct_of_open: 35 });
    expect(calc('relative_wind', { class: 'Solid', dist_H: 10 })).toEqual({ pct_of_open: 70 });
    expect(calc('relative_wind', { class: '50', dist_H: 12.5 })).toEqual({ pct_of_open: 61.25 });
    expect(calc('relative_wind', { class: 'thick', dist_H: 10 })).toMatch(/thick/);
  });

  test('in front it falls from five heights on, and beyond thirty behind it is open again', () => {
    const of = (dist_H: number[]) =>
      calc('relative_wind', { class: ['dense'].concat(Array(dist_H.length - 1).fill('dense')), dist_H });
    expect(of([-8, -5, -2.5, 0, 31])).toEqual({ pct_of_open: [100, 100, 85, 70, 100] });
  });

  test('a distance nobody tested behind a beetle bank is told as unknown', () => {
    const [row] = runCheckTable([
      {
        id: 'x',
        inputs: '{"fn":"beetle_bank_distances_tested","m":[8,40]}',
        expected: '{"effect":"none"}',
        tolerance: '0',
      },
    ]);
    expect(row).toMatchObject({ status: 'unknown' });
    expect(row?.why).toContain('40 m was not tested');
  });
});
