import { type ReactNode, useEffect, useState } from 'react';
import { words } from '../../words.ts';

/** A picture as a table, made from the same numbers. The first cell of a row is its heading. */
export interface TwinTable {
  readonly caption: string;
  readonly columns: readonly string[];
  readonly rows: readonly { readonly id: string; readonly cells: readonly ReactNode[] }[];
}

/** The table twins of a page, by `T` or the button. Ten years of stands are thousands of cells, so they are made when they are asked for. */
export function TableTwin({ tables }: { readonly tables: () => readonly TwinTable[] }) {
  const [isShown, setShown] = useState(false);
  useEffect(() => {
    const onKey = (event: KeyboardEvent) => {
      const isWriting =
        event.target instanceof Element && event.target.closest('input, textarea, select, [contenteditable]') !== null;
      if (event.key.toLowerCase() === 't' && !isWriting && !event.ctrlKey && !event.metaKey && !event.altKey)
        setShown((shown) => !shown);
    };
    window.addEventListener('keydown', onKey);
    return () => window.removeEventListener('keydown', onKey);
  }, []);
  return (
    <div className="twins">
      <button type="button" className="twin-door" aria-expanded={isShown} onClick={() => setShown(!isShown)}>
        {isShown ? words.twin.hide : words.twin.show} <kbd>T</kbd>
      </button>
      {isShown ? (
        <section className="twin" aria-label={words.twin.label} tabIndex={0}>
          {tables().map((table) => (
            <Twin key={table.caption} {...table} />
          ))}
        </section>
      ) : null}
    </div>
  );
}

function Twin({ caption, columns, rows }: TwinTable) {
  return (
    <table>
      <caption>{caption}</caption>
      <thead>
        <tr>
          {columns.map((column) => (
            <th key={column} scope="col">
              {column}
            </th>
          ))}
        </tr>
      </thead>
      <tbody>
        {rows.map(({ id, cells: [heading, ...cells] }) => (
          <tr key={id}>
            <th scope="row">{heading}</th>
            {cells.map((cell, index) => (
              <td key={columns[index + 1] ?? index}>{cell}</td>
            ))}
          </tr>
        ))}
      </tbody>
    </table>
  );
}
