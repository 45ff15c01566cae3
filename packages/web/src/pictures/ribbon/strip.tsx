import type { PlacedStand, PlotGround } from '@leywright/planner';
import { memo } from 'react';
import { groundFill } from '../../look/marks/patterns.tsx';
import { type CanopyScale, canopyPath, type HeightOf, standReach } from './canopy.ts';
import type { Layer } from './layers.ts';

export interface StripScale extends CanopyScale {
  readonly width: number;
  readonly height: number;
  /** Weeks from the picture's first Monday to today. */
  readonly todayWeek: number;
}

interface StripProps {
  readonly ground: PlotGround;
  readonly layers: readonly Layer[];
  readonly scale: StripScale;
  readonly yearStarts: readonly number[];
}

/** Full cover stays this far under the strip's upper edge. */
const headroomPx = 5;

/** Where a share of cover lies in a strip of a height. */
export function heightIn(stripHeight: number): HeightOf {
  return (share) => stripHeight - Math.min(1.04, share) * (stripHeight - headroomPx);
}

/** One plot's ten years: soil, what grows over it, and the line that says how sure it is. */
export const Strip = memo(function Strip({ ground, layers, scale, yearStarts }: StripProps) {
  const { width, height } = scale;
  const heightOf = heightIn(height);
  const isUnder = (layer: Layer) => layer.overUntilWeek !== null;
  return (
    <>
      <rect className="strip-ground" width={width} height={height} fill="url(#soil)" />
      <ShareLine y={heightOf(0.5)} width={width} opacity={0.3} />
      <ShareLine y={heightOf(1)} width={width} opacity={0.3} />
      {layers
        .filter((layer) => !isUnder(layer))
        .map((layer) => (
          <Canopy key={layer.stand.id} layer={layer} scale={scale} heightOf={heightOf} />
        ))}
      {layers.filter(isUnder).map((layer) => (
        <Canopy key={layer.stand.id} layer={layer} scale={scale} heightOf={heightOf} />
      ))}
      <ShareLine y={heightOf(0.5)} width={width} opacity={0.17} />
      {yearStarts
        .filter((x) => x > 0)
        .map((x) => (
          <line
            key={x}
            x1={x}
            x2={x}
            y1={0}
            y2={height}
            stroke="var(--on-soil)"
            strokeOpacity=".38"
            strokeWidth=".8"
            strokeDasharray="2 3"
          />
        ))}
      <SureLine stands={ground.stands} scale={scale} />
    </>
  );
});

function ShareLine({ y, width, opacity }: { readonly y: number; readonly width: number; readonly opacity: number }) {
  return <line x1={0} x2={width} y1={y} y2={y} stroke="var(--on-soil)" strokeOpacity={opacity} strokeWidth=".7" />;
}

/** An undersown stand wears its dots while it leans on its host: a ley its own green with dots, all others the undersown yellow. */
function Canopy({
  layer,
  scale,
  heightOf,
}: {
  readonly layer: Layer;
  readonly scale: StripScale;
  readonly heightOf: HeightOf;
}) {
  const path = canopyPath(layer, scale, heightOf);
  if (path === null) return null;
  const { stand, overUntilWeek } = layer;
  const underFill = stand.look === 'ley' ? 'url(#undersown-ley)' : groundFill('undersown');
  return (
    <g className="canopy">
      <path d={path} fill={groundFill(stand.look)} stroke="var(--stand-edge)" strokeOpacity=".75" strokeWidth=".8" />
      {overUntilWeek === null || stand.look === 'undersown' ? null : (
        <>
          <clipPath id={`under-${stand.id}`}>
            <rect width={Math.max(0, overUntilWeek * scale.pxPerWeek)} height={scale.height} />
          </clipPath>
          <path
            d={path}
            fill={underFill}
            clipPath={`url(#under-${stand.id})`}
            stroke="var(--stand-edge)"
            strokeWidth=".9"
          />
        </>
      )}
      {stand.state === 'pencil' ? (
        <path d={path} fill="url(#pencil)" stroke="var(--stand-edge)" strokeWidth="1.5" strokeDasharray="4 3" />
      ) : null}
    </g>
  );
}

/** Under the strip: 3 px recorded, 1 px agreed, dashed in pencil. Past ground counts as recorded unless a stand on it was only planned. */
function SureLine({ stands, scale }: { readonly stands: readonly PlacedStand[]; readonly scale: StripScale }) {
  const { width, height } = scale;
  const today = Math.min(width, Math.max(0, scale.todayWeek * scale.pxPerWeek));
  const reaches = stands.flatMap((stand) => {
    const reach = standReach(stand, scale);
    return reach === null ? [] : [{ stand, ...reach }];
  });
  const unrecorded = reaches.filter(
    ({ stand, left }) => stand.state !== 'recorded' && left < today && stand.undersownIn === null,
  );
  return (
    <>
      <rect y={height + 1} width={width} height={1} fill="var(--ink)" />
      <rect y={height} width={today} height={3} fill="var(--ink)" />
      {unrecorded.map(({ stand, left, right }) => (
        <rect
          key={stand.id}
          x={left}
          y={height + 2}
          width={Math.min(today, right) - left}
          height={1.2}
          fill="var(--paper)"
        />
      ))}
      {reaches
        .filter(({ stand }) => stand.state === 'pencil')
        .map(({ stand, left, right }) => (
          <line
            key={stand.id}
            x1={left}
            x2={right}
            y1={height + 1.5}
            y2={height + 1.5}
            stroke="var(--paper)"
            strokeWidth="3"
            strokeDasharray="3 4"
          />
        ))}
    </>
  );
}
