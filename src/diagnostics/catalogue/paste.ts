import { entry } from './entry.ts';
import { quoted } from './wording.ts';

const rowsOf = (rows: number): string => (rows === 1 ? '1 row' : `${rows} rows`);
const cellsOf = (columns: number): string => (columns === 1 ? '1 cell' : `${columns} cells`);

/** Problems of what is pasted on the page. */
export const paste = {
  'paste-too-wide': entry<{ columns: number; room: number; table: string }>({
    title: 'Cells pasted beyond the last column of a table',
    explain:
      'Cells pasted into a table stay within it, and here the table has fewer columns to the right than the cells have. Nothing is pasted, so that none of them is lost.',
    words: ({ columns, room, table }) => ({
      message: `${columns} columns of cells, and ${quoted(table)} has ${room} from here to its last one`,
      hint: 'paste further left, or copy fewer columns',
    }),
  }),
  'symbol-among-cells': entry<{ name: string; text: string }>({
    title: 'A symbol pasted with other cells',
    explain:
      'A new symbol is written into every formula that uses it, one symbol at a time. Pasted among other cells it would leave formulas behind, or let them take the symbol of another line, so nothing is pasted.',
    words: ({ name, text }) => ({
      message: `${quoted(text)} would rename ${quoted(name)} among other cells`,
      hint: 'to have the lines themselves, copy them from their reference on and paste again; to put values onto lines, copy from the description on; a symbol is pasted or typed by itself',
    }),
  }),
  'unit-is-value': entry<{ name: string; text: string }>({
    title: 'A value where a unit belongs',
    explain:
      'A number, with or without a unit of its own, is no unit. Put over the unit of a line it would leave the line without one, so nothing is changed.',
    words: ({ name, text }) => ({
      message: `${quoted(text)} is a value, not a unit of ${quoted(name)}`,
      hint: 'put values where the value stands, and here a unit such as “kN” or “1/s”',
    }),
  }),
  'heading-is-value': entry<{ name: string; text: string }>({
    title: 'A value where the heading of a column belongs',
    explain:
      'Who types a number with the heading of a column chosen means a cell of the column. As its heading the number would be in no cell and in no sum, so nothing is changed. A heading may hold numbers beside a word.',
    words: ({ name, text }) => ({
      message: `${quoted(text)} is a value, not a heading of ${quoted(name)}`,
      hint: 'choose a cell below for the value; in a heading write a word beside a number',
    }),
  }),
  'paste-no-place': entry<{ rows: number; columns: number; text: string }>({
    title: 'Cells pasted onto lines that have no place for them',
    explain:
      'Cells from elsewhere go onto lines as new lines (a description and a value each), or into as many cells as are selected. Anything else would overwrite what nobody pointed at, so nothing is pasted.',
    words: ({ rows, columns, text }) => ({
      message: `${rowsOf(rows)} of ${cellsOf(columns)} beginning with ${quoted(text)} find no place on these lines`,
      hint: 'select as many cells as are to be replaced; for new lines copy whole lines of a book, or two columns, descriptions and values',
    }),
  }),
  'paste-on-nothing': entry<{ rows: number; columns: number; text: string }>({
    title: 'Cells pasted where no cell is chosen',
    explain:
      'Cells become new lines where they are descriptions and values; rows of more columns need a table whose columns say what they hold and in which unit.',
    words: ({ rows, columns, text }) => ({
      message: `${rowsOf(rows)} of ${cellsOf(columns)} beginning with ${quoted(text)} find no place: no cell is chosen`,
      hint: 'click the cell that they go to; on a blank sheet add a table first, copy lines from their reference on, or copy two columns, descriptions and values, for new lines',
    }),
  }),
  'paste-over-unlike': entry<{ count: number }>({
    title: 'One cell pasted over cells of a table and what stands beside them',
    explain:
      'One copied cell goes into all cells that are selected. Where headings, a title or lines are selected with the cells of a table, it may be meant for the cells alone or for all of them, so nothing is pasted.',
    words: ({ count }) => ({
      message: `one cell is pasted over ${count}, and they are not all cells of one table`,
      hint: 'select the cells of one table alone, or one heading by itself',
    }),
  }),
  'paste-number-unclear': entry<{ text: string; point: string; comma: string }>({
    title: 'A pasted number that can be read two ways',
    explain:
      'The comma or point in a number from elsewhere may part thousands or decimals, and nothing beside it tells which.',
    words: ({ text, point, comma }) => ({
      message: `${quoted(text)} can be ${point} or ${comma}`,
      hint: `type ${point} or ${comma}`,
    }),
  }),
  'copied-unsound': entry<{ reason: string }>({
    title: 'Cells on the clipboard that are not as Quaybook copies them',
    explain:
      'What was copied says that it comes from Quaybook, but its shape is another. It is not used; the plain text beside it, if there is any, is.',
    severity: 'warning',
    words: ({ reason }) => ({
      message: `what was copied is not as Quaybook copies cells (${reason}), so its plain text is used`,
      hint: 'look at what was pasted, or copy it anew',
    }),
  }),
};
