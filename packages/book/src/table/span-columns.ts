/** Where on a plot a row lies: shares of its width, its numbered beds, or only how much of it. */
import type { Span } from '../farm/land.ts';
import type { Cell, Column, Heading, Row } from './column.ts';
import { readCellNumber } from './plain-kinds.ts';

/** A span as people gave it; beds and bare shares are laid on the plot once all tables are read. */
export type SpanWish =
  | { readonly kind: 'not-said' }
  | { readonly kind: 'span'; readonly span: Span }
  | { readonly kind: 'beds'; readonly first: number; readonly last: number; readonly cell: Cell }
  | { readonly kind: 'share'; readonly share: number; readonly cell: Cell };

const wantsShares: readonly Heading[] = [
  { name: 'span_from_share', holds: 'share of 1', numeric: true },
  { name: 'span_to_share', holds: 'share of 1', numeric: true },
];
const wantsBeds: Heading = { name: 'beds', holds: 'beds, such as 3-5 or 4', numeric: false };
const wantsShare: Heading = { name: 'share', holds: 'share of 1', numeric: true };

/** The four headings of a span; the whole plot when all are empty. `only` leaves out those a table has no use for. */
export function spanColumn(
  meaning: string,
  only: 'all' | 'edges-and-share' | 'edges-and-beds' = 'all',
): Column<SpanWish> {
  const headings = [
    ...wantsShares,
    ...(only === 'edges-and-share' ? [] : [wantsBeds]),
    ...(only === 'edges-and-beds' ? [] : [wantsShare]),
  ];
  return {
    headings,
    takes: 'group',
    alsoCalled: [],
    required: false,
    meaning,
    read: readSpan,
    write(wish) {
      const edges = wish.kind === 'span' ? [String(wish.span.fromShare), String(wish.span.toShare)] : [];
      return headings.map((_, at) => edges[at] ?? '');
    },
  };
}

/** Edges under other headings, such as `parent_from_share`. */
export function edgesColumn(beginning: string, meaning: string): Column<Span> {
  const headings = ['from_share', 'to_share'].map((name) => ({
    name: `${beginning}_${name}`,
    holds: 'share of 1',
    numeric: true,
  }));
  return {
    headings,
    takes: 'group',
    alsoCalled: [],
    required: false,
    meaning,
    read: (row) => readEdges(row, `${beginning}_from_share`, `${beginning}_to_share`),
    write: (span) =>
      span.fromShare === 0 && span.toShare === 1 ? ['', ''] : [String(span.fromShare), String(span.toShare)],
  };
}

function readSpan(row: Row): SpanWish | undefined {
  const ways = [['span_from_share', 'span_to_share'], ['beds'], ['share']].filter((headings) =>
    headings.some((one) => row.text(one) !== ''),
  );
  if (ways.length > 1)
    return row.cell(ways[1]?.[0] ?? 'beds').fault('one-of', { nearest: ways.map((headings) => headings.join(', ')) });
  if (row.text('beds') !== '') return readBeds(row.text('beds'), row.cell('beds'));
  if (row.text('share') !== '') return readShare(row.text('share'), row.cell('share'));
  if (ways.length === 0) return { kind: 'not-said' };
  const span = readEdges(row, 'span_from_share', 'span_to_share');
  return span === undefined ? undefined : { kind: 'span', span };
}

function readEdges(row: Row, from: string, to: string): Span | undefined {
  const fromShare = row.text(from) === '' ? 0 : shareIn(row.text(from), row.cell(from));
  const toShare = row.text(to) === '' ? 1 : shareIn(row.text(to), row.cell(to));
  if (fromShare === undefined || toShare === undefined) return undefined;
  return fromShare < toShare
    ? { fromShare, toShare }
    : row.cell(to).fault('span-empty', { figures: { fromShare, toShare } });
}

function readShare(found: string, cell: Cell): SpanWish | undefined {
  const share = shareIn(found, cell);
  if (share === undefined) return undefined;
  return share > 0 ? { kind: 'share', share, cell } : cell.fault('span-empty');
}

function shareIn(found: string, cell: Cell): number | undefined {
  const percent = /^(.*\d)\s*%$/.exec(found)?.[1];
  const value = readCellNumber(percent ?? found, cell);
  if (value === undefined) return undefined;
  const share = percent === undefined ? value : value / 100;
  if (share >= 0 && share <= 1) return share;
  return cell.fault('out-of-range', {
    nearest: share > 1 && share <= 100 ? [String(share / 100)] : [],
    figures: { least: 0, most: 1 },
  });
}

function readBeds(found: string, cell: Cell): SpanWish | undefined {
  const match = /^(\d{1,4})(?:\s*(?:-|–|to)\s*(\d{1,4}))?$/.exec(found);
  if (match === null) return cell.fault('beds-outside');
  const first = Number(match[1]);
  const last = Number(match[2] ?? match[1]);
  return first >= 1 && first <= last
    ? { kind: 'beds', first, last, cell }
    : cell.fault('beds-outside', { nearest: [`${last}-${first}`] });
}

/** The span of a wish that names shares or beds; null for a bare share or none. Undefined, told, when the beds are not there. */
export function settledSpan(wish: SpanWish, bedCount: number | null): Span | null | undefined {
  if (wish.kind === 'span') return wish.span;
  if (wish.kind !== 'beds') return null;
  if (bedCount === null) return wish.cell.fault('beds-unknown');
  if (wish.last > bedCount)
    return wish.cell.fault('beds-outside', {
      nearest: wish.first <= bedCount ? [`${wish.first}-${bedCount}`] : [],
      figures: { bedCount },
    });
  return { fromShare: (wish.first - 1) / bedCount, toShare: wish.last / bedCount };
}

/** A span for writing. The whole plot needs no words, except under a host: there, nothing said would mean the host's ground. */
export function asWish(span: Span, isUndersown = false): SpanWish {
  return span.fromShare === 0 && span.toShare === 1 && !isUndersown ? { kind: 'not-said' } : { kind: 'span', span };
}
