/** The yearly nitrogen balance of a plot, as an interval. The daily account takes this seat later. */
export interface Range {
  readonly low: number;
  readonly high: number;
}

export interface NitrogenYear {
  readonly plot: string;
  readonly year: number;
  readonly course: string | null;
  readonly fixedKgHa: Range;
  readonly otherInKgHa: Range;
  readonly offtakeKgHa: Range;
  readonly lostKgHa: Range;
  /** in - off-take - lost: low = low inputs with high losses. */
  readonly leftKgHa: Range;
  readonly doubt: readonly string[];
  readonly why: string;
}
