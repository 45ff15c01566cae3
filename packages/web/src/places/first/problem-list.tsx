import { words } from '../../words.ts';
import type { Problem } from '../../worker/plan-source.ts';

/** Everything to mend at once, each at its place. */
export function ProblemList({ problems }: { readonly problems: readonly Problem[] }) {
  if (problems.length === 0) return null;
  return (
    <section className="problems" role="alert">
      <h2>{words.first.problems(problems.length)}</h2>
      <ol>
        {problems.map((problem) => (
          <li key={problem.id}>
            <b>{problem.where}</b> {problem.sentence}
          </li>
        ))}
      </ol>
    </section>
  );
}
