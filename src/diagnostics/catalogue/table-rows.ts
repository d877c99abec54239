import { entry } from './entry.ts';
import { linesCalled, type RowFacts, type RowsFacts } from './table-wording.ts';
import { quoted } from './wording.ts';

/** A unit behind a number. */
const beside = (unit: string): string => (unit === '' ? '' : ` ${unit}`);

/** Problems of the rows of a text: which of them are items of the table, and which are none. */
export const tableRows = {
  'rows-above-headers': entry<RowsFacts & { header: number }>({
    title: 'Rows above the headers',
    explain:
      'The row that names the columns is not the first of the text. What stands above it goes to no column; it is left out only when that is said.',
    words: ({ lines, text, header }) => ({
      message: `${linesCalled(lines)} ${lines.length === 1 ? 'stands' : 'stand'} above the headers in line ${header}: ${quoted(text)}`,
      hint: 'say that notes are left out',
    }),
  }),
  'row-total': entry<RowsFacts & { first?: true }>({
    title: 'A row that seems to be a total',
    explain:
      'The row says total and nothing else, or begins so and comes to the sum of the rows above it, or has no words and repeats that sum. As a row of the table it would count twice, so it is asked for: left out, or in.',
    words: ({ lines, text, first }) => ({
      message: `${linesCalled(lines)} ${lines.length === 1 ? 'seems to be a total' : 'seem to be totals'}${first === true ? '' : ' of the rows above'}: ${quoted(text)}`,
      hint: 'say whether totals are left out or are rows like the others, or leave out single lines',
    }),
  }),
  'row-sum': entry<RowsFacts>({
    title: 'A row that is the sum of others',
    explain:
      'All numbers of the row are the sums of those in two or more rows above it, since the last total, as far as rounding of each of them lets that be seen. It may be an item, or a total in words that are not known as such, and would then count twice. So it is asked for: left out, or in.',
    words: ({ lines, text }) => ({
      message: `${linesCalled(lines)} ${lines.length === 1 ? 'has' : 'have'} numbers that are the sums of the rows above, as far as they are rounded: ${quoted(text)}`,
      hint: 'say whether rows that are sums are left out or are rows like the others, or leave out single lines',
    }),
  }),
  'row-note': entry<RowsFacts>({
    title: 'A row that seems to be a note',
    explain:
      'The row has words in one cell and nothing else, where the rows beside it have more. As a row of the table it would be an item without quantities, so it is asked for: left out, or in.',
    words: ({ lines, text }) => ({
      message: `${linesCalled(lines)} ${lines.length === 1 ? 'has' : 'have'} one cell of words and nothing else: ${quoted(text)}`,
      hint: 'say whether notes are left out or are rows like the others',
    }),
  }),
  'row-all': entry<RowsFacts>({
    title: 'A row that says all and is no sum',
    explain:
      'The row is called like a sum of all others, and its number is another one than that of the rows above it. It may be an item, or a total that does not add up; so it is asked for.',
    words: ({ lines, text }) => ({
      message: `${linesCalled(lines)} ${lines.length === 1 ? 'is called' : 'are called'} like a total and ${lines.length === 1 ? 'is' : 'are'} not the sum of the rows above: ${quoted(text)}`,
      hint: 'say whether totals are left out or are rows like the others',
    }),
  }),
  'row-called-total': entry<RowsFacts>({
    title: 'An item that is called like a total',
    explain:
      'The name of the row begins like that of a total, and its numbers are not the sums of the rows above it, nor near them. So it is taken as an item, as a plinth for a total station is one.',
    severity: 'warning',
    words: ({ lines, text }) => ({
      message: `${linesCalled(lines)} ${lines.length === 1 ? 'is called like a total and is taken as a row' : 'are called like totals and are taken as rows'} like the others, for the rows above do not come to that: ${quoted(text)}`,
      hint:
        lines.length === 1 ? 'leave that line out if it is a total' : 'leave those lines out that are totals',
    }),
  }),
  'row-numbering': entry<RowsFacts>({
    title: 'A row that numbers the columns',
    explain:
      'Under the headers stands 1, 2, 3 …: the numbers of the columns, as it seems, and not an item of the table. So it is asked for: left out, or in.',
    words: ({ lines, text }) => ({
      message: `${linesCalled(lines)} seems to number the columns: ${quoted(text)}`,
      hint: 'say whether notes are left out or are rows like the others',
    }),
  }),
  'row-unnamed': entry<RowsFacts>({
    title: 'A row of numbers without words',
    explain:
      'The rows beside it say what they are, and this one has numbers alone. It may be an item or a sum of others, so it is asked for: left out, or in.',
    words: ({ lines, text }) => ({
      message: `${linesCalled(lines)} ${lines.length === 1 ? 'has' : 'have'} numbers and no words, unlike the rows beside: ${quoted(text)}`,
      hint: 'say whether rows without words are left out or are rows like the others',
    }),
  }),
  'rows-left-out': entry<RowsFacts>({
    title: 'Rows left out',
    explain: 'It was said that these rows of the text are none of the table. Nothing of them is taken.',
    severity: 'warning',
    words: ({ lines, text }) => ({
      message: `${linesCalled(lines)} of the text ${lines.length === 1 ? 'stays' : 'stay'} out: ${quoted(text)}`,
    }),
  }),
  'total-apart': entry<{
    line: number;
    header: string;
    said: number;
    sum: number;
    unit: string;
    written: string;
    isRounding: boolean;
  }>({
    title: 'A total that the rows above it do not come to',
    explain:
      'A row left out as a total says another number than the rows it is of come to; numbers in several units are compared in one of them. Where the difference is no more than their rounding leaves open, that may be all; else a row is missing, one is counted twice, or a number is another one.',
    severity: 'warning',
    words: ({ line, header, said, sum, unit, written, isRounding }) => {
      const off = Number((said - sum).toPrecision(6));
      const by = `${Math.abs(off)}${beside(unit)} ${off < 0 ? 'more' : 'less'}`;
      const says = written === '' ? `${said}${beside(unit)}` : `${written}, ${said}${beside(unit)},`;
      return {
        message: `line ${line}, left out as a total, says ${says} in ${quoted(header)}; the rows above come to ${sum}${beside(unit)}, ${by}`,
        hint: isRounding
          ? 'rounding of the rows may be all of it'
          : 'a row may be missing, or a number wrong',
      };
    },
  }),
  'total-uncompared': entry<{ line: number; header: string; said: string; other: string }>({
    title: 'A total that is not compared with the rows above it',
    explain:
      'A row left out as a total stands in another kind of unit than the rows above it, or says no unit where they have several. So nobody knows here whether the rows come to it.',
    severity: 'warning',
    words: ({ line, header, said, other }) => ({
      message: `line ${line}, left out as a total, says ${quoted(said)} in ${quoted(header)} and is not compared with the rows above: ${other === '' ? 'its unit is not theirs' : `${quoted(other)} among them is in a unit of another kind`}`,
      hint: 'add the rows up by hand',
    }),
  }),
  'headings-change': entry<{ line: number; header: string; again: string }>({
    title: 'Headings again, with another unit',
    explain:
      'A row among the others says the headings again, and a unit in them is another one than at the top. The rows below it are in that unit, and a column has one unit only where its heading says it.',
    words: ({ line, header, again }) => ({
      message: `line ${line} says the headings again, with ${quoted(again)} where the first have ${quoted(header)}`,
      hint: 'write the unit beside each number below it, and take that line out; or take the rows below it as a text of their own',
    }),
  }),
  'rows-blank-between': entry<{ lines: readonly number[] }>({
    title: 'Blank rows between numbers',
    explain:
      'The numbers go over rows that hold other things beside them, and nothing in the text says which row is which but its place. A blank row may be a row without a number, or a gap; left out, all below it would move up. So it is asked for.',
    words: ({ lines }) => ({
      message: `${linesCalled(lines)} ${lines.length === 1 ? 'is' : 'are'} blank, and the numbers below go beside what stands there already`,
      hint: 'say whether blank rows stay in their places or are left out',
    }),
  }),
  'rows-heading': entry<{ lines: readonly number[] }>({
    title: 'Headers that are repeated',
    explain:
      'Rows of the text say the headers again, word for word, as each page of a printed table does. They are none of the table and stay out.',
    severity: 'warning',
    words: ({ lines }) => ({
      message: `${linesCalled(lines)} ${lines.length === 1 ? 'repeats' : 'repeat'} the headers and ${lines.length === 1 ? 'stays' : 'stay'} out`,
    }),
  }),
  'row-short': entry<RowFacts & { cells: number; columns: number }>({
    title: 'A row with cells missing',
    explain:
      'A row of the text has fewer cells than there are columns, so its cells may stand in the wrong ones. The cells it lacks at its end are blank.',
    words: ({ line, cells, columns }) => ({
      message: `line ${line} has ${cells} of ${columns} cells`,
      hint: 'look for a missing separator or a broken line; a blank cell at the end needs its separator',
    }),
  }),
  'row-short-spaced': entry<RowFacts & { cells: number; columns: number }>({
    title: 'A row with cells missing among spaces',
    explain:
      'Spaces part the cells of the text, and a row has fewer than there are columns. A blank cell does not show among spaces, so nobody can tell which one it is.',
    words: ({ line, cells, columns }) => ({
      message: `line ${line} has ${cells} of ${columns} cells, and spaces do not show which of them is blank`,
      hint: 'write a dash in the blank cell',
    }),
  }),
  'rows-ended': entry<{ lines: readonly number[] }>({
    title: 'Rows that end early',
    explain:
      'Rows of the text have fewer cells than there are columns; those they lack are blank, as was said.',
    severity: 'warning',
    words: ({ lines }) => ({
      message: `${linesCalled(lines)} ${lines.length === 1 ? 'ends' : 'end'} early, and the last cells there are blank`,
    }),
  }),
  'signs-unseen': entry<{ count: number; signs: readonly string[]; lines: readonly number[] }>({
    title: 'Signs that cannot be seen',
    explain:
      'The text has signs without width or shape, such as a zero-width space, which programs and web pages leave in words. With one of them a word is another than the same word without, and nobody can see it; so they are left out, and told by their numbers in Unicode.',
    severity: 'warning',
    words: ({ count, signs, lines }) => ({
      message: `${count === 1 ? 'a sign that cannot be seen is' : `${count} signs that cannot be seen are`} left out (${signs.join(', ')} in ${linesCalled(lines)})`,
    }),
  }),
  'row-long': entry<RowFacts & { cells: number; columns: number; extra: string; number: string }>({
    title: 'A row with cells too many',
    explain:
      'A row of the text has more cells than its first row, so its cells may stand in the wrong columns. Nothing is taken until it is mended: most often the comma between the thousands of a number broke it in two.',
    words: (facts) => ({
      message: `line ${facts.line} has ${facts.cells} cells for ${facts.columns} columns; ${quoted(facts.extra)} is left over`,
      hint:
        facts.columns === 1
          ? 'say that nothing parts cells, so that a line is one cell, or put a cell that has the separator in it in quotation marks'
          : facts.number === ''
            ? 'put a cell that has the separator in it in quotation marks'
            : `a number with a thousands comma needs quotation marks: "${facts.number}"`,
    }),
  }),
  'row-ends-blank': entry<RowFacts & { cells: number; columns: number; first: string; second: string }>({
    title: 'A row with blank cells too many, and numbers side by side',
    explain:
      'A row of the text has more cells than there are columns, and the last are blank. Programs write such commas at the end of lines; but where two numbers stand side by side, the comma between them may belong to one number, and the cells behind it would stand in the wrong columns.',
    words: (facts) => ({
      message: `line ${facts.line} has ${facts.cells} cells for ${facts.columns} columns, the last of them blank: ${facts.first} and ${facts.second} in it may be two cells or the number ${facts.first},${facts.second}`,
      hint: `write "${facts.first},${facts.second}" in quotation marks for one number, or say that each comma parts two cells`,
    }),
  }),
  'row-blank': entry<{ lines: readonly number[] }>({
    title: 'Blank rows',
    explain: 'Rows of the text with nothing in any of their cells. They are left out, and counted.',
    severity: 'warning',
    words: ({ lines }) => ({
      message:
        lines.length === 1
          ? `a blank row is left out (${linesCalled(lines)})`
          : `${lines.length} blank rows are left out (${linesCalled(lines)})`,
    }),
  }),
} as const;
