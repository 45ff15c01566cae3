import { type RefObject, useLayoutEffect, useRef, useState } from 'react';
import { type Sentence, Spoken } from './figure.tsx';

/** A note in the margin. Red only while something is open. */
export interface Note {
  readonly id: string;
  readonly tone: 'plain' | 'open';
  readonly number?: number;
  readonly lead?: string;
  readonly body: Sentence;
  /** The height in the picture the note belongs to, px from its top; notes without one follow the last. */
  readonly atY?: number;
  /** Where the mend is made, when it can be. */
  readonly mend?: { readonly text: string; readonly onMend: () => void };
}

const gapPx = 14;

/** Notes beside the picture, each as near as it can be to what it speaks of; in columns below it where there is no margin. */
export function Notes({
  notes,
  label,
  id,
}: {
  readonly notes: readonly Note[];
  readonly label: string;
  readonly id?: string;
}) {
  const list = useRef<HTMLOListElement>(null);
  const tops = useSettledTops(list, notes);
  return (
    <ol
      className="notes"
      ref={list}
      aria-label={label}
      id={id}
      style={{ '--notes-height': `${tops.height}px` } as React.CSSProperties}
    >
      {notes.map((note, index) => (
        <li
          key={note.id}
          className={note.tone === 'open' ? 'note open' : 'note'}
          style={{ '--top': `${tops.tops[index] ?? 0}px` } as React.CSSProperties}
        >
          {note.lead === undefined ? null : (
            <h3>
              {note.number === undefined ? null : <span className="note-number">{note.number}</span>}
              {note.lead}
            </h3>
          )}
          <p>
            <Spoken sentence={note.body} />
          </p>
          {note.mend === undefined ? null : (
            <button type="button" className="link" onClick={note.mend.onMend}>
              {note.mend.text}
            </button>
          )}
        </li>
      ))}
    </ol>
  );
}

interface Settled {
  readonly tops: readonly number[];
  readonly height: number;
}

/** Pushes notes down past one another, keeping each at or below the height it asks for. Heights are measured. */
function useSettledTops(list: RefObject<HTMLOListElement | null>, notes: readonly Note[]): Settled {
  const [settled, setSettled] = useState<Settled>({ tops: [], height: 0 });
  useLayoutEffect(() => {
    const settle = () => {
      const heights = [...(list.current?.children ?? [])].map((child) =>
        child instanceof HTMLElement ? child.offsetHeight : 0,
      );
      setSettled(
        settleTops(
          notes.map((note) => note.atY ?? 0),
          heights,
        ),
      );
    };
    settle();
    document.fonts.ready.then(settle);
    window.addEventListener('resize', settle);
    return () => window.removeEventListener('resize', settle);
  }, [list, notes]);
  return settled;
}

/** The tops at which notes of these heights stand clear of one another, in their order. */
export function settleTops(wanted: readonly number[], heights: readonly number[]): Settled {
  let free = 0;
  const tops = wanted.map((top, index) => {
    const placed = Math.max(top, free);
    free = placed + (heights[index] ?? 0) + gapPx;
    return placed;
  });
  return { tops, height: Math.max(0, free - gapPx) };
}
