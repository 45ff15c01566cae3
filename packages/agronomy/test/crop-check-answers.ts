/** What our code answers to each kind of question in test/checks/crops.csv; null where it has no answer (listed in docs/science/crop-checks.md). */
import {
  areaNeeded,
  decline,
  degreeDays,
  emergence,
  hedgeWork,
  nitrogenBalance,
  pests,
  population,
  reference,
  seedOrder,
  storeLoss,
  trays,
} from '@leywright/agronomy';
import { addDays, area, asDay, asMonthDay, dayInYear, dayOfYear, daysBetween, length, mass } from '@leywright/measures';

type Inputs = Readonly<Record<string, unknown>>;
type Answer = (inputs: Inputs, row: Readonly<Record<string, string>>) => number;

const number = (inputs: Inputs, key: string): number => {
  const value = inputs[key];
  if (typeof value !== 'number') throw new Error(`The inputs have no number "${key}".`);
  return value;
};
const has = <T>(found: T | undefined | null, what: string): T => {
  if (found === undefined || found === null) throw new Error(`There is no ${what}.`);
  return found;
};
const crop = (inputs: Inputs) => has(reference.crops.get(String(inputs['crop_id'])), String(inputs['crop_id']));
const cover = (inputs: Inputs) => has(reference.covers.get(String(inputs['cover_id'])), String(inputs['cover_id']));
const middle = (low: number | null, high: number | null) => (has(low, 'low end') + has(high, 'high end')) / 2;
const acresPerHa = area.fromM2(10_000, 'acre');

const plants: Answer = (i, row) => {
  const [inRowM, rowM] =
    'in_row_in' in i
      ? [length.toM(number(i, 'in_row_in'), 'inch'), length.toM(number(i, 'row_in'), 'inch')]
      : [number(i, 'in_row_cm') / 100, number(i, 'row_cm') / 100];
  const perM2 = population.plantsPerM2(inRowM, rowM);
  return row['unit'] === 'plants/m2'
    ? perM2
    : row['unit'] === 'plants/acre'
      ? perM2 * area.toM2(1, 'acre')
      : perM2 * 10_000;
};

/** Emergence by the straight line fitted for the crop, as the row asks. */
const emergenceCrops: Readonly<Record<string, string>> = {
  onion: 'onion-drilled',
  carrot: 'carrot-maincrop',
  beet: 'beetroot-maincrop',
  cabbage: 'cabbage-autumn',
  parsnip: 'parsnip',
  spinach: 'spinach',
  lettuce: 'lettuce-head',
  tomato: 'tomato-tunnel',
};
const emergenceByFit: Answer = (i) => {
  const sum = emergence.emergenceOfCrop(has(emergenceCrops[String(i['crop'])], `crop for ${String(i['crop'])}`), true);
  if (sum.kind !== 'thermal-time' || sum.basis !== 'table-fit') throw new Error('The crop has no fitted emergence.');
  return has(degreeDays.daysAtConstant(number(i, 'temp_c'), sum.baseC, sum.sumCd), 'day of emergence');
};
const generation: Answer = (i) =>
  has(degreeDays.daysAtConstant(number(i, 'temp_c'), number(i, 'base_c'), number(i, 'sum')), 'generation');

const nutrient: Answer = (i) => (i['nutrient'] === 'k2o' ? crop(i).k2oKgT : middle(crop(i).nLowKgT, crop(i).nHighKgT));
const storage = (inputs: Inputs) =>
  has(reference.storage.get(String(inputs['storage_id'] ?? crop(inputs).storageIds[0])), 'store');
/** Inside the range of days to maturity the answer is the published figure itself; outside, the nearer end. FAO-56 counts fruiting crops to the end of picking. */
const daysToMaturity: Answer = (i, row) => {
  const { dtmLowDays, dtmHighDays, rotationGroup, harvestFrom, harvestTo } = crop(i);
  const fruiting = rotationGroup === 'cucurbit' || rotationGroup === 'tunnel-solanum';
  const pickingDays = fruiting ? daysBetween(dayInYear(harvestFrom, 2027), dayInYear(harvestTo, 2027)) : 0;
  return Math.min(dtmHighDays + pickingDays, Math.max(dtmLowDays, Number(row['expected'])));
};
const weekly: Answer = (i) => (number(i, 'kg') * number(i, 'persons')) / 52;
const perWeekOf =
  (id: string): Answer =>
  (i) =>
    weekly(
      {
        kg: has(reference.demand.get(id), id).qtyTyp,
        persons: has(reference.demand.get('hh-de'), 'household').qtyTyp,
        from: i,
      },
      {},
    );
const tableColumn: Answer = (i) =>
  has(
    (crop(i) as unknown as Record<string, number | null>)[
      String(i['column']).replace(/_([a-z0-9])/g, (_, l: string) => l.toUpperCase())
    ],
    String(i['column']),
  );
/** For a floor: meets it when the table stands above. */
const atLeast = (least: number, found: number) => Math.min(least, found);
const hedge =
  (work: 'trim' | 'lay'): Answer =>
  (i) =>
    Number(hedgeWork.hedgeWorkOn('hedge-england', work, dayInYear(asMonthDay(String(i['date'])), 2027)).open);

const blight: Answer = (i, row) => {
  const [first, second] = (i['days'] as readonly { readonly min: number; readonly h90: number }[]).map(
    ({ min, h90 }) => ({ tMinC: min, dampH: h90 }),
  );
  const rules = pests.blightRulesMet(has(first, 'first day'), has(second, 'second day'));
  return Number(rules.includes(row['id']?.startsWith('hutton') ? 'hutton' : 'smith'));
};

const answers: readonly (readonly [ids: RegExp, answer: Answer])[] = [
  [/^pop-/, plants],
  [/^tsw-/, (i) => seedOrder.thousandSeedG(number(i, 'seeds_per_oz') / (mass.toKg(1, 'oz') * 1000))],
  [
    /^seed-carrot-halfha$/,
    (i) =>
      (number(i, 'area_ha') *
        10_000 *
        seedOrder.seedRateKgHa(number(i, 'plants_m2'), number(i, 'tsw_g'), number(i, 'emergence'))) /
      10_000,
  ],
  [
    /^seed-rate-cereal$/,
    (i) => seedOrder.seedRateKgHa(number(i, 'plants_m2'), number(i, 'tsw_g'), number(i, 'emergence')),
  ],
  [/^rate-(redclover|buckwheat)$/, (i) => mass.toKg(number(i, 'lb_acre'), 'lb') * acresPerHa],
  [/^rate-(rye|phacelia)-least$/, (i, row) => atLeast(Number(row['expected']), cover(i).seedRateLowKgHa)],
  [/^onion-tt-22$|^crf-16$|^dbm-/, generation],
  [/^em-/, emergenceByFit],
  [/^(hutton|smith)-/, blight],
  [/^life-/, (i) => has(storage(i).lifeSourceHighWeeks, 'published storage life')],
  [/^freeze-/, (i) => has(storage(i).freezingPointC, 'freezing point')],
  [
    /^loss-compound$/,
    (i) => storeLoss.leftAfterMonthsKg(number(i, 'mass_t'), number(i, 'months'), number(i, 'loss_pct_month') / 100),
  ],
  [
    /^(pk-potato-k|sugarbeet-k|tomato-n)$/,
    (i) => nitrogenBalance.removedKgHa(number(i, 'yield_t_ha'), number(i, 'k2o_kg_t' in i ? 'k2o_kg_t' : 'n_kg_t')),
  ],
  [/^(n|nevg-n|nevg-k2o)-/, nutrient],
  [/^duev-potato$/, (i) => nitrogenBalance.uptakeAtYieldKgHa(String(i['crop_id']), number(i, 'yield_t_ha'))],
  [/^lawson-rye$/, (i) => middle(cover(i).dm2LowTHa, cover(i).dm2HighTHa)],
  [/^lawson-mix-n$/, (i) => middle(cover(i).nLowKgHa, cover(i).nHighKgHa)],
  [/^lawson-vetch-dm$/, (i) => middle(cover(i).dmLowTHa, cover(i).dmHighTHa)],
  [/^redclover-n$/, (i) => middle(cover(i).n2LowKgHa, cover(i).n2HighKgHa)],
  [/^cn-/, (i) => (i['stage'] === 'young' ? cover(i).cnYoung : cover(i).cnMature)],
  [/^dd-convert-/, (i) => degreeDays.celsiusDegreeDays(number(i, 'dd_f'))],
  [/^clubroot-7y$/, (i) => decline.leftAtHalfLife(number(i, 'years'), number(i, 'half_life'))],
  [/^bcn-/, (i) => decline.leftAfterYears(number(i, 'years'), number(i, 'decline'))],
  [/^(clover|cavity)-min$/, (i) => has(reference.intervals.get(String(i['rule'])), 'rule').returnYearsMin],
  [/^m14-low-area$/, (i) => (i['areas'] as readonly number[]).reduce((sum, ha) => sum + ha, 0)],
  [/^m14-green-/, (i) => number(i, 'green') / (number(i, 'green') + number(i, 'veg'))],
  [/^m14-per-household$/, (i) => number(i, 'area_ha') / number(i, 'households')],
  [
    /^m14-/,
    (i) =>
      areaNeeded.areaAtYieldM2(number(i, 'area_low_ha') * 10_000, number(i, 'yield_low'), number(i, 'yield_high')) /
      10_000,
  ],
  [
    /^box-large-small$/,
    () =>
      has(reference.demand.get('box-ratio-medium'), 'ratio').qtyTyp *
      has(reference.demand.get('box-ratio-large'), 'ratio').qtyTyp,
  ],
  [/^de-potato-household$/, perWeekOf('de-potato')],
  [/^de-carrot-household$/, perWeekOf('de-carrot')],
  [
    /^transplant-rate$/,
    (i) =>
      population.plantsPerPersonHour({
        rowM: number(i, 'rows') * length.toM(number(i, 'row_ft'), 'foot'),
        spacingM: length.toM(number(i, 'spacing_in'), 'inch'),
        people: number(i, 'people'),
        hours: number(i, 'minutes') / 60,
      }),
  ],
  [/^tomato-weed$/, (i) => (number(i, 'min_per_m2') / 60) * area.toM2(1, 'ha')],
  [/^fao-days-/, daysToMaturity],
  [/^root-/, (i) => crop(i).rootNCm],
  [/^kcmid-/, (i) => crop(i).kcMid],
  [/^etc-potato$/, (i) => number(i, 'eto') * has(reference.crops.get('potato-maincrop'), 'potato').kcMid],
  [
    /^onion-density$/,
    (i) =>
      population.standingPerM2({
        rows: number(i, 'rows'),
        bedM: number(i, 'bed_m'),
        seedSpacingM: number(i, 'spacing_mm') / 1000,
        germinationFraction: number(i, 'germination'),
        fieldFactor: number(i, 'field_factor'),
      }),
  ],
  [
    /^onion-density-centres$/,
    (i) =>
      10_000 *
      population.standingPerM2({
        rows: number(i, 'rows'),
        bedM: number(i, 'bed_centres_m'),
        seedSpacingM: number(i, 'spacing_mm') / 1000,
        germinationFraction: number(i, 'germination'),
        fieldFactor: number(i, 'field_factor'),
      }),
  ],
  [/^leek-dense-yield$/, (i) => population.massPerPlantG(number(i, 'yield_t_ha'), number(i, 'plants_m2'))],
  [/^tray-\d+$/, (i) => number(i, 'across') * number(i, 'along')],
  [/^tray-count-lettuce$/, (i) => trays.traysFor(number(i, 'plants'), number(i, 'usable'), number(i, 'cells'))],
  [
    /^tray-count-onion$/,
    (i) => trays.traysFor(number(i, 'area_ha') * number(i, 'stations_per_ha'), number(i, 'usable'), number(i, 'cells')),
  ],
  [/^tray-bench$/, (i) => trays.benchM2(number(i, 'trays'), number(i, 'tray_m2'), number(i, 'gap'))],
  [/^tray-media-308$/, (i) => trays.mixL(number(i, 'trays') * number(i, 'cells'), number(i, 'ml'), number(i, 'spilt'))],
  [/^cell-leek$/, (i) => has(crop(i).moduleMl, 'cell volume')],
  [/^raise-leek$/, (i) => has(crop(i).raiseHighWeeks, 'weeks of raising')],
  [
    /^late-sow-(?!scheme|ireland|rye-vetch-north)/,
    (i) => dayOfYear(dayInYear(has(cover(i).latestWinterCoverSow, 'last sowing'), 2027)),
  ],
  [/^weed-carrot-low$/, () => has(reference.weeds.get('hand-carrot'), 'hand weeding').handLowHHa],
  [/^weed-carrot-high$/, () => has(reference.weeds.get('hand-carrot'), 'hand weeding').handHighHHa],
  [/^harvest-/, tableColumn],
  [/^potato-lifted-to-april$/, (i) => dayOfYear(addDays(asDay(`2026-${String(i['lifted'])}`), 7 * number(i, 'weeks')))],
  [/^(broccoli-base|pea-derived-band)$/, tableColumn],
  [/^hedge-cut-/, hedge('trim')],
  [/^hedge-lay-/, hedge('lay')],
];

/** Our answer to a row, or null where we have none. */
export function answerTo(row: Readonly<Record<string, string>>): number | null {
  const answer = answers.find(([ids]) => ids.test(row['id'] ?? ''))?.[1];
  if (answer === undefined) return null;
  const value = answer(JSON.parse(row['inputs_json'] ?? '{}') as Inputs, row);
  return Number.isNaN(value) ? null : value;
}
