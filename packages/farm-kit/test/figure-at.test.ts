import { describe, expect, test } from 'vitest';
import { judge } from '../src/golden/expectation.ts';
import { figureAt } from '../src/golden/figure-at.ts';

const plan = {
  year: 2027,
  ground: [
    { plot: 'a', area: { netM2: 9000 } },
    { plot: 'b', area: { netM2: 4500 } },
  ],
  hours: [
    { who: 'ruth', h: 3 },
    { who: 'idris', h: 2 },
  ],
  findings: [
    { code: 'box-short', place: { week: '2027-w24' } },
    { code: 'box-short', place: { week: '2027-w25' } },
    { code: 'hours-over-hands', place: {} },
  ],
};

const at = (path: string): unknown => {
  const found = figureAt(plan, path);
  return found.kind === 'found' ? found.value : found.kind;
};

describe('a figure is found by its path', () => {
  test('by name, by place and by what a row says', () => {
    expect(at('year')).toBe(2027);
    expect(at('ground[1].plot')).toBe('b');
    expect(at('ground[plot=b].area.netM2')).toBe(4500);
    expect(at('findings[code=box-short,place.week=2027-w25].place.week')).toBe('2027-w25');
  });
  test('counted, summed and divided', () => {
    expect(at('findings[code=box-short]#')).toBe(2);
    expect(at('findings#')).toBe(3);
    expect(at('hours.h+')).toBe(5);
    expect(at('ground.area.netM2+')).toBe(13_500);
    expect(at('hours[who=ruth].h+')).toBe(3);
    expect(at('ground[plot=b].area.netM2 / ground[plot=a].area.netM2')).toBe(0.5);
  });
  test('what is not there is said to be missing, not nought', () => {
    expect(at('ground[plot=z].area.netM2')).toBe('nothing-there');
    expect(at('supply.boxes')).toBe('nothing-there');
    expect(at('findings[code=no-store-for-crop]#')).toBe(0);
  });
  test('a path that cannot be read is our own mistake', () => {
    expect(() => figureAt(plan, 'ground[plot]')).toThrow('no condition');
  });
});

describe('an expected figure is judged', () => {
  test('exactly, within a share, within an amount', () => {
    expect(judge(plan, { what: 'year', at: 'year', is: 2027 }).kind).toBe('met');
    expect(judge(plan, { what: 'year', at: 'year', is: 2028 })).toMatchObject({ kind: 'missed', off: -1 });
    expect(judge(plan, { what: 'net', at: 'ground[plot=b].area.netM2', is: 4520, within: '0.5 %' }).kind).toBe('met');
    expect(judge(plan, { what: 'net', at: 'ground[plot=b].area.netM2', is: 4530, within: '0.5 %' }).kind).toBe(
      'missed',
    );
    expect(judge(plan, { what: 'net', at: 'ground[plot=b].area.netM2', is: 4510, within: 9 }).kind).toBe('missed');
  });
  test('an expectation that says nothing is never met', () => {
    expect(judge(plan, { what: 'nothing', at: 'year' }).kind).toBe('missed');
  });
  test('absence can be what is right', () => {
    expect(judge(plan, { what: 'no c', at: 'ground[plot=c].plot', absent: true }).kind).toBe('met');
    expect(judge(plan, { what: 'no a', at: 'ground[plot=a].plot', absent: true }).kind).toBe('missed');
  });
});
