/** A figure with its doubt: seldom below `low`, most likely about `typ`, seldom above `high`. The unit is in the name of whatever holds it. */
export interface Interval {
  readonly low: number;
  readonly typ: number;
  readonly high: number;
}

/** Throws unless low ≤ typ ≤ high. */
export function interval(low: number, typ: number, high: number): Interval {
  if (!(low <= typ && typ <= high)) throw new Error(`An interval runs upward, not ${low}, ${typ}, ${high}.`);
  return { low, typ, high };
}

/** A figure without doubt. */
export function exactly(value: number): Interval {
  return interval(value, value, value);
}

/** An interval known by its ends alone; the middle stands for the typical. */
export function between(low: number, high: number): Interval {
  return interval(low, (low + high) / 2, high);
}

/** The sum when both may err the same way: low with low, high with high. The widest honest answer. */
export function addIntervals(a: Interval, b: Interval): Interval {
  return { low: a.low + b.low, typ: a.typ + b.typ, high: a.high + b.high };
}

/** The difference when either may err either way: the low of one less the high of the other. */
export function subtractIntervals(a: Interval, b: Interval): Interval {
  return { low: a.low - b.high, typ: a.typ - b.typ, high: a.high - b.low };
}

/** Times a plain number; a negative one turns the ends round. */
export function scaleInterval(a: Interval, factor: number): Interval {
  const [low, high] = factor < 0 ? [a.high * factor, a.low * factor] : [a.low * factor, a.high * factor];
  return { low, typ: a.typ * factor, high };
}

/** The product of two intervals: the least and greatest of the four products of their ends. */
export function multiplyIntervals(a: Interval, b: Interval): Interval {
  const corners = [a.low * b.low, a.low * b.high, a.high * b.low, a.high * b.high];
  return { low: Math.min(...corners), typ: a.typ * b.typ, high: Math.max(...corners) };
}

/**
 * The sum of figures whose errors have nothing to do with one another: the distances from the typical add as squares, so ten doubtful
 * figures are together less doubtful than ten times one. Only for figures that are truly independent; otherwise `addIntervals`.
 */
export function sumIndependent(parts: readonly Interval[]): Interval {
  let typ = 0;
  let below = 0;
  let above = 0;
  for (const part of parts) {
    typ += part.typ;
    below += (part.typ - part.low) ** 2;
    above += (part.high - part.typ) ** 2;
  }
  return { low: typ - Math.sqrt(below), typ, high: typ + Math.sqrt(above) };
}
