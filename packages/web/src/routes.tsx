import { asIsoWeek, readDay, readIsoWeek, weekOf } from '@leywright/measures';
import {
  createRootRoute,
  createRoute,
  createRouter,
  lazyRouteComponent,
  Outlet,
  redirect,
} from '@tanstack/react-router';
import { Headline } from './look/page/headline.tsx';
import { BoxesPlace } from './places/boxes/boxes-place.tsx';
import { DayPlace } from './places/day/day-place.tsx';
import { FirstPlace } from './places/first/first-place.tsx';
import { Frame } from './places/frame.tsx';
import { GroundPlace } from './places/ground/ground-place.tsx';
import { CorrectPlace } from './places/record/correct-place.tsx';
import { DidPlace } from './places/record/did-place.tsx';
import { DonePlace } from './places/record/done-place.tsx';
import { JobPlace } from './places/record/job-place.tsx';
import { SawPlace } from './places/record/saw-place.tsx';
import { SettingsPlace } from './places/settings/settings-place.tsx';
import { WorkPlace } from './places/work/work-place.tsx';
import { words } from './words.ts';

const root = createRootRoute({
  component: () => (
    <Frame>
      <Outlet />
    </Frame>
  ),
  notFoundComponent: NotFound,
});

/** Every address of the app. `?week=2027-w26` on any of them sets the clock; `#why=<figure>` opens a figure's derivation. */
const routes = root.addChildren([
  createRoute({
    getParentRoute: () => root,
    path: '/',
    beforeLoad: () => {
      throw redirect({ to: window.innerWidth < 700 ? '/day' : '/ground' });
    },
  }),
  createRoute({ getParentRoute: () => root, path: '/day', component: DayPlace }),
  createRoute({
    getParentRoute: () => root,
    path: '/day/$day',
    beforeLoad: ({ params }) => {
      throw redirect({ href: withWeek('/day', weekOfDay(params.day)) });
    },
  }),
  createRoute({ getParentRoute: () => root, path: '/ground', component: GroundPlace }),
  createRoute({ getParentRoute: () => root, path: '/boxes', component: BoxesPlace }),
  createRoute({
    getParentRoute: () => root,
    path: '/boxes/$when',
    beforeLoad: ({ params }) => {
      throw redirect({ href: withWeek('/boxes', weekOfYearOrWeek(params.when)) });
    },
  }),
  createRoute({ getParentRoute: () => root, path: '/work', component: WorkPlace }),
  createRoute({ getParentRoute: () => root, path: '/start', component: FirstPlace }),
  createRoute({ getParentRoute: () => root, path: '/record/job/$job', component: JobPlace }),
  createRoute({ getParentRoute: () => root, path: '/record/saw', component: SawPlace }),
  createRoute({ getParentRoute: () => root, path: '/record/did', component: DidPlace }),
  createRoute({ getParentRoute: () => root, path: '/record/done', component: DonePlace }),
  createRoute({ getParentRoute: () => root, path: '/record/correct/$entry', component: CorrectPlace }),
  createRoute({ getParentRoute: () => root, path: '/settings', component: SettingsPlace }),
  createRoute({
    getParentRoute: () => root,
    path: '/people',
    component: lazyRouteComponent(() => import('./people/people-place.tsx'), 'PeoplePlace'),
  }),
]);

export const router = createRouter({ routeTree: routes, defaultPreload: false, scrollRestoration: true });

declare module '@tanstack/react-router' {
  interface Register {
    router: typeof router;
  }
}

function NotFound() {
  return (
    <>
      <Headline sentence={[{ text: words.notFound.headline, strong: true }]} />
      <p className="lead">{words.notFound.body}</p>
    </>
  );
}

function withWeek(path: string, week: string | null): string {
  return week === null ? path : `${path}?week=${week}`;
}

function weekOfDay(text: string): string | null {
  const day = readDay(text);
  return day === null ? null : weekOf(day);
}

/** `2027-w26`, or a year alone for its first week. */
function weekOfYearOrWeek(text: string): string | null {
  return readIsoWeek(text) ?? (/^\d{4}$/.test(text) ? asIsoWeek(`${text}-w01`) : null);
}
