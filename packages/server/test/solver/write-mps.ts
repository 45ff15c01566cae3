/** Writes a linear model as free-form MPS, which every solver reads. Rows have one side, are exact, or are free. */
import type { LinearModel } from '@leywright/planner';

export function mpsOf(model: LinearModel): string {
  const rows = Array.from({ length: model.rowCount }, (_, row) => ` ${kindOf(model, row)} r${row}`);
  const right = Array.from({ length: model.rowCount }, (_, row) => [row, sideOf(model, row)] as const)
    .filter(([, side]) => side !== 0)
    .map(([row, side]) => ` rhs r${row} ${side}`);
  const bounds = Array.from({ length: model.columnCount }, (_, column) => boundsOf(model, column)).flat();
  return [
    'NAME promise',
    'ROWS',
    ' N cost',
    ...rows,
    'COLUMNS',
    ...columnLines(model),
    'RHS',
    ...right,
    'BOUNDS',
    ...bounds,
    'ENDATA',
    '',
  ].join('\n');
}

function kindOf(model: LinearModel, row: number): 'E' | 'G' | 'L' | 'N' {
  const low = model.rowLow[row] ?? 0;
  const high = model.rowHigh[row] ?? 0;
  if (low === high) return 'E';
  if (Number.isFinite(low) && Number.isFinite(high)) throw new Error(`Row ${row} has two sides.`);
  if (Number.isFinite(low)) return 'G';
  return Number.isFinite(high) ? 'L' : 'N';
}

function sideOf(model: LinearModel, row: number): number {
  const low = model.rowLow[row] ?? 0;
  const high = model.rowHigh[row] ?? 0;
  if (Number.isFinite(low)) return low;
  return Number.isFinite(high) ? high : 0;
}

function columnLines(model: LinearModel): readonly string[] {
  const byColumn = Array.from({ length: model.columnCount }, (): string[] => []);
  model.costWeight.forEach((cost, column) => {
    byColumn[column]?.push(` c${column} cost ${cost}`);
  });
  for (let row = 0; row < model.rowCount; row += 1)
    for (let at = model.rowStarts[row] ?? 0; at < (model.rowStarts[row + 1] ?? 0); at += 1) {
      const column = model.entryIndex[at] ?? 0;
      byColumn[column]?.push(` c${column} r${row} ${model.entryValue[at]}`);
    }
  return byColumn.flat();
}

function boundsOf(model: LinearModel, column: number): readonly string[] {
  const low = model.columnLow[column] ?? 0;
  const high = model.columnHigh[column] ?? 0;
  if (low === high) return [` FX b c${column} ${low}`];
  return [
    ...(low === 0 ? [] : [` LO b c${column} ${low}`]),
    ...(Number.isFinite(high) ? [` UP b c${column} ${high}`] : []),
  ];
}
