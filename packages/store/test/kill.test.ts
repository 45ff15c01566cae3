import { describe, expect, test } from 'vitest';
import { killWriter } from './kill/kill-writer.ts';

/** The bench kills a thousand times: `npm run --silent bench:kill -- --times 1000 --json`. */
const times = 100;

describe('a writer killed in mid-write', () => {
  test(`${times} times over loses nothing that was acknowledged, and the book verifies each time`, async () => {
    let at = 0;
    // The golden ratio's steps fill the interval evenly: aim is spread over the whole of a sending.
    const count = await killWriter(times, () => {
      at += 1;
      return (at * 0.618_033_988_749_895) % 1;
    });
    expect(count).toMatchObject({ killed: times, lost: 0, verified: true });
    expect(count.acknowledged).toBeGreaterThan(times);
    expect(count.killedInMidWrite).toBeGreaterThan(times / 4);
    expect(count.kept).toBeGreaterThanOrEqual(count.acknowledged);
  }, 300_000);
});
