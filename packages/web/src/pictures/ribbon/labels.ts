import type { PlacedStand } from '@leywright/planner';
import type { MeasureText } from '../measure-text.ts';
import { type CanopyScale, standReach } from './canopy.ts';

/** A name on the line above a strip. */
export interface Label {
  readonly standId: string;
  readonly text: string;
  readonly middle: number;
  readonly width: number;
  readonly isNarrow: boolean;
}

/** Stands of one look that stand side by side in time, named once. */
interface Run {
  readonly standId: string;
  readonly names: readonly string[];
  readonly left: number;
  readonly right: number;
  readonly weight: number;
}

const sizePx = 12;
const shortestRunPx = 28;
const clearPx = 7;
/** How far a name may stand out over the ends of its run before it would be read as its neighbour's. */
const overhangPx = 9;

/**
 * Names on one line above a strip, measured and never guessed: the largest runs of ground first; none on a run under 28 px; the stand's own
 * name, else its family's; normal width, else narrow; else none, and the name comes on hover, focus and in the table.
 */
export function placeLabels(
  stands: readonly PlacedStand[],
  scale: CanopyScale & { readonly width: number },
  names: Names,
): readonly Label[] {
  const placed: Label[] = [...(names.keepClear ?? [])].map((middle) => ({
    standId: '',
    text: '',
    middle,
    width: 14,
    isNarrow: false,
  }));
  for (const run of runsOf(stands, scale, names.familyNames).sort((a, b) => b.weight - a.weight)) {
    const label = fit(run, scale.width, placed, names.measure);
    if (label !== null) placed.push(label);
  }
  return placed.filter(({ text }) => text !== '').sort((a, b) => a.middle - b.middle);
}

export interface Names {
  /** The family's name, and a shorter one. */
  readonly familyNames: (stand: PlacedStand) => readonly [string, string];
  readonly measure: MeasureText;
  /** Places no name may cover, px: the mark of today above the first strip. */
  readonly keepClear?: readonly number[];
}

function fit(run: Run, width: number, placed: readonly Label[], measure: MeasureText): Label | null {
  if (run.right - run.left < shortestRunPx) return null;
  for (const text of run.names) {
    for (const isNarrow of [false, true]) {
      const wide = measure(text, sizePx, isNarrow ? 'narrow' : 'normal');
      if (wide > run.right - run.left + 2 * overhangPx) continue;
      const middle = Math.min(Math.max((run.left + run.right) / 2, wide / 2), width - wide / 2);
      const isClear = placed.every((other) => Math.abs(other.middle - middle) >= (other.width + wide) / 2 + clearPx);
      if (isClear) return { standId: run.standId, text, middle, width: wide, isNarrow };
    }
  }
  return null;
}

/** Joins stands of one look that overlap in time: three brassicas side by side are named once, by their family. */
function runsOf(stands: readonly PlacedStand[], scale: CanopyScale, familyNames: Names['familyNames']): Run[] {
  const runs: Run[] = [];
  for (const stand of stands) {
    const reach = standReach(stand, scale);
    if (reach === null) continue;
    const share = stand.span.toShare - stand.span.fromShare;
    const weight = share * (reach.right - reach.left) * (stand.undersownIn === null ? 1 : 0.4);
    const family = familyNames(stand);
    const at = runs.findIndex(
      (run) => run.names.at(-1) === family[1] && run.left < reach.right && reach.left < run.right,
    );
    const beside = runs[at];
    if (beside === undefined) runs.push({ standId: stand.id, names: [stand.name, ...family], ...reach, weight });
    else
      runs[at] = {
        standId: beside.standId,
        names: beside.names[0] === stand.name ? beside.names : family,
        left: Math.min(beside.left, reach.left),
        right: Math.max(beside.right, reach.right),
        weight: beside.weight + weight,
      };
  }
  return runs;
}
