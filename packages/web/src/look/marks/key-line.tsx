import { words } from '../../words.ts';
import type { Family } from './families.ts';
import { Swatch } from './mark.tsx';

/** The line that names every family in view by its pattern. */
export function KeyLine({ families }: { readonly families: readonly (Family | 'soil')[] }) {
  return (
    <ul className="key-line" aria-label={words.key.label}>
      {families.map((family) => (
        <li key={family}>
          <Swatch family={family} />
          {words.key[family]}
        </li>
      ))}
    </ul>
  );
}
