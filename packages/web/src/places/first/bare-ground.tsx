import { useViewport } from '../../look/page/use-viewport.ts';
import { words } from '../../words.ts';

const years = 10;
const mostPlots = 12;

/** Ten years of bare soil: the true picture of nothing planned. It divides as the number of plots is typed. */
export function BareGround({ plots, fromYear }: { readonly plots: number; readonly fromYear: number }) {
  const { width: window, height: windowHeight, isPhone } = useViewport();
  const gutter = isPhone ? 34 : 60;
  const width = Math.max(300, Math.min(1040, window - (isPhone ? 36 + gutter : 48 + 126) - (window >= 1240 ? 228 : 0)));
  const height = Math.max(120, Math.min(300, windowHeight - 570));
  const shown = Math.max(1, Math.min(mostPlots, Math.floor(plots)));
  const gap = shown > 1 ? 5 : 0;
  const strip = (height - gap * (shown - 1)) / shown;
  return (
    <div className="bare-ground">
      <svg width={width + gutter} height={height + 26} role="img" aria-label={words.first.headline}>
        <g transform={`translate(${gutter} 0)`}>
          {Array.from({ length: years }, (_, index) => (
            <text key={index} className="year" x={(index * width) / years + 3} y={14}>
              {isPhone ? `’${String(fromYear + index).slice(2)}` : fromYear + index}
            </text>
          ))}
        </g>
        {Array.from({ length: shown }, (_, index) => (
          <g key={index} transform={`translate(${gutter} ${24 + index * (strip + gap)})`}>
            <BareStrip width={width} strip={strip} />
            {plots >= 1 ? (
              <text
                className="plot-letter"
                x={-14}
                y={strip / 2 + Math.min(9, strip / 3)}
                fontSize={Math.min(27, strip * 0.9)}
                textAnchor="end"
              >
                {String.fromCharCode(65 + index)}
              </text>
            ) : (
              <EmptyLetter x={-gutter / 2} radius={isPhone ? 12 : 17} />
            )}
          </g>
        ))}
      </svg>
      <div className="first-notes">
        <div className="note">
          <h2>{words.first.soil}</h2>
          <p>{words.first.soilBody}</p>
        </div>
        <div className="note">
          <h2>{words.first.ring}</h2>
          <p>{words.first.ringBody}</p>
        </div>
      </div>
    </div>
  );
}

/** One plot of bare soil, a dashed line between the years. */
function BareStrip({ width, strip }: { readonly width: number; readonly strip: number }) {
  return (
    <>
      <rect width={width} height={strip} fill="url(#soil)" className="strip-ground" />
      {Array.from({ length: years - 1 }, (_, year) => (
        <line
          key={year}
          x1={((year + 1) * width) / years}
          x2={((year + 1) * width) / years}
          y2={strip}
          stroke="var(--on-soil)"
          strokeOpacity=".38"
          strokeWidth=".8"
          strokeDasharray="2 3"
        />
      ))}
    </>
  );
}

/** Where the letter of a plot will stand. */
function EmptyLetter({ x, radius }: { readonly x: number; readonly radius: number }) {
  return <circle cx={x} cy={18} r={radius} fill="none" stroke="var(--ink2)" strokeDasharray="3 3" />;
}
