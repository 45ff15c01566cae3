/** What the ground and the hands ask for: rests between hosts, hours, weeding passes, hedges and banks. The meaning of each column stands in reference/README.md. */
import type { Columns, RowOf } from './columns.ts';
import { waysOfKnowing } from './ways-of-knowing.ts';

export const intervalColumns = {
  words: ['id', 'organism', 'kind', 'family', 'notes'],
  amounts: ['return_years_min'],
  maybeAmounts: [
    'return_years_infested_low',
    'return_years_infested_high',
    'persistence_low_years',
    'persistence_high_years',
    'annual_decline_low_pct',
    'annual_decline_high_pct',
  ],
  lists: ['host_crop_ids', 'host_cover_ids', 'counts_as', 'source', 'verified_cells'],
  oneOf: {
    rule_scope: ['family', 'organism', 'sequence', 'distance'],
    force_clean: ['hard', 'warn', 'info'],
    force_infested: ['hard', 'warn', 'info'],
    severity: ['med', 'low', 'high'],
    how_known: waysOfKnowing,
  },
} as const satisfies Columns;

export type RestInterval = RowOf<typeof intervalColumns>;

export const labourColumns = {
  words: ['id', 'operation', 'unit'],
  maybeWords: ['crew', 'notes'],
  amounts: ['person_h_low', 'person_h_typ', 'person_h_high', 'tractor_h_low', 'tractor_h_high'],
  lists: ['crop_ids', 'source', 'verified_cells'],
  oneOf: {
    group: [
      'soil',
      'establish',
      'propagate',
      'protect',
      'weed',
      'irrigate',
      'harvest',
      'pack',
      'deliver',
      'office',
      'whole',
      'habitat',
      'tunnel',
    ],
    how_known: waysOfKnowing,
  },
} as const satisfies Columns;

export type LabourRate = RowOf<typeof labourColumns>;

export const weedColumns = {
  words: ['id', 'operation', 'crop_stage'],
  maybeWords: ['notes'],
  amounts: [
    'offset_low_days',
    'offset_high_days',
    'passes_low',
    'passes_high',
    'machine_low_h_ha',
    'machine_high_h_ha',
    'hand_low_h_ha',
    'hand_high_h_ha',
  ],
  lists: ['crop_ids', 'source', 'verified_cells'],
  oneOf: {
    timing_ref: ['sowing', 'emergence', 'planting'],
    how_known: waysOfKnowing,
  },
} as const satisfies Columns;

export type WeedPass = RowOf<typeof weedColumns>;

export const habitatColumns = {
  words: ['id', 'name', 'element', 'manage_action', 'country', 'function'],
  maybeWords: ['legal_basis', 'notes'],
  amounts: ['manage_every_years'],
  maybeAmounts: [
    'width_low_m',
    'width_high_m',
    'height_low_m',
    'height_high_m',
    'seed_rate_kg_ha',
    'reach_m',
    'spacing_m',
  ],
  dates: ['manage_from', 'manage_to'],
  maybeDates: [
    'establish_from',
    'establish_to',
    'no_cut_from',
    'no_cut_to',
    'lay_from',
    'lay_to',
    'nest_check_from',
    'nest_check_to',
  ],
  lists: ['species_mix', 'food_months', 'source', 'verified_cells'],
  oneOf: {
    how_known: waysOfKnowing,
  },
} as const satisfies Columns;

export type Habitat = RowOf<typeof habitatColumns>;
