import { expect, test } from 'vitest';
import { settleTops } from '../src/look/page/notes.tsx';
import { signed } from '../src/pictures/nitrogen/nitrogen-bars.tsx';
import { readBlank } from '../src/places/first/sentence-of-blanks.tsx';

test('notes stand where they ask to, or below the note before, never over it', () => {
  const { tops, height } = settleTops([0, 20, 400], [100, 50, 30]);
  expect(tops).toEqual([0, 114, 400]);
  expect(height).toBe(430);
});

test.each([
  ['5.2', 5.2],
  ['5,2', 5.2],
  [' 260 ', 260],
  ['', null],
  ['six', null],
  ['-3', null],
  ['1e9', null],
])('a blank filled with "%s" is read as %s', (text, number) => {
  expect(readBlank(text)).toBe(number);
});

test('what is left in the ground is written with its sign', () => {
  expect([signed(37.6), signed(-12.2), signed(0.2)]).toEqual(['+38', '−12', '0']);
});
