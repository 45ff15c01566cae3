/** Times the odds of the sample farm and prints one JSON line: how long 400 drawn years take, and what they say. `npm run --silent bench:odds` */
import { sampleFarm, sampleToday } from '@leywright/farm-kit';
import { odds } from '@leywright/planner';

const wish = { today: sampleToday };
const season = odds.seasonOfRun(odds.runOfFarm(sampleFarm(), wish));
const timesMs = Array.from({ length: 5 }, () => {
  const before = process.cpuUsage();
  const from = performance.now();
  odds.oddsOfSeason(season, odds.usualOdds);
  const spent = process.cpuUsage(before);
  return { wallMs: performance.now() - from, cpuMs: (spent.user + spent.system) / 1000 };
});
const answer = odds.oddsOfSeason(season, odds.usualOdds);
console.log(
  JSON.stringify({
    samples: odds.usualOdds.samples,
    leastMs: Math.round(Math.min(...timesMs.map((one) => one.wallMs))),
    leastCpuMs: Math.round(Math.min(...timesMs.map((one) => one.cpuMs))),
    missedWeeks: answer.missedWeeks,
    allKept: answer.allKept.keptShare,
    weeks: answer.weeks.map((week) => [week.week, Number(week.keptShare.toFixed(3))]),
  }),
);
