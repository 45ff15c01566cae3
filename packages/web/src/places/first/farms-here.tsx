import { useEffect, useState } from 'react';
import { useAppState } from '../../app-state.tsx';
import { words } from '../../words.ts';
import type { FarmOnList } from '../../worker/plan-source.ts';

/** The farms of this machine, to go from one to another. */
export function FarmsHere({ onOpen }: { readonly onOpen: (id: string) => void }) {
  const { source } = useAppState();
  const [farms, setFarms] = useState<readonly FarmOnList[]>([]);
  useEffect(() => {
    source.farms().then(setFarms, () => setFarms([]));
  }, [source]);
  if (farms.length === 0) return null;
  return (
    <section>
      <h2>{words.first.here}</h2>
      <ul className="farms-here">
        {farms.map((farm) => (
          <li key={farm.id}>
            <button type="button" className="link" onClick={() => onOpen(farm.id)}>
              {farm.name}
            </button>
            {farm.isOpen ? <small>{words.first.isOpen}</small> : null}
          </li>
        ))}
      </ul>
    </section>
  );
}
