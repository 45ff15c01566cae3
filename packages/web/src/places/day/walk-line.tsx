import { Children, type ReactNode, useLayoutEffect, useRef, useState } from 'react';
import { furrowPaths } from '../../look/head/furrows.ts';

const letterPx = 21;
/** From the top of a stop to the middle of its letter. */
const letterTopPx = 30;

/** The walk: furrows run down the side of the day and bend round each plot's letter. */
export function WalkLine({ letters, children }: { readonly letters: readonly string[]; readonly children: ReactNode }) {
  const list = useRef<HTMLOListElement>(null);
  const [stops, setStops] = useState<{ readonly tops: readonly number[]; readonly height: number }>({
    tops: [],
    height: 0,
  });
  // biome-ignore lint/correctness/useExhaustiveDependencies: the stops move when what they hold changes
  useLayoutEffect(() => {
    const element = list.current;
    if (element === null) return;
    const measure = () =>
      setStops({
        tops: [...element.children].map((child) => (child as HTMLElement).offsetTop + letterTopPx),
        height: element.offsetHeight,
      });
    measure();
    const watch = new ResizeObserver(measure);
    watch.observe(element);
    return () => watch.disconnect();
  }, [letters.join('')]);
  if (letters.length === 0) return null;
  return (
    <div className="walk">
      <svg className="walk-furrows" width="84" height={stops.height} aria-hidden="true">
        <g className="furrows" transform="translate(42 0) rotate(90)">
          {stops.tops.length === 0
            ? null
            : furrowPaths(
                stops.height,
                0,
                stops.tops.map((at) => ({ at, radius: letterPx + 3 })),
              )
                .slice(0, 4)
                .map((path, index) => <path key={index} d={path} strokeWidth="1.3" />)}
        </g>
      </svg>
      <ol ref={list}>
        {Children.map(children, (child, index) => (
          <li className="walk-stop">
            <i aria-hidden="true">{letters[index]}</i>
            {child}
          </li>
        ))}
      </ol>
    </div>
  );
}
