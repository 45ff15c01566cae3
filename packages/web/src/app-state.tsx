import { type IsoWeek, readIsoWeek, weekOf } from '@leywright/measures';
import {
  createContext,
  type ReactNode,
  useCallback,
  useContext,
  useEffect,
  useMemo,
  useState,
  useSyncExternalStore,
} from 'react';
import { todayHere } from './look/head/today.ts';
import { isoYearOf } from './look/head/year-weeks.ts';
import type { PlanSource, Seen } from './worker/plan-source.ts';

/** The one clock and the plan, for every place. */
interface AppState {
  readonly source: PlanSource;
  readonly seen: Seen;
  readonly week: IsoWeek;
  readonly turn: (week: IsoWeek) => void;
}

const AppContext = createContext<AppState | null>(null);

const urlQuietMs = 150;

/** Holds the clock and the plan. The chosen week stands in the address as `?week=2027-w26`, written once the ring is still. */
export function AppStateProvider({ source, children }: { readonly source: PlanSource; readonly children: ReactNode }) {
  const seen = useSyncExternalStore(source.subscribe, source.seen);
  const [chosen, setChosen] = useState<IsoWeek | null>(weekInAddress);
  const planned = seen.kind === 'ready' || seen.kind === 'old' ? seen.view.plan : null;
  const today = planned?.today ?? (seen.kind === 'no-farm' ? seen.today : null) ?? todayHere();
  const week = chosen ?? weekOf(today);
  useEffect(() => {
    if (chosen === null) return;
    const timer = setTimeout(() => writeWeek(chosen), urlQuietMs);
    return () => clearTimeout(timer);
  }, [chosen]);
  useEffect(() => {
    const onMove = () => setChosen((now) => weekInAddress() ?? now);
    window.addEventListener('popstate', onMove);
    return () => window.removeEventListener('popstate', onMove);
  }, []);
  const year = isoYearOf(week);
  useEffect(() => {
    if (planned !== null && planned.year !== year) source.focusYear(year);
  }, [source, planned, year]);
  const turn = useCallback((to: IsoWeek) => setChosen(to), []);
  const state = useMemo(() => ({ source, seen, week, turn }), [source, seen, week, turn]);
  return <AppContext value={state}>{children}</AppContext>;
}

export function useAppState(): AppState {
  const state = useContext(AppContext);
  if (state === null) throw new Error('A place was drawn outside the app.');
  return state;
}

function weekInAddress(): IsoWeek | null {
  const text = new URLSearchParams(window.location.search).get('week');
  return text === null ? null : readIsoWeek(text);
}

function writeWeek(week: IsoWeek): void {
  const url = new URL(window.location.href);
  if (url.searchParams.get('week') === week) return;
  url.searchParams.set('week', week);
  window.history.replaceState(window.history.state, '', url);
}
