import { mondayOf } from '@leywright/measures';
import type { BoxWeek, Finding } from '@leywright/planner';
import { useMemo } from 'react';
import { dayAndMonth, weekNumberOf } from '../../look/head/year-weeks.ts';
import type { Sentence } from '../../look/page/figure.tsx';
import { type Note, Notes } from '../../look/page/notes.tsx';
import { itemsText } from '../../pictures/boxes/box-bricks.tsx';
import { spokenBox } from '../../pictures/boxes/box-stack.ts';
import { words } from '../../words.ts';
import type { GroundLayout } from './ground-layout.ts';
import type { GroundProps } from './ground-props.ts';

interface GroundNotesProps extends GroundProps {
  readonly layout: GroundLayout;
  readonly pointed: BoxWeek | null;
}

/** The margin of Ground: what is to put right beside its plot, the week pointed at beside the box. */
export function GroundNotes({ toPutRight, ground, layout, pointed }: GroundNotesProps) {
  const { ribbonHeight } = layout;
  const notes = useMemo(() => {
    const atPlot = (plot: string | undefined) => {
      const row = ground.findIndex((one) => one.plot === plot);
      return row < 0 ? ribbonHeight + 36 : layout.ribbon.head + row * layout.ribbon.pitch;
    };
    const how: Note = {
      id: 'how',
      tone: 'plain',
      lead: words.ribbon.howTo,
      body: [{ text: words.ribbon.howToBody }],
      atY: layout.ribbon.head - 4,
    };
    const open = toPutRight.map(
      ({ finding, lead, body, mends }, index): Note => ({
        id: `${finding.code}-${index}`,
        tone: finding.reason === null ? 'open' : 'plain',
        number: index + 1,
        lead,
        body: [...body, { text: ' ' }, ...whatNext(finding, mends)],
        atY: atPlot(finding.place.plot),
      }),
    );
    const weekNote: Note[] = pointed === null ? [] : [weekNoteOf(pointed, ribbonHeight + 70)];
    return [how, ...open, ...weekNote].sort((a, b) => (a.atY ?? 0) - (b.atY ?? 0));
  }, [toPutRight, ground, layout, ribbonHeight, pointed]);
  return <Notes notes={notes} label={words.toPutRight(toPutRight.length)} id="to-put-right" />;
}

/** The reason the grower gave, or else the first thing that could be done. */
function whatNext({ reason }: Finding, mends: readonly Sentence[]): Sentence {
  return reason === null ? (mends[0] ?? []) : [{ text: words.ribbon.answeredBy(reason) }];
}

/** The week pointed at or chosen, its crops named: bricks of one family never stand nameless. */
function weekNoteOf(box: BoxWeek, atY: number): Note {
  const lead = `${words.box.week} ${weekNumberOf(box.week)}, ${dayAndMonth(mondayOf(box.week))}`;
  if (box.closed !== null || box.boxes === 0)
    return { id: 'week', tone: 'plain', lead, body: [{ text: words.box.closed }], atY };
  return {
    id: 'week',
    tone: 'plain',
    lead,
    body: [
      { text: `${itemsText(box.itemsPerBox)} ${words.box.of} ${box.promised} ${words.box.items}`, figureId: box.why },
      { text: `: ${spokenBox(box)}.` },
    ],
    atY,
  };
}
