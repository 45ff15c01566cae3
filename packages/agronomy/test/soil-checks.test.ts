import { calcModels, runCheckTable } from '@leywright/agronomy';
import { describe, expect, test } from 'vitest';
import { readChecks } from './read-checks.ts';

const rows = readChecks('soil.csv').map((row) => ({ id: '', inputs: '', expected: '', tolerance: '', ...row }));

describe('published values of water, nitrogen and warmth of the soil', () => {
  test.each(rows)('$id agrees with $source ($how_known)', (row) => {
    const [checked] = runCheckTable([row]);
    expect(checked, JSON.stringify(checked)).toMatchObject({ status: 'met' });
  });

  test('all thirty-one rows were held, none passed over', () => {
    expect(rows).toHaveLength(31);
  });

  test('a model without an answer says so instead of guessing', () => {
    const answer = (name: string, inputs: Record<string, unknown>) => {
      const found = calcModels[name]?.run(inputs);
      return found?.kind === 'answer' ? found.outputs : found?.problems;
    };
    expect(answer('mulch_ammonia', { N_cut_kg_ha: 100, N_pct: 3, how: 'blown' })).toMatchObject([{ key: 'how' }]);
    expect(answer('Kc_max', { Kcb: 0.3 })).toMatchObject([{ key: 'u2' }]);
    expect(answer('ipcc_residue_N', { crop: 'leeks', yield_fresh_t: 30 })).toMatchObject([{ key: 'crop' }]);
  });

  test('the models take lists, cases and dry yields as the list of models says', () => {
    const outputs = (name: string, inputs: Record<string, unknown>) => {
      const found = calcModels[name]?.run(inputs);
      if (found?.kind !== 'answer') throw new Error(JSON.stringify(found));
      return found.outputs;
    };
    // FAO-56 Table 16 sets 1.2 at 2 m/s and 45 %; a tall crop in a dry wind asks more.
    const cases = outputs('Kc_max', {
      Kcb: 0.3,
      cases_u2_RHmin_h: [
        [2, 45, 0.3],
        [4, 25, 2],
      ],
    })['Kc_max'];
    expect(cases).toEqual([1.2, expect.closeTo(1.3417, 4)]);
    expect(outputs('p_adjust', { p_tab: [0.35, 0.6, 0.2], ETc: [5, 1, 9] })['p']).toEqual([
      0.35,
      expect.closeTo(0.76, 9),
      0.1,
    ]);
    expect(outputs('ipcc_residue_N', { crop: 'potatoes_tubers', yield_DM_t: 8.8 })['AG_N_kg']).toBeCloseTo(66.88, 6);
    expect(outputs('herridge_grain', { shoot_DM_t: 5, N_pct: 2.5, BG: 1.4, Ndfa: 0.74 })['N_fixed']).toBeCloseTo(
      129.5,
      6,
    );
    expect(outputs('fT_humus', { T: [15, 0] })['f']).toEqual([expect.closeTo(1.0009, 3), 0]);
  });
});
