import fc from 'fast-check';
import { expect, test } from 'vitest';
import { furrowDistances, furrowOffset, furrowPaths } from '../src/look/head/furrows.ts';

const dial = { at: 70, radius: 35 };
const dot = { at: 254, radius: 7 };

test('furrows run straight and at their own distance far from anything in their way', () => {
  for (const distance of furrowDistances) expect(furrowOffset(1400, distance, [dial, dot])).toBeCloseTo(distance, 1);
});

test('furrows pass round the dial, never through it, in the order they lie', () => {
  fc.assert(
    fc.property(fc.double({ min: 0, max: 400, noNaN: true }), (x) => {
      const offsets = furrowDistances.map((distance) => furrowOffset(x, distance, [dial, dot]));
      for (const { at, radius } of [dial, dot]) {
        const inside = radius ** 2 - (x - at) ** 2;
        if (inside > 0) expect(offsets[0]).toBeGreaterThanOrEqual(Math.sqrt(inside) - 1e-3);
      }
      expect([...offsets].sort((a, b) => a - b)).toEqual(offsets);
    }),
  );
});

test('a furrow keeps the stream it lies on: y (1 - sum R²/r²) = its distance', () => {
  const x = 120;
  const y = furrowOffset(x, 5.2, [dial]);
  expect(y * (1 - dial.radius ** 2 / ((x - dial.at) ** 2 + y ** 2))).toBeCloseTo(5.2, 3);
});

test('six furrows reach from one end of the page to the other', () => {
  const paths = furrowPaths(1440, 60, [dial, dot]);
  expect(paths).toHaveLength(6);
  for (const path of paths) {
    expect(path.startsWith('M0 ')).toBe(true);
    expect(path).toContain('L1440 ');
  }
});
