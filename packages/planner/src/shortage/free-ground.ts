/** Ground that no crop takes while another is growing: where more of it could go. */
import type { PlotGround } from '../plan/ground.ts';
import type { CropNeed } from '../plan/supply.ts';
import type { SupplyRun } from '../supply/supply-run.ts';

const worthwhileM2 = 10;

/** The plot with most ground free of crops and leys in the months the crop's own stands hold theirs, its own plots first. Null when there is none. */
export function freeGround(run: SupplyRun, need: CropNeed): { readonly plot: string; readonly freeM2: number } | null {
  const stands = run.input.ground.flatMap((plot) => plot.stands);
  const own = run.lots
    .filter((lot) => lot.crop.id === need.crop && lot.harvestYear === need.harvestYear)
    .flatMap((lot) => stands.find((stand) => stand.id === lot.stand) ?? []);
  const first = own[0];
  if (first === undefined) return null;
  const isTunnel = run.input.ground.find((plot) => plot.plot === first.plot)?.kind === 'tunnel';
  const free = run.input.ground
    .filter((plot) => (isTunnel ? plot.kind === 'tunnel' : plot.kind === 'rotation'))
    .map((plot) => ({ plot: plot.plot, freeM2: freeM2(plot, first), isOwn: need.plots.includes(plot.plot) }))
    .filter((one) => one.freeM2 >= worthwhileM2);
  return free.toSorted((a, b) => Number(b.isOwn) - Number(a.isOwn) || b.freeM2 - a.freeM2)[0] ?? null;
}

/** Covers may make way, crops and leys do not. */
function freeM2(plot: PlotGround, during: { readonly from: string; readonly to: string }): number {
  const taken = plot.stands
    .filter((stand) => stand.kind !== 'cover' && stand.from < during.to && stand.to > during.from)
    .map((stand) => stand.span);
  const ends = [...new Set([0, 1, ...taken.flatMap((span) => [span.fromShare, span.toShare])])].toSorted(
    (a, b) => a - b,
  );
  let freeShare = 0;
  for (let at = 1; at < ends.length; at += 1) {
    const [from = 0, to = 0] = [ends[at - 1], ends[at]];
    if (!taken.some((span) => span.fromShare < to && span.toShare > from)) freeShare += to - from;
  }
  return freeShare * plot.area.netM2;
}
