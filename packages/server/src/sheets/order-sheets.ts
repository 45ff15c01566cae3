/** Order sheets to hand to suppliers: CSV, and XLSX with numbers as numbers. */
import { type OrderRow, orders } from '@leywright/planner';
import { stringify } from 'csv-stringify/sync';
import writeXlsxFile from 'write-excel-file/node';

export function ordersCsv(rows: readonly OrderRow[]): string {
  const columns = orders.orderColumns;
  // A spreadsheet runs a cell that begins so as a formula; an apostrophe keeps it text.
  const safe = (cell: OrderRow[keyof OrderRow]) =>
    typeof cell === 'string' && /^[=+\-@\t\r]/.test(cell) ? `'${cell}` : cell;
  return stringify([columns, ...rows.map((row) => columns.map((column) => safe(row[column]) ?? ''))]);
}

export async function ordersXlsx(rows: readonly OrderRow[]): Promise<Buffer> {
  const head = orders.orderColumns.map((column) => ({ value: column, fontWeight: 'bold' as const }));
  const cells = rows.map((row) =>
    orders.orderColumns.map((column) => {
      const value = row[column];
      if (value === null) return null;
      return typeof value === 'number' ? { type: Number, value } : { type: String, value };
    }),
  );
  return await writeXlsxFile([head, ...cells], { buffer: true, stickyRowsCount: 1 });
}
