import type { BoxWeek } from '@leywright/planner';
import type { Family } from '../../look/marks/families.ts';

/** One crop's weeks in the boxes of a year. */
export interface CropRow {
  readonly crop: string;
  readonly name: string;
  readonly look: Family;
  readonly weeks: readonly CropWeek[];
}

export interface CropWeek {
  /** Place of the week in the year, from 0. */
  readonly index: number;
  readonly from: 'field' | 'tunnel' | 'store';
  readonly boxesShare: number;
}

/** A season's boxes begin when the main harvest is in: a crop that starts after this week stands above one that starts the next spring. */
const seasonFromIndex = 35;

/** The crops of the boxes in the order of their first week from the field, counted from autumn, so that the year reads as a diagonal. */
export function cropRows(boxes: readonly BoxWeek[]): readonly CropRow[] {
  const rows = new Map<string, { crop: string; name: string; look: Family; weeks: CropWeek[] }>();
  boxes.forEach((box, index) => {
    for (const item of box.items) {
      const row = rows.get(item.crop) ?? { crop: item.crop, name: item.name, look: item.look, weeks: [] };
      rows.set(item.crop, row);
      const beside = row.weeks.findIndex((week) => week.index === index);
      const before = row.weeks[beside];
      if (before === undefined) row.weeks.push({ index, from: item.from, boxesShare: item.boxesShare });
      else
        row.weeks[beside] = {
          ...before,
          boxesShare: Math.min(1, before.boxesShare + item.boxesShare),
          from: before.boxesShare >= item.boxesShare ? before.from : item.from,
        };
    }
  });
  const startOf = (row: CropRow) => firstFieldWeek(row, boxes.length);
  return [...rows.values()].sort((a, b) => startOf(a) - startOf(b) || a.name.localeCompare(b.name));
}

/** Where the crop's run of field weeks begins, the longest time without it going before, counted from the start of the season. */
function firstFieldWeek(row: CropRow, weeks: number): number {
  const fromField = row.weeks.filter(({ from }) => from !== 'store').map(({ index }) => index);
  const indexes = fromField.length > 0 ? fromField : row.weeks.map(({ index }) => index);
  let start = indexes[0] ?? 0;
  let longest = -1;
  indexes.forEach((index, at) => {
    const before = indexes[at - 1] ?? (indexes.at(-1) ?? index) - weeks;
    if (index - before > longest) {
      longest = index - before;
      start = index;
    }
  });
  return (start - seasonFromIndex + weeks) % weeks;
}
