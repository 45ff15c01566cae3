/** Tables of the land: fields, plots, parts, features, marks, soil samples. */
import type { CourseId, Day, FieldId, PartId, PlotId } from '@leywright/measures';
import {
  type Feature,
  type Field,
  featureKinds,
  type OrganismMark,
  type Plot,
  plotKinds,
  type SoilSample,
  type Span,
} from '../farm/land.ts';
import { may, must, orElse, type Table } from '../table/column.ts';
import { day } from '../table/day-kinds.ts';
import { nameOf } from '../table/name-kinds.ts';
import { id, number, oneOf, text, wholeNumber, yesNo } from '../table/plain-kinds.ts';
import { edgesColumn, type SpanWish, spanColumn } from '../table/span-columns.ts';
import { areas, lengths, shares } from '../table/unit-kinds.ts';

/** A row whose `K` may be left out in the file. */
export type Open<T, K extends keyof T> = Omit<T, K> & { readonly [P in K]: T[P] | null };
/** A row whose span is still as people gave it. */
export type Wished<T> = Omit<T, 'span'> & { readonly span: SpanWish };

export const named = 'as people say it; the id when left out';

export const fieldTable: Table<Open<Field, 'name'>> = {
  file: 'fields.csv',
  about: 'Fields: what the law measures. One field may hold several plots.',
  key: ['id'],
  columns: {
    id: must('id', id<FieldId>(), 'unique', { alsoCalled: ['field'] }),
    name: may('name', text, named),
    areaM2: may('area', areas(), 'whole field; decides about the two-hectare limit of the hedge buffer'),
    hedgesOver5Years: may('hedges_over_5_years', yesNo, 'whether its hedges are five years old or more'),
  },
};

export type PlotRow = Omit<Open<Plot, 'name' | 'letter' | 'grossM2' | 'measuredBy'>, 'ring'>;

export const plotTable: Table<PlotRow> = {
  file: 'plots.csv',
  about: 'Plots: what moves along the rotation. The one file that must be there.',
  key: ['id'],
  columns: {
    id: must('id', id<PlotId>(), 'unique; two plots may share a name, never an id', { alsoCalled: ['plot'] }),
    letter: may('letter', text, 'shown large in pictures; taken from the id when left out'),
    name: may('name', text, named),
    field: may('field', nameOf<FieldId>('field'), 'field it lies in'),
    kind: orElse(
      'kind',
      oneOf(plotKinds),
      'rotation',
      'rotation when left out; tunnel and permanent ground stand outside the rotation',
    ),
    grossM2: may(
      'gross',
      areas({ least: 0, above: true }),
      'to the boundary, hedge centre included; taken from ground.geojson when left out',
    ),
    measuredBy: may('measured_by', oneOf(['typed', 'geometry'] as const), 'written by us; where the area comes from'),
    hedgeM: orElse('hedge', lengths(), 0, 'boundary along a hedge’s centre; none when left out'),
    bankM2: orElse('bank', areas(), 0, 'beetle bank inside the plot; none when left out'),
    headlandShare: may(
      'headland',
      shares(),
      'headlands and bed ends, share of what is left after buffer and bank; the farm’s own when left out',
    ),
    soil: may('soil', text, 'in words'),
    bedCentresM: may(
      'bed_centres',
      lengths({ least: 0, above: true }),
      'from one bed’s centre to the next, wheelings in it',
    ),
    bedCount: may(
      'bed_count',
      wholeNumber('beds', { least: 1, most: 5000 }),
      'numbered beds across the plot; needed where a row names beds',
    ),
    courseAtStart: may(
      'course_at_start',
      nameOf<CourseId>('course'),
      'course it is on in the rotation’s first year; outside the rotation when left out',
    ),
    from: may('from', day, 'first day it is part of the farm'),
    to: may('to', day, 'first day it is no longer'),
    status: orElse(
      'status',
      oneOf(['organic', 'in-conversion', 'unknown'] as const),
      'unknown',
      'unknown when left out',
    ),
    statusSince: may('status_since', day, 'since when'),
  },
};

export interface PartRow {
  readonly id: PartId;
  readonly plot: PlotId;
  readonly span: SpanWish;
  readonly from: Day;
  readonly to: Day | null;
  readonly why: string | null;
  readonly parentPlot: PlotId | null;
  readonly parentSpan: Span;
  readonly parentShare: number;
}

export const partTable: Table<PartRow> = {
  file: 'parts.csv',
  about:
    'Parts of plots that were divided, joined or whose boundary moved. One row for each parent of a part; the other cells are repeated.',
  key: [],
  columns: {
    id: must('id', id<PartId>(), 'of the part', { alsoCalled: ['part'] }),
    plot: must('plot', nameOf<PlotId>('plot'), 'plot it belongs to'),
    span: spanColumn('where on the plot; all of it when left out', 'edges-and-beds'),
    from: must('from', day, 'first day it is cut so'),
    to: may('to', day, 'first day it is no longer'),
    why: may('why', text, 'in words'),
    parentPlot: may('parent_plot', nameOf<PlotId>('plot'), 'plot its ground came from'),
    parentSpan: edgesColumn('parent', 'where on that plot; all of it when left out'),
    parentShare: orElse(
      'parent',
      [{ ending: 'share', ...number('share of 1', { least: 0, most: 1 }) }],
      1,
      'share of this part that lies on that parent; 1 when left out',
    ),
  },
};

export const featureTable: Table<Open<Omit<Feature, 'line'>, 'name'>> = {
  file: 'features.csv',
  about:
    'Hedges, banks, margins and what else serves the natural enemies. Lines stand in ground.geojson under the same id.',
  key: ['id'],
  columns: {
    id: must('id', id<string>(), 'unique', { alsoCalled: ['feature'] }),
    kind: must('kind', oneOf(featureKinds), 'what it is'),
    name: may('name', text, named),
    lengthM: may('length', lengths(), 'along it'),
    areaM2: may('area', areas(), 'ground it takes'),
  },
};

export const markTable: Table<Wished<OrganismMark>> = {
  file: 'marks.csv',
  about: 'Organisms recorded on ground: from that day their longer rest applies there.',
  key: [],
  columns: {
    organism: must('organism', nameOf<string>('organism'), 'as in the rests table'),
    plot: must('plot', nameOf<PlotId>('plot'), 'where'),
    span: spanColumn('where on the plot; all of it when left out', 'edges-and-beds'),
    foundOn: must('found_on', day, 'day found'),
    clearedOn: may('cleared_on', day, 'day a test found none'),
    note: may('note', text, 'in words'),
  },
};

export const soilTable: Table<SoilSample> = {
  file: 'soil.csv',
  about: 'Soil samples by method: figures of two methods are never mixed in one trend.',
  key: ['plot', 'takenOn', 'method'],
  columns: {
    plot: must('plot', nameOf<PlotId>('plot'), 'where'),
    takenOn: must('taken_on', day, 'day taken'),
    method: must('method', text, 'extraction, such as Olsen'),
    ph: may('ph', number('pH', { least: 2, most: 11 }), 'in water unless the method says otherwise'),
    pMgL: may('p_mg_l', number('mg/l', { least: 0 }), 'phosphorus'),
    kMgL: may('k_mg_l', number('mg/l', { least: 0 }), 'potassium'),
    mgMgL: may('mg_mg_l', number('mg/l', { least: 0 }), 'magnesium'),
    organicMatterPct: may('organic_matter_pct', number('%', { least: 0, most: 100 }), 'organic matter'),
  },
};
