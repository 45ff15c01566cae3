/** Figures of demand, dated rules by jurisdiction, and the sources all tables cite. The meaning of each column stands in reference/README.md. */
import type { Columns, RowOf } from './columns.ts';
import { waysOfKnowing } from './ways-of-knowing.ts';

export const demandColumns = {
  words: ['id', 'item', 'unit'],
  maybeWords: ['scope', 'notes'],
  amounts: ['qty_typ'],
  maybeAmounts: ['qty_low', 'qty_high', 'weeks_share', 'year'],
  lists: ['crop_ids', 'source'],
  oneOf: {
    kind: ['stat', 'household', 'box', 'case'],
    season: ['year', 'week', 'spring', 'summer', 'autumn', 'winter'],
    how_known: waysOfKnowing,
  },
  maybeOneOf: {
    box_size: ['per person', 'medium', 'large', 'small', 'scheme'],
  },
} as const satisfies Columns;

export type DemandFigure = RowOf<typeof demandColumns>;

export const ruleColumns = {
  words: ['id', 'code', 'jurisdiction', 'rule', 'data_the_tool_must_hold', 'source'],
  maybeWords: ['number', 'unit', 'valid_from', 'valid_to', 'how_note'],
  maybeAmounts: ['value', 'value_high'],
  maybeDates: ['month_day_from', 'month_day_to'],
  lists: ['applies_to'],
  oneOf: {
    how_known: waysOfKnowing,
  },
} as const satisfies Columns;

export type Rule = RowOf<typeof ruleColumns>;

export const sourceColumns = {
  words: ['id', 'kind', 'citation', 'where_read'],
  oneOf: {
    how_known: waysOfKnowing,
  },
} as const satisfies Columns;

export type Source = RowOf<typeof sourceColumns>;
