import { mondayOf } from '@leywright/measures';
import { useMemo } from 'react';
import { useAppState } from '../../app-state.tsx';
import { dayAndMonth, spokenWeek, weekNumberOf } from '../../look/head/year-weeks.ts';
import { Headline } from '../../look/page/headline.tsx';
import { type Note, Notes } from '../../look/page/notes.tsx';
import { TableTwin, type TwinTable } from '../../look/page/table-twin.tsx';
import { useViewport } from '../../look/page/use-viewport.ts';
import { type BrickGroup, brickGroups, brickWeek } from '../../pictures/work/bricks.ts';
import { rowPx, WhoIsHere, WorkSkyline } from '../../pictures/work/work-skyline.tsx';
import { words } from '../../words.ts';
import type { FarmView } from '../../worker/plan-source.ts';
import { hoursText } from '../day/job-line.tsx';
import { WithFarm } from '../no-farm.tsx';
import { WeekJobs } from './week-jobs.tsx';

/** The year's work against the hands there are; the jobs of the chosen week, and what slips when one waits. */
export function WorkPlace() {
  return <WithFarm>{(view) => <Work view={view} />}</WithFarm>;
}

function Work({ view }: { readonly view: FarmView }) {
  const { week } = useAppState();
  const { width, isPhone } = useViewport();
  const { work } = view.plan;
  const weeks = useMemo(() => work.weeks.map(brickWeek), [work]);
  const names = isPhone ? 0 : 146;
  const margin = width >= 1140 ? 250 : 0;
  const pictureWidth = Math.max(isPhone ? 52 * 12 : 52 * 13, Math.min(52 * 21, width - 64 - names - margin));
  return (
    <>
      <Headline sentence={view.told.headline.work} />
      <div className="work-year">
        <div className="work-names">
          <h2>{words.work.days}</h2>
          <p>{words.work.brick}</p>
        </div>
        <section className="wide-frame work-frame" tabIndex={0} aria-label={words.work.picture(work.year)}>
          <WorkSkyline weeks={weeks} year={work.year} chosen={week} width={pictureWidth} />
          <Key />
          <h2 className="who-title">{words.work.who}</h2>
          <div className="who">
            <ol className="who-names">
              {view.hands.map((row) => (
                <li key={row.id} style={{ height: rowPx }}>
                  {row.name}
                </li>
              ))}
            </ol>
            <WhoIsHere rows={view.hands} weeks={weeks} width={pictureWidth} />
          </div>
        </section>
        <Notes notes={notesOf(view)} label={words.work.notes} />
      </div>
      <WeekJobs view={view} week={week} />
      <TableTwin tables={() => [weeksTwin(view), handsTwin(view)]} />
    </>
  );
}

function Key() {
  return (
    <ul className="work-key">
      {brickGroups.map((group: BrickGroup) => (
        <li key={group}>
          <svg width="17" height="12" aria-hidden="true">
            <rect className={`brick ${group}`} x=".5" y=".5" width="16" height="11" />
          </svg>
          {words.work.groups[group]}
        </li>
      ))}
      <li>
        <svg width="17" height="12" aria-hidden="true">
          <rect className="brick missing" x=".5" y=".5" width="16" height="11" />
        </svg>
        {words.work.missing}
      </li>
    </ul>
  );
}

/** What is over, what levelling makes of it, and how the picture is read. */
function notesOf({ told, plan, levelled }: FarmView): readonly Note[] {
  const over = told.findings.filter(({ finding }) => finding.code === 'hours-over-hands');
  const open = over.map(
    ({ finding, lead, body }, at): Note => ({
      id: `over-${at}`,
      tone: finding.gravity === 'put-right' ? 'open' : 'plain',
      lead,
      body,
      atY: 0,
    }),
  );
  const isLevelled = levelled !== null && levelled.overBeforeH > 0;
  const levelling: readonly Note[] = isLevelled
    ? [
        {
          id: 'levelled',
          tone: 'plain',
          lead: words.work.levelled,
          body: [{ text: words.work.levelledBody(levelled) }],
        },
      ]
    : [];
  const unknown = plan.work.weeks.every((week) => week.handsH === null);
  return [
    ...open,
    ...levelling,
    {
      id: 'read',
      tone: 'plain',
      lead: words.ribbon.howTo,
      body: [{ text: unknown ? words.day.handsUnknown : words.work.howTo }],
      atY: 160,
    },
  ];
}

function weeksTwin({ plan: { work }, levelled }: FarmView): TwinTable {
  return {
    caption: words.work.picture(work.year),
    columns: ['Week', 'Monday', 'Hours asked', 'least', 'most', 'Hours there', 'Levelled'],
    rows: work.weeks.map(({ week, hours, handsH }, at) => ({
      id: week,
      cells: [
        weekNumberOf(week),
        dayAndMonth(mondayOf(week)),
        hoursText(hours.typ),
        hoursText(hours.low),
        hoursText(hours.high),
        handsH === null ? words.nitrogen.none : hoursText(handsH),
        levelled === null ? '' : hoursText(levelled.weeksH[at] ?? hours.typ),
      ],
    })),
  };
}

function handsTwin({ plan: { work }, hands }: FarmView): TwinTable {
  return {
    caption: words.work.who,
    columns: ['Person', 'Hours in the year', 'Weeks away'],
    rows: hands.map(({ id, name, weeksH, fullH }) => ({
      id,
      cells: [
        name,
        hoursText(weeksH.reduce((sum, hoursH) => sum + Math.max(0, hoursH), 0)),
        weeksH
          .flatMap((hoursH, at) =>
            hoursH === 0 && fullH > 0 ? [spokenWeek(work.weeks[at]?.week ?? ('' as never))] : [],
          )
          .join('; '),
      ],
    })),
  };
}
