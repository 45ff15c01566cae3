/** Hours of one person in a day, the size of a brick. */
const dayH = 8;
const bricksARow = 10;

/** The week's hours as bricks, one a person's day; those no hands are there for are dashed. */
export function HoursBricks({ askedH, handsH }: { readonly askedH: number; readonly handsH: number | null }) {
  const asked = Math.ceil(askedH / dayH - 0.01);
  const there = handsH === null ? asked : Math.min(asked, Math.floor(handsH / dayH));
  const idle = handsH === null ? 0 : Math.max(0, Math.floor(handsH / dayH) - asked);
  const count = asked + idle;
  const rows = Math.ceil(count / bricksARow);
  return (
    <svg className="hours-bricks" width={bricksARow * 21} height={Math.max(1, rows) * 15} aria-hidden="true">
      {Array.from({ length: count }, (_, index) => {
        const x = (index % bricksARow) * 21 + 1;
        const y = Math.floor(index / bricksARow) * 15 + 1;
        const kind = index < there ? 'brick-there' : index < asked ? 'missing' : 'brick-idle';
        return <rect key={index} className={kind} x={x} y={y} width={18} height={12} />;
      })}
    </svg>
  );
}
