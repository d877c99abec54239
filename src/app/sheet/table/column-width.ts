import type { Column } from '../../../document/index.ts';
import { plainWidth } from '../../../figures/index.ts';
import type { CellView, ColumnView } from '../../../record/index.ts';
import { PRINTED_NOTES } from '../paper/page-measure.ts';

/** The height of every row of a table, in px. */
export const ROW_HEIGHT = 30;

/** Room beside what a cell holds, and the sizes of the letters of cells and headings, in px; the styles have the same. */
interface Type {
  readonly padding: number;
  readonly letters: number;
  readonly heading: number;
}

/** The type of tables on the screen and on paper. */
const onScreen: Type = { padding: 18, letters: 15, heading: 13 };
export const onPaper: Type = { padding: 10, letters: PRINTED_NOTES, heading: PRINTED_NOTES };

/** A digit is half as wide as letters are large. */
const DIGIT = 0.5;

/** Paper sets letters a little wider than the screen: no word is to be broken there for a px. */
const SPARE = 1.05;

/** How many lines a heading may take, and how many characters of a cell's text a column makes room for. */
const HEADING_LINES = 3;
const MOST_CHARACTERS = 30;

/** How many rows are looked at for what a column holds. */
const SAMPLE = 48;

/** A column's width in px: enough for its heading on three lines and for what its rows show, of a long table a sample. */
export function columnWidth(view: ColumnView, length: number, type = onScreen): number {
  const { column, unit } = view;
  const heading = headingWidth(column.label ?? '', type.heading);
  const widest = Math.max(heading, symbolWidth(column.name, unit), contentWidth(view, length, type.letters));
  return Math.ceil(widest + type.padding);
}

/** The width in px of the numbers in front of so many rows. */
export function numberWidth(length: number): number {
  return Math.max(34, String(length).length * 7 + 20);
}

/** Whether a column holds words, which stand left, rather than numbers, which stand right. */
export function isText(column: Column): boolean {
  return column.kind === 'given' && (column.type === 'text' || column.type === 'truth');
}

/** So many characters stand beside the text of a cell in some states: a sign, a word. */
const BESIDE: Readonly<Partial<Record<CellView['state'], number>>> = { bad: 2, stated: 7 };

function contentWidth({ column, at }: ColumnView, length: number, letters: number): number {
  const digit = DIGIT * letters;
  const step = Math.max(1, Math.floor(length / SAMPLE));
  let widest = 5 * digit;
  for (let row = 0; row < length; row += step) {
    const { text, state, behind = '' } = at(row);
    widest = Math.max(widest, textWidth(column, text + behind, letters) + (BESIDE[state] ?? 0) * digit);
  }
  // In steps of two, so that a digit more or less does not move the columns to the right.
  return 2 * digit * Math.ceil(Math.min(widest, MOST_CHARACTERS * digit) / (2 * digit));
}

/** Digits are all as wide as one another; the words of a calculated column are words as well. */
function textWidth(column: Column, text: string, letters: number): number {
  const isWords = isText(column) || /\p{L}{3}/u.test(text);
  return isWords ? plainWidth(text, letters) * SPARE : text.length * DIGIT * letters;
}

/** The least width that a heading can be set in on a few lines, no word of it broken but behind a hyphen. */
function headingWidth(label: string, letters: number): number {
  const words = (label.match(/[^\s-]+-*|-+/g) ?? []).map((word) => plainWidth(word, letters) * SPARE);
  const space = plainWidth(' ', letters) * SPARE;
  let width = Math.max(0, ...words);
  while (lines(words, width, space) > HEADING_LINES) width += 1;
  return width;
}

function lines(words: readonly number[], width: number, space: number): number {
  let [count, filled] = [1, -space];
  for (const word of words) {
    if (filled + space + word <= width) filled += space + word;
    else [count, filled] = [count + 1, word];
  }
  return count;
}

/** A symbol with its index below, and the unit behind it. */
function symbolWidth(name: string, unit: string): number {
  const [head = '', ...below] = name.split('_');
  return head.length * 9 + below.join(',').length * 7 + (unit === '' ? 0 : 4 + unit.length * 6.5);
}
