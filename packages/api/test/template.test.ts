import { describe, expect, test } from 'vitest';
import { figuresIn, figuresNeeded, fill, runsOf } from '../src/words/template.ts';

const plain = (_name: string, value: string | number | boolean) => String(value);

describe('a sentence with places for figures', () => {
  test('is filled and begins with a capital', () => {
    expect(fill('{crop} needs {m2} m²', { crop: 'carrots', m2: 40 }, plain)).toBe('Carrots needs 40 m²');
  });

  test('leaves a field’s name or a cell as it was written, even where it begins the sentence', () => {
    expect(fill('{field} is missing.', { field: 'z_m' }, plain)).toBe('z_m is missing.');
    expect(fill('{found} is no word.', { found: 'organc' }, plain)).toBe('organc is no word.');
  });

  test('leaves out what stands in brackets when a figure in it is not known', () => {
    const template = 'The store runs out[ in {week}][, {kg} short].';
    expect(fill(template, { week: 'week 5', kg: null }, plain)).toBe('The store runs out in week 5.');
    expect(fill(template, {}, plain)).toBe('The store runs out.');
  });

  test('keeps nought and no as figures, not as unknown', () => {
    expect(fill('[{left} left]', { left: 0 }, plain)).toBe('0 left');
    expect(fill('[{kept}]', { kept: false }, plain)).toBe('False');
  });

  test('shows where a figure it cannot do without is missing', () => {
    expect(fill('{crop} needs {m2}.', { crop: 'leeks' }, plain)).toBe('Leeks needs ….');
  });

  test('comes in runs, so that a screen can set the figures apart', () => {
    expect(runsOf('Short by {items}.', { items: 6 }, plain)).toEqual([
      { text: 'Short by ', figure: null },
      { text: '6', figure: 'items' },
      { text: '.', figure: null },
    ]);
  });

  test('tells which figures it asks for and which it needs', () => {
    expect(figuresIn('{a} and [{b:day}]')).toEqual(['a', 'b']);
    expect(figuresNeeded('{a} and [{b:day}]')).toEqual(['a']);
  });
});
