import { aboutWith, field, plot } from '@leywright/farm-kit';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { bufferDue, netAreaOf } from '../../src/ground/net-area.ts';

const england = { jurisdiction: 'England' };
const policy = (hedgeBufferM: number | null, headlandShare = 0.12) => ({
  ...aboutWith().conventions,
  hedgeBufferM,
  headlandShare,
});

describe('net area', () => {
  test.each([
    { id: '1', grossM2: 6200, hedgeM: 180, netM2: 5139.2 },
    { id: '2', grossM2: 5400, hedgeM: 0, netM2: 4752.0 },
    { id: '3', grossM2: 7000, hedgeM: 260, netM2: 5702.4 },
    { id: '4', grossM2: 4800, hedgeM: 120, netM2: 4012.8 },
    { id: '5', grossM2: 6600, hedgeM: 0, netM2: 5808.0 },
    { id: '6', grossM2: 5900, hedgeM: 210, netM2: 4822.4 },
    { id: '7', grossM2: 5100, hedgeM: 95, netM2: 4320.8 },
  ])(
    'plot $id of worked case C11 keeps $netM2 m² of $grossM2 by its own two metres and 12 % headland',
    ({ id, grossM2, hedgeM, netM2 }) => {
      const area = netAreaOf({
        plot: plot(id, { grossM2, hedgeM, headlandShare: null }),
        field: field('f', 18_000),
        place: england,
        conventions: policy(2),
      });
      expect(area.netM2).toBeCloseTo(netM2, 1);
      expect(area.bufferBy).toBe(hedgeM === 0 ? 'none' : 'own-policy');
    },
  );

  test('a bank is taken off before the headland share', () => {
    const area = netAreaOf({
      plot: plot('A', { grossM2: 1000, bankM2: 100, headlandShare: 0.1 }),
      field: null,
      place: england,
      conventions: policy(null),
    });
    expect(area).toMatchObject({ bankM2: 100, headlandM2: 90, netM2: 810 });
  });

  test('a plot smaller than its own hedge strip has no ground, not less than none', () => {
    expect(
      netAreaOf({
        plot: plot('A', { grossM2: 100, hedgeM: 90, bankM2: 50 }),
        field: null,
        place: england,
        conventions: policy(2),
      }).netM2,
    ).toBe(0);
  });
});

describe('the strip along a hedge in England (rules HE-02, HE-04, HE-04.2)', () => {
  const at = (areaM2: number | null, old: boolean | null, own: number | null = null) =>
    bufferDue({
      plot: plot('A', { hedgeM: 100, field: 'f' }),
      field: field('f', areaM2, old),
      place: england,
      conventions: policy(own),
    });

  test('is two metres by law on a field of more than two hectares with hedges of five years', () => {
    expect(at(20_001, true)).toMatchObject({ bufferM: 2, by: 'law' });
  });
  test('is not asked for on a field of two hectares', () => {
    expect(at(20_000, true)).toMatchObject({ bufferM: 0, by: 'none' });
  });
  test('is not asked for under five years', () => {
    expect(at(30_000, false)).toMatchObject({ bufferM: 0, by: 'none' });
  });
  test('is not known while the age of the hedges is not written', () => {
    expect(at(30_000, null)).toMatchObject({ bufferM: 0, by: 'unknown' });
  });
  test('a wider policy of the farm goes before the law, a narrower one does not', () => {
    expect(at(30_000, true, 3)).toMatchObject({ bufferM: 3, by: 'own-policy' });
    expect(at(30_000, true, 1)).toMatchObject({ bufferM: 2, by: 'law' });
  });
  test('is no law elsewhere', () => {
    const wales = bufferDue({
      plot: plot('A', { hedgeM: 100 }),
      field: field('f', 90_000, true),
      place: { jurisdiction: 'Wales' },
      conventions: policy(null),
    });
    expect(wales).toMatchObject({ bufferM: 0, by: 'none', lawM: null });
  });
});

test('all areas scale with the plot when its hedge and bank do', () => {
  fc.assert(
    fc.property(
      fc.integer({ min: 10, max: 90_000 }),
      fc.integer({ min: 0, max: 900 }),
      fc.integer({ min: 1, max: 50 }),
      (grossM2, hedgeM, k) => {
        const net = (factor: number) =>
          netAreaOf({
            plot: plot('A', { grossM2: grossM2 * factor, hedgeM: hedgeM * factor, headlandShare: 0.1 }),
            field: null,
            place: england,
            conventions: policy(2),
          }).netM2;
        expect(net(k)).toBeCloseTo(net(1) * k, 3);
      },
    ),
  );
});
