import { type Day, readDay } from '@leywright/measures';
import type { Finding, Horizon, PlotGround } from '@leywright/planner';
import { weeksFromStart } from '../weeks.ts';

/** A fault on a stretch of a plot: red while open, an outline once it is answered. */
export interface FaultMark {
  readonly id: string;
  readonly plot: string;
  readonly fromWeek: number;
  readonly toWeek: number;
  readonly kind: 'open' | 'answered';
  /** The number it carries here and in the margin; null for what is not listed there. */
  readonly number: number | null;
}

/** Marks for the findings that lie on a stretch of a plot, and for past bare ground that was answered. Numbers follow the list of findings. */
export function faultMarks(
  ground: readonly PlotGround[],
  numbered: readonly Finding[],
  horizon: Horizon,
): readonly FaultMark[] {
  const open = numbered.flatMap((finding, index): FaultMark[] => {
    const span = stretchOf(finding, ground);
    if (span === null || finding.place.plot === undefined) return [];
    return [
      {
        id: `finding-${index}`,
        plot: finding.place.plot,
        fromWeek: weeksFromStart(horizon, span.from),
        toWeek: weeksFromStart(horizon, span.to),
        kind: finding.reason === null ? 'open' : 'answered',
        number: index + 1,
      },
    ];
  });
  const isTold = (plot: string, fromWeek: number) =>
    open.some((mark) => mark.plot === plot && mark.fromWeek === fromWeek);
  const answered = ground.flatMap(({ plot, bare }) =>
    bare
      .filter((spell) => spell.answered !== null && !isTold(plot, weeksFromStart(horizon, spell.from)))
      .map(
        (spell): FaultMark => ({
          id: `bare-${plot}-${spell.from}`,
          plot,
          fromWeek: weeksFromStart(horizon, spell.from),
          toWeek: weeksFromStart(horizon, spell.to),
          kind: 'answered',
          number: null,
        }),
      ),
  );
  return [...open, ...answered].filter(({ fromWeek, toWeek }) => toWeek > 0 && fromWeek < horizon.weeks);
}

function stretchOf({ place }: Finding, ground: readonly PlotGround[]): { readonly from: Day; readonly to: Day } | null {
  const from = place.from === undefined ? null : readDay(place.from);
  const to = place.to === undefined ? null : readDay(place.to);
  if (from !== null && to !== null) return { from, to };
  const stand = ground.find(({ plot }) => plot === place.plot)?.stands.find(({ id }) => id === place.stand);
  return stand === undefined ? null : { from: stand.from, to: stand.to };
}
