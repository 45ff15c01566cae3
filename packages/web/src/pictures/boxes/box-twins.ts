import { mondayOf } from '@leywright/measures';
import type { Supply } from '@leywright/planner';
import { dayAndMonth, weekNumberOf } from '../../look/head/year-weeks.ts';
import type { TwinTable } from '../../look/page/table-twin.tsx';
import { words } from '../../words.ts';
import { runsOfWeeks } from '../weeks.ts';
import { itemsText } from './box-bricks.tsx';
import { spokenBox } from './box-stack.ts';
import { cropRows } from './crop-rows.ts';

/** The boxes of a year week by week. */
export function bricksTwin(supply: Supply): TwinTable {
  return {
    caption: words.box.nameLong(supply.year),
    columns: ['Week', 'Monday', 'Items', 'Promised', '8 years out of 10', 'In the box'],
    rows: supply.boxes.map((box) => ({
      id: box.week,
      cells:
        box.closed !== null || box.boxes === 0
          ? [weekNumberOf(box.week), dayAndMonth(mondayOf(box.week)), words.box.noBox, '', '', '']
          : [
              weekNumberOf(box.week),
              dayAndMonth(mondayOf(box.week)),
              itemsText(box.itemsPerBox),
              box.promised,
              box.high > box.low ? `${itemsText(box.low)} to ${itemsText(box.high)}` : '',
              spokenBox(box),
            ],
    })),
  };
}

/** The year of boxes crop by crop: from which weeks of the field, under cover, from store. */
export function yearTwin(supply: Supply): TwinTable {
  return {
    caption: `The crops of ${supply.year}`,
    columns: ['Crop', 'From the field, weeks', 'Under cover, weeks', 'From store, weeks', 'Most boxes that carry it'],
    rows: cropRows(supply.boxes).map((row) => {
      const weeksFrom = (from: 'field' | 'tunnel' | 'store') =>
        runsOfWeeks(row.weeks.filter((week) => week.from === from).map(({ index }) => index + 1)) || 'none';
      return {
        id: row.crop,
        cells: [
          row.name,
          weeksFrom('field'),
          weeksFrom('tunnel'),
          weeksFrom('store'),
          `${Math.round(Math.max(...row.weeks.map(({ boxesShare }) => boxesShare)) * 100)} %`,
        ],
      };
    }),
  };
}
