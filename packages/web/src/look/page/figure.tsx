import { Link } from '@tanstack/react-router';

/** One run of a sentence: plain, strong, or a figure that opens its sum. */
export interface Run {
  readonly text: string;
  readonly strong?: boolean;
  readonly figureId?: string;
}

/** A sentence that came from findings or figures; its words are made elsewhere. */
export type Sentence = readonly Run[];

/** A number with a dotted underline: opens Why, the sum it came from and the source. */
export function Figure({ id, children }: { readonly id: string; readonly children: string }) {
  return (
    <Link className="figure" to="." search={true} hash={`why=${encodeURIComponent(id)}`} resetScroll={false}>
      {children}
    </Link>
  );
}

/** A sentence with its strong runs and its figures. */
export function Spoken({ sentence }: { readonly sentence: Sentence }) {
  return sentence.map((run, index) => {
    const Tag = run.strong === true ? 'b' : 'span';
    return (
      <Tag key={`${index}-${run.text}`}>
        <RunText run={run} />
      </Tag>
    );
  });
}

function RunText({ run }: { readonly run: Run }) {
  return run.figureId === undefined ? run.text : <Figure id={run.figureId}>{run.text}</Figure>;
}

/** The words of a sentence alone, for names and the live region. */
export function plainText(sentence: Sentence): string {
  return sentence.map((run) => run.text).join('');
}
