/** Covers and leys, and what keeps how long in which store. The meaning of each column stands in reference/README.md. */
import type { Columns, RowOf } from './columns.ts';
import { waysOfKnowing } from './ways-of-knowing.ts';

export const coverColumns = {
  words: ['id', 'name', 'species', 'family', 'life', 'main_use', 'termination', 'incompatibilities'],
  maybeWords: ['second_use', 'undersow_note'],
  amounts: [
    'seed_rate_low_kg_ha',
    'seed_rate_high_kg_ha',
    'main_weeks',
    'dm_low_t_ha',
    'dm_high_t_ha',
    'n_low_kg_ha',
    'n_high_kg_ha',
    'cn_young',
    'cn_mature',
    'frost_kill_c',
    'root_depth_cm',
    'base_temp_c',
    'tt_full_cover_cd',
    'weeks_before_next_low',
    'weeks_before_next_high',
  ],
  maybeAmounts: [
    'seed_rate_mix_low_kg_ha',
    'seed_rate_mix_high_kg_ha',
    'tsw_g',
    'second_weeks',
    'dm2_low_t_ha',
    'dm2_high_t_ha',
    'n2_low_kg_ha',
    'n2_high_kg_ha',
    'fixed_share_low',
    'fixed_share_high',
    'undersow_low_weeks',
    'undersow_high_weeks',
    'emerg_tt0_cd',
  ],
  dates: ['sow_from', 'sow_to'],
  maybeDates: ['latest_winter_cover_sow'],
  lists: ['undersow_crop_ids', 'source', 'verified_cells'],
  yesNo: ['n_fixing', 'undersow', 'insect_flowers'],
  oneOf: {
    type: ['legume', 'grass', 'broadleaf', 'brassica', 'mix'],
    clubroot_host: ['no', 'yes', 'resistant'],
    how_known: waysOfKnowing,
  },
} as const satisfies Columns;

/** A part of a seed mixture by share of seed mass. */
export interface MixPart {
  readonly coverId: string;
  readonly share: number;
}

/** Weeks after planting (drilled: after sowing) in which a cover can be sown into one crop. */
export interface UndersowWeeks {
  readonly cropId: string;
  readonly lowWeeks: number;
  readonly highWeeks: number;
}

export type Cover = RowOf<typeof coverColumns> & {
  readonly mixOf: readonly MixPart[];
  readonly undersowWeeksByCrop: readonly UndersowWeeks[];
};

export const storageColumns = {
  words: ['id'],
  maybeWords: ['caution'],
  amounts: [
    'temp_low_c',
    'temp_high_c',
    'rh_low_pct',
    'rh_high_pct',
    'life_low_weeks',
    'life_high_weeks',
    'loss_low_pct_month',
    'loss_high_pct_month',
  ],
  maybeAmounts: [
    'life_source_low_weeks',
    'life_source_high_weeks',
    'freezing_point_c',
    'cure_low_days',
    'cure_high_days',
    'cure_temp_low_c',
    'cure_temp_high_c',
  ],
  lists: ['crop_ids', 'source'],
  yesNo: ['chilling_sensitive'],
  oneOf: {
    store: ['cold', 'ambient_frost_free', 'clamp', 'cool', 'field', 'ambient_warm'],
    ethylene_production: ['very_low', 'low', 'high'],
    ethylene_sensitivity: ['med', 'high', 'low'],
    how_known: waysOfKnowing,
    how_known_loss: waysOfKnowing,
  },
} as const satisfies Columns;

export type StorageRow = RowOf<typeof storageColumns>;
