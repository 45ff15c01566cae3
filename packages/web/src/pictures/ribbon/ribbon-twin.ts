import type { Horizon, PlotGround } from '@leywright/planner';
import type { TwinTable } from '../../look/page/table-twin.tsx';
import { words } from '../../words.ts';

/** The ribbon as tables: the course and bare days of each plot and year, and every stand with its dates. */
export function ribbonTwins(ground: readonly PlotGround[], { fromYear, toYear }: Horizon): readonly TwinTable[] {
  const years = Array.from({ length: toYear - fromYear + 1 }, (_, index) => fromYear + index);
  const courses: TwinTable = {
    caption: 'Ground: course of each year and days bare in the winter before it',
    columns: ['Plot', ...years.map(String)],
    rows: ground.map(({ plot, letter, name, courses: named, bareCounts }) => ({
      id: plot,
      cells: [
        `${letter}, ${name}`,
        ...years.map((year) => {
          const course = named.find((one) => one.year === year)?.name ?? 'no course';
          const bareDays = bareCounts.find(({ winter }) => winter === year)?.bareDays;
          return bareDays === undefined ? course : `${course}; ${Math.round(bareDays)} bare`;
        }),
      ],
    })),
  };
  const stands: TwinTable = {
    caption: words.ribbon.name(fromYear, toYear),
    columns: ['Stand', 'Plot', 'From', 'To', 'Share of the plot', 'How sure'],
    rows: ground.flatMap((plot) =>
      plot.stands.map((stand) => ({
        id: stand.id,
        cells: [
          stand.variety === null ? stand.name : `${stand.name}, ${stand.variety}`,
          plot.name,
          stand.from,
          stand.to,
          `${Math.round((stand.span.toShare - stand.span.fromShare) * 100)} %`,
          words.ribbon[stand.state],
        ],
      })),
    ),
  };
  return [courses, stands];
}
