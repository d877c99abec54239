import { fail, type Outcome, type Problem, problem, succeed } from '../diagnostics/index.ts';
import { standardUnits, type UnitRegistry } from '../units/index.ts';
import type { TableColumn } from './column.ts';
import { commasIn } from './comma-numbers.ts';
import { headerColumn } from './headers.ts';
import { otherFormat } from './other-format.ts';
import {
  DELIMITERS,
  type Delimiter,
  firstRows,
  isBlankRow,
  plainText,
  type TextRow,
  textRows,
} from './records.ts';
import { isSubHeading, withSubHeading } from './sub-headings.ts';
import { isUnitRow } from './unit-row.ts';
import { type UnseenSigns, withoutUnseen } from './unseen-signs.ts';

/** A text as rows of cells, before it is settled what its columns go to. It has at least one row. */
export interface TableText {
  readonly delimiter: Delimiter;
  /** All rows, also those that are left out. */
  readonly rows: readonly TextRow[];
  /** The row that names the columns, if one does. */
  readonly top: TextRow;
  /** The row under it that goes on with its names, if one does; `top` has them together. */
  readonly more: TextRow | undefined;
  /** The row under these, if it has the units of the columns. */
  readonly units: TextRow | undefined;
  /** The lines that are left out as was said. */
  readonly skipped: ReadonlySet<number>;
  /** The units that its headers and cells may have. */
  readonly registry: UnitRegistry;
  /** The lines of the text as they stand. */
  readonly source: readonly string[];
  /** What cannot be seen in it and is left out. */
  readonly unseen: UnseenSigns;
}

/** What may be said of a text before it is parted. */
export interface PartOptions {
  /** Found out if not said. */
  readonly delimiter?: Delimiter;
  /** The standard units if not said. */
  readonly registry?: UnitRegistry;
  /** Lines to leave out, counted from 1. */
  readonly skipped?: ReadonlySet<number>;
}

/** How far down a row that names columns is looked for, under titles and remarks. */
const HEADER_DEPTH = 20;

/**
 * Parts CSV or clipboard text meant for the given columns into rows, and finds the row that names the columns: the
 * first, or one below it that names columns where the first does not. Refused: an empty text, quotation marks that are
 * open or stray, a text that is no text or one of another format.
 */
export function tableText(
  text: string,
  columns: readonly TableColumn[],
  options: PartOptions = {},
): Outcome<TableText> {
  const { registry = standardUnits, skipped = new Set<number>() } = options;
  const { text: seen, unseen } = withoutUnseen(plainText(text));
  const { plain, separator } = withoutSeparatorLine(seen);
  const format = otherFormat(plain);
  if (format !== undefined) return fail(format);
  if (plain.includes('\0')) return fail(problem('table-not-text', { from: 0, to: 0 }, {}));
  const likely = options.delimiter ?? separator ?? likelyDelimiter(plain, columns, registry);
  if (likely === 'commas' || likely === 'spaces') return fail(unclearParting(plain, likely));
  const delimiter = likely;
  const read = textRows(plain, delimiter);
  if (!read.ok) return read;
  const rows = read.value;
  const left = rows.filter(({ line, cells }) => !skipped.has(line) && !isBlankRow({ cells }));
  const top = headerRow(left, columns, registry);
  if (top === undefined) return fail(problem('table-empty', { from: 0, to: 0 }, {}));
  const beneath = left.slice(left.indexOf(top) + 1);
  const [under, ...below] = beneath;
  const isUnits = (row: TextRow | undefined, rest: readonly TextRow[]): row is TextRow =>
    row !== undefined && isUnitRow(row, rest, registry);
  const isMore = under !== undefined && !isUnits(under, below) && isSubHeading(under, top, below);
  const [next, ...rest] = isMore ? below : beneath;
  const units = isUnits(next, rest) ? next : undefined;
  const names = isMore ? { top: withSubHeading(top, under), more: under } : { top, more: undefined };
  return succeed({ delimiter, rows, ...names, units, skipped, registry, source: plain.split('\n'), unseen });
}

/** `sep=;` in the first line is a spreadsheet's remark on the text, not a row of it. */
function withoutSeparatorLine(text: string): { readonly plain: string; readonly separator?: Delimiter } {
  const [, sign] = /^sep=(.)[ ,;|\t]*\n/i.exec(text) ?? [];
  const separator = DELIMITERS.find((one) => one === sign);
  return separator === undefined ? { plain: text } : { plain: text.replace(/^.*/, ''), separator };
}

/** The row that names the most columns near the top; where none does, the first, or the first under lone titles. */
function headerRow(
  rows: readonly TextRow[],
  columns: readonly TableColumn[],
  registry: UnitRegistry,
): TextRow | undefined {
  const [first, ...below] = rows.slice(0, HEADER_DEPTH);
  if (first === undefined || namedIn(first.cells, columns, registry) > 0) return first;
  const ranked = below.map((row) => ({ row, named: namedIn(row.cells, columns, registry) }));
  ranked.sort((a, b) => b.named - a.named);
  const [best] = ranked;
  if (best !== undefined && best.named > 1) return best.row;
  const filled = ({ cells }: TextRow): number => cells.filter((cell) => cell.trim() !== '').length;
  const wide = Math.max(...rows.slice(0, HEADER_DEPTH).map(filled));
  return wide > 2 && filled(first) === 1 ? below.find((row) => filled(row) > 1) : first;
}

function namedIn(cells: readonly string[], columns: readonly TableColumn[], registry: UnitRegistry): number {
  return cells.filter((cell) => headerColumn(cell, columns, registry) !== undefined).length;
}

/**
 * The delimiter with which a row near the top names the most columns, else all rows are as long, else the longest. A text
 * of one number in each line has none. Where commas may part cells or stand in numbers, or only spaces set cells apart,
 * which never show a blank one, it is not found out but asked for.
 */
function likelyDelimiter(
  text: string,
  columns: readonly TableColumn[],
  registry: UnitRegistry,
): Delimiter | 'commas' | 'spaces' {
  const commas = commasIn(text, columns, registry);
  if (commas !== 'between') return commas === 'either' ? 'commas' : '\t';
  const ranked = DELIMITERS.map((delimiter) => partedBy(text, delimiter, columns, registry));
  ranked.sort((a, b) => b.named - a.named || Number(b.isEven) - Number(a.isEven) || b.cells - a.cells);
  const [best] = ranked;
  const { named = 0, isEven = false, cells = 1 } = best ?? {};
  const spaced = partedBy(text, '  ', columns, registry);
  const isSpaced = spaced.named > 1 ? named < 2 : named === 0 && !isEven && spaced.isEven;
  if (isSpaced && !text.includes('\t')) return 'spaces';
  return best === undefined || cells === 1 ? ',' : best.delimiter;
}

/** That a text may be parted in more than one way. */
function unclearParting(text: string, by: 'commas' | 'spaces'): Problem {
  const lines = text.split('\n');
  const at = lines.findIndex((line) =>
    by === 'commas' ? line.includes(',') : /\S[ \u00a0]{2,}\S/.test(line),
  );
  return problem(
    'table-parting-unclear',
    { from: 0, to: 0 },
    { line: at + 1, text: lines[at]?.trim() ?? '', by },
  );
}

/** How many columns the first rows name where a delimiter parts them, and how long they are. */
function partedBy(
  text: string,
  delimiter: Delimiter,
  columns: readonly TableColumn[],
  registry: UnitRegistry,
) {
  const rows = firstRows(text, delimiter, HEADER_DEPTH);
  const named = Math.max(0, ...rows.map((cells) => namedIn(cells, columns, registry)));
  const widths = rows.map((cells) => cells.length);
  const isEven = widths.length > 1 && widths.every((width) => width > 1 && width === widths[0]);
  // A bar may stand in a header or a name; it parts cells where most lines have one.
  const parts = delimiter !== '|' || widths.filter((width) => width > 1).length * 2 > widths.length;
  return parts
    ? { delimiter, named, isEven, cells: Math.max(0, ...widths) }
    : { delimiter, named: 0, isEven: false, cells: 0 };
}
