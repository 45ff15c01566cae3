/** Faults of stands, covers, rests and nitrogen, each on ground of the clean farm where nothing else comes of it. */
import type { FindingCode } from '@leywright/planner';
import { plot, span } from '../build/farm.ts';
import { cover, stand } from '../build/stand.ts';
import { farApart } from './clean-farm.ts';
import { inYear, type Planter, planted, withStands, yearsOnCourse } from './planted.ts';
import { afterCarrots, besideClover, rest, strip } from './strips.ts';

export const groundFaults = {
  'stands-overlap': (farm, chance) => {
    const { plot: plotId, year } = chance.oneOf(yearsOnCourse(farm, 'clover-3', 2027, 2030));
    const phacelia = cover(plotId, 'phacelia', [inYear(year, '06-01'), inYear(year, '07-10')], {
      id: 'phacelia-over-clover',
    });
    return planted(withStands(farm, [phacelia]), {
      plot: plotId,
      stand: phacelia.id,
      from: phacelia.from,
      to: phacelia.to,
    });
  },
  'stand-outside-plot': (farm, chance) => {
    const left = chance.oneOf([0.5, 0.75, 0.95]);
    const wide = cover('tunnel', 'phacelia', ['2027-05-01', '2027-07-01'], {
      id: 'over-the-edge',
      span: span(left, 1 + left),
    });
    return planted(withStands(farm, [wide]), { plot: 'tunnel', stand: wide.id });
  },
  'undersown-without-host': (farm, chance) => {
    const { plot: plotId, year } = chance.oneOf(yearsOnCourse(farm, 'chicory-1', 2027, 2030));
    const lost = cover(plotId, 'phacelia', [inYear(year, '04-28'), inYear(year, '05-18')], {
      id: 'no-host',
      undersownIn: 'crop-that-is-not-there',
    });
    return planted(withStands(farm, [lost]), { plot: plotId, stand: lost.id });
  },
  'undersow-out-of-window': (farm, chance) =>
    besideClover(farm, chance, ({ plot: plotId, year, on }) => [
      cover(plotId, 'trefoil', [inYear(year, chance.oneOf(['06-12', '06-18', '06-24'])), inYear(year + 1, '03-20')], {
        id: 'early-trefoil',
        undersownIn: 'kale',
        ...on,
      }),
      stand(plotId, 'kale-curly', [inYear(year, '06-10'), inYear(year, '10-20')], {
        id: 'kale',
        plantedOn: inYear(year, '06-10'),
        ...on,
      }),
    ]),
  'tunnel-crop-outside': (farm, chance) =>
    besideClover(farm, chance, ({ plot: plotId, year, on }) => [
      stand(
        plotId,
        chance.oneOf(['tomato-tunnel', 'pepper-tunnel', 'aubergine-tunnel']),
        [inYear(year, '05-15'), inYear(year, '08-26')],
        { id: 'out-of-the-tunnel', plantedOn: inYear(year, '05-15'), ...on },
      ),
    ]),
  'sown-out-of-season': (farm, chance) =>
    besideClover(farm, chance, ({ plot: plotId, year, on }) => [
      stand(plotId, 'chard', [inYear(year, chance.oneOf(['03-30', '04-02', '04-05'])), inYear(year, '08-26')], {
        id: 'cold-chard',
        plantedOn: inYear(year, '03-30'),
        ...on,
      }),
    ]),
  'cover-sown-too-late': (farm, chance) =>
    besideClover(farm, chance, ({ plot: plotId, year, on }) => [
      cover(plotId, 'phacelia', [inYear(year, chance.oneOf(['09-11', '09-13'])), inYear(year + 1, '03-20')], {
        id: 'late-phacelia',
        ...on,
      }),
      stand(plotId, 'chard', [inYear(year, '05-02'), inYear(year, '09-10')], {
        id: 'chard',
        plantedOn: inYear(year, '05-02'),
        ...on,
      }),
    ]),
  'bare-in-leaching-season': (farm, chance) => {
    const { plot: plotId, year } = chance.oneOf(yearsOnCourse(farm, 'roots', 2027, 2030));
    const spring = cover(plotId, 'phacelia', [inYear(year + 1, '04-04'), inYear(year + 1, '05-01')], {
      id: `${plotId}-${year}-rye`,
      courseYear: year,
    });
    return planted(withStands(farm, [spring]), { plot: plotId, stand: `${plotId}-${year}-carrot`, year: year + 1 });
  },
  'plot-without-course': (farm) =>
    planted({ ...farm, plots: [...farm.plots, plot('Z', { name: 'New piece' })] }, { plot: 'z' }),
  'status-unknown': (farm, chance) => {
    const one = chance.oneOf(farm.plots);
    return planted(
      { ...farm, plots: farm.plots.map((it) => (it.id === one.id ? { ...it, status: 'unknown' as const } : it)) },
      { plot: one.id },
    );
  },
  'family-back-too-soon': (farm, chance) =>
    afterCarrots(farm, chance, ({ plot: plotId, year, on }) => [
      stand(plotId, 'carrot-bunching', [inYear(year, '05-22'), inYear(year, '08-04')], { id: 'carrots-again', ...on }),
    ]),
  'organism-back-too-soon': (farm, chance) =>
    afterCarrots(farm, chance, ({ plot: plotId, year, on }) => [
      stand(plotId, 'lettuce-head', [inYear(year, '05-25'), inYear(year, '07-25')], {
        id: 'lettuce-after-carrots',
        plantedOn: inYear(year, '05-25'),
        ...on,
      }),
    ]),
  'wait-after-cover-too-short': (farm, chance) => {
    const turnedIn = chance.oneOf(['04-02', '04-10', '04-20']);
    return besideClover(farm, chance, ({ plot: plotId, year, on }) => {
      const before = { courseYear: year - 2 };
      const chicory = inYear(year - 2, '05-20');
      return [
        stand(plotId, 'chard', [inYear(year, '04-26'), inYear(year, '08-26')], {
          id: 'hasty-chard',
          plantedOn: inYear(year, '04-26'),
          ...on,
        }),
        cover(plotId, 'forage-chicory', [chicory, inYear(year, '02-28')], {
          id: `${plotId}-${year - 2}-chicory`,
          span: rest,
          ...before,
        }),
        cover(plotId, 'forage-chicory', [chicory, inYear(year, turnedIn)], {
          id: 'strip-turned-in-late',
          span: strip,
          ...before,
        }),
      ];
    });
  },
  'host-too-near': (farm) => {
    const before = yearsOnCourse(farm, 'roots', 2026, 2026)[0]?.plot;
    const now = yearsOnCourse(farm, 'roots', 2027, 2027)[0]?.plot ?? '';
    const at = farm.plots.findIndex((one) => one.id === now);
    return planted(
      { ...farm, plots: farm.plots.map((one) => (one.id === before ? { ...one, ring: farApart(at + 0.2) } : one)) },
      { plot: now, stand: `${now}-2027-carrot` },
    );
  },
  'nitrogen-drawn-down': (farm, chance) => {
    const { plot: plotId, year } = chance.oneOf(yearsOnCourse(farm, 'clover-1', 2027, 2028));
    const rhubarb = stand(plotId, 'rhubarb', [inYear(year, '03-18'), inYear(year + 6, '02-27')], {
      id: `${plotId}-${year}-clover`,
      plantedOn: inYear(year, '03-18'),
      courseYear: year,
    });
    const chicory = cover(plotId, 'forage-chicory', [inYear(year - 2, '05-20'), inYear(year, '02-18')], {
      id: `${plotId}-${year - 2}-chicory`,
      courseYear: year - 2,
    });
    return planted(withStands(farm, [rhubarb, chicory]), { plot: plotId });
  },
  'nitrogen-undecided': (farm, chance) => {
    const { plot: plotId, year } = chance.oneOf(yearsOnCourse(farm, 'clover-1', 2027, 2028));
    const thin = cover(plotId, 'sweet-clover', [inYear(year, '04-12'), inYear(year + 6, '02-27')], {
      id: `${plotId}-${year}-clover`,
      kind: 'ley',
      establishedShare: chance.oneOf([0.5, 0.6, 0.7]),
      courseYear: year,
    });
    return planted(withStands(farm, [thin]), { plot: plotId });
  },
  'climate-assumed': (farm) =>
    planted({ ...farm, weather: [], about: { ...farm.about, place: { ...farm.about.place, lonDeg: -13 } } }, {}),
} as const satisfies Partial<Record<FindingCode, Planter>>;
