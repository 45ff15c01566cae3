/** The crops table: one row a crop as it is grown and sold. The meaning of each column stands in reference/README.md. */
import type { Columns, RowOf } from './columns.ts';
import { waysOfKnowing } from './ways-of-knowing.ts';

export const cropColumns = {
  words: ['id', 'name', 'species', 'family', 'marketable_note', 'fao56_key'],
  maybeWords: ['emerg_proxy'],
  amounts: [
    'in_row_low_cm', 'in_row_high_cm', 'row_low_cm', 'row_high_cm', 'stations_per_ha_typ', 'plants_per_station',
    'emergence_pct', 'seeds_per_cell', 'dtm_low_days', 'dtm_high_days', 'harvest_year_offset', 'standing_low_weeks',
    'standing_high_weeks', 'yield_low_t_ha', 'yield_typ_t_ha', 'yield_high_t_ha', 'unit_kg', 'share_cut_typ',
    'mass_per_plant_typ_g', 'mass_per_plant_normal_low_g', 'mass_per_plant_normal_high_g', 'dm_pct', 'n_low_kg_t',
    'n_high_kg_t', 'p2o5_kg_t', 'k2o_kg_t', 'residue_n_low_kg_ha', 'residue_n_high_kg_ha', 'residue_fresh_typ_t_ha',
    'harvest_index_fresh', 'n_product_typ_kg_ha', 'n_uptake_typ_kg_ha', 'root_water_low_m', 'root_water_high_m',
    'depletion_fraction', 'root_n_cm', 'kc_ini', 'kc_mid', 'kc_end', 'kcb_ini', 'kcb_mid', 'kcb_end', 'height_m',
    'harvest_low_kg_h', 'harvest_high_kg_h', 'weed_free_low_weeks', 'weed_free_high_weeks', 'frost_damage_c',
  ],
  maybeAmounts: [
    'tsw_g', 'seeds_per_g', 'planting_unit_g', 'germ_min_pct', 'emerg_base_c', 'emerg_tt_cd', 'raise_low_weeks',
    'raise_high_weeks', 'module_cells', 'module_ml', 'tt_base_c', 'tt_low_cd', 'tt_high_cd', 'tt_derived_base_c',
    'tt_derived_cd', 'units_per_station_typ', 'n_ref_kg_t', 'stage_ini_days', 'stage_dev_days', 'stage_mid_days',
    'stage_late_days', 'field_emerg_tt0_cd',
  ],
  dates: ['harvest_from', 'harvest_to'],
  maybeDates: ['sow_out_from', 'sow_out_to', 'sow_cover_from', 'sow_cover_to', 'plant_from', 'plant_to'],
  lists: ['site_needs', 'storage_ids', 'verified_cells', 'source'],
  yesNo: ['fao56_proxy'],
  oneOf: {
    rotation_group: ['potato', 'brassica', 'allium', 'umbellifer', 'chenopod', 'cucurbit', 'sweetcorn', 'tunnel-solanum', 'legume', 'leaf', 'perennial'],
    establishment: ['tuber', 'module', 'drill', 'set', 'bare-root', 'crown'],
    dtm_from: ['plant', 'sow'],
    sale_unit: ['kg', 'head', 'bunch'],
    demand_class: ['high', 'med', 'low'],
    weed_sensitivity: ['low', 'med', 'high'],
    how_known: waysOfKnowing,
  },
  maybeOneOf: {
    tt_derived_use: ['scale', 'window'],
  },
} as const satisfies Columns;

export type Crop = RowOf<typeof cropColumns>;
