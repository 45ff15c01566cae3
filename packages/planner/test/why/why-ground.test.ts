import { day, farmWith, plot, sampleFarm, sampleToday, stand } from '@leywright/farm-kit';
import { addWeeks, weekOf } from '@leywright/measures';
import { describe, expect, test } from 'vitest';
import { planFarm, whyOf } from '../../src/index.ts';

const farm = sampleFarm(sampleToday);
const wish = { today: sampleToday };
const plan = planFarm(farm, wish);

describe('every figure of the ground opens to its sum, and the sum gives the figure', () => {
  test('net areas', () => {
    for (const { area } of plan.ground) expect(whyOf(farm, wish, area.why)?.value).toBe(area.netM2);
  });
  test('rests, kept and broken', () => {
    const visits = plan.ground.flatMap((one) => one.visits);
    for (const visit of visits.filter((_, at) => at % 40 === 0)) {
      expect(whyOf(farm, wish, visit.why)).toMatchObject({
        value: visit.gapYears,
        figures: { earliestYear: visit.earliestYear, previous: visit.previous },
      });
    }
  });
  test('nitrogen, both ends', () => {
    for (const one of plan.nitrogen.filter((_, at) => at % 9 === 0)) {
      const why = whyOf(farm, wish, one.why);
      expect(why?.low).toBeCloseTo(one.leftKgHa.low, 9);
      expect(why?.high).toBeCloseTo(one.leftKgHa.high, 9);
      expect(why?.doubt).toEqual(one.doubt);
    }
  });
  test('cover of a stand in a week, by its ISO week or its place', () => {
    const one = plan.ground[0]?.stands.find((placed) => placed.kind === 'ley' && placed.coverShare.length > 60);
    const at = (one?.coverFromWeek ?? 0) + 50;
    const week = addWeeks(weekOf(plan.horizon.firstMonday), at);
    expect(whyOf(farm, wish, `cover/${one?.id}/${week}`)?.value).toBe(one?.coverShare[50]);
    expect(whyOf(farm, wish, `cover/${one?.id}/${at}`)?.value).toBe(one?.coverShare[50]);
  });
  test('bare days of a winter', () => {
    const f = plan.ground.find((one) => one.plot === 'f');
    expect(whyOf(farm, wish, 'bare/f/2029')?.value).toBe(f?.bareCounts.find((one) => one.winter === 2029)?.bareDays);
  });
  test('and so does whatever a finding of the ground points to', () => {
    const codes = [
      'bare-in-leaching-season',
      'family-back-too-soon',
      'organism-back-too-soon',
      'nitrogen-drawn-down',
      'nitrogen-undecided',
    ];
    const pointed = plan.findings.filter((one) => codes.includes(one.code) && one.why !== null);
    expect(pointed.length).toBeGreaterThan(5);
    for (const one of pointed) expect(whyOf(farm, wish, one.why ?? ''), one.why ?? '').not.toBeNull();
  });
});

describe('a derivation', () => {
  const small = farmWith({
    about: { conventions: { hedgeBufferM: 2, headlandShare: 0.12 } },
    plots: [plot('A', { grossM2: 4800, hedgeM: 120, headlandShare: null })],
  });

  test('of plot 4 of worked case C11 shows (4800 − 120 × 2 − 0) × (1 − 0.12) = 4012.8, and that the strip is the farm’s own', () => {
    const why = whyOf(small, { today: day('2027-01-14') }, 'net/a');
    expect(why?.sum).toBe('(4800 − 120 × 2 − 0) × (1 − 0.12) = 4012.8');
    expect(why?.inputs.find((one) => one.name === 'strip')).toMatchObject({
      from: 'convention',
      where: 'farm.json, hedge_buffer_m',
    });
    expect(why?.levers).toContainEqual({ change: 'strip along hedges', value: 0, unit: 'm', result: 4800 * 0.88 });
  });

  test('of a strip asked for by law names the rule and how it is known', () => {
    const field = { id: 'f' as never, name: 'F', areaM2: 40_000, hedgesOver5Years: true };
    const why = whyOf(
      {
        ...small,
        fields: [field],
        plots: small.plots.map((one) => ({ ...one, field: 'f' as never })),
        about: { ...small.about, conventions: { ...small.about.conventions, hedgeBufferM: null } },
      },
      { today: day('2027-01-14') },
      'net/a',
    );
    expect(why?.inputs.find((one) => one.name === 'strip')).toMatchObject({
      from: 'reference',
      where: 'rules.csv, HE-02, value',
      howKnown: 'verified',
    });
  });

  test('of a rest names the earlier stand, the convention by which a year counts, and the table’s row', () => {
    const stands = [
      stand('a', 'kale-curly', ['2022-07-01', '2023-04-20'], { id: 'kale', state: 'recorded' }),
      stand('a', 'cabbage-autumn', ['2026-06-10', '2026-11-01'], { id: 'cabbage' }),
    ];
    const why = whyOf(
      farmWith({ plots: [plot('A')], stands }),
      { today: day('2026-01-14') },
      'rest/cabbage/fam-brassicaceae',
    );
    expect(why).toMatchObject({ value: 3, sum: '2026 − 2023 = 3; 2023 + 4 = 2027' });
    expect(why?.inputs.map((one) => one.where)).toContain('intervals.csv, fam-brassicaceae, return_years_min');
  });

  test('of a figure that is none is null', () => {
    for (const id of [
      '',
      'net',
      'net/zz',
      'rest/x/y',
      'nitrogen/a/20x7',
      'cover/x/2027-w01',
      'bare/a/1900',
      'toString/a',
    ])
      expect(whyOf(small, { today: day('2027-01-14') }, id)).toBeNull();
  });
});
