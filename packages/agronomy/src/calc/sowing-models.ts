/** Sowing, ground and store arithmetic by name: ours, beside the names of the published models. */
import { areaForMassM2, keptFraction, liftKg } from '../seed/area-needed.ts';
import { effectiveRowM, plantsPerM2, rowMetres } from '../seed/population.ts';
import { seedForRows } from '../seed/seed-order.ts';
import { benchM2, mixL, traysFor } from '../seed/trays.ts';
import { drawDown } from '../storage/store-loss.ts';
import { type CalcModel, calcModel } from './calc-model.ts';
import { inputs, outputs } from './input-list.ts';

const arithmetic = 'arithmetic; see docs/science/sowing.md and docs/science/store.md';

export const sowingModels: Readonly<Record<string, CalcModel>> = {
  population: calcModel({
    title: 'Plants on the ground',
    inputs: inputs('in_row_cm cm between plants in the row', 'row_cm cm between rows, wheelings in it'),
    outputs: outputs('plants_m2 1/m2 plants', 'plants_ha 1/ha plants'),
    source: arithmetic,
    evaluate: (v) => {
      const perM2 = plantsPerM2(v.number('in_row_cm') / 100, v.number('row_cm') / 100);
      return { plants_m2: perM2, plants_ha: perM2 * 10_000 };
    },
  }),
  area: calcModel({
    title: 'Ground for a demand',
    inputs: inputs(
      'demand_kg kg in the boxes',
      'losses series:- shares lost on the way, each after the other',
      'yield_t_ha t/ha lifted',
      'rows? - rows on a bed',
      'bed_centres_m? m from bed to bed',
    ),
    outputs: outputs(
      'keep_fraction - share that reaches the box',
      'lift_kg kg to lift',
      'area_m2 m2 of beds',
      'row_m m of row',
      'row_distance_m m between rows, wheelings in it',
    ),
    source: arithmetic,
    evaluate: (v) => {
      const keep_fraction = keptFraction(v.series('losses'));
      const lift_kg = liftKg(v.number('demand_kg'), keep_fraction);
      const area_m2 = areaForMassM2(lift_kg, v.number('yield_t_ha'));
      const rows = v.maybe('rows');
      const bed = v.maybe('bed_centres_m');
      const known = rows !== null && bed !== null;
      return {
        keep_fraction,
        lift_kg,
        area_m2,
        row_m: known ? rowMetres(area_m2, rows, bed) : null,
        row_distance_m: known ? effectiveRowM(rows, bed) : null,
      };
    },
  }),
  seed: calcModel({
    title: 'Seed for rows',
    inputs: inputs(
      'row_m m of row',
      'plants_per_m 1/m plants wanted',
      'germination - share that germinates',
      'field_factor - share of those that stand',
      'tsw_g g thousand-seed weight',
      'margin - share bought beyond',
      'pack_seeds? - seeds in a pack',
    ),
    outputs: outputs(
      'seeds_per_m 1/m seeds',
      'seeds - to sow',
      'seed_kg kg to sow',
      'seeds_with_margin - to buy',
      'packs - to buy',
    ),
    source: arithmetic,
    evaluate: (v) => {
      const order = seedForRows({
        rowM: v.number('row_m'),
        plantsPerRowM: v.number('plants_per_m'),
        germinationFraction: v.number('germination'),
        fieldFactor: v.number('field_factor'),
        thousandSeedG: v.number('tsw_g'),
        marginFraction: v.number('margin'),
        packSeeds: v.maybe('pack_seeds'),
      });
      return {
        seeds_per_m: order.seedsPerRowM,
        seeds: order.seeds,
        seed_kg: order.seedKg,
        seeds_with_margin: order.seedsWithMargin,
        packs: order.packs,
      };
    },
  }),
  trays: calcModel({
    title: 'Trays, bench and mix',
    inputs: inputs(
      'plants - wanted',
      'usable - share of cells fit to plant',
      'cells - in a tray',
      'tray_m2 m2 of a tray',
      'gap - share of bench lost to gaps',
      'cell_ml ml of a cell',
      'spilt - share of mix spilt',
    ),
    outputs: outputs('trays - whole trays', 'bench_m2 m2 of bench', 'mix_l l of mix'),
    source: arithmetic,
    evaluate: (v) => {
      const trays = traysFor(v.number('plants'), v.number('usable'), v.number('cells'));
      return {
        trays,
        bench_m2: benchM2(trays, v.number('tray_m2'), v.number('gap')),
        mix_l: mixL(trays * v.number('cells'), v.number('cell_ml'), v.number('spilt')),
      };
    },
  }),
  store: calcModel({
    title: 'Draw-down of a store',
    inputs: inputs(
      'opening_kg kg put in',
      'weekly_loss series:- share lost in each week, one for each or one for all',
      'wanted_kg series:kg wanted in each week',
    ),
    outputs: outputs(
      'left_kg kg at the end of each week',
      'full_weeks - weeks met in full',
      'first_short_week - counted from 1',
      'lost_kg kg lost in all',
    ),
    source: arithmetic,
    evaluate: (v) => {
      const losses = v.series('weekly_loss');
      const store = drawDown(
        v.number('opening_kg'),
        v
          .series('wanted_kg')
          .map((wantedKg, week) => ({ wantedKg, weeklyLossFraction: losses[week] ?? losses.at(-1) ?? 0 })),
      );
      return {
        left_kg: store.weeks.map((week) => week.leftKg),
        full_weeks: store.fullWeeks,
        first_short_week: store.firstShortWeek === null ? null : store.firstShortWeek + 1,
        lost_kg: store.lostKg,
      };
    },
  }),
};
