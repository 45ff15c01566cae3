import { words } from '../../words.ts';
import type { FolderProblem } from '../../worker/plan-source.ts';

interface MendLineProps {
  readonly problem: FolderProblem;
  /** What stands there now, with what was typed. */
  readonly now: string;
  readonly onChange: (to: string) => void;
}

const said = words.folder;

/** One problem of a folder: where, what is wrong, what would do, and the place itself to write in. */
export function MendLine({ problem, now, onChange }: MendLineProps) {
  const { file, line, column, found, sentence, nearest, mend } = problem;
  const place = [line === null ? null : said.line(line), column].filter((part) => part !== null && part !== '');
  return (
    <li className={problem.stops ? 'mend-line stops' : 'mend-line'}>
      <div className="mend-place">
        <b>{file}</b>
        <span>{place.join(', ')}</span>
      </div>
      <div className="mend-words">
        <p>{sentence}</p>
        {found === null || found === '' || sentence.includes(found) ? null : (
          <p className="quiet">
            {said.found}: {found}
          </p>
        )}
        {mend !== 'cell' || nearest.length === 0 ? null : (
          <p className="mend-nearest">
            {nearest.map((one) => (
              <button key={one} type="button" className="link" onClick={() => onChange(one)}>
                {one}
              </button>
            ))}
          </p>
        )}
      </div>
      <Writing {...{ problem, now, onChange }} label={said.change([file, ...place].join(', '))} />
    </li>
  );
}

function Writing({ problem, now, onChange, label }: MendLineProps & { readonly label: string }) {
  if (problem.mend === 'none') return <p className="quiet">{said.notHere}</p>;
  if (problem.mend === 'cell')
    return (
      <input
        className="mend-cell"
        aria-label={label}
        value={now}
        autoComplete="off"
        spellCheck={false}
        onChange={(event) => onChange(event.currentTarget.value)}
      />
    );
  return (
    <details className="mend-file">
      <summary>{said.whole}</summary>
      <textarea
        aria-label={label}
        value={now}
        rows={8}
        spellCheck={false}
        onChange={(event) => onChange(event.currentTarget.value)}
      />
    </details>
  );
}
