/** The plan of the sample farm: from nothing, again unchanged, and after each of a row of seeded edits. Prints one JSON object. */
import { sampleFarm, sampleToday } from '@leywright/farm-kit';
import { addDays } from '@leywright/measures';
import { makePlanner, planFarm, whyOf } from '@leywright/planner';
import { middleMs, seeded } from './seeded.ts';

const random = seeded(20270114);
const wish = { today: sampleToday };
const farm = sampleFarm(sampleToday);

const firstStarted = performance.now();
planFarm(farm, wish);
const firstMs = Math.round(performance.now() - firstStarted);

// A copy each time, so that nothing kept by an object's identity is found again.
const cold = middleMs(15, () => planFarm(structuredClone(farm), wish));
const planner = makePlanner();
planner.plan(farm, wish);
const unchanged = middleMs(15, () => planner.plan(farm, wish));

let edited = farm;
const edit = middleMs(30, () => {
  const at = Math.floor(random() * edited.stands.length);
  const days = Math.floor(random() * 11) - 5;
  edited = {
    ...edited,
    stands: edited.stands.map((one, place) => (place === at ? { ...one, to: addDays(one.to, days) } : one)),
  };
  return planner.plan(edited, wish);
});
const why = middleMs(15, () => whyOf(farm, wish, 'nitrogen/c/2027'));

const { ground, findings, horizon } = cold.result;
console.log(
  JSON.stringify({
    plots: ground.length,
    weeks: horizon.weeks,
    stands: ground.reduce((sum, plot) => sum + plot.stands.length, 0),
    findings: findings.length,
    firstMs,
    coldMs: cold.ms,
    unchangedMs: unchanged.ms,
    editMs: edit.ms,
    whyMs: why.ms,
  }),
);
