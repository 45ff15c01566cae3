/** Who is there week by week, and the year's work levelled. */
import type { Farm } from '@leywright/book';
import { hands, type Plan } from '@leywright/planner';
import type { FarmView, HandsRow } from '../plan-source.ts';

/** How long levelling may look: the pages wait for it. */
const steps = 500;

export function tellHands({ work, today }: Plan, farm: Farm): Pick<FarmView, 'hands' | 'levelled'> {
  const works = farm.people.filter(
    ({ role, hoursWeek, hoursYear }) => role !== 'looker' && (hoursWeek !== null || hoursYear !== null),
  );
  const isKnown = work.weeks.some((week) => week.handsH !== null);
  if (!isKnown) return { hands: [], levelled: null };
  const levelled = hands.levelWork(work, { today, mostSteps: steps });
  return {
    hands: works.map((person): HandsRow => {
      // Without absences there are no hours only outside their season.
      const full = work.weeks.map(({ week }) => hands.hoursOfPersonH(person, week, []));
      const weeksH = work.weeks.map(({ week }, at) =>
        (full[at] ?? 0) === 0 ? -1 : hands.hoursOfPersonH(person, week, farm.absences),
      );
      return { id: person.id, name: person.name, weeksH, fullH: Math.max(0, ...full) };
    }),
    levelled: {
      overBeforeH: levelled.overBeforeH,
      overAfterH: levelled.overAfterH,
      moves: levelled.moved.length,
      weeksH: levelled.weeks.map((week) => week.hoursH),
    },
  };
}
