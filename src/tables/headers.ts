import type { TableColumn } from './column.ts';

/** The column a header names, and the unit it states (`''` for none); nothing if it names none. */
export function headerColumn(
  text: string,
  columns: readonly TableColumn[],
): { readonly column: TableColumn; readonly unit: string } | undefined {
  const whole = columnCalled(text, columns);
  if (whole !== undefined) return { column: whole, unit: '' };
  const { name, unit } = splitUnit(text);
  const column = columnCalled(name, columns);
  return column && { column, unit };
}

/** A unit as written, without outer spaces; `-` is none. */
export function unitAsWritten(text: string): string {
  const unit = text.trim();
  return unit === '-' ? '' : unit;
}

/** The unit in the brackets that end a header, whatever it names; `''` for none. */
export function statedUnit(header: string): string {
  return splitUnit(header).unit;
}

const OPENING: Readonly<Record<string, string>> = { ')': '(', ']': '[' };

/** What stands in front of the bracket that ends a header, and what within it. */
function splitUnit(header: string): { readonly name: string; readonly unit: string } {
  const text = header.trim();
  const close = text.at(-1) ?? '';
  const open = OPENING[close];
  if (open === undefined) return { name: text, unit: '' };
  let depth = 0;
  for (let at = text.length - 1; at >= 0; at--) {
    if (text[at] === close) depth++;
    if (text[at] === open) depth--;
    if (depth > 0) continue;
    return { name: text.slice(0, at), unit: unitAsWritten(text.slice(at + 1, -1)) };
  }
  return { name: text, unit: '' };
}

/** The column called so by name or else label, in this case or else in any. */
function columnCalled(text: string, columns: readonly TableColumn[]): TableColumn | undefined {
  const wanted = spaced(text);
  if (wanted === '') return undefined;
  const folded = wanted.toLowerCase();
  return (
    columns.find(({ name }) => name === wanted) ??
    columns.find(({ label }) => label !== undefined && spaced(label) === wanted) ??
    only(columns.filter(({ name }) => name.toLowerCase() === folded)) ??
    only(columns.filter(({ label }) => label !== undefined && spaced(label).toLowerCase() === folded))
  );
}

function only<T>(items: readonly T[]): T | undefined {
  return items.length === 1 ? items[0] : undefined;
}

function spaced(text: string): string {
  return text.trim().replace(/\s+/g, ' ');
}
