/** Tables of stands, of the rotation that proposes them, and of own rests and crops. */
import type { CourseId, CropId, Day, MonthDay, PlotId, StandId, SuccessionId } from '@leywright/measures';
import {
  type Course,
  type CoursePlacement,
  type OwnCrop,
  type OwnRest,
  type StandEnd,
  type StandKind,
  standEnds,
  standKinds,
} from '../farm/stand.ts';
import { may, must, orElse, type Table } from '../table/column.ts';
import { day, monthDay } from '../table/day-kinds.ts';
import { family, nameOf, namesOf } from '../table/name-kinds.ts';
import { id, number, oneOf, text, wholeNumber, yesNo } from '../table/plain-kinds.ts';
import { type SpanWish, spanColumn } from '../table/span-columns.ts';
import { lengths, masses, shares, yields } from '../table/unit-kinds.ts';
import { named, type Open } from './land-tables.ts';

export interface StandRow {
  readonly id: StandId | null;
  readonly plot: PlotId;
  readonly span: SpanWish;
  readonly what: string;
  readonly kind: StandKind | null;
  readonly variety: string | null;
  readonly state: 'pencil' | 'agreed' | null;
  readonly sownOn: Day | null;
  readonly plantedOn: Day | null;
  readonly from: Day | null;
  readonly to: Day;
  readonly plannedFrom: Day | null;
  readonly plannedTo: Day | null;
  readonly undersownIn: StandId | null;
  readonly course: CourseId | null;
  readonly courseYear: number | null;
  readonly establishedShare: number | null;
  readonly endedBy: StandEnd | null;
  readonly reason: string | null;
  readonly yieldTHa: number | null;
  readonly succession: SuccessionId | null;
}

const standColumns: Table<StandRow>['columns'] = {
  id: may(
    'id',
    id<StandId>(),
    'unique in history.csv and agreed.csv together; made from plot, year and plant when left out',
    { alsoCalled: ['stand'] },
  ),
  plot: must('plot', nameOf<PlotId>('plot'), 'where'),
  span: spanColumn(
    'where on the plot; all of it when left out, or its host’s ground when undersown. `share` alone is laid left to right beside what stands there on the same days',
  ),
  what: must('what', nameOf<string>('plant'), 'crop, cover or mix'),
  kind: may(
    'kind',
    oneOf(standKinds),
    'told from the table the plant stands in when left out; `ley` for a mix that stays for years',
  ),
  variety: may('variety', text, 'variety'),
  state: may('state', oneOf(['pencil', 'agreed'] as const), 'only in agreed.csv; agreed when left out'),
  sownOn: may('sown_on', day, 'day sown, in the field or in modules', { alsoCalled: ['sown'] }),
  plantedOn: may('planted_on', day, 'day planted out', { alsoCalled: ['planted'] }),
  from: may('from', day, 'first day on the ground; the day planted, else sown, when left out'),
  to: must('to', day, 'first day the ground is free again; the last day on it where farm.json says `last_day_counts`'),
  plannedFrom: may('planned_from', day, 'written by us: first day as planned, where a record moved it'),
  plannedTo: may('planned_to', day, 'written by us: first free day as planned'),
  undersownIn: may('undersown_in', id<StandId>(), 'id of the stand it is sown into'),
  course: may('course', nameOf<CourseId>('course'), 'course of the rotation'),
  courseYear: may('course_year', wholeNumber('year', { least: 1900, most: 2200 }), 'year of that course'),
  establishedShare: may('established', shares(), 'how much of it took'),
  endedBy: may('ended_by', oneOf(standEnds), 'how it ended'),
  reason: may('reason', text, 'why a broken rule was accepted'),
  yieldTHa: may('yield', yields(), 'own marketable yield of this stand'),
  succession: may('succession', id<SuccessionId>(), 'stands of one sowing plan'),
};

export const historyTable: Table<StandRow> = {
  file: 'history.csv',
  about: 'What has stood on the ground: recorded stands.',
  key: [],
  columns: standColumns,
};
export const agreedTable: Table<StandRow> = {
  file: 'agreed.csv',
  about: 'What is agreed, or still in pencil, beside what the rotation proposes.',
  key: [],
  columns: standColumns,
};

export const courseTable: Table<Open<Omit<Course, 'stands'>, 'name'>> = {
  file: 'courses.csv',
  about: 'Courses in the order of the rotation. Its first year and state stand in farm.json.',
  key: ['id'],
  columns: {
    id: must('id', id<CourseId>(), 'unique', { alsoCalled: ['course'] }),
    name: may('name', text, named),
    hoursPerHa: may(
      'hours_per_ha',
      number('h/ha', { least: 0 }),
      'field hours, when the farm counts by course instead of by job',
    ),
    hoursFollow: orElse(
      'hours_follow',
      oneOf(['need', 'ground'] as const),
      'ground',
      'whether those hours grow with the households fed or with the ground; ground when left out',
    ),
  },
};

export interface RotationRow {
  readonly course: CourseId;
  readonly key: string;
  readonly what: string;
  readonly kind: StandKind | null;
  readonly variety: string | null;
  readonly span: SpanWish;
  readonly sow: MonthDay | null;
  readonly plant: MonthDay | null;
  readonly startYearOffset: number;
  readonly end: MonthDay;
  readonly endYearOffset: number | null;
  readonly undersownIn: string | null;
}

export const rotationTable: Table<RotationRow> = {
  file: 'rotation.csv',
  about: 'What each course puts on its plot, by months and days. One row a stand.',
  key: ['course', 'key'],
  columns: {
    course: must('course', nameOf<CourseId>('course'), 'course it belongs to'),
    key: must('key', id<string>(), 'unique in its course'),
    what: must('what', nameOf<string>('plant'), 'crop, cover or mix'),
    kind: may(
      'kind',
      oneOf(standKinds),
      'told from the table the plant stands in when left out; `ley` for a mix that stays for years',
    ),
    variety: may('variety', text, 'variety'),
    span: spanColumn(
      'where on the plot; all of it when left out. `share` alone is laid left to right',
      'edges-and-share',
    ),
    sow: may('sow', monthDay, 'day sown, in the field or in modules'),
    plant: may('plant', monthDay, 'day planted out'),
    startYearOffset: orElse(
      'start_year_offset',
      wholeNumber('years', { least: -2, most: 5 }),
      0,
      'years from the course’s year to the day it takes its ground; 0 when left out',
    ),
    end: must('end', monthDay, 'first day the ground is free again'),
    endYearOffset: may(
      'end_year_offset',
      wholeNumber('years', { least: -2, most: 10 }),
      'years from the course’s year to its end; the first such day after its start when left out',
    ),
    undersownIn: may('undersown_in', id<string>(), 'key of the stand of the same course it is sown into'),
  },
};

export const placementTable: Table<CoursePlacement> = {
  file: 'courses-by-year.csv',
  about:
    'Courses of single plots and years that differ from the order of the rotation: a rotation as planned, plot by plot.',
  key: ['plot', 'year'],
  columns: {
    plot: must('plot', nameOf<PlotId>('plot'), 'where'),
    year: must('year', wholeNumber('year', { least: 1900, most: 2200 }), 'course year'),
    course: may('course', nameOf<CourseId>('course'), 'its course; outside the rotation in that year when left out'),
    state: orElse('state', oneOf(['pencil', 'agreed'] as const), 'agreed', 'agreed when left out'),
    reason: may('reason', text, 'why a broken rule was accepted'),
  },
};

export const restTable: Table<Open<OwnRest, 'name'>> = {
  file: 'rests.csv',
  about: 'Own rests: years between two plantings of what they name.',
  key: ['id'],
  columns: {
    id: must('id', id<string>(), 'unique', { alsoCalled: ['rest'] }),
    name: may('name', text, named),
    family: may('family', family, 'botanical family it holds for'),
    hosts: orElse<readonly string[]>('hosts', namesOf<string>('plant'), [], 'crops and covers it holds for'),
    years: must('years', number('years', { least: 0, most: 50 }), '4 = back every fourth year at the earliest'),
    force: orElse('force', oneOf(['hard', 'warn', 'info'] as const), 'hard', 'hard when left out'),
    countsCovers: orElse('counts_covers', yesNo, true, 'whether covers count; yes when left out'),
    countsUndersown: orElse('counts_undersown', yesNo, true, 'whether undersown plants count; yes when left out'),
  },
};

const aboveNought = { least: 0, above: true };

export const cropTable: Table<OwnCrop> = {
  file: 'crops.csv',
  about: 'Own crops, and own figures over the table of crops. An empty cell leaves the table’s figure standing.',
  key: ['id'],
  columns: {
    id: must('id', id<CropId>(), 'of the table of crops, or one of your own', { alsoCalled: ['crop'] }),
    basedOn: may('based_on', nameOf<CropId>('crop'), 'crop whose figures hold where yours are left out'),
    name: may('name', text, 'as people say it'),
    family: may('family', family, 'botanical family'),
    variety: may('variety', text, 'variety'),
    unit: may('unit', oneOf(['kg', 'head', 'bunch'] as const), 'how it is sold'),
    unitKg: may('unit', masses(aboveNought), 'mass of one head or bunch'),
    yieldGrossTHa: may('yield_gross', yields(), 'as lifted, before grading; one of the three yields'),
    yieldMarketableTHa: may('yield_marketable', yields(), 'after grading'),
    yieldPackedTHa: may('yield_packed', yields(), 'net, as it leaves in a box'),
    gradingLossShare: may('grading_loss', shares(), 'of what is lifted'),
    packingLossShare: may('packing_loss', shares(), 'of what is packed'),
    storeLossTotalShare: may('store_loss_total', shares(), 'over the whole time in store'),
    bedCentresM: may('bed_centres', lengths(aboveNought), 'from one bed’s centre to the next'),
    rowsPerBed: may('rows_per_bed', number('rows', aboveNought), 'rows on a bed'),
    plantsPerRowM: may('plants_per_row_m', number('plants/m', aboveNought), 'plants meant to stand in a metre of row'),
    germinationShare: may('germination', shares(), 'germination in the test'),
    fieldFactorShare: may('field_factor', shares(), 'of what germinates, what comes up in the field'),
    thousandSeedG: may('thousand_seed_g', number('g', aboveNought), 'mass of a thousand seeds'),
    seedMarginShare: may('seed_margin', shares({ least: 0, most: 10 }), 'seed bought over the need'),
    packSeeds: may('pack_seeds', number('seeds', aboveNought), 'seeds in a pack'),
    hoursPerHa: may('hours_per_ha', number('h/ha', { least: 0 }), 'field hours in a year'),
  },
};
