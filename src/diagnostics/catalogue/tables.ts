import { entry, type NoFacts } from './entry.ts';
import { listed, quoted } from './wording.ts';

/** Where something stands in text brought in: the row under the header, counted from 1, and the line of the text. */
interface RowFacts {
  readonly [fact: string]: number | string;
  readonly row: number;
  readonly line: number;
}

function place({ row, line }: RowFacts): string {
  return `row ${row} (line ${line})`;
}

/** A column of text brought in, its position counted from 1: by its header, or else by its first value. */
interface TextColumnFacts {
  readonly [fact: string]: number | string;
  readonly position: number;
  readonly header: string;
  readonly first: string;
}

function textColumn({ position, header, first }: TextColumnFacts): string {
  return header === '' ? `column ${position} (${quoted(first)})` : quoted(header);
}

function columnsCalled(headers: readonly string[]): string {
  return `${headers.length === 1 ? 'column' : 'columns'} ${listed(headers.map(quoted), 'and')}`;
}

/** Problems of tables brought in from CSV or clipboard text. */
export const tables = {
  'table-empty': entry<NoFacts>({
    title: 'A text without a table',
    explain: 'The text brought in has nothing in it, not even a header.',
    words: () => ({ message: 'the text has no rows', hint: 'its first row names the columns' }),
  }),
  'table-header-missing': entry<{ first: string; columns: readonly string[] }>({
    title: 'A table without a header',
    explain:
      'The first row of the text names the columns, so that no value can land in the wrong one. This first row has no name of a column.',
    words: ({ first, columns }) => ({
      message: `the first row is ${quoted(first)}, and should name columns of the table`,
      ...(columns.length > 0 && { hint: `its columns are ${listed(columns, 'and')}` }),
    }),
  }),
  'table-nothing-taken': entry<NoFacts>({
    title: 'A text of which nothing is taken',
    explain:
      'No column of the text goes to a column that takes values: each is left out, or named like one that the table computes. Its rows would be blank.',
    words: () => ({
      message: 'no column of the text goes to a column of the table that takes values',
      hint: 'at least one has to',
    }),
  }),
  'table-too-many-rows': entry<{ rows: number; limit: number }>({
    title: 'A text with too many rows',
    explain: 'The length of a table is limited; nothing of a longer text is taken.',
    words: ({ rows, limit }) => ({
      message: `the text has ${rows} rows, and a table has at most ${limit}`,
      hint: 'bring it in as several tables',
    }),
  }),
  'table-quote-open': entry<{ line: number }>({
    title: 'A quotation mark that is never closed',
    explain:
      'A cell that starts with a double quotation mark ends with the next one. Without it the rest of the text would be one cell.',
    words: ({ line }) => ({
      message: `the quotation mark that opens a cell at line ${line} is never closed`,
      hint: 'close it, or write a mark that belongs to the text twice within quotation marks',
    }),
  }),
  'table-quote-stray': entry<{ line: number }>({
    title: 'Text behind a quoted cell',
    explain: 'After the quotation mark that closes a cell only the next cell or row can follow.',
    words: ({ line }) => ({
      message: `a quoted cell at line ${line} goes on after its closing quotation mark`,
      hint: 'write a mark that belongs to the text twice',
    }),
  }),
  'column-unknown': entry<{ headers: readonly string[]; columns: readonly string[] }>({
    title: 'A column the table does not have',
    explain: 'A header of the text brought in matches no column of the table it is meant for.',
    words: ({ headers, columns }) => ({
      message: `the table has no ${columnsCalled(headers)}`,
      ...(columns.length > 0 && { hint: `its columns are ${listed(columns, 'and')}` }),
    }),
  }),
  'column-undecided': entry<{ columns: readonly TextColumnFacts[]; data: boolean }>({
    title: 'A column of a text that goes nowhere yet',
    explain:
      'No column of the table is called like this column of the text, and which of them it means is not guessed: a wrong guess would put, say, a price under quantities. Choose the column it goes to, or leave it out.',
    words: ({ columns, data }) => {
      const named = columns.filter(({ header }) => header !== '').map(textColumn);
      const others = columns.filter(({ header }) => header === '').map(textColumn);
      const facts = [
        ...(named.length > 0 ? [`the table has no column called ${listed(named)}`] : []),
        ...(others.length > 0
          ? [`${listed(others, 'and')} ${others.length === 1 ? 'has' : 'have'} no header`]
          : []),
      ];
      const choose = `choose where ${columns.length === 1 ? 'it goes' : 'each of them goes'}`;
      return {
        message: facts.join(', and '),
        hint: data ? `${choose}, or say that the first row is data` : `${choose}, or leave it out`,
      };
    },
  }),
  'column-left-out': entry<{ columns: readonly TextColumnFacts[] }>({
    title: 'A column left out',
    explain: 'It was said that this column of the text goes nowhere. Nothing of it is taken.',
    severity: 'warning',
    words: ({ columns }) => ({
      message: `${listed(columns.map(textColumn), 'and')} of the text ${columns.length === 1 ? 'stays' : 'stay'} out`,
    }),
  }),
  'column-twice': entry<{ first: TextColumnFacts; second: TextColumnFacts; column: string }>({
    title: 'Two columns of a text for one of the table',
    explain:
      'Two columns of the text brought in go to the same column of the table, by their headers or as was said.',
    words: ({ first, second, column }) => ({
      message: `${textColumn(first)} and ${textColumn(second)} both go to the column ${quoted(column)}`,
      hint: 'keep one of the two',
    }),
  }),
  'column-without-header': entry<RowFacts & { position: number; text: string }>({
    title: 'A column without a header',
    explain: 'A column of the text has values and no name above them, so nobody can tell where they belong.',
    words: (facts) => ({
      message: `column ${facts.position} of the text has no header, and has ${quoted(facts.text)} in ${place(facts)}`,
      hint: 'write the name of the column above it',
    }),
  }),
  'column-unit-misplaced': entry<TextColumnFacts & { unit: string; column: string; type: string }>({
    title: 'A unit for a column that has none',
    explain: 'Only a column of numbers can have a unit in its header.',
    words: (facts) => ({
      message: `${textColumn(facts)} has the unit ${quoted(facts.unit)}, and goes to ${quoted(facts.column)}, a column of type ${facts.type}`,
      hint: 'leave the unit out',
    }),
  }),
  'column-unit-unread': entry<{ column: string; unit: string; reason: string; remedy: string }>({
    title: 'A unit stated for a column that does not read it',
    explain:
      'The numbers under a header are in the unit it states. This one is no unit as written, or one of another kind than the column has, so none of them could be read.',
    words: ({ column, unit, reason, remedy }) => ({
      message: `the unit ${quoted(unit)} stated for the column ${quoted(column)} cannot be taken: ${reason}`,
      ...(remedy !== '' && { hint: remedy }),
    }),
  }),
  'column-calculated': entry<{ column: string }>({
    title: 'Values for a calculated column',
    explain:
      'A column that the table computes takes no values from a text. They are left out, and nothing else is.',
    severity: 'warning',
    words: ({ column }) => ({
      message: `the column ${quoted(column)} is calculated, and its values in the text are left out`,
    }),
  }),
  'row-short': entry<RowFacts & { cells: number; columns: number }>({
    title: 'A row with cells missing',
    explain:
      'A row of the text has fewer cells than its first row. It is kept; the cells it lacks at its end are blank.',
    words: (facts) => ({
      message: `${place(facts)} has ${facts.cells} of ${facts.columns} cells`,
      hint: 'look for a missing separator or a broken line',
    }),
  }),
  'row-long': entry<RowFacts & { cells: number; columns: number; extra: string; number: string }>({
    title: 'A row with cells too many',
    explain:
      'A row of the text has more cells than its first row, so its cells may stand in the wrong columns. Nothing is taken until it is mended: most often the comma between the thousands of a number broke it in two.',
    words: (facts) => ({
      message: `${place(facts)} has ${facts.cells} cells for ${facts.columns} columns; ${quoted(facts.extra)} is left over`,
      hint:
        facts.number === ''
          ? 'put a cell that has the separator in it in quotation marks'
          : `a number with a thousands comma needs quotation marks: "${facts.number}"`,
    }),
  }),
  'row-blank': entry<RowFacts>({
    title: 'A blank row',
    explain:
      'A row of the text has nothing in it. It is kept as a blank row, for it may stand for something.',
    severity: 'warning',
    words: (facts) => ({ message: `${place(facts)} is blank` }),
  }),
  'cell-unread': entry<{ row: number; column: string; reason: string; remedy: string }>({
    title: 'A cell that its column does not read',
    explain: 'A cell of the text is not what its column takes. It is kept as written, and has no value.',
    words: ({ row, column, reason, remedy }) => ({
      message: `row ${row}, ${column}: ${reason}`,
      ...(remedy !== '' && { hint: remedy }),
    }),
  }),
  'paste-calculated': entry<{ position: number; column: string }>({
    title: 'Cells pasted onto a calculated column',
    explain:
      'Cells pasted without headers go into one column after another, and a column that the table computes takes none.',
    words: ({ position, column }) => ({
      message: `column ${position} of the pasted cells falls on ${column}, which is calculated`,
      hint: 'paste the columns before it alone, or put the names of the columns above the cells',
    }),
  }),
  'decimal-ambiguous': entry<RowFacts & { column: string; text: string; point: string; comma: string }>({
    title: 'A number that can be read two ways',
    explain:
      'The comma or point in this number may part thousands or decimals, and nothing else in the text tells which. Say whether its decimals come after a point or a comma.',
    words: (facts) => ({
      message: `${quoted(facts.text)} in ${place(facts)}, column ${quoted(facts.column)}, can be ${facts.point} or ${facts.comma}`,
      hint: 'say whether decimals come after a point or a comma',
    }),
  }),
  'decimal-mixed': entry<{ point: string; pointLine: number; comma: string; commaLine: number }>({
    title: 'Decimal points beside decimal commas',
    explain:
      'Some numbers of the text have decimal points and some decimal commas, so those between could be either.',
    words: ({ point, pointLine, comma, commaLine }) => ({
      message: `${quoted(point)} at line ${pointLine} has a decimal point, and ${quoted(comma)} at line ${commaLine} a decimal comma`,
      hint: 'write all numbers one way',
    }),
  }),
  'decimal-contradicted': entry<RowFacts & { column: string; text: string; stated: string }>({
    title: 'A number against what was said of it',
    explain:
      'It was said how the numbers of the text write their decimals, and this number is written the other way.',
    words: (facts) => ({
      message: `${quoted(facts.text)} in ${place(facts)}, column ${quoted(facts.column)}, has no decimal ${facts.stated}`,
      hint: `every number must be written with a decimal ${facts.stated}, as was said`,
    }),
  }),
};
