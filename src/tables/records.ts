/// <reference path="./papaparse.d.ts" />
import papaparse from 'papaparse';
import { fail, type Outcome, problem, succeed } from '../diagnostics/index.ts';

/** What parts the cells of a row; two spaces stand for two or more. */
export type Delimiter = ',' | ';' | '\t' | '|' | '  ';

/** Each delimiter that is found out where nothing is said of it, the rarest within cells first. */
export const DELIMITERS: readonly Delimiter[] = ['\t', '|', ';', ','];

/** One row of a text: which it is, counted from 0; the line it starts at, counted from 1; its cells as written. */
export interface TextRow {
  readonly at: number;
  readonly line: number;
  readonly cells: readonly string[];
  /** Whether a row with nothing in it begins with `""`, which says that it is a row all the same. */
  readonly meant?: true;
}

/** The text with line ends as `\n` and no byte order mark. */
export function plainText(text: string): string {
  return text.replace(/^\ufeff/, '').replace(/\r\n?/g, '\n');
}

/**
 * All rows of a text (RFC 4180, with any of the delimiters), blank lines at its start and end left out. A quotation
 * mark that is never closed, or text after a closing one, is refused. Where vertical bars part the cells, bars at both
 * ends of all lines frame them, and a line of dashes is a drawn one, no row, unless its dashes may say that there is no
 * number.
 *
 * @param text as {@link plainText} gives it
 */
export function textRows(text: string, delimiter: Delimiter): Outcome<readonly TextRow[]> {
  const { data: raw, errors } = papaparse.parse(...parseable(text, delimiter));
  const data = text.includes('="') ? raw.map((cells) => cells.map(withoutFormula)) : raw;
  const quote = errors.find(({ code }) => code === 'MissingQuotes' || code === 'InvalidQuotes');
  if (quote !== undefined) {
    const line = text.slice(0, quote.index ?? 0).split('\n').length;
    const code = quote.code === 'MissingQuotes' ? 'table-quote-open' : 'table-quote-stray';
    return fail(problem(code, { from: 0, to: 0 }, { line }));
  }
  const source = text.split('\n');
  const rows: Omit<TextRow, 'at'>[] = [];
  let line = 1;
  for (const cells of data) {
    const meant = source[line - 1]?.startsWith('""') === true && cells.every((cell) => cell === '');
    rows.push({ line, cells, ...(meant && { meant }) });
    line += 1;
    for (const cell of cells) if (cell.includes('\n')) line += cell.split('\n').length - 1;
  }
  const first = rows.findIndex((row) => row.meant === true || !isBlankLine(row.cells));
  const last = rows.findLastIndex((row) => row.meant === true || !isBlankLine(row.cells));
  const within = first < 0 ? [] : rows.slice(first, last + 1);
  const unframed = delimiter === '|' ? withoutFrame(within) : within;
  return succeed(unframed.map((row, at) => ({ at, ...row })));
}

/** A text for the parser, which knows delimiters of one sign: spaces that part cells become tabs. */
function parseable(
  text: string,
  delimiter: Delimiter,
): readonly [text: string, options: { readonly delimiter: string; readonly newline: '\n' }] {
  if (delimiter !== '  ') return [text, { delimiter, newline: '\n' }];
  const tabbed = text
    .split('\n')
    .map((line) => line.trim().replace(/[ \u00a0]{2,}/g, '\t'))
    .join('\n');
  return [tabbed, { delimiter: '\t', newline: '\n' }];
}

/** Rows parted by vertical bars without the bars that frame them and the lines drawn between them. */
function withoutFrame<Row extends Pick<TextRow, 'cells'>>(rows: readonly Row[]): readonly Row[] {
  const filled = rows.filter(({ cells }) => !isBlankLine(cells));
  const isOpen = (at: number): boolean => filled.every(({ cells }) => cells.at(at)?.trim() === '');
  const [from, to] = [isOpen(0) ? 1 : 0, isOpen(-1) ? -1 : undefined];
  const unframed = rows.map((row) =>
    isBlankLine(row.cells) ? row : { ...row, cells: row.cells.slice(from, to) },
  );
  const top = unframed.findIndex(({ cells }) => !isBlankLine(cells) && !cells.every(isDashes));
  return unframed.filter(({ cells }, at) => !isDrawn(cells, at - top));
}

/**
 * Whether a row of cells is a drawn line, `below` rows under the headers. Dashes in each of several cells are one, and so
 * are dashes right under the headers; but two dashes, or any in a lone cell further down, may stand for no number.
 */
function isDrawn(cells: readonly string[], below: number): boolean {
  if (!cells.every(isDashes)) return false;
  const isLong = cells.every((cell) => /-{3,}|:/.test(cell));
  return below < 0 || (below === 1 ? isLong || cells.length > 1 : isLong && cells.length > 1);
}

function isDashes(cell: string): boolean {
  return /^\s*:?-{2,}:?\s*$/.test(cell);
}

/** Programs write ="0012" so that a spreadsheet keeps the signs between the marks as they are. */
const CONSTANT = /^\s*="((?:[^"]|"")*)"\s*$/;

function withoutFormula(cell: string): string {
  const [, inner] = cell.includes('="') ? (CONSTANT.exec(cell) ?? []) : [];
  return inner === undefined ? cell : inner.replaceAll('""', '"');
}

/** The cells of the first rows of a text that are no blank lines, if it had this delimiter. */
export function firstRows(text: string, delimiter: Delimiter, most: number): readonly (readonly string[])[] {
  const [parted, options] = parseable(text.replace(/^\s*\n/, ''), delimiter);
  const { data } = papaparse.parse(parted, { ...options, preview: most });
  return data.filter((cells) => !isBlankLine(cells)).map((cells) => cells.map(withoutFormula));
}

/** Whether a row has nothing in any of its cells and is not meant so. */
export function isBlankRow({ cells, meant }: Pick<TextRow, 'cells' | 'meant'>): boolean {
  return meant !== true && cells.every((cell) => cell.trim() === '');
}

function isBlankLine(cells: readonly string[]): boolean {
  return cells.length === 1 && cells[0]?.trim() === '';
}
