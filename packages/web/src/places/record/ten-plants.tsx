import { words } from '../../words.ts';

const said = words.record;
const plants = 10;

interface TenPlantsProps {
  /** Which of the ten have it; null = not counted. */
  readonly tapped: readonly number[] | null;
  readonly onTap: (tapped: readonly number[] | null) => void;
}

/** Ten drawn plants to tap, so that nothing need be typed with gloves on. None of the ten is a count too. */
export function TenPlants({ tapped, onTap }: TenPlantsProps) {
  const turn = (number: number) => {
    const now = tapped ?? [];
    onTap(now.includes(number) ? now.filter((one) => one !== number) : [...now, number]);
  };
  return (
    <fieldset className="ten-plants">
      <legend>{said.tapPlants}</legend>
      {Array.from({ length: plants }, (_, index) => index + 1).map((number) => (
        <button
          key={number}
          type="button"
          aria-label={said.plant(number)}
          aria-pressed={tapped?.includes(number) === true}
          onClick={() => turn(number)}
        >
          <svg viewBox="0 0 40 44" aria-hidden="true">
            <path d="M20 38V12M8 10c0 12 5 18 12 18s12-6 12-18M13 8c0 8 3 12 7 12s7-4 7-12M6 40h28" />
          </svg>
        </button>
      ))}
      <button type="button" className="none-of-ten" aria-pressed={tapped?.length === 0} onClick={() => onTap([])}>
        {said.noneOfTen}
      </button>
    </fieldset>
  );
}
