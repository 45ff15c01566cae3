import { asIsoWeek } from '@leywright/measures';
import type { BoxItem, BoxWeek } from '@leywright/planner';
import { expect, test } from 'vitest';
import { boxName, itemsText } from '../src/pictures/boxes/box-bricks.tsx';
import { stackOf } from '../src/pictures/boxes/box-stack.ts';
import { bricksTwin, yearTwin } from '../src/pictures/boxes/box-twins.ts';
import { cropRows } from '../src/pictures/boxes/crop-rows.ts';
import { amountText } from '../src/pictures/boxes/week-slip.tsx';
import { inventedGround } from './look/invented-ground.ts';
import { inventedSupply } from './look/invented-supply.ts';

const supply = inventedSupply(inventedGround(), 2027);

function item(name: string, over: Partial<BoxItem> = {}): BoxItem {
  return {
    slot: name,
    crop: name.toLowerCase(),
    name,
    look: 'root',
    from: 'field',
    plots: [],
    boxesShare: 1,
    kg: 1,
    portions: { small: 0.6 },
    unit: 'kg',
    ...over,
  };
}

function week(number: number, items: readonly BoxItem[], over: Partial<BoxWeek> = {}): BoxWeek {
  return {
    week: asIsoWeek(`2027-w${String(number).padStart(2, '0')}`),
    weekIndex: number,
    packOn: null,
    closed: null,
    boxes: 260,
    promised: 7,
    items,
    missing: [],
    itemsPerBox: items.length,
    shortItems: 0,
    low: 0,
    high: 0,
    why: 'x',
    ...over,
  };
}

test('the bricks of a week stand one on another and add up to the items in it', () => {
  for (const box of supply.boxes) {
    let height = 0;
    for (const brick of stackOf(box)) {
      expect(brick.below).toBeCloseTo(height, 6);
      height += brick.items;
    }
    expect(height).toBeCloseTo(
      box.items.reduce((sum, { boxesShare }) => sum + boxesShare, 0),
      6,
    );
  }
});

test('two carrots-family crops from the field share a brick that names both; one from store has its own', () => {
  const bricks = stackOf(week(44, [item('Carrots'), item('Parsnips'), item('Celeriac', { from: 'store' })]));
  expect(bricks.map(({ crops, isStore }) => [crops, isStore])).toEqual([
    [['Celeriac'], true],
    [['Carrots', 'Parsnips'], false],
  ]);
});

test('potatoes lie at the foot and squash at the top, whatever order the plan gives them in', () => {
  const looks = stackOf(
    week(44, [
      item('Squash', { look: 'squash' }),
      item('Kale', { look: 'brassica' }),
      item('Potatoes', { look: 'potato' }),
    ]),
  ).map(({ look }) => look);
  expect(looks).toEqual(['potato', 'brassica', 'squash']);
});

test('rows of the year begin with the crops of autumn that carry over the new year, then follow their first week from the field', () => {
  const names = cropRows([
    ...Array.from({ length: 52 }, (_, index) =>
      week(index + 1, [
        ...(index >= 37 || index < 15 ? [item('Leeks', { look: 'allium' })] : []),
        ...(index >= 20 && index < 40 ? [item('Lettuce', { look: 'salad' })] : []),
        ...(index >= 10 && index < 20 ? [item('Spinach', { look: 'beet' })] : []),
      ]),
    ),
  ]).map(({ name }) => name);
  expect(names).toEqual(['Leeks', 'Spinach', 'Lettuce']);
});

test('a week is spoken with its Monday, its items and its crops; a closed week says so', () => {
  expect(boxName(week(26, [item('Carrots'), item('Onions', { look: 'allium', from: 'store' })]))).toBe(
    'Week 26, 28 June: 2 of 7 items: Carrots, Onions from store',
  );
  expect(boxName(week(33, [], { closed: 'closed', boxes: 0 }))).toBe('Week 33, 16 August: no box');
});

test.each([
  { amount: 0.6, unit: 'kg', text: '600 g' },
  { amount: 1.25, unit: 'kg', text: '1.25 kg' },
  { amount: 1, unit: 'head', text: '1 head' },
  { amount: 2, unit: 'bunch', text: '2 bunches' },
  { amount: 0, unit: 'kg', text: '–' },
] as const)('$amount $unit is written $text', ({ amount, unit, text }) => {
  expect(amountText(item('Carrots', { portions: { small: amount }, unit }), 'small')).toBe(text);
  expect(itemsText(6.97)).toBe('7');
  expect(itemsText(6.4)).toBe('6.4');
});

test('the twins hold every week and every crop of the picture', () => {
  expect(bricksTwin(supply).rows).toHaveLength(52);
  expect(yearTwin(supply).rows).toHaveLength(
    new Set(supply.boxes.flatMap(({ items }) => items.map(({ crop }) => crop))).size,
  );
});
