/**
 * The humus balance of a rotation: what its crops use up and its leys, covers and composts bring, in humus carbon. An index, not a forecast.
 *
 * Source  Direktzahlungen-Verpflichtungenverordnung 2004, annex 3 (read) = VDLUFA position of 30 April 2004, lower values; tables in reference/science/humus-*.csv.
 * Checks  test/checks/science.csv hu-01 (the ordinance's own example), hu-03; test/carbon.test.ts (each crop of ours has a use; more compost never worsens)
 * Holds   in proportion to area and mass.
 * Leaves out  soil and weather: the same figures everywhere. It stands beside the carbon run and is never added to it.
 */
import { cellsOf, tableText } from '../reference/table-text.ts';

/** A use of the ground and the humus carbon it brings or costs (kg C/ha a year). */
export interface HumusUse {
  readonly use: string;
  readonly kgCHa: number;
}

/** The range the ordinance asks for (kg C/ha a year), as a mean of three years never below the first. */
export const humusAimKgCHa = { low: -75, high: 125 } as const;

/** Humus carbon × this = humus. */
export const humusPerCarbonRatio = 1.72;

/** Every use of the table. */
export function humusUses(): readonly HumusUse[] {
  return cellsOf(tableText('science/humus-demand-kgC-ha-a')).map((cell) => ({
    use: cell('use'),
    kgCHa: Number(cell('kg_humusC_per_ha_a')),
  }));
}

/** The use a word stands for: a row's own words, a part of them ("potatoes", "veg group 1"), or a crop of the vegetable groups. Null for none. */
export function humusUse(word: string): HumusUse | null {
  const wanted = plain(word);
  const exact = humusUses().find(({ use }) => plain(use) === wanted);
  if (exact !== undefined) return exact;
  const group = groupOfWord(wanted);
  if (group !== null) return useOfGroup(group);
  return humusUses().find(({ use }) => partsOf(use).some((part) => same(part, wanted))) ?? null;
}

/** The use of a crop of ours, by its id; null for crops the ordinance has no group for. Brussels sprouts count as group 1: common practice. */
export function humusUseOfCrop(cropId: string): HumusUse | null {
  const group = groupByCrop.find(([pattern]) => pattern.test(cropId))?.[1];
  if (group === undefined) return null;
  return group === 'grain legumes' ? humusUse(group) : useOfGroup(group);
}

const groupByCrop: readonly (readonly [RegExp, string])[] = [
  [/^potato/, '1'],
  [/^(broad-bean)/, 'grain legumes'],
  [
    /^(cauliflower|broccoli|calabrese|chinese-cabbage|pak-choi|cucumber|celeriac|celery|squash|leek|rhubarb|cabbage|tomato|courgette|brussels)/,
    '1',
  ],
  [/^(aubergine|chicory|garlic|swede|turnip|carrot|pepper|parsnip|sweet-corn|jerusalem-artichoke)/, '2'],
  [
    /^(parsley|french-bean|runner-bean|lettuce|endive|lambs-lettuce|fennel|pea|kale|kohlrabi|chard|radish|rocket|beetroot|spinach|perpetual-spinach|onion|spring-onion|shallot|salad|winter-salad|winter-purslane)/,
    '3',
  ],
];

function useOfGroup(group: string): HumusUse | null {
  return humusUses().find(({ use }) => use.includes(`group ${group}`)) ?? null;
}

function groupOfWord(word: string): string | null {
  const row = cellsOf(tableText('science/humus-vegetable-groups')).find((cell) =>
    cell('crops')
      .split(/[,/]/)
      .some((crop) => same(plain(crop), word)),
  );
  return row?.('group') ?? (word === 'brussels sprouts' ? '1' : null);
}

/** Words of a use that may stand alone for it, without what is in brackets. */
function partsOf(use: string): readonly string[] {
  return plain(use)
    .replace(/\([^)]*\)/g, '')
    .split(/[;,:]| and | per main year/)
    .map((part) => part.trim())
    .filter((part) => part !== '');
}

function plain(word: string): string {
  return word
    .trim()
    .toLowerCase()
    .replaceAll('-', ' ')
    .replace(/\s+/g, ' ')
    .replace(/^red beet$/, 'beetroot');
}

/** One or many: carrot and carrots, leaf and leaves apart. */
function same(a: string, b: string): boolean {
  const one = (word: string) =>
    word.replace(/\s*\([^)]*\)/g, '').replace(/(?<=[a-z]{3})(oes|s)$/, (end) => (end === 'oes' ? 'o' : ''));
  return one(a) === one(b);
}

/** Humus carbon of a fresh tonne of a material. */
export interface HumusMaterial {
  readonly material: string;
  readonly carbonKgT: number;
  readonly dryMatterPct: number;
}

/** Every material of the table. */
export function humusMaterials(): readonly HumusMaterial[] {
  return cellsOf(tableText('science/humus-supply-kgC-per-t')).map((cell) => ({
    material: cell('material'),
    carbonKgT: Number(cell('kg_humusC_per_t_fresh')),
    dryMatterPct: Number(cell('DM_pct')),
  }));
}

/** The rows a material's words may mean: "finished compost 60% DM" is one; "finished compost" alone is one for each dryness. */
export function humusMaterialsNamed(words: string): readonly HumusMaterial[] {
  const dry = /(\d+(?:\.\d+)?)\s*%\s*(?:DM)?/i.exec(words);
  const name = plain(words.replace(/[,(]?\s*\d+(?:\.\d+)?\s*%\s*(DM)?\)?/i, ''));
  return humusMaterials().filter(
    (row) => plain(row.material) === name && (dry === null || row.dryMatterPct === Number(dry[1])),
  );
}

/** Mean balance of a rotation on equal plots (kg C/ha a year): uses and extras summed over the plots, and compost on all of them. */
export function rotationBalanceKgCHa(rotation: {
  readonly usesKgCHa: readonly number[];
  /** Each on one plot: an undersown clover, a catch crop. */
  readonly extrasKgCHa: readonly number[];
  /** On every plot. */
  readonly suppliedKgCHa: number;
}): number {
  const sum = [...rotation.usesKgCHa, ...rotation.extrasKgCHa].reduce((total, kgC) => total + kgC, 0);
  return sum / Math.max(1, rotation.usesKgCHa.length) + rotation.suppliedKgCHa;
}
