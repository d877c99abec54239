import type { Column } from '../../../document/index.ts';
import { plainWidth } from '../../../figures/index.ts';
import type { CellView, ColumnView } from '../../view-model/cell-view.ts';

/** The height of every row of a table, in px. */
export const ROW_HEIGHT = 30;

/** Room beside what a cell holds, the width of its digits, and the sizes of its letters, in px; the styles have the same type. */
const PADDING = 18;
const DIGIT = 7.5;
const LETTERS = 15;
const HEADING_LETTERS = 13;

/** Paper sets letters a little wider than the screen: no word is to be broken there for a px. */
const SPARE = 1.05;

/** How many lines a heading may take, and how many characters of a cell's text a column makes room for. */
const HEADING_LINES = 3;
const MOST_CHARACTERS = 30;

/** How many rows are looked at for what a column holds. */
const SAMPLE = 48;

/** A column's width in px: enough for its heading on three lines and for what its rows show, of a long table a sample. */
export function columnWidth(view: ColumnView, length: number): number {
  const { column, unit } = view;
  const heading = headingWidth(column.label ?? '');
  return Math.ceil(Math.max(heading, symbolWidth(column.name, unit), contentWidth(view, length)) + PADDING);
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

function contentWidth({ column, at }: ColumnView, length: number): number {
  const step = Math.max(1, Math.floor(length / SAMPLE));
  let widest = 5 * DIGIT;
  for (let row = 0; row < length; row += step) {
    const { text, state, behind = '' } = at(row);
    widest = Math.max(widest, textWidth(column, text + behind) + (BESIDE[state] ?? 0) * DIGIT);
  }
  // In steps of two, so that a digit more or less does not move the columns to the right.
  return 2 * DIGIT * Math.ceil(Math.min(widest, MOST_CHARACTERS * DIGIT) / (2 * DIGIT));
}

/** Digits are all as wide as one another; the words of a calculated column are words as well. */
function textWidth(column: Column, text: string): number {
  const isWords = isText(column) || /\p{L}{3}/u.test(text);
  return isWords ? plainWidth(text, LETTERS) * SPARE : text.length * DIGIT;
}

/** The least width that a heading can be set in on a few lines, no word of it broken but behind a hyphen. */
function headingWidth(label: string): number {
  const words = (label.match(/[^\s-]+-*|-+/g) ?? []).map((word) => plainWidth(word, HEADING_LETTERS) * SPARE);
  let width = Math.max(0, ...words);
  while (lines(words, width) > HEADING_LINES) width += 1;
  return width;
}

const SPACE = plainWidth(' ', HEADING_LETTERS) * SPARE;

function lines(words: readonly number[], width: number): number {
  let [count, filled] = [1, -SPACE];
  for (const word of words) {
    if (filled + SPACE + word <= width) filled += SPACE + word;
    else [count, filled] = [count + 1, word];
  }
  return count;
}

/** A symbol with its index below, and the unit behind it. */
function symbolWidth(name: string, unit: string): number {
  const [head = '', ...below] = name.split('_');
  return head.length * 9 + below.join(',').length * 7 + (unit === '' ? 0 : 4 + unit.length * 6.5);
}
