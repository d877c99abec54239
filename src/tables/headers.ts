import { fail, type Outcome, type Problem, problem, succeed } from '../diagnostics/index.ts';
import { columnWords, isNumeric, type TableColumn } from './column.ts';

/** A header that was understood: which column it names, and the unit it states (`''` for none). */
export interface Header {
  readonly position: number;
  readonly column: TableColumn;
  readonly unit: string;
}

/** The headers of a text, by position, and what there is to know about them. */
export interface Headers {
  readonly headers: readonly Header[];
  readonly warnings: readonly Problem[];
}

const NOWHERE = { from: 0, to: 0 };

/** The column a header names, and the unit it states; nothing if it names none. */
export function headerColumn(
  text: string,
  columns: readonly TableColumn[],
): { readonly column: TableColumn; readonly unit: string } | undefined {
  const whole = columnCalled(text, columns);
  if (whole !== undefined) return { column: whole, unit: '' };
  const parts = splitUnit(text.trim());
  const column = columnCalled(parts?.name ?? '', columns);
  return column && { column, unit: parts?.unit ?? '' };
}

const OPENING: Readonly<Record<string, string>> = { ')': '(', ']': '[' };

/** What stands in front of the bracket that ends a header, and what within it; `-` is no unit. */
function splitUnit(text: string): { readonly name: string; readonly unit: string } | undefined {
  const close = text.at(-1) ?? '';
  const open = OPENING[close];
  if (open === undefined) return undefined;
  let depth = 0;
  for (let at = text.length - 1; at >= 0; at--) {
    if (text[at] === close) depth++;
    if (text[at] === open) depth--;
    if (depth > 0) continue;
    const unit = text.slice(at + 1, -1).trim();
    return { name: text.slice(0, at), unit: unit === '-' ? '' : unit };
  }
  return undefined;
}

/**
 * Understands the first row of a text. Unknown headers, two headers of one column, units for columns without numbers
 * and a row that names no column at all are refused, for their values would go astray.
 *
 * @param leaveOut whether unknown headers are pointed out and left aside instead
 */
export function readHeaders(
  cells: readonly string[],
  columns: readonly TableColumn[],
  leaveOut: boolean,
): Outcome<Headers> {
  const given = columns.filter(({ kind }) => kind === 'given').map(columnWords);
  const found = cells.map((text) => headerColumn(text, columns));
  if (found.every((one) => one === undefined)) return noHeader(cells, given);
  const headers: Header[] = [];
  const problems: Problem[] = [];
  const warnings: Problem[] = [];
  const unknown: string[] = [];
  const texts = new Map<TableColumn, string>();
  for (const [position, one] of found.entries()) {
    const header = cells[position]?.trim() ?? '';
    if (one === undefined) {
      if (header !== '') unknown.push(header);
      continue;
    }
    const { column, unit } = one;
    const first = texts.get(column);
    texts.set(column, header);
    if (first !== undefined) {
      problems.push(problem('column-twice', NOWHERE, { header, first, column: column.name }));
    } else if (column.kind !== 'given') {
      warnings.push(problem('column-calculated', NOWHERE, { header, column: column.name }));
    } else if (unit !== '' && !isNumeric(column)) {
      const facts = { header, unit, column: column.name, type: column.type ?? 'number' };
      problems.push(problem('column-unit-misplaced', NOWHERE, facts));
    } else headers.push({ position, column, unit });
  }
  if (unknown.length > 0) {
    if (leaveOut) warnings.push(problem('column-left-out', NOWHERE, { headers: unknown }));
    else problems.unshift(problem('column-unknown', NOWHERE, { headers: unknown, columns: given }));
  }
  const [first, ...others] = problems;
  return first === undefined ? succeed({ headers, warnings }) : fail(first, ...others);
}

/** A first row that names nothing: unknown headers if it looks like a header, else data. */
function noHeader(cells: readonly string[], columns: readonly string[]): Outcome<never> {
  const isData = cells.some((cell) => cell.trim() === '' || /^[\s$(+\-−.]*\d/.test(cell));
  return fail(
    isData
      ? problem('table-header-missing', NOWHERE, { first: cells.join(', '), columns })
      : problem('column-unknown', NOWHERE, { headers: cells.map((cell) => cell.trim()), columns }),
  );
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
