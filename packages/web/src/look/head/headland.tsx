import type { IsoWeek } from '@leywright/measures';
import { Link } from '@tanstack/react-router';
import { type RefObject, useLayoutEffect, useRef, useState } from 'react';
import { words } from '../../words.ts';
import { useMoved, useViewport } from '../page/use-viewport.ts';
import { Dial, type DialYear } from './dial.tsx';
import { FarmMenu } from './farm-menu.tsx';
import { furrowPaths, type Obstacle } from './furrows.ts';
import { type PlaceName, placeNames } from './places.ts';

/** How the plan in view stands and what is open. */
export interface Standing {
  readonly state: 'agreed' | 'pencil' | 'nothing';
  /** "Agreed, 9 January" */
  readonly stateText: string;
  /** How many findings are to put right; null while nothing is worked out. */
  readonly toPutRight: number | null;
}

interface HeadlandProps {
  readonly place: PlaceName | null;
  readonly farmName: string | null;
  readonly dial: DialYear;
  readonly week: IsoWeek;
  readonly onTurn: (week: IsoWeek) => void;
  readonly standing: Standing;
  readonly isSample: boolean;
  /** What has to be said of the whole page. */
  readonly notice: string | null;
}

/** The head of every page: furrows that bend round the ring of the year and round the dot under the current place. */
export function Headland({ place, farmName, dial, week, onTurn, standing, isSample, notice }: HeadlandProps) {
  const { width, isPhone } = useViewport();
  const nav = useRef<HTMLElement>(null);
  const placeX = usePlaceX(nav, place);
  const dotX = useMoved(placeX ?? 0);
  const ring = isPhone ? { x: 62, y: 66, radius: 40 } : { x: 70, y: 60, radius: 33 };
  const hasDot = placeX !== null && !isPhone;
  const obstacles: readonly Obstacle[] = [
    { at: ring.x, radius: ring.radius + 2 },
    ...(hasDot ? [{ at: dotX, radius: 7 }] : []),
  ];
  return (
    <header className="headland">
      <a className="skip" href="#main">
        {words.skip}
      </a>
      <svg width={width} height={122} aria-hidden="true">
        <g className="furrows">
          {furrowPaths(width, ring.y, obstacles).map((path, index) => (
            <path key={index} d={path} strokeWidth={isPhone ? 1.4 : 1} />
          ))}
        </g>
        {hasDot ? <circle cx={dotX} cy={ring.y} r={5.6} className="here" /> : null}
      </svg>
      <Dial {...dial} week={week} onTurn={onTurn} centre={ring} radius={ring.radius} />
      <nav ref={nav} className="places" aria-label={words.places.label}>
        {placeNames.map((name) => (
          <PlaceLink key={name} name={name} />
        ))}
      </nav>
      <div className="standing">
        <FarmMenu farmName={farmName} />
        <span className="state">
          <StateMark state={standing.state} />
          {standing.stateText}
        </span>
        {standing.toPutRight === null ? null : <ToPutRight count={standing.toPutRight} />}
      </div>
      {isSample ? <p className="sample-line">{words.sample}</p> : null}
      <p className={notice === null ? 'hidden-text' : 'notice-line'} role="status">
        {notice}
      </p>
    </header>
  );
}

/** The places again at the foot of a phone, in reach of the thumb. */
export function FootWays() {
  return (
    <nav className="foot-ways" aria-label={words.places.label}>
      {placeNames.map((name) => (
        <PlaceLink key={name} name={name} />
      ))}
      <Link to="/settings">{words.places.settings}</Link>
    </nav>
  );
}

function PlaceLink({ name }: { readonly name: PlaceName }) {
  return (
    <Link to={`/${name}`} activeOptions={{ includeSearch: false }}>
      {words.places[name]}
    </Link>
  );
}

function ToPutRight({ count }: { readonly count: number }) {
  if (count === 0) return <span className="count none">{words.toPutRight(0)}</span>;
  return (
    <Link className="count" to="/ground" hash="to-put-right" activeOptions={{ includeHash: true }}>
      {words.toPutRight(count)}
    </Link>
  );
}

/** The three line styles: thin line agreed, hatch in pencil, nothing yet an empty frame. */
function StateMark({ state }: { readonly state: Standing['state'] }) {
  return (
    <svg width="26" height="12" aria-hidden="true">
      {state === 'agreed' ? <line x1="0" x2="26" y1="8" y2="8" stroke="var(--ink)" strokeWidth="2" /> : null}
      {state === 'agreed' ? null : (
        <rect
          x=".75"
          y=".75"
          width="24.5"
          height="10.5"
          fill={state === 'pencil' ? 'url(#pencil)' : 'none'}
          stroke="var(--ink2)"
          strokeDasharray={state === 'pencil' ? '4 3' : undefined}
        />
      )}
    </svg>
  );
}

/** The middle of the current place's word, px from the page's left; null before it is laid out or where no place is current. */
function usePlaceX(nav: RefObject<HTMLElement | null>, place: PlaceName | null): number | null {
  const [x, setX] = useState<number | null>(null);
  useLayoutEffect(() => {
    const measure = () => {
      const link = nav.current?.children[place === null ? -1 : placeNames.indexOf(place)];
      setX(
        link instanceof HTMLElement && nav.current !== null
          ? nav.current.offsetLeft + link.offsetLeft + link.offsetWidth / 2
          : null,
      );
    };
    measure();
    document.fonts.ready.then(measure);
    window.addEventListener('resize', measure);
    return () => window.removeEventListener('resize', measure);
  }, [nav, place]);
  return x;
}
