import { entry, type NoFacts } from './entry.ts';
import { tableRows } from './table-rows.ts';
import { tableUnits } from './table-units.ts';
import {
  type BlankFacts,
  blankWords,
  type CellFacts,
  cellPlace,
  columnsCalled,
  firstOf,
  linesCalled,
  moreOf,
  type RowFacts,
  reasonOfCell,
  type SlipFacts,
  slipWords,
  type TextColumnFacts,
  textColumn,
  type UnclearFacts,
  unclearPlace,
} from './table-wording.ts';
import { listed, quoted } from './wording.ts';

/** So many stated values are named one by one. */
const VALUES_TOLD = 12;

/** Problems of tables brought in from CSV or clipboard text. */
export const tables = {
  ...tableUnits,
  ...tableRows,
  'table-empty': entry<NoFacts>({
    title: 'A text without a table',
    explain: 'The text brought in has nothing in it, not even a header.',
    words: () => ({
      message: 'the text has no rows',
      hint: 'bring in a text whose first row names the columns',
    }),
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
      hint: 'take in its first rows, or add rows together that are alike before',
    }),
  }),
  'table-no-rows': entry<NoFacts>({
    title: 'A text without rows under its headers',
    explain:
      'Nothing stands under the names of the columns, so the table would become empty and its sums 0. That is taken only when it is said to be meant.',
    words: () => ({ message: 'the text has no rows under its headers' }),
  }),
  'table-columns-emptied': entry<BlankFacts>({
    title: 'Columns that would become blank',
    explain:
      'The rows of the text are put in place of all rows of the table. Columns that have values there, and that the text has not, would become blank, and formulas would then take their defaults. That is done only when it is said to be meant.',
    words: (facts) => ({
      message: blankWords(facts),
      hint: 'put these columns in the text, or say that they are to be blank',
    }),
  }),
  'table-columns-blank': entry<BlankFacts>({
    title: 'Columns that become blank',
    explain:
      'The rows of the text are put in place of all rows of the table. Columns that have values there, and that the text has not, become blank, as was said.',
    severity: 'warning',
    words: (facts) => ({ message: blankWords(facts) }),
  }),
  'table-stated-gone': entry<{ values: readonly string[] }>({
    title: 'Stated values of rows that others take the place of',
    explain:
      'Values were stated in calculated columns, each for one row. Where other rows take the place of these, and the values do not go with an item to its new row, they are deleted: the new rows are calculated.',
    severity: 'warning',
    words: ({ values }) => ({
      message: `${values.length === 1 ? '1 stated value is' : `${values.length} stated values are`} deleted: ${listed(firstOf(values, VALUES_TOLD), 'and')}`,
    }),
  }),
  'table-not-text': entry<NoFacts>({
    title: 'A text that is none',
    explain:
      'The text has characters that no text has. It may be a spreadsheet file, or text in an encoding that is not known.',
    words: () => ({
      message: 'this is no text, but perhaps a spreadsheet file or an encoding that is not known',
      hint: 'save it as CSV in UTF-8',
    }),
  }),
  'table-other-format': entry<{ format: string; remedy: string }>({
    title: 'A file of another format',
    explain:
      'The file begins as a PDF, a page in HTML, an archive or another format does that is no table of text: its lines are instructions to a program, and none of them is a row.',
    words: ({ format, remedy }) => ({ message: `this is ${format}, and no table in text`, hint: remedy }),
  }),
  'table-parting-unclear': entry<RowFacts & { text: string; by: 'commas' | 'spaces' }>({
    title: 'A text whose cells may be parted in two ways',
    explain:
      'Nothing tells what parts the cells of a line. Commas between digits may stand within one number or between cells; spaces may set columns apart, and a blank cell would not show in them. So it is asked for.',
    words: ({ line, text, by }) =>
      by === 'commas'
        ? {
            message: `${quoted(text)} in line ${line} can be one number or ${text.split(',').length} cells, and so can each line of the text`,
            hint: 'say whether commas part the cells of a line, or nothing: a line is one cell',
          }
        : {
            message: `no comma, semicolon, tab or bar parts cells of the text, and line ${line} has columns set apart by spaces: ${quoted(text)}`,
            hint: 'say whether two or more spaces part the cells of a line, or nothing: a line is one cell',
          },
  }),
  'table-encoding-guessed': entry<RowFacts & { text: string }>({
    title: 'A text in an old encoding',
    explain:
      'The text is neither UTF-8 nor UTF-16, and is read as Windows-1252. Words with accents and signs like ³ may be other ones.',
    severity: 'warning',
    words: ({ line, text }) => ({
      message: `the text is not UTF-8 and is read as Windows-1252: line ${line} has ${quoted(text)}`,
      hint: 'look whether that is right, or save it as UTF-8',
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
      const named = columns
        .filter(({ header }) => header !== '')
        .map((one) =>
          columns.some((other) => other !== one && other.header === one.header)
            ? `${textColumn(one)} (column ${one.position})`
            : textColumn(one),
        );
      const others = columns.filter(({ header }) => header === '').map(textColumn);
      const facts = [
        ...(named.length > 0 ? [`the table has no column called ${listed(firstOf(named))}`] : []),
        ...(others.length > 0
          ? [`${listed(firstOf(others), 'and')} ${others.length === 1 ? 'has' : 'have'} no header`]
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
  'columns-calculated-anew': entry<{ columns: readonly TextColumnFacts[] }>({
    title: 'Calculated columns of a saved table',
    explain:
      'The text has all columns that are given, as a table that was saved has. Its calculated columns stay out: the table calculates them anew from what is given.',
    severity: 'warning',
    words: ({ columns }) => ({
      message: `${listed(columns.map(textColumn), 'and')} ${columns.length === 1 ? 'stays out: it is' : 'stay out: they are'} calculated anew`,
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
      message: `column ${facts.position} of the text has no header, and has ${quoted(facts.text)} in line ${facts.line}`,
      hint: 'write the name of the column above it',
    }),
  }),
  'column-calculated': entry<TextColumnFacts & { column: string; givens: readonly string[] }>({
    title: 'Values for a calculated column',
    explain:
      'A column that the table computes takes no values from a text. Which column is meant is not guessed, and the values are not dropped: say that the column is left out, or where it goes.',
    words: (facts) => ({
      message: `${textColumn(facts)} names the column ${facts.column}, which is calculated and takes no values`,
      hint:
        facts.givens.length > 0
          ? `leave it out, or say where it goes: ${listed(facts.givens)}`
          : 'leave it out',
    }),
  }),
  'cell-unread': entry<CellFacts & { reason: string; remedy: string; slip?: SlipFacts }>({
    title: 'A cell that its column does not read',
    explain:
      'A cell of the text is not what its column takes. As written it has no value. Where it looks like a slip, as a letter among digits or a date that a spreadsheet made of a number, that is said.',
    words: (facts) => {
      const { reason, remedy } = facts.slip ? slipWords(facts.slip, facts.text) : facts;
      return {
        message: `${cellPlace(facts)}: ${reasonOfCell({ text: facts.text, reason })}`,
        ...(remedy !== '' && { hint: remedy }),
      };
    },
  }),
  'cell-remarkable': entry<CellFacts & { reason: string; remedy: string }>({
    title: 'A cell with a remark',
    explain: 'A cell of the text is taken as it is written, and there is something to look at.',
    severity: 'warning',
    words: (facts) => ({
      message: `${cellPlace(facts)}: ${reasonOfCell(facts)}`,
      ...(facts.remedy !== '' && { hint: facts.remedy }),
    }),
  }),
  'cells-unread-more': entry<{ more: number }>({
    title: 'More cells that are not read',
    explain:
      'So many cells of the text are not what their columns take that only the first are told one by one.',
    words: ({ more }) => ({
      message: `${more} more ${more === 1 ? 'cell is' : 'cells are'} not read`,
    }),
  }),
  'cells-remarkable-more': entry<{ more: number }>({
    title: 'More cells with a remark',
    explain: 'There are remarks on so many cells of the text that only the first are told one by one.',
    severity: 'warning',
    words: ({ more }) => ({ message: `there are remarks on ${more} more ${more === 1 ? 'cell' : 'cells'}` }),
  }),
  'cells-split': entry<RowFacts & { letter: string; first: string; second: string; joined: string }>({
    title: 'Two cells that may be one number',
    explain:
      'The comma that stands between thousands, or in front of decimals, also parts the cells of this text. Two cells look like a number that it broke in two, which would leave the cells behind them in the wrong columns, or its decimals in a column that nobody counts.',
    words: ({ line, letter, first, second, joined }) => ({
      message: `line ${line}, column ${letter}: ${first} and ${second} beside it may be two cells or the number ${joined}`,
      hint: `write "${joined}" in quotation marks for one number, or "${first}","${second}" for two`,
    }),
  }),
  'cells-split-more': entry<{ more: number }>({
    title: 'More pairs of cells that may be one number',
    explain:
      'In so many places of the text two cells may be one number that its own comma broke in two that only the first are told one by one.',
    words: ({ more }) => ({
      message: `${more} more ${more === 1 ? 'pair' : 'pairs'} of cells beside each other may be one number`,
      hint: 'write each number with a comma in quotation marks or part the cells by another sign, or say that each comma parts two cells',
    }),
  }),
  'cells-nil': entry<UnclearFacts>({
    title: 'A dash or a word for none among numbers',
    explain:
      'In a column of numbers stands a dash, “n/a” or a word for none. It may say that there is no number, or that it is 0, and formulas tell the two apart; so it is asked for.',
    words: (facts) => ({
      message: `${unclearPlace(facts)} can be a blank or 0${moreOf(facts)}`,
      hint: 'say whether dashes and words for none are blank or 0',
    }),
  }),
  'cells-nil-taken': entry<UnclearFacts & { said: string }>({
    title: 'Dashes or words for none, as they were taken',
    explain: 'In columns of numbers stand dashes or words for none. They are taken as was said.',
    severity: 'warning',
    words: (facts) => ({
      message: `${unclearPlace(facts)} is taken as ${facts.said === 'zero' ? '0' : 'a blank'}, as was said${moreOf(facts)}`,
    }),
  }),
  'cells-parentheses': entry<UnclearFacts>({
    title: 'A number in parentheses',
    explain:
      'Accounts write a number in parentheses where it is to be taken off; others put them around what is only mentioned. So it is asked for.',
    words: (facts) => ({
      message: `${unclearPlace(facts)} can be less than 0, or the number as it is${moreOf(facts)}`,
      hint: 'say whether parentheses around a number are a minus',
    }),
  }),
  'cells-parentheses-taken': entry<UnclearFacts & { said: string }>({
    title: 'Numbers in parentheses, as they were taken',
    explain: 'Numbers of the text stand in parentheses. They are taken as was said.',
    severity: 'warning',
    words: (facts) => ({
      message: `${unclearPlace(facts)} is taken ${facts.said === 'minus' ? 'with a minus' : 'without a minus'}, as was said${moreOf(facts)}`,
    }),
  }),
  'column-share': entry<CellFacts & { share: string }>({
    title: 'Shares under a column of per cent',
    explain:
      'All numbers of the column are 1 or less, and nothing says whether they are per cent or parts of one: 0.05 may be 0.05 % or 5 %.',
    words: (facts) => ({
      message: `${cellPlace(facts)}: ${quoted(facts.text)} can be ${facts.text} % or ${facts.share}, as all numbers of the column are 1 or less`,
      hint: `state the unit of the column: ${facts.column} (%) for per cent, ${facts.column} (-) for parts of one`,
    }),
  }),
  'cells-share': entry<CellFacts & { share: string; lines: readonly number[] }>({
    title: 'Shares among per cent',
    explain:
      'Some numbers of a column of per cent are 1 or less and others are more, and nothing says whether the small ones are per cent or parts of one. They are taken as per cent and pointed out.',
    severity: 'warning',
    words: ({ lines, letter, header, text, share, column }) => ({
      message: `${linesCalled(lines)}, column ${letter}${header === '' ? '' : ` ${quoted(header)}`}: ${quoted(text)} is read as ${text} %, and would be ${share} as a part of one`,
      hint: `state the unit of the column, ${column} (%), if all are per cent, or write the small ones as per cent`,
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
  'decimal-ambiguous': entry<
    RowFacts & { letter: string; column: string; text: string; more: number; point: string; comma: string }
  >({
    title: 'A number that can be read two ways',
    explain:
      'The comma or point in this number may part thousands or decimals, and nothing else in the text tells which. Say whether its decimals come after a point or a comma.',
    words: (facts) => ({
      message: `${quoted(facts.text)} in line ${facts.line}, column ${facts.letter} (${facts.column}), can be ${facts.point} or ${facts.comma}${facts.more > 0 ? `; so can ${facts.more} more` : ''}`,
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
  'decimal-contradicted': entry<RowFacts & { letter: string; column: string; text: string; stated: string }>({
    title: 'A number against what was said of it',
    explain:
      'It was said how the numbers of the text write their decimals, and this number is written the other way.',
    words: (facts) => ({
      message: `${quoted(facts.text)} in line ${facts.line}, column ${facts.letter} (${facts.column}), has no decimal ${facts.stated}`,
      hint: `every number must be written with a decimal ${facts.stated}, as was said`,
    }),
  }),
};
