/** Figures as people say them, for tables and pictures: the same writing as in sentences. */
import { writeArea, writeDay, writeFigure, writeMass, writeWeek } from './words/en-GB/figures.ts';
import type { Voice } from './words/voice.ts';

export const speak = {
  area: (areaM2: number, voice: Pick<Voice, 'shows'>): string => writeArea(areaM2, voice),
  mass: (kg: number, voice: Pick<Voice, 'shows'>): string => writeMass(kg, voice),
  /** A crop or cover as a sentence says it. */
  plant: (name: string, voice: Voice): string => writeFigure(voice)('name', name, null),
  /** Tue 8 June 2027, week 23. */
  day: (day: string, voice: Pick<Voice, 'year'>): string => writeDay(day, voice, { week: true }),
  /** Week 23 (from Mon 7 June). */
  week: (week: string, voice: Pick<Voice, 'year'>): string => writeWeek(week, voice),
  /** 2027-w23, Mon 7 June. */
  weekStart: (week: string): string =>
    `${week}, ${writeWeek(week, { year: Number(week.slice(0, 4)) }).replace(/^.*from (.*)\)$/, '$1')}`,
} as const;
