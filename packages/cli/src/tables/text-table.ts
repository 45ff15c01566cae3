/** Tables for a terminal, never wider than a hundred columns. */

export const widest = 100;
const gap = '  ';

export interface Column {
  readonly head: string;
  readonly align?: 'left' | 'right';
}

/** Heads, a rule, rows. Where it would be too wide, the widest left column gives way, with an ellipsis. */
export function textTable(columns: readonly Column[], rows: readonly (readonly string[])[]): string {
  const widths = fittedWidths(columns, rows);
  const line = (cells: readonly string[]) =>
    columns
      .map((column, at) => cell(cells[at] ?? '', widths[at] ?? 0, column))
      .join(gap)
      .trimEnd();
  return [
    line(columns.map((column) => column.head)),
    widths.map((width) => '─'.repeat(width)).join(gap),
    ...rows.map(line),
  ].join('\n');
}

function fittedWidths(columns: readonly Column[], rows: readonly (readonly string[])[]): readonly number[] {
  const widths = columns.map((column, at) =>
    Math.max(column.head.length, ...rows.map((row) => (row[at] ?? '').length)),
  );
  const leastWidth = 8;
  for (;;) {
    if (widths.reduce((sum, width) => sum + width, 0) + gap.length * (widths.length - 1) <= widest) return widths;
    const giving = widths.reduce(
      (best, width, at) => (givesWay(columns[at]) && width > (widths[best] ?? 0) ? at : best),
      firstLeft(columns),
    );
    const width = widths[giving] ?? 0;
    if (width <= leastWidth) return widths;
    widths[giving] = width - 1;
  }
}

function givesWay(column: Column | undefined): boolean {
  return column?.align !== 'right';
}

function firstLeft(columns: readonly Column[]): number {
  return Math.max(0, columns.findIndex(givesWay));
}

function cell(text: string, width: number, column: Column): string {
  const cut = text.length > width ? `${text.slice(0, Math.max(0, width - 1))}…` : text;
  return column.align === 'right' ? cut.padStart(width) : cut.padEnd(width);
}

/** A paragraph broken between words, with an indent on every line. */
export function wrapped(text: string, indent = ''): string {
  const lines: string[] = [];
  let line = '';
  for (const word of text.split(/\s+/)) {
    const longer = line === '' ? word : `${line} ${word}`;
    if (longer.length + indent.length > widest && line !== '') {
      lines.push(indent + line);
      line = word;
    } else line = longer;
  }
  return [...lines, indent + line].join('\n');
}
