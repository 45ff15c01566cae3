import { asDay, asId, type FarmId } from '@leywright/measures';
import type { Store } from '@leywright/store';
import { expect, test } from 'vitest';
import { keptPlans } from '../../src/plans/kept-plans.ts';
import type { PlanAsked, PlanText } from '../../src/plans/plan-text.ts';

const farm = asId<FarmId>('small');
const asked: PlanAsked = {
  farm,
  seen: { knownOn: null, money: true },
  year: null,
  today: asDay('2027-06-08'),
  isDaySaid: true,
};

/** A book that grows when told, and a maker that ends a run when told. */
function bench() {
  const state = { seq: 1, nowMs: 10_000 };
  const runs: ((text: PlanText) => void)[] = [];
  const store = { farm: async () => ({ lastSeq: state.seq }) } as unknown as Store;
  const make = () => new Promise<PlanText>((resolve) => runs.push(resolve));
  const plans = keptPlans(store, { make, close: async () => undefined }, () => state.nowMs);
  const end = (at: number, seq: number) => runs[at]?.({ status: 200, bytes: new Uint8Array(), gzipped: null, seq });
  return { state, runs, plans, end };
}
const soon = () => new Promise((next) => setImmediate(next));

test('many who ask at once share one run, and the plan is kept while the book stays', async () => {
  const { runs, plans, end } = bench();
  const answers = [plans.answer(asked, 'fresh'), plans.answer(asked, 'fresh'), plans.answer(asked, 'settled')];
  await soon();
  expect(runs).toHaveLength(1);
  end(0, 1);
  expect((await Promise.all(answers)).map(({ seq }) => seq)).toEqual([1, 1, 1]);
  expect((await plans.answer(asked, 'fresh')).seq).toBe(1);
  expect(runs).toHaveLength(1);
});

test('a plan asked for after a record never lacks it, though a run that began before is still going on', async () => {
  const { state, runs, plans, end } = bench();
  const before = plans.answer(asked, 'fresh');
  await soon();
  state.seq = 2;
  const after = plans.answer(asked, 'fresh');
  await soon();
  end(0, 1);
  expect((await before).seq).toBe(1);
  await soon();
  expect(runs).toHaveLength(2);
  end(1, 2);
  expect((await after).seq).toBe(2);
});

test('who can do with the last plan has it at once, and the next is worked out behind', async () => {
  const { state, runs, plans, end } = bench();
  const first = plans.answer(asked, 'settled');
  await soon();
  end(0, 1);
  await first;
  state.seq = 5;
  state.nowMs += 1_000;
  expect((await plans.answer(asked, 'settled')).seq).toBe(1);
  expect(runs).toHaveLength(2);
  end(1, 5);
  await soon();
  expect((await plans.answer(asked, 'settled')).seq).toBe(5);
});

test('a plan that has been behind for more than two seconds is waited for', async () => {
  const { state, runs, plans, end } = bench();
  const first = plans.answer(asked, 'settled');
  await soon();
  end(0, 1);
  await first;
  state.seq = 5;
  state.nowMs += 100;
  expect((await plans.answer(asked, 'settled')).seq).toBe(1);
  expect(runs).toHaveLength(1);
  state.nowMs += 2_001;
  const late = plans.answer(asked, 'settled');
  await soon();
  end(1, 5);
  expect((await late).seq).toBe(5);
});
