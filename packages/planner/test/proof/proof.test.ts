/** Proof: lots traced both ways, kilos that add up, and what is missing shown as missing. */
import { asKnownOn } from '@leywright/book';
import { addDays, asDay } from '@leywright/measures';
import { proof } from '@leywright/planner';
import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { bookOf, firstDay, given, goodsBooks, harvestBody, idOf, sowingBody } from './books.ts';

const far = addDays(firstDay, 400);
const wholeTime = { crop: 'carrot-maincrop', from: addDays(firstDay, -10), to: far };
const sum = (values: Iterable<number>) => [...values].reduce((total, value) => total + value, 0);

describe('on books by chance', () => {
  test('what was lifted is in boxes, sold, lost, graded out or still here, to the gram', () => {
    fc.assert(
      fc.property(goodsBooks, (steps) => {
        const chain = proof.followGoods(bookOf(steps), given);
        const liftedKg = sum([...chain.lots.values()].map((lot) => lot.grossKg ?? 0));
        const outKg = sum(chain.flows.filter((flow) => flow.kind !== 'harvested').map((flow) => flow.kg));
        const hereKg = sum(chain.leftKg.values()) + sum([...chain.bins.values()].map((bin) => sum(bin.nowKg.values())));
        expect(outKg + hereKg).toBeCloseTo(liftedKg, 6);
        const balance = proof.balanceOf(chain, wholeTime);
        expect(balance.notAccountedKg).toBe(0);
        expect(balance.closingKg + balance.notPackedKg).toBeCloseTo(hereKg, 6);
        const terms = sum(
          Object.entries(balance.termsKg).map(([term, kg]) => (term === 'harvested' || term === 'bought' ? kg : -kg)),
        );
        expect(balance.openingKg + terms - balance.notAccountedKg - balance.notPackedKg).toBeCloseTo(
          balance.closingKg,
          6,
        );
      }),
      { numRuns: 80 },
    );
  });

  test('every packed kilo has a source lot, and the shares of a mixed bin are those of what lay in it', () => {
    fc.assert(
      fc.property(goodsBooks, (steps) => {
        const chain = proof.followGoods(bookOf(steps), given);
        for (const run of chain.runs.values()) {
          const back = proof.traceBack(chain, { runs: [run.id] });
          expect(back.notKnownKg).toBe(0);
          expect(sum(back.lots.map((one) => one.kg))).toBeCloseTo(back.kg, 6);
          if (back.kg > 0) expect(sum(back.lots.map((one) => one.share))).toBeCloseTo(1, 6);
        }
      }),
      { numRuns: 60 },
    );
  });

  test('from a run back to its lots and seed, and forward again, comes to the same run with the same kilos', () => {
    fc.assert(
      fc.property(goodsBooks, (steps) => {
        const chain = proof.followGoods(bookOf(steps), given);
        for (const run of chain.runs.values()) {
          const back = proof.traceBack(chain, { runs: [run.id] });
          for (const one of back.lots) {
            const forward = proof.traceForward(chain, { from: 'lot', named: one.lot.label });
            expect(forward.runs.find((found) => found.run.id === run.id)?.kg).toBeCloseTo(one.kg, 6);
            const seed = one.sowings[0]?.seedLot ?? '';
            const ofSeed = proof.traceForward(chain, { from: 'seed', named: seed });
            expect(ofSeed.runs.map((found) => found.run.id)).toContain(run.id);
          }
        }
      }),
      { numRuns: 40 },
    );
  });

  test('as known on a day is what a book that ended that day says', () => {
    fc.assert(
      fc.property(goodsBooks, fc.integer({ min: 0, max: 40 }), (steps, days) => {
        const book = bookOf(steps);
        const day = addDays(firstDay, days);
        const ended = book.filter((entry) => entry.receivedAt.slice(0, 10) <= day);
        const known = proof.followGoods(asKnownOn(book, day), given);
        expect(proof.balanceOf(known, wholeTime)).toEqual(proof.balanceOf(proof.followGoods(ended, given), wholeTime));
        for (const [id, lot] of known.lots) expect(proof.followGoods(book, given).lots.get(id)?.label).toBe(lot.label);
      }),
      { numRuns: 30 },
    );
  });

  test('the order in which the book received its records changes no balance', () => {
    fc.assert(
      fc.property(goodsBooks, (steps) => {
        const book = bookOf(steps);
        const turned = [...book].reverse();
        expect(proof.balanceOf(proof.followGoods(turned, given), wholeTime)).toEqual(
          proof.balanceOf(proof.followGoods(book, given), wholeTime),
        );
      }),
      { numRuns: 30 },
    );
  });
});

const week = '2027-w24' as never;
const packedBody = (run: string, lot: string, kg: number) =>
  ({ kind: 'packed', run, week, size: null, boxes: 160, items: [{ lot, kg, crop: 'carrot-maincrop' }] }) as const;

describe('a trace tells what is known and what is not', () => {
  const book = bookOf([
    {
      on: 0,
      body: {
        kind: 'goods-in',
        batch: 'seed-7',
        what: 'seed',
        crop: 'carrot-maincrop',
        name: 'carrot seed',
        supplier: 'a seedsman',
        amount: 2,
        unit: 'kg',
        status: 'organic',
        animalFree: 'stated',
        composition: null,
        paper: 'invoice 12',
      },
    },
    {
      on: 1,
      body: {
        kind: 'goods-in',
        batch: 'compost-12',
        what: 'compost',
        crop: null,
        name: 'green compost',
        supplier: 'a composter',
        amount: 20_000,
        unit: 'kg',
        status: 'unknown',
        animalFree: 'unknown',
        composition: null,
        paper: null,
      },
    },
    { on: 2, body: { kind: 'goods-used', batch: 'compost-12', plot: 'a', span: null, amount: 9000 } },
    { on: 3, body: sowingBody({ crop: 'carrot-maincrop', plot: 'a', stand: 'stand-a', seedLot: 'seed-7' }) },
    { on: 3, body: sowingBody({ crop: 'carrot-maincrop', plot: 'b', stand: 'stand-b', seedLot: null }) },
    { on: 90, body: harvestBody({ crop: 'carrot-maincrop', plot: 'a', kg: 400, stand: 'stand-a' }) },
    { on: 90, body: harvestBody({ crop: 'carrot-maincrop', plot: 'b', kg: 100, stand: 'stand-b' }) },
    {
      on: 91,
      body: {
        kind: 'binned',
        bin: 'bin 3',
        store: 'cold',
        from: [
          { lot: idOf(5), kg: 300 },
          { lot: idOf(6), kg: 100 },
        ],
      },
    },
    { on: 92, body: packedBody('run 1', 'bin 3', 80) },
    { on: 92, body: { kind: 'handed-over', run: 'run 1', round: '2', drop: 'mill', boxes: 160 } },
    { on: 93, body: packedBody('run 2', idOf(5), 120) },
  ]);
  const chain = proof.followGoods(book, given);

  test('a bin of two lots gives both, by share, and picks none', () => {
    const back = proof.traceBack(chain, { runs: ['run 1'] });
    expect(back.lots.map((one) => [one.lot.plot, one.kg])).toEqual([
      ['a', 60],
      ['b', 20],
    ]);
    expect(back.lots[0]?.seedBatches.map((one) => one.paper)).toEqual(['invoice 12']);
    expect(back.lots[0]?.inputs.map((one) => [one.batch, one.input?.animalFree])).toEqual([['compost-12', 'unknown']]);
    expect(back.handings.map((one) => one.drop)).toEqual(['mill']);
  });

  test('seed without a lot, kilos beyond the lot and a run nobody took out are missing links, not guesses', () => {
    const codes = chain.faults.map((fault) => [fault.code, fault.kg]);
    expect(codes).toContainEqual(['seed-lot-not-recorded', 100]);
    expect(codes).toContainEqual(['source-not-known', 20]);
    expect(codes).toContainEqual(['run-not-handed-over', null]);
    const back = proof.traceBack(chain, { runs: ['run 2'] });
    expect(back.kg).toBe(120);
    expect(back.notKnownKg).toBeCloseTo(20, 9);
    expect(proof.balanceOf(chain, wholeTime).notAccountedKg).toBeCloseTo(-20, 9);
    expect(proof.balanceOf(chain, wholeTime).judged).toBe('alarm');
  });

  test('compost found contaminated later leads to the plots, lots, runs and drops after it, and to what is still to be held', () => {
    const recall = proof.recallOf(chain, { from: 'batch', named: 'compost-12' });
    expect(recall.drops).toEqual([{ drop: 'mill', on: addDays(firstDay, 92), run: 'run 1', boxes: 160 }]);
    expect(recall.runsWithoutDrops).toEqual(['run 2']);
    expect(recall.outKg).toBeCloseTo(60 + 100, 9);
    expect(recall.holdKg).toBeCloseTo(240, 9);
  });

  test('a count that finds less in the bin is not accounted for; it is not called shrink', () => {
    const weighed = bookOf([
      { on: 0, body: harvestBody({ crop: 'carrot-maincrop', plot: 'a', kg: 1000, into: 'store', store: 'cold' }) },
      { on: 30, body: { kind: 'weighing', crop: 'carrot-maincrop', store: 'cold', kg: 940 } },
    ]);
    const balance = proof.balanceOf(proof.followGoods(weighed, given), wholeTime);
    expect(balance.notAccountedKg).toBeCloseTo(60, 9);
    expect(balance.closingKg).toBeCloseTo(940, 9);
    expect(balance.judged).toBe('look');
    expect(balance.termsKg.loss).toBe(0);
  });

  test('a weight put right later: the balance as known before keeps the old figure, both can be shown', () => {
    const amended = bookOf([
      { on: 0, body: harvestBody({ crop: 'carrot-maincrop', plot: 'a', kg: 1000 }) },
      { on: 0, lateDays: 20, amends: idOf(0), body: harvestBody({ crop: 'carrot-maincrop', plot: 'a', kg: 900 }) },
    ]);
    const asOf = (days: number) =>
      proof.balanceOf(proof.followGoods(asKnownOn(amended, addDays(firstDay, days)), given), wholeTime).termsKg
        .harvested;
    expect([asOf(5), asOf(25)]).toEqual([1000, 900]);
  });

  test('produce of land in conversion in a bin with organic produce, and in a box, is told', () => {
    const plots = given.farm.plots.map((plot) =>
      plot.id === 'b' ? { ...plot, status: 'in-conversion' as const } : plot,
    );
    const mixed = proof.followGoods(book, { ...given, farm: { plots } });
    const codes = mixed.faults.map((fault) => fault.code);
    expect(codes).toContain('statuses-mixed');
    expect(codes).toContain('not-organic-packed');
    expect(proof.balanceOf(mixed, { ...wholeTime, status: 'in-conversion' }).termsKg.boxes).toBeCloseTo(20, 9);
  });

  test('the same harvest typed by two people is asked about and both are kept', () => {
    const twice = proof.followGoods(
      bookOf([
        { on: 0, body: harvestBody({ crop: 'carrot-maincrop', plot: 'a', kg: 200 }) },
        { on: 0, body: harvestBody({ crop: 'carrot-maincrop', plot: 'a', kg: 195 }) },
      ]),
      given,
    );
    expect(twice.faults.map((fault) => fault.code)).toContain('harvest-twice');
    expect(twice.lots.size).toBe(2);
  });

  test('ninety tonnes of carrots to the hectare cannot have grown there', () => {
    const much = proof.followGoods(
      bookOf([{ on: 0, body: harvestBody({ crop: 'carrot-maincrop', plot: 'a', kg: 9000 }) }]),
      given,
    );
    const ask = {
      crop: 'carrot-maincrop',
      from: asDay('2027-01-01'),
      to: asDay('2027-12-31'),
      areaM2: 1000,
      lowTHa: 25,
      highTHa: 60,
    };
    expect(proof.yieldCheck(much, ask)).toMatchObject({ yieldTHa: 90, judged: 'high' });
  });
});
