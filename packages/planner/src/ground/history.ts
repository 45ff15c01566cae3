/**
 * What stood on a piece of ground before a day, through all splits, merges and moved boundaries.
 *
 * Rule    A part that names parents took their ground on its first day: what stood there before stands on the parents' records, by share. With one
 *         parent the part's stretch lies on the parent's from side to side; with several it is not known which side came from which,
 *         so every piece is taken to carry each parent's past by the parent's share, and says that it is estimated.
 */

import type { Part, Span } from '@leywright/book';
import { type Day, dayNumber } from '@leywright/measures';

/** A stretch of some plot's records over a time, and how much of the ground asked about it stands for. */
export interface Ancestor {
  readonly plot: string;
  readonly span: Span;
  /** Share of the ground asked about, 0..1. */
  readonly share: number;
  /** Day numbers; the records that count stand within [fromDay, untilDay). */
  readonly fromDay: number;
  readonly untilDay: number;
  readonly estimated: boolean;
}

export interface PastStand<S> {
  readonly stand: S;
  /** Share of the ground asked about that carried it. */
  readonly sharedShare: number;
  readonly estimated: boolean;
}

interface Standing {
  readonly plot: string;
  readonly span: Span;
  readonly from: Day;
  readonly to: Day;
}

const always = -1e9;
export const leastShare = 1e-9;

/** Stretches whose records tell the past of a piece of ground before a day. */
export function ancestorsOf(parts: readonly Part[], plot: string, span: Span, beforeDay: number): readonly Ancestor[] {
  const found: Ancestor[] = [];
  follow(parts, { plot, span, share: 1, fromDay: always, untilDay: beforeDay, estimated: false }, found, 0);
  return found;
}

/** Stands on a piece of ground before a day, latest first, each with the share of the ground it covered. */
export function historyOf<S extends Standing>(
  ground: { readonly parts: readonly Part[]; readonly stands: readonly S[] },
  plot: string,
  at: { readonly span: Span; readonly onDay: Day },
): readonly PastStand<S>[] {
  const past: PastStand<S>[] = [];
  for (const ancestor of ancestorsOf(ground.parts, plot, at.span, dayNumber(at.onDay))) {
    for (const stand of ground.stands) {
      const share = shareUnder(stand, ancestor);
      if (share > leastShare) past.push({ stand, sharedShare: share, estimated: ancestor.estimated });
    }
  }
  return past.sort((a, b) => (a.stand.to < b.stand.to ? 1 : a.stand.to > b.stand.to ? -1 : 0));
}

/** Share of the ground asked about on which a stand stood, by one of the stretches of its past. */
function shareUnder(stand: Standing, ancestor: Ancestor): number {
  if (
    stand.plot !== ancestor.plot ||
    dayNumber(stand.from) >= ancestor.untilDay ||
    dayNumber(stand.to) <= ancestor.fromDay
  )
    return 0;
  return ancestor.share * (overlapShare(stand.span, ancestor.span) / widthOf(ancestor.span));
}

export function widthOf(span: Span): number {
  return span.toShare - span.fromShare;
}

/** Width, as a share of the plot, on which both lie. */
export function overlapShare(a: Span, b: Span): number {
  return Math.max(0, Math.min(a.toShare, b.toShare) - Math.max(a.fromShare, b.fromShare));
}

/** A ring of parts that name one another would never end; no real ground was cut more often than this. */
const deepest = 40;

function follow(parts: readonly Part[], piece: Ancestor, found: Ancestor[], depth: number): void {
  const part = depth > deepest ? undefined : latestPart(parts, piece);
  if (part === undefined) {
    found.push(piece);
    return;
  }
  const width = widthOf(piece.span);
  const inside: Span = {
    fromShare: Math.max(piece.span.fromShare, part.span.fromShare),
    toShare: Math.min(piece.span.toShare, part.span.toShare),
  };
  const insideShare = piece.share * (widthOf(inside) / width);
  const partFrom = dayNumber(part.from);
  found.push({ ...piece, span: inside, share: insideShare, fromDay: Math.max(piece.fromDay, partFrom) });
  for (const parent of part.parents) {
    const isOnly = part.parents.length === 1;
    const span = isOnly ? laidOnParent(inside, part.span, parent.span) : parent.span;
    const estimated = piece.estimated || !isOnly;
    follow(
      parts,
      {
        plot: parent.plot,
        span,
        share: insideShare * parent.share,
        fromDay: piece.fromDay,
        untilDay: partFrom,
        estimated,
      },
      found,
      depth + 1,
    );
  }
  for (const rest of [
    { fromShare: piece.span.fromShare, toShare: inside.fromShare },
    { fromShare: inside.toShare, toShare: piece.span.toShare },
  ]) {
    if (widthOf(rest) > leastShare)
      follow(parts, { ...piece, span: rest, share: piece.share * (widthOf(rest) / width) }, found, depth + 1);
  }
}

/** The latest part with parents that had begun before the piece's time ran out. */
function latestPart(parts: readonly Part[], piece: Ancestor): Part | undefined {
  let latest: Part | undefined;
  for (const part of parts) {
    if (part.plot !== piece.plot || part.parents.length === 0 || overlapShare(part.span, piece.span) <= leastShare)
      continue;
    const from = dayNumber(part.from);
    if (from >= piece.untilDay || from <= piece.fromDay) continue;
    if (latest === undefined || part.from > latest.from) latest = part;
  }
  return latest;
}

function laidOnParent(inside: Span, whole: Span, parent: Span): Span {
  const scale = widthOf(parent) / widthOf(whole);
  const fromShare = parent.fromShare + (inside.fromShare - whole.fromShare) * scale;
  return { fromShare, toShare: fromShare + widthOf(inside) * scale };
}
