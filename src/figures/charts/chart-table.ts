import type { DrawingTable } from '../drawing.ts';
import { type Along, type ChartData, numberText, plainTitle, type Series, spanOf } from './chart-data.ts';

/** So many rows stand in the table beside a chart; the book's own table has them all. */
const MOST_ROWS = 200;

/** What a chart shows as a table: the column along it, then its series, in the units of their heads. */
export function chartTable({ along, series, rows }: ChartData): DrawingTable {
  const columns = [along, ...series.filter((one) => one.name !== along.name)];
  return {
    head: columns.map((column) => plainTitle(column)),
    rows: Array.from({ length: Math.min(rows, MOST_ROWS) }, (_, row) =>
      columns.map((column) => cellText(column, row)),
    ),
  };
}

function cellText(column: Along | Series, row: number): string {
  const value = column.values[row];
  if (typeof value === 'string') return value;
  return value === undefined || !('unit' in column) ? '' : numberText(value, column.unit);
}

/** What a chart shows, in words. */
export function chartWords(called: string, data: ChartData): string {
  const { along, series, rows } = data;
  const named = series.map((column) => {
    const [least, greatest] = spanOf(column.values);
    const gaps = column.values.reduce((sum, value) => sum + (Number.isNaN(value) ? 1 : 0), 0);
    const from = `from ${numberText(least, column.unit)} to ${numberText(greatest, column.unit)}`;
    const without = gaps === 0 ? '' : `, ${gaps} ${gaps === 1 ? 'row' : 'rows'} without a value`;
    return `${plainTitle(column)} ${from}${without}`;
  });
  const over = series.length === 1 && series[0]?.name === along.name ? '' : ` over ${plainTitle(along)}`;
  const more = rows > MOST_ROWS ? ` The table beside it has the first ${MOST_ROWS}.` : '';
  return `${called}${over}, ${rows} ${rows === 1 ? 'row' : 'rows'}: ${named.join('; ')}.${more}`;
}
