import type { Column } from '../../document/index.ts';
import { cellText } from '../editing/cell-content.ts';

/** The height of every row of a table, in px. */
export const ROW_HEIGHT = 30;

/** A column's width in px: enough for its heading on about two lines and for what its first rows hold. */
export function columnWidth(column: Column): number {
  const label = column.label ?? '';
  const longest = Math.max(...label.split(/\s+/).map((word) => word.length), 4);
  const heading = Math.max(longest, Math.min(Math.ceil(label.length / 2) + 1, 16), column.name.length + 3);
  const sample = column.kind === 'given' ? (column.chunks[0] ?? []).slice(0, 50) : [];
  const content = Math.max(0, ...sample.map((cell) => cellText(cell).length));
  const least = isText(column) ? 9 : 10;
  return Math.round(Math.max(least, heading, Math.min(content + 2, 34)) * 7.4 + 18);
}

/** Whether a column holds words, which stand left, rather than numbers, which stand right. */
export function isText(column: Column): boolean {
  return column.kind === 'given' && (column.type === 'text' || column.type === 'truth');
}
