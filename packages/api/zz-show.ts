import { sampleFarm, sampleToday, sampleBook } from '@leywright/farm-kit';
import { replay } from '@leywright/book';
import { planFarm } from '@leywright/planner';
import { tellFinding, voiceOf } from './src/index.ts';
const t = sampleFarm(); const farm = replay(t, sampleBook(t, sampleToday)).farm;
planFarm(farm, { today: sampleToday });
console.time('plan'); const plan = planFarm(farm, { today: sampleToday }); console.timeEnd('plan');
const voice = voiceOf(plan, farm);
for (const f of plan.findings) { const x = tellFinding(f, voice); console.log(f.gravity, f.code, '|', x.sentence, '|', x.mends.join(' / ')); }
console.log(plan.supply!.hungryGap, plan.headline);
for (const w of plan.work.weeks) console.log(w.week, w.hours.low.toFixed(0), w.hours.typ.toFixed(0), w.hours.high.toFixed(0), w.handsH, Object.entries(w.byKind).map(([k,v])=>k+':'+Math.round(v!)).join(' '));
console.log(plan.work.jobs.length, plan.work.yearH);
