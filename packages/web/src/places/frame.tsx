import { weekOf } from '@leywright/measures';
import { useRouterState } from '@tanstack/react-router';
import { type ReactNode, useEffect } from 'react';
import { useAppState } from '../app-state.tsx';
import { FootWays, Headland, type Standing } from '../look/head/headland.tsx';
import { placeNames } from '../look/head/places.ts';
import { todayHere } from '../look/head/today.ts';
import { isoYearOf, weekNumberOf } from '../look/head/year-weeks.ts';
import { words } from '../words.ts';
import type { FarmView, Seen } from '../worker/plan-source.ts';
import { WhySheet } from './why-sheet.tsx';

/** The frame of every page: the headland, the page, the sheet that may lie at its right, and the ways at the foot of a phone. */
export function Frame({ children }: { readonly children: ReactNode }) {
  const { seen, week, turn } = useAppState();
  const { pathname, hash } = useRouterState({
    select: (state) => ({ pathname: state.location.pathname, hash: state.location.hash }),
  });
  const place = placeNames.find((name) => pathname === `/${name}` || pathname.startsWith(`/${name}/`)) ?? null;
  const view = viewOf(seen);
  const figureId = /(?:^|&)why=([^&]+)/.exec(hash)?.[1];
  useEffect(() => {
    document.title = `${place === null ? '' : `${words.places[place]} · `}${view?.plan.farm.name ?? 'Leywright'}`;
  }, [place, view]);
  return (
    <>
      <Headland
        place={place}
        farmName={view?.plan.farm.name ?? null}
        dial={dialOf(view, isoYearOf(week))}
        week={week}
        onTurn={turn}
        standing={standingOf(seen)}
        isSample={view?.plan.farm.sample === true}
        notice={noticeOf(seen)}
      />
      <div className={figureId === undefined ? 'desk' : 'desk with-sheet'}>
        <main id="main" tabIndex={-1}>
          {children}
        </main>
        {figureId === undefined ? null : <WhySheet figureId={decodeURIComponent(figureId)} />}
      </div>
      <FootWays />
    </>
  );
}

/** The last view there is, fresh or old. */
export function viewOf(seen: Seen): FarmView | null {
  return seen.kind === 'ready' || seen.kind === 'old' || seen.kind === 'failed' ? seen.view : null;
}

/** What has to be said of the whole page: the server is out of reach, or the plan has failed and an older one is shown. */
function noticeOf(seen: Seen): string | null {
  if (seen.kind === 'ready') return seen.offline;
  return seen.kind === 'failed' && seen.view !== null ? seen.sentence : null;
}

function dialOf(view: FarmView | null, year: number) {
  const supply = view?.plan.supply ?? null;
  const isYear = supply !== null && supply.year === year;
  return {
    today: weekOf(view?.plan.today ?? todayHere()),
    closedWeeks: isYear
      ? supply.boxes.filter((box) => box.closed === 'closed').map((box) => weekNumberOf(box.week))
      : [],
    hungryGap:
      isYear && supply.hungryGap !== null
        ? { from: weekNumberOf(supply.hungryGap.from), to: weekNumberOf(supply.hungryGap.to) }
        : null,
  };
}

function standingOf(seen: Seen): Standing {
  const view = viewOf(seen);
  if (view === null)
    return {
      state: 'nothing',
      stateText: seen.kind === 'working' ? seen.sentence : words.state.nothing,
      toPutRight: null,
    };
  const state = view.plan.agreed.state === 'none' ? 'nothing' : view.plan.agreed.state;
  return { state, stateText: view.told.standing, toPutRight: view.plan.headline.toPutRight };
}
