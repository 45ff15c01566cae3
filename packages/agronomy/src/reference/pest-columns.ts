/** Pests and diseases with their risk windows, and the published sums and rules that predict them. The meaning of each column stands in reference/README.md. */
import type { Columns, RowOf } from './columns.ts';
import { waysOfKnowing } from './ways-of-knowing.ts';

export const pestColumns = {
  words: ['id', 'name', 'latin', 'monitor', 'natural_enemies', 'management'],
  maybeWords: ['threshold_unit', 'notes'],
  maybeAmounts: ['threshold_value', 'net_mesh_mm'],
  dates: ['risk_from', 'risk_to'],
  maybeDates: ['risk2_from', 'risk2_to', 'net_from', 'net_to'],
  lists: ['crop_ids', 'flower_species', 'source', 'verified_cells'],
  oneOf: {
    kind: ['insect', 'bird', 'mollusc', 'disease', 'mite', 'mammal'],
    how_known: waysOfKnowing,
  },
} as const satisfies Columns;

export type Pest = RowOf<typeof pestColumns>;

export const pestModelColumns = {
  words: ['id', 'pest_id', 'event'],
  maybeWords: ['temperature', 'biofix', 'notes'],
  maybeAmounts: [
    'base_c',
    'upper_c',
    'sum_low_cd',
    'sum_high_cd',
    'days_consecutive',
    'min_temp_c',
    'rh_min_pct',
    'rh_hours',
  ],
  lists: ['source'],
  oneOf: {
    rule_type: ['degree_day', 'threshold_temp', 'humidity_rule'],
    how_known: waysOfKnowing,
  },
} as const satisfies Columns;

export type PestModel = RowOf<typeof pestModelColumns>;
