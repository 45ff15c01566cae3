import type { BookFinding } from '@leywright/book';
import { bookFindingCodes } from '@leywright/book';
import { expect, test } from 'vitest';
import { bookFindings } from '../../src/faults/book-findings.ts';

const found = (code: BookFinding['code']): BookFinding => ({
  code,
  entries: ['e1', 'e2'],
  plot: 'c',
  stand: null,
  figures: { device: 'phone' },
});

test('every finding of the book keeps its place and figures and offers a mend', () => {
  for (const code of bookFindingCodes) {
    const [finding] = bookFindings([found(code)]);
    expect(finding).toMatchObject({
      code,
      place: { plot: 'c', entry: 'e1' },
      figures: { device: 'phone', records: 2 },
    });
    expect(finding?.mend.length).toBeGreaterThan(0);
  }
});

test('corrections that leave a record unused are to put right', () => {
  expect(
    bookFindings([found('rival-amendments'), found('device-clock-wrong')]).map((finding) => finding.gravity),
  ).toEqual(['put-right', 'look']);
});
