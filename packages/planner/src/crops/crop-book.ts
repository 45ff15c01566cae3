/** Crops as this farm grows them: its own figures laid over the reference, each with where it stands. */
import { type Crop, reference, referenceCell } from '@leywright/agronomy';
import type { Farm, OwnCrop } from '@leywright/book';
import type { CropBook, Known, PlannedCrop } from '../plan/inputs.ts';

/** The crops of a farm by id; each is worked out once. */
export function cropBookOf(farm: Pick<Farm, 'crops' | 'about'>): CropBook {
  const own = new Map(farm.crops.map((crop) => [crop.id as string, crop]));
  const kept = new Map<string, PlannedCrop | null>();
  return {
    cropOf: (id) => {
      const known = kept.get(id);
      if (known !== undefined) return known;
      const crop = plannedCrop(id, own, farm);
      kept.set(id, crop);
      return crop;
    },
    idsOf: (id) => lineage(id, own),
  };
}

/** The crop and what it is based on, nearest first; a ring of crops based on one another ends where it closes. */
function lineage(id: string, own: ReadonlyMap<string, OwnCrop>): readonly string[] {
  const ids: string[] = [];
  for (let next: string | null = id; next !== null && !ids.includes(next); next = own.get(next)?.basedOn ?? null)
    ids.push(next);
  return ids;
}

function plannedCrop(id: string, own: ReadonlyMap<string, OwnCrop>, farm: Pick<Farm, 'about'>): PlannedCrop | null {
  const ids = lineage(id, own);
  const owns = ids.map((one) => own.get(one)).filter((one) => one !== undefined);
  const table = ids.map((one) => reference.crops.get(one)).find((one) => one !== undefined) ?? null;
  if (owns.length === 0 && table === null) return null;
  const said = <K extends keyof OwnCrop>(key: K): OwnCrop[K] | null =>
    owns.find((one) => one[key] !== null)?.[key] ?? null;
  return {
    id,
    name: said('name') ?? table?.name ?? id,
    family: said('family') ?? table?.family ?? null,
    unit: said('unit') ?? table?.saleUnit ?? 'kg',
    reference: table,
    own: owns[0] ?? null,
    ...figuresOf(owns, table, farm),
  };
}

type Figures = Omit<PlannedCrop, 'id' | 'name' | 'family' | 'unit' | 'reference' | 'own'>;
type OwnNumber = { [K in keyof OwnCrop]: OwnCrop[K] extends number | null ? K : never }[keyof OwnCrop];

function figuresOf(owns: readonly OwnCrop[], table: Crop | null, farm: Pick<Farm, 'about'>): Figures {
  const ofOwn = (key: OwnNumber, column: string): Known | null => {
    const crop = owns.find((one) => one[key] !== null);
    const value = crop?.[key] ?? null;
    return crop === undefined || value === null
      ? null
      : { value, origin: 'own', where: `crops.csv, ${crop.id}, ${column}`, source: null, howKnown: 'own' };
  };
  const ofTable = (column: string, value: number | null | undefined): Known | null =>
    table === null || value == null ? null : tableFigure(table, column, value);
  const { conventions } = farm.about;
  const hasOwnYield = owns.some(
    (one) => one.yieldGrossTHa !== null || one.yieldMarketableTHa !== null || one.yieldPackedTHa !== null,
  );
  return {
    unitKg: ofOwn('unitKg', 'unit_kg') ?? ofTable('unit_kg', table?.unitKg),
    // A farm that gives its yield one way has said it: the reference's marketable figure then stands beside nothing.
    yieldMarketableTHa:
      ofOwn('yieldMarketableTHa', 'yield_marketable_t_ha') ??
      (hasOwnYield ? null : ofTable('yield_typ_t_ha', table?.yieldTypTHa)),
    yieldLowTHa: ofTable('yield_low_t_ha', table?.yieldLowTHa),
    yieldHighTHa: ofTable('yield_high_t_ha', table?.yieldHighTHa),
    yieldGrossTHa: ofOwn('yieldGrossTHa', 'yield_gross_t_ha'),
    yieldPackedTHa: ofOwn('yieldPackedTHa', 'yield_packed_t_ha'),
    gradingLossShare:
      ofOwn('gradingLossShare', 'grading_loss_share') ?? convention('grading_loss_share', conventions.gradingLossShare),
    packingLossShare:
      ofOwn('packingLossShare', 'packing_loss_share') ?? convention('packing_loss_share', conventions.packingLossShare),
    storeLossTotalShare: ofOwn('storeLossTotalShare', 'store_loss_total_share'),
    bedCentresM: ofOwn('bedCentresM', 'bed_centres_m'),
    rowsPerBed: ofOwn('rowsPerBed', 'rows_per_bed'),
    plantsPerRowM: ofOwn('plantsPerRowM', 'plants_per_row_m'),
    // The table's emergence is germination and field loss in one; so is its figure, and a field factor beside it would count the loss twice.
    germinationShare:
      ofOwn('germinationShare', 'germination_share') ??
      ofTable('emergence_pct', table === null ? null : table.emergencePct / 100),
    fieldFactorShare: ofOwn('fieldFactorShare', 'field_factor_share'),
    thousandSeedG: ofOwn('thousandSeedG', 'thousand_seed_g') ?? ofTable('tsw_g', table?.tswG),
    seedMarginShare:
      ofOwn('seedMarginShare', 'seed_margin_share') ?? convention('seed_margin_share', conventions.seedMarginShare),
    packSeeds: ofOwn('packSeeds', 'pack_seeds'),
    hoursPerHa: ofOwn('hoursPerHa', 'hours_per_ha'),
  };
}

function convention(name: string, value: number | null): Known | null {
  return value === null
    ? null
    : { value, origin: 'convention', where: `farm.json, ${name}`, source: null, howKnown: 'common practice' };
}

const keptFigures = new Map<string, Known>();

/** A figure of the crops table; kept, for asking a cell how it is known costs a search. */
function tableFigure(table: Crop, column: string, value: number): Known {
  const key = `${table.id}/${column}`;
  const known = keptFigures.get(key);
  if (known !== undefined) return known;
  const cell = referenceCell('crops', table.id, column);
  const source = cell.sources.map((one) => one.id ?? one.citation).join(';');
  const figure: Known = {
    value,
    origin: 'reference',
    where: `crops, ${table.id}, ${column}`,
    source: source === '' ? null : source,
    howKnown: cell.howKnown,
  };
  keptFigures.set(key, figure);
  return figure;
}
