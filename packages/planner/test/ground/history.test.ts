import { day, part, span, stand } from '@leywright/farm-kit';
import { describe, expect, test } from 'vitest';
import { historyOf } from '../../src/ground/history.ts';

const potatoes = stand('d', 'potato-maincrop', ['2022-04-10', '2022-09-15'], { id: 'potatoes' });
const leftKale = stand('d', 'kale-curly', ['2023-06-01', '2024-03-20'], { id: 'kale', span: span(0, 0.5) });

describe('the past of a piece of ground', () => {
  test('a plot split in two hands its past to both halves, each with what stood on its side (edge 5)', () => {
    const parts = [
      part('left', 'd1', {
        span: span(),
        from: day('2025-01-01'),
        parents: [{ plot: 'd' as never, span: span(0, 0.5), share: 1 }],
      }),
      part('right', 'd2', {
        span: span(),
        from: day('2025-01-01'),
        parents: [{ plot: 'd' as never, span: span(0.5, 1), share: 1 }],
      }),
    ];
    const ground = { parts, stands: [potatoes, leftKale] };
    const at = (plot: string) =>
      historyOf(ground, plot, { span: span(), onDay: day('2026-01-01') }).map((past) => [
        past.stand.id,
        past.sharedShare,
        past.estimated,
      ]);
    expect(at('d1')).toEqual([
      ['kale', 1, false],
      ['potatoes', 1, false],
    ]);
    expect(at('d2')).toEqual([['potatoes', 1, false]]);
  });

  test('two plots merged carry both pasts by share, and it is said that the shares are estimated', () => {
    const parts = [
      part('m', 'm', {
        span: span(),
        from: day('2025-01-01'),
        parents: [
          { plot: 'd' as never, span: span(), share: 0.6 },
          { plot: 'e' as never, span: span(), share: 0.4 },
        ],
      }),
    ];
    const onions = stand('e', 'onion-set', ['2023-03-10', '2023-08-20'], { id: 'onions' });
    const past = historyOf({ parts, stands: [potatoes, onions] }, 'm', { span: span(), onDay: day('2026-01-01') });
    expect(past.map((one) => [one.stand.id, one.sharedShare, one.estimated])).toEqual([
      ['onions', 0.4, true],
      ['potatoes', 0.6, true],
    ]);
  });

  test('a boundary moved by a tenth brings a tenth of the neighbour’s past, and records stay where they were made (edge 6)', () => {
    const parts = [
      part('a', 'a', {
        span: span(),
        from: day('2025-03-01'),
        parents: [
          { plot: 'a' as never, span: span(), share: 0.9 },
          { plot: 'b' as never, span: span(0, 0.1), share: 0.1 },
        ],
      }),
    ];
    const before = stand('a', 'leek-mid', ['2023-06-10', '2024-01-20'], { id: 'leeks' });
    const neighbour = stand('b', 'parsnip', ['2023-04-10', '2023-11-20'], { id: 'parsnips' });
    const after = stand('a', 'swede', ['2025-05-10', '2025-11-20'], { id: 'swedes' });
    const past = historyOf({ parts, stands: [before, neighbour, after] }, 'a', {
      span: span(),
      onDay: day('2026-01-01'),
    });
    expect(Object.fromEntries(past.map((one) => [one.stand.id, [one.sharedShare, one.estimated]]))).toEqual({
      swedes: [1, false],
      leeks: [0.9, true],
      parsnips: [expect.closeTo(0.1), true],
    });
  });

  test('what stood after the day asked about is not past', () => {
    expect(historyOf({ parts: [], stands: [potatoes] }, 'd', { span: span(), onDay: day('2022-01-01') })).toEqual([]);
  });

  test('parts that name each other in a ring come to an end', () => {
    const parts = [
      part('x', 'x', {
        span: span(),
        from: day('2025-01-01'),
        parents: [{ plot: 'y' as never, span: span(), share: 1 }],
      }),
      part('y', 'y', {
        span: span(),
        from: day('2025-01-01'),
        parents: [{ plot: 'x' as never, span: span(), share: 1 }],
      }),
    ];
    expect(historyOf({ parts, stands: [] }, 'x', { span: span(), onDay: day('2026-01-01') })).toEqual([]);
  });
});
