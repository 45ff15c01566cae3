/** Plots of a first farm, and what is assumed to stand on them when its first year begins. */

import { type Course, type Plot, type Stand, wholePlot } from '@leywright/book';
import { addDays, area, asDay, asId, type Day, dayInYear, type PlotId, type StandId } from '@leywright/measures';
import { leyYearsOf } from './courses.ts';
import type { FirstSentence } from './sentence.ts';
import { leyEnd, soleLey } from './strips.ts';

/** No cover used here asks for more than three weeks between turning in and the next crop. */
const DAYS_BEFORE_NEXT = 22;

export function firstPlots(sentence: FirstSentence, courses: readonly Course[], firstYear: number): readonly Plot[] {
  const sizes = sentence.plotAreasHa ?? Array.from({ length: sentence.plots }, () => sentence.areaHa / sentence.plots);
  return sizes.map((areaHa, at) => {
    const letter = letterAt(at);
    return {
      id: asId<PlotId>(letter.toLocaleLowerCase('en')),
      letter,
      name: `Plot ${letter}`,
      field: null,
      kind: 'rotation',
      grossM2: area.toM2(areaHa, 'ha'),
      measuredBy: 'typed',
      hedgeM: 0,
      bankM2: 0,
      headlandShare: null,
      soil: null,
      bedCentresM: null,
      bedCount: null,
      courseAtStart: courses[at % courses.length]?.id ?? null,
      from: asDay(`${firstYear - 1}-08-01`),
      to: null,
      status: 'unknown',
      statusSince: null,
      ring: null,
    };
  });
}

/** A ley where the rotation has one, a winter cover elsewhere: in pencil, until the grower says what stands there. */
export function standsAtStart(plots: readonly Plot[], courses: readonly Course[], firstYear: number): readonly Stand[] {
  const leyYears = leyYearsOf(courses.length);
  return plots.flatMap((plot, at) => {
    const course = at % courses.length;
    if (course <= leyYears)
      return [
        assumed(plot, {
          what: soleLey,
          kind: 'ley',
          from: asDay(`${firstYear - 1}-08-05`),
          to: asDay(`${firstYear + leyYears - course}-${leyEnd}`),
        }),
      ];
    return coversBefore(plot, courses[course], firstYear);
  });
}

/** Rye and vetch on each stretch until three weeks before its first crop. */
function coversBefore(plot: Plot, course: Course | undefined, firstYear: number): readonly Stand[] {
  const firsts = (course?.stands ?? []).filter(
    (stand) => stand.kind === 'crop' && !hasEarlier(stand, course?.stands ?? []),
  );
  return firsts.map((stand) => {
    const start = dayInYear(stand.sow ?? stand.plant ?? stand.end, firstYear);
    const latest = asDay(`${firstYear}-05-05`);
    const [to = latest] = [addDays(start, -DAYS_BEFORE_NEXT), latest].sort();
    return {
      ...assumed(plot, {
        what: 'mix-rye-vetch',
        kind: 'cover',
        from: asDay(`${firstYear - 1}-09-10`),
        to,
        key: stand.key,
      }),
      span: stand.span,
    };
  });
}

function hasEarlier(stand: Course['stands'][number], all: Course['stands']): boolean {
  const from = stand.sow ?? stand.plant ?? stand.end;
  return all.some(
    (other) =>
      other !== stand &&
      other.kind === 'crop' &&
      other.span.fromShare === stand.span.fromShare &&
      (other.sow ?? other.plant ?? other.end) < from,
  );
}

interface Assumed {
  readonly what: string;
  readonly kind: Stand['kind'];
  readonly from: Day;
  readonly to: Day;
  readonly key?: string;
}

function assumed(plot: Plot, stand: Assumed): Stand {
  return {
    id: asId<StandId>(`${plot.id}-start-${stand.key ?? stand.kind}`),
    succession: null,
    plot: plot.id,
    span: wholePlot,
    what: stand.what,
    kind: stand.kind,
    variety: null,
    state: 'pencil',
    sownOn: stand.from,
    plantedOn: null,
    from: stand.from,
    to: stand.to,
    undersownIn: null,
    course: null,
    courseYear: null,
    establishedShare: null,
    endedBy: null,
    reason: null,
    yieldTHa: null,
  };
}

/** A to Z, then AA, AB and on. */
function letterAt(at: number): string {
  const letter = String.fromCharCode(65 + (at % 26));
  return at < 26 ? letter : letterAt(Math.floor(at / 26) - 1) + letter;
}
