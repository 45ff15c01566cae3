import type { PlacedStand, PlotGround } from '@leywright/planner';
import { memo } from 'react';
import { groundFill } from '../../look/marks/patterns.tsx';
import { weeksFromStart } from '../weeks.ts';
import { bandOf, type CanopyScale, canopyPath, standReach } from './canopy.ts';

export interface StripScale extends CanopyScale {
  readonly width: number;
  readonly height: number;
  /** Weeks from the picture's first Monday to today. */
  readonly todayWeek: number;
}

const headroomPx = 5;

/** One plot's ten years: soil, what grows over it, and the line that says how sure it is. */
export const Strip = memo(function Strip({ ground, scale, yearStarts }: { readonly ground: PlotGround; readonly scale: StripScale; readonly yearStarts: readonly number[] }) {
  const hosts = ground.stands.filter((stand) => stand.undersownIn === null);
  const undersown = ground.stands.filter((stand) => stand.undersownIn !== null);
  const { width, height } = scale;
  return (
    <>
      <rect className="strip-ground" width={width} height={height} fill="url(#soil)" />
      <ShareLine y={height * 0.5 + headroomPx / 2} width={width} opacity={0.3} />
      <ShareLine y={headroomPx} width={width} opacity={0.3} />
      {hosts.map((stand) => <Canopy key={stand.id} stand={stand} scale={scale} host={null} />)}
      {undersown.map((stand) => <Canopy key={stand.id} stand={stand} scale={scale} host={ground.stands.find(({ id }) => id === stand.undersownIn) ?? null} />)}
      <ShareLine y={height * 0.5 + headroomPx / 2} width={width} opacity={0.17} />
      <Seams stands={hosts} scale={scale} />
      {yearStarts.filter((x) => x > 0).map((x) => <line key={x} x1={x} x2={x} y1={0} y2={height} stroke="var(--on-soil)" strokeOpacity=".38" strokeWidth=".8" strokeDasharray="2 3" />)}
      <SureLine stands={ground.stands} scale={scale} />
    </>
  );
});

function ShareLine({ y, width, opacity }: { readonly y: number; readonly width: number; readonly opacity: number }) {
  return <line x1={0} x2={width} y1={y} y2={y} stroke="var(--on-soil)" strokeOpacity={opacity} strokeWidth=".7" />;
}

function Canopy({ stand, scale, host }: { readonly stand: PlacedStand; readonly scale: StripScale; readonly host: PlacedStand | null }) {
  const band = bandOf(stand.span, { height: scale.height, headroom: headroomPx });
  const hostTo = host === null ? null : weeksFromStart(scale.horizon, host.to) * scale.pxPerWeek;
  const path = canopyPath(stand, scale, band, hostTo);
  if (path === null) return null;
  const look = stand.undersownIn !== null && stand.look !== 'ley' ? 'undersown' : stand.look;
  return (
    <g className="canopy">
      <path d={path} fill={groundFill(look)} stroke="var(--stand-edge)" strokeOpacity=".75" strokeWidth=".8" />
      {stand.undersownIn !== null && look === 'ley' && hostTo !== null ? <UndersownLey path={path} until={hostTo} height={scale.height} id={stand.id} /> : null}
      {stand.state === 'pencil' ? <path d={path} fill="url(#pencil)" stroke="var(--ink)" strokeWidth="1.4" strokeDasharray="4 3" /> : null}
    </g>
  );
}

/** A ley still under its nurse crop carries the undersown dots. */
function UndersownLey({ path, until, height, id }: { readonly path: string; readonly until: number; readonly height: number; readonly id: string }) {
  return (
    <>
      <clipPath id={`under-${id}`}><rect x={0} y={0} width={until} height={height} /></clipPath>
      <path d={path} fill="url(#undersown-ley)" clipPath={`url(#under-${id})`} stroke="var(--stand-edge)" strokeWidth=".9" />
    </>
  );
}

/** Where a plot is divided, a thin seam of soil parts the strata for as long as they stand. */
function Seams({ stands, scale }: { readonly stands: readonly PlacedStand[]; readonly scale: StripScale }) {
  return stands.filter(({ span }) => span.fromShare > 0).map((stand) => {
    const reach = standReach(stand, scale);
    if (reach === null) return null;
    const y = stand.span.fromShare * scale.height;
    return <line key={stand.id} x1={reach.left} x2={reach.right} y1={y} y2={y} stroke="var(--on-soil)" strokeOpacity=".55" strokeWidth=".8" />;
  });
}

/** Under the strip: 3 px recorded, 1 px agreed, dashed in pencil. Past ground counts as recorded unless a stand on it was only planned. */
function SureLine({ stands, scale }: { readonly stands: readonly PlacedStand[]; readonly scale: StripScale }) {
  const { width, height } = scale;
  const today = Math.min(width, Math.max(0, scale.todayWeek * scale.pxPerWeek));
  const reaches = stands.map((stand) => ({ stand, reach: standReach(stand, scale) }));
  const unrecorded = reaches.filter(({ stand, reach }) => stand.state !== 'recorded' && reach !== null && reach.left < today && stand.undersownIn === null);
  return (
    <>
      <rect y={height + 1} width={width} height={1} fill="var(--ink)" />
      <rect y={height} width={today} height={3} fill="var(--ink)" />
      {unrecorded.map(({ stand, reach }) => (reach === null ? null : <rect key={stand.id} x={reach.left} y={height + 2} width={Math.min(today, reach.right) - reach.left} height={1.2} fill="var(--paper)" />))}
      {reaches.filter(({ stand, reach }) => stand.state === 'pencil' && reach !== null).map(({ stand, reach }) => (
        <line key={stand.id} x1={reach?.left} x2={reach?.right} y1={height + 1.5} y2={height + 1.5} stroke="var(--paper)" strokeWidth="3" strokeDasharray="3 4" />
      ))}
    </>
  );
}
