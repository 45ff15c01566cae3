/** The property that carbon is conserved, over soils, weathers and inputs from a fixed seed. */
import { activeCarbonTHa, type CarbonMonth, noCarbon, stepCarbonMonth } from '../../carbon/rothc.ts';

/** Greatest error (t/ha) of carbon in = change + breathed out, over 20,000 months. */
export function greatestCarbonError(): number {
  const next = fixedNumbers(26_3);
  let greatest = 0;
  for (let site = 0; site < 100; site++) {
    const soil = { clayPct: 60 * next(), depthCm: 15 + 20 * next() };
    let state = noCarbon;
    for (let at = 0; at < 200; at++) {
      const month: CarbonMonth = {
        tMeanC: -10 + 40 * next(),
        rainMm: 150 * next(),
        panMm: 180 * next(),
        covered: next() < 0.6,
        plantTHa: next() < 0.3 ? 2 * next() : 0,
        easyToResistantRatio: 0.25 + 1.5 * next(),
        rottedTHa: next() < 0.1 ? 3 * next() : 0,
      };
      const after = stepCarbonMonth(state, month, soil);
      const change = activeCarbonTHa(after) - activeCarbonTHa(state);
      const breathed = after.breathedTHa - state.breathedTHa;
      greatest = Math.max(greatest, Math.abs(month.plantTHa + month.rottedTHa - change - breathed));
      state = after;
    }
  }
  return greatest;
}

/** Numbers from 0 to 1 that are the same on every machine (Lehmer's generator). */
export function fixedNumbers(seed: number): () => number {
  let state = seed;
  return () => {
    state = (state * 48_271) % 2_147_483_647;
    return state / 2_147_483_647;
  };
}
