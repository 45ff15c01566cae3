/** Figures as people here say them. The ending of a figure's name says what it counts, so a template need not. */
import {
  addDays,
  area,
  asDay,
  asIsoWeek,
  type Day,
  mass,
  mondayOf,
  monthOf,
  readDay,
  readIsoWeek,
  readMonthDay,
  weekdayOf,
  weekOf,
  yearOf,
} from '@leywright/measures';
import type { Names, Voice } from '../voice.ts';
import { plantInSentence } from './plants.ts';

type WriteNumber = (value: number, voice: Voice) => string;

/** Longest ending first: `gapYears` is years, `year` is a year. */
const byEnding: readonly (readonly [ending: string, write: WriteNumber])[] = [
  ['KgHa', (kgHa, voice) => kgPerArea(kgHa, voice)],
  ['THa', (tHa, voice) => kgPerArea(tHa * 1000, voice)],
  ['M2', (areaM2, voice) => writeArea(areaM2, voice)],
  ['Kg', (kg, voice) => writeMass(kg, voice)],
  ['Share', (share) => percent(share)],
  ['Km', (km) => `${number(km, km < 10 ? 1 : 0)} km`],
  ['Cd', (degreeDays) => `${number(degreeDays)} °C days`],
  ['Minor', (minor) => number(minor / 100, 2)],
  ['Years', (count) => counted(count, 'year', 'years')],
  ['Weeks', (count) => counted(count, 'week', 'weeks')],
  ['Days', (count) => counted(count, 'day', 'days')],
  ['Winters', (count) => counted(count, 'winter', 'winters')],
  ['Households', (count) => counted(Math.floor(count + 1e-9), 'household', 'households')],
  ['Boxes', (count) => counted(Math.round(count), 'box', 'boxes')],
  ['Items', (count) => counted(count, 'item', 'items')],
  ['Records', (count) => counted(count, 'record', 'records')],
  ['Entries', (count) => counted(count, 'entry', 'entries')],
  ['Beds', (count) => counted(count, 'bed', 'beds')],
  ['Minutes', (count) => counted(Math.round(count), 'minute', 'minutes')],
  ['H', (hours) => counted(hours < 10 ? round(hours, 1) : Math.round(hours), 'hour', 'hours')],
  ['M', (metres) => `${number(metres, metres < 10 ? 1 : 0)} m`],
  ['C', (celsius) => `${number(celsius, 1)} °C`],
  ['Year', (year) => String(year)],
  ['year', (year) => String(year)],
  ['winter', (year) => String(year)],
];

const exactly: Readonly<Record<string, WriteNumber>> = {
  kg: (kg, voice) => writeMass(kg, voice),
  households: (count) => counted(Math.floor(count + 1e-9), 'household', 'households'),
  weeks: (count) => counted(count, 'week', 'weeks'),
  days: (count) => counted(count, 'day', 'days'),
  years: (count) => counted(count, 'year', 'years'),
  hours: (hours) => counted(hours < 10 ? round(hours, 1) : Math.round(hours), 'hour', 'hours'),
  items: (count) => counted(count, 'item', 'items'),
  boxes: (count) => counted(Math.round(count), 'box', 'boxes'),
};

const ways: Readonly<Record<string, (value: string | number | boolean, voice: Voice) => string>> = {
  number: (value) => (typeof value === 'number' ? number(value, Number.isInteger(value) ? 0 : 1) : String(value)),
  plain: (value) => String(value),
  // Places of one thing are numbered; people hear of it once.
  list: (value) =>
    [
      ...new Set(
        String(value)
          .split(';')
          .map((one) => one.replace(/-\d+$/, '').replaceAll('-', ' ')),
      ),
    ].join(', '),
  day: (value, voice) => writeDay(String(value), voice, { week: false }),
  start: (value, voice) => writeWeekStart(String(value), voice),
  month: (value) => monthName(String(value)),
};

/** Kinds of store of the storage table. */
const storeKinds: Readonly<Record<string, string>> = {
  cold: 'a cold store',
  cool: 'a cool store',
  ambient_frost_free: 'a frost-free shed',
  ambient_warm: 'a warm loft',
  clamp: 'a clamp',
  field: 'the field',
};

/** Which names a figure's own name looks among, besides all of them in turn. */
const nameLists: Readonly<Record<string, Exclude<keyof Names, 'common'>>> = {
  plot: 'plots',
  otherPlot: 'plots',
  crop: 'plants',
  cover: 'plants',
  what: 'plants',
  stand: 'stands',
  previous: 'stands',
  host: 'stands',
  other: 'stands',
  store: 'stores',
  by: 'people',
  person: 'people',
  organism: 'organisms',
  course: 'courses',
};

/** One figure in British English, in the farm's own measures. */
export function writeFigure(voice: Voice) {
  return (name: string, value: string | number | boolean, way: string | null): string => {
    const asked = way === null ? undefined : ways[way];
    if (asked !== undefined) return asked(value, voice);
    if (typeof value === 'number') return writeNumber(name, value, voice);
    return typeof value === 'boolean' ? (value ? 'yes' : 'no') : writeText(name, value, voice);
  };
}

function writeNumber(name: string, value: number, voice: Voice): string {
  const write = exactly[name] ?? byEnding.find(([ending]) => name.endsWith(ending))?.[1];
  return write === undefined ? number(value, Number.isInteger(value) ? 0 : 1) : write(value, voice);
}

function writeText(name: string, value: string, voice: Voice): string {
  if (readDay(value) !== null) return writeDay(value, voice, { week: true });
  if (readIsoWeek(value) !== null) return writeWeek(value, voice);
  if (readMonthDay(value) !== null) return `${Number(value.slice(3))} ${months[Number(value.slice(0, 2)) - 1]}`;
  if (name === 'kind') return storeKinds[value] ?? value;
  const list = nameLists[name];
  const known = (list === undefined ? null : (voice.names[list].get(value) ?? voice.names.plants.get(value))) ?? value;
  const plant = voice.names.common.get(known);
  return plant === undefined ? known : plantInSentence(plant, known);
}

/** Tue 8 June, week 23. With the year where it is not the year in view. */
export function writeDay(text: string, voice: Pick<Voice, 'year'>, say: { readonly week: boolean }): string {
  const day = asDay(text);
  const week = weekOf(day);
  return `${weekdayDayMonth(day, voice)}${say.week ? `, week ${Number(week.slice(6))}` : ''}`;
}

/** Week 23 (from Mon 7 June). A week's number never stands alone. */
export function writeWeek(text: string, voice: Pick<Voice, 'year'>): string {
  const week = asIsoWeek(text);
  return `week ${Number(week.slice(6))} (from ${weekdayDayMonth(mondayOf(week), voice)})`;
}

function writeWeekStart(text: string, voice: Pick<Voice, 'year'>): string {
  const week = readIsoWeek(text);
  return weekdayDayMonth(week === null ? asDay(text) : mondayOf(week), voice);
}

const weekdays = ['Mon', 'Tue', 'Wed', 'Thu', 'Fri', 'Sat', 'Sun'];
const months = [
  'January',
  'February',
  'March',
  'April',
  'May',
  'June',
  'July',
  'August',
  'September',
  'October',
  'November',
  'December',
];

function weekdayDayMonth(day: Day, voice: Pick<Voice, 'year'>): string {
  const year = yearOf(day) === voice.year ? '' : ` ${yearOf(day)}`;
  return `${weekdays[weekdayOf(day) - 1]} ${Number(day.slice(8))} ${months[monthOf(day) - 1]}${year}`;
}

/** The month of a day, or of a week's Thursday, by which the calendar counts a week. */
export function monthName(text: string): string {
  const week = readIsoWeek(text);
  const day = week === null ? asDay(text) : addDays(mondayOf(week), 3);
  return months[monthOf(day) - 1] ?? text;
}

const SMALL_M2 = 1000;
const M2_IN_SQUARE_YARD = 0.83612736;

/** 0.98 ha, 640 m²; 2.42 acres, 760 sq yd. */
export function writeArea(areaM2: number, voice: Pick<Voice, 'shows'>): string {
  const isSmall = Math.abs(areaM2) < SMALL_M2;
  if (voice.shows.area === 'acres') {
    return isSmall ? `${number(areaM2 / M2_IN_SQUARE_YARD)} sq yd` : acres(area.fromM2(areaM2, 'acre'));
  }
  return isSmall ? `${number(areaM2, areaM2 < 10 ? 1 : 0)} m²` : `${number(area.fromM2(areaM2, 'ha'), 2)} ha`;
}

function acres(count: number): string {
  const text = number(count, 2);
  return `${text} ${text === '1' ? 'acre' : 'acres'}`;
}

/** 24 kg, 1.28 t, 350 g; in pounds, with ounces below one. */
export function writeMass(kg: number, voice: Pick<Voice, 'shows'>): string {
  const size = Math.abs(kg);
  if (voice.shows.mass === 'lb') {
    const lb = mass.fromKg(kg, 'lb');
    return Math.abs(lb) < 1 && lb !== 0
      ? `${number(mass.fromKg(kg, 'oz'), 1)} oz`
      : `${number(lb, Math.abs(lb) < 10 ? 1 : 0)} lb`;
  }
  if (size >= 1000) return `${number(kg / 1000, 2)} t`;
  return size < 1 && size > 0 ? `${number(kg * 1000, kg < 0.01 ? 1 : 0)} g` : `${number(kg, size < 10 ? 1 : 0)} kg`;
}

function kgPerArea(kgHa: number, voice: Pick<Voice, 'shows'>): string {
  const isLb = voice.shows.mass === 'lb';
  const isAcres = voice.shows.area === 'acres';
  const amount = (isLb ? mass.fromKg(kgHa, 'lb') : kgHa) * (isAcres ? 0.40468564224 : 1);
  if (!isLb && Math.abs(amount) >= 1000) return `${number(amount / 1000, 1)} t/${isAcres ? 'acre' : 'ha'}`;
  return `${number(amount)} ${isLb ? 'lb' : 'kg'}/${isAcres ? 'acre' : 'ha'}`;
}

function percent(share: number): string {
  const pct = share * 100;
  return `${number(pct, Math.abs(pct) < 10 && Math.abs(pct - Math.round(pct)) > 0.05 ? 1 : 0)} %`;
}

/** 12,400 and 3.5; a true minus sign. */
export function number(value: number, decimals = 0): string {
  const text = new Intl.NumberFormat('en-GB', { maximumFractionDigits: decimals }).format(round(value, decimals) + 0);
  return text.replace('-', '−');
}

function round(value: number, decimals: number): number {
  return Number(value.toFixed(decimals));
}

export function counted(count: number, one: string, many: string): string {
  return `${number(count, Number.isInteger(count) ? 0 : 1)} ${count === 1 ? one : many}`;
}

const smallNumbers = [
  'no',
  'one',
  'two',
  'three',
  'four',
  'five',
  'six',
  'seven',
  'eight',
  'nine',
  'ten',
  'eleven',
  'twelve',
];

/** Five weeks, 13 weeks: for headlines, where small numbers are words. */
export function countedInWords(count: number, one: string, many: string): string {
  return `${smallNumbers[count] ?? number(count)} ${count === 1 ? one : many}`;
}
