/** What a replay has to say about the book itself. The planner hands these on as findings; their words live in api. */
export const bookFindingCodes = [
  'rival-amendments',
  'original-not-received',
  'amendments-in-a-ring',
  'records-not-received',
  'device-number-twice',
  'device-clock-wrong',
  'one-id-two-entries',
  'record-without-stand',
  'record-without-plot',
  'stand-end-assumed',
  'no-rotation-to-agree',
  'harvest-perhaps-twice',
] as const;
export type BookFindingCode = (typeof bookFindingCodes)[number];

export interface BookFinding {
  readonly code: BookFindingCode;
  /** Ids of the entries it is about, in order. */
  readonly entries: readonly string[];
  readonly plot: string | null;
  readonly stand: string | null;
  readonly figures: Readonly<Record<string, string | number | null>>;
}

type Pieces = Partial<Omit<BookFinding, 'code' | 'entries'>>;

export function bookFinding(code: BookFindingCode, entries: readonly string[], pieces: Pieces = {}): BookFinding {
  return { code, entries, plot: pieces.plot ?? null, stand: pieces.stand ?? null, figures: pieces.figures ?? {} };
}

/** Findings in an order of their own, so that two replays of one book say the same. */
export function inOrder(findings: readonly BookFinding[]): BookFinding[] {
  const keyed = findings.map((finding) => ({
    finding,
    key: `${finding.code} ${finding.entries.join(' ')} ${JSON.stringify(finding.figures)}`,
  }));
  return keyed.sort((a, b) => (a.key < b.key ? -1 : a.key > b.key ? 1 : 0)).map((one) => one.finding);
}
