/** Properties a check table may ask for: each runs the code over a fixed grid and says whether the rule held everywhere. */
import { degreeDaysByMean, degreeDaysBySine } from '../growth/degree-days.ts';
import { brightness } from '../weather/radiation.ts';
import { referenceEvapotranspiration } from '../weather/reference-evapotranspiration.ts';

const place = { latDeg: 52, elevationM: 30 } as const;

/** Brightness is held within 0.3 .. 1, air is never more than saturated, wind is never under 0.5 m/s. */
export function evapotranspirationClippingHolds(): boolean {
  const bright = brightness(50, 20) === 1 && brightness(1, 20) === 0.3;
  return (
    bright &&
    [1, 60, 120, 180, 240, 300, 360].every((dayOfYear) => {
      const day = { dayOfYear, tMaxC: 18, tMinC: 9, solarMjM2: 8, windMS: 3 };
      const soaked = referenceEvapotranspiration({ ...day, rhMaxPct: 130, rhMinPct: 120 }, place);
      const tooMuch = referenceEvapotranspiration({ ...day, vapourKpa: 9 }, place);
      const saturated = referenceEvapotranspiration({ ...day, vapourKpa: soaked.saturationKpa }, place);
      const still = referenceEvapotranspiration({ ...day, windMS: 0 }, place);
      const light = referenceEvapotranspiration({ ...day, windMS: 0.5 }, place);
      return soaked.etoMm === saturated.etoMm && tooMuch.etoMm === saturated.etoMm && still.etoMm === light.etoMm;
    })
  );
}

/** With the night above the base, mean and sine are the same. */
export function meanEqualsSineAboveBase(): boolean {
  for (let tMin = -5; tMin <= 25; tMin += 0.7) {
    for (let reach = 0; reach <= 20; reach += 1.3) {
      for (const base of [-10, tMin - 3, tMin]) {
        if (base > tMin) continue;
        const tMax = tMin + reach;
        if (Math.abs(degreeDaysBySine({ tMax, tMin }, base) - degreeDaysByMean((tMax + tMin) / 2, base)) > 1e-9)
          return false;
      }
    }
  }
  return true;
}
