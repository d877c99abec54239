import { entry } from './entry.ts';
import { listed, quoted } from './wording.ts';

function counted(count: number, noun: string): string {
  return `${count} ${noun}${count === 1 ? '' : 's'}`;
}

/** A size that is too large, rounded up. */
function megabytes(bytes: number): number {
  return Math.ceil(bytes / 1_000_000);
}

/** Problems of the book as a document: reading a file, versions, the fields of the format, edits. */
export const book = {
  'book-not-json': entry<{ expected: string; path: string; line: number; column: number }>({
    title: 'A file that is not JSON',
    explain:
      'A book is one JSON document. The text stops being JSON at the place named; often a comma, a bracket or a quotation mark is missing there, or the file was cut short.',
    words: ({ expected, line, column }) => ({
      message: `the file is not JSON: line ${line}, column ${column} should have ${expected}`,
    }),
  }),
  'page-without-book': entry<Record<string, never>>({
    title: 'A page without a book',
    explain:
      'The file is a page for a browser. A record that Quaybook writes carries its book; this page is none, or was saved without what it carried.',
    words: () => ({
      message: 'the file is a page for a browser that carries no book',
      hint: 'choose the file of the book, or its record as it was saved',
    }),
  }),
  'record-damaged': entry<Record<string, never>>({
    title: 'A damaged record',
    explain:
      'The book within a record is written with a hash of it. Here the two do not fit each other, or the pages tell of another content than the book’s: the file was cut short or changed.',
    words: () => ({
      message: 'the record is damaged: its book is not as it was written, or not the one its pages tell of',
      hint: 'take another copy of the record, or the file of the book',
    }),
  }),
  'book-too-large': entry<{ length: number; limit: number }>({
    title: 'A file too large to be a book',
    explain: 'A book is read as a whole, so its length is limited; nothing of a longer file is read.',
    words: ({ length, limit }) => ({
      message: `the file has ${length} characters, and a book has at most ${limit}`,
      hint: 'split its tables over several books',
    }),
  }),
  'file-too-large': entry<{ size: number; limit: number }>({
    title: 'A file too large to be read',
    explain: 'The size of a file is looked at before it is read; nothing of a larger file is read.',
    words: ({ size, limit }) => ({
      message: `the file has ${megabytes(size)} MB, and at most ${megabytes(limit)} MB are read`,
      hint: 'choose another file, or split its tables over several',
    }),
  }),
  'file-not-utf-8': entry<Record<string, never>>({
    title: 'A file in another encoding',
    explain: 'The bytes of the file are not UTF-8, so its letters could only be guessed.',
    words: () => ({ message: 'the file is not UTF-8 text', hint: 'save it as UTF-8' }),
  }),
  'book-too-deep': entry<{ limit: number; path: string; line: number; column: number }>({
    title: 'A file nested too deeply',
    explain:
      'Lists and objects of a book lie only a few levels inside one another; a file with more is not a book.',
    words: ({ limit, line, column }) => ({
      message: `the file nests lists and objects more than ${limit} levels deep at line ${line}, column ${column}`,
    }),
  }),
  'book-key-forbidden': entry<{ key: string; path: string; line: number; column: number }>({
    title: 'A key that no book has',
    explain:
      'The keys __proto__, constructor and prototype mean something to programs that read JSON carelessly. No book needs them, so a file that has one is refused as a whole.',
    words: ({ key, path, line, column }) => ({
      message: `${path} has the forbidden key ${quoted(key)} at line ${line}, column ${column}`,
    }),
  }),
  'book-key-twice': entry<{ key: string; path: string; line: number; column: number }>({
    title: 'A key said twice',
    explain:
      'An object of the file has the same key twice, so two readers could take it for two different books.',
    words: ({ key, path, line, column }) => ({
      message: `${path} has the key ${quoted(key)} a second time at line ${line}, column ${column}`,
      hint: 'keep one of the two',
    }),
  }),
  'book-format-wrong': entry<{ found: string }>({
    title: 'A file that is not a book',
    explain: 'A book says "format": "quaybook" at its top. The file is JSON, but something else.',
    words: ({ found }) => ({
      message: `the file is not a book: its format is ${found}, not “quaybook”`,
    }),
  }),
  'book-version-wrong': entry<{ found: string }>({
    title: 'A book without a usable version',
    explain: 'A book says at its top by a whole number which version of the format it is written in.',
    words: ({ found }) => ({
      message: `the book’s format version is ${found}, and should be a whole number`,
    }),
  }),
  'book-newer': entry<{ version: number; known: number }>({
    title: 'A book from a newer version',
    explain:
      'The book was written by a later version of the program, which may mean things this one would misread.',
    words: ({ version, known }) => ({
      message: `the book was made by a newer Quaybook (version ${version}; this one reads up to ${known})`,
      hint: 'open it with a newer version of the program',
    }),
  }),
  'book-field-missing': entry<{ path: string; field: string }>({
    title: 'A field that must be there',
    explain:
      'The format asks for this field wherever such an object stands; an empty text or list is enough.',
    words: ({ path, field }) => ({ message: `${path} has no ${quoted(field)}` }),
  }),
  'book-field-unknown': entry<{ path: string; field: string; nearest: readonly string[] }>({
    title: 'A field the format does not have',
    explain:
      'The format knows every field it may meet. An unknown one is refused and not skipped, for it may have meant something.',
    words: ({ path, field, nearest }) => ({
      message: `${path} has the unknown field ${quoted(field)}`,
      ...(nearest.length > 0 && { hint: `did you mean ${listed(nearest.map(quoted))}?` }),
    }),
  }),
  'book-value-wrong': entry<{ path: string; found: string; expected: string }>({
    title: 'A value of the wrong kind',
    explain: 'The format wants another kind of value at this place.',
    words: ({ path, found, expected }) => ({ message: `${path} is ${found}, and should be ${expected}` }),
  }),
  'book-too-long': entry<{ path: string; length: number; limit: number; of: string }>({
    title: 'A text or list that is too long',
    explain:
      'Texts and lists of a book have generous limits, so that a faulty file cannot choke the program.',
    words: ({ path, length, limit, of }) => ({
      message: `${path} has ${counted(length, of)}, and may have at most ${limit}`,
    }),
  }),
  'book-name-spelling': entry<{ path: string; name: string }>({
    title: 'A name that formulas could not use',
    explain:
      "A name starts with a letter (Greek letters too) and goes on with letters, digits, _ and '. Signs that only look like letters, such as the micro sign, are not letters.",
    words: ({ path, name }) => ({
      message: `${path} is ${quoted(name)}, which is not a name`,
      hint: "start with a letter and go on with letters, digits, _ and '",
    }),
  }),
  'book-id-spelling': entry<{ path: string; id: string }>({
    title: 'An id that is not one',
    explain: 'Ids are made of the letters A to Z, digits, and the signs _ - . : after the first character.',
    words: ({ path, id }) => ({
      message: `${path} is ${quoted(id)}, which is not an id`,
      hint: 'use the letters a to z, digits, _ - . and :',
    }),
  }),
  'book-id-twice': entry<{ path: string; id: string; first: string }>({
    title: 'An id used twice',
    explain: 'Each part, row and column of a book has an id of its own, by which edits find it.',
    words: ({ path, id, first }) => ({ message: `${path} has the id ${quoted(id)}, which ${first} has too` }),
  }),
  'book-key-of-two-sheets': entry<{ key: string }>({
    title: 'Two sheets with one key',
    explain: 'Other sheets call a sheet by its key, so no two sheets share one.',
    words: ({ key }) => ({ message: `two sheets have the key ${quoted(key)}` }),
  }),
  'book-name-twice': entry<{ sheet: string; name: string; what: string; first: string }>({
    title: 'A name used twice',
    explain:
      'On one sheet a row, a column and a table share no name, and the columns of a table have different names: a formula that says the name would mean two things.',
    words: ({ sheet, name, what, first }) => ({
      message: `on sheet ${quoted(sheet)} the ${what} ${quoted(name)} has the name of a ${first}`,
      hint: 'rename one of the two',
    }),
  }),
  'book-table-named-as-sheet': entry<{ sheet: string; name: string }>({
    title: 'A table with the name of a sheet',
    explain:
      'In a formula a name before a point is a table of this sheet or another sheet, so no table has the key of a sheet.',
    words: ({ sheet, name }) => ({
      message: `on sheet ${quoted(sheet)} the table ${quoted(name)} has the key of a sheet`,
      hint: 'rename the table',
    }),
  }),
  'book-choice-source': entry<{ path: string; name: string }>({
    title: 'A choice without one source of options',
    explain:
      'A choice either lists its options or takes them from a column of a table, never both and never neither.',
    words: ({ path, name }) => ({
      message: `${path}, the choice ${quoted(name)}, must have either “options” or “from”`,
    }),
  }),
  'book-formula-or-methods': entry<{ path: string; name: string }>({
    title: 'A calculated line without one way to compute it',
    explain:
      'A calculated line or column has either one formula, or methods and the name of what chooses between them; never both and never neither.',
    words: ({ path, name }) => ({
      message: `${path}, the line ${quoted(name)}, must have either “formula” or both “by” and “methods”`,
    }),
  }),
  'book-method-not-last': entry<{ path: string; name: string }>({
    title: 'A method for all other options that is not the last',
    explain:
      'A method without options is for all that no other method is for. A line has at most one, and it is the last.',
    words: ({ path, name }) => ({
      message: `${path}, a method of ${quoted(name)}, is for all other options and is not the last`,
      hint: 'say its options, or move it to the end',
    }),
  }),
  'book-option-twice': entry<{ path: string; name: string; option: string }>({
    title: 'An option of two methods',
    explain:
      'Each option leads to one method, so no option stands in two methods of a line, or twice in one.',
    words: ({ path, name, option }) => ({
      message: `${path}, a method of ${quoted(name)}, is for ${quoted(option)}, which has its method already`,
      hint: 'take the option out of one of them',
    }),
  }),
  'book-table-length': entry<{ path: string; table: string }>({
    title: 'A table without a length',
    explain: 'A table says how many rows it has, unless a series column decides that.',
    words: ({ path, table }) => ({
      message: `${path}, the table ${quoted(table)}, has neither a length nor a series column`,
    }),
  }),
  'book-table-series': entry<{ path: string; table: string; what: string }>({
    title: 'A table whose rows are computed',
    explain:
      'A series column decides how many rows its table has, so such a table has one series column, no length of its own, and no columns typed in by hand.',
    words: ({ path, table, what }) => ({
      message: `${path}, the table ${quoted(table)}, has its rows from a series column and also ${what}`,
    }),
  }),
  'book-row-ids': entry<{ path: string; table: string; ids: number; length: number }>({
    title: 'Identities of rows that do not fit the rows',
    explain: 'Each row of a table has one identity, which no other row has and none will get.',
    words: ({ path, table, ids, length }) => ({
      message:
        ids === length
          ? `${path}: two rows of ${table} have one identity, or one that is still to be given`
          : `${path}: ${table} has ${length} rows and identities for ${ids}`,
    }),
  }),
  'book-column-length': entry<{ path: string; column: string; cells: number; length: number }>({
    title: 'A column as long as its table is not',
    explain: 'Every given column has one cell for each row of its table, blank cells included.',
    words: ({ path, column, cells, length }) => ({
      message: `${path}, the column ${quoted(column)}, has ${counted(cells, 'cell')} in a table of ${counted(length, 'row')}`,
    }),
  }),
  'book-chunk-length': entry<{ path: string; cells: number; wanted: number }>({
    title: 'A chunk of the wrong length',
    explain: 'A column is kept in chunks of 1024 cells, of which only the last is shorter.',
    words: ({ path, cells, wanted }) => ({
      message: `${path} has ${counted(cells, 'cell')}, and should have ${wanted}`,
    }),
  }),
  'edit-place-missing': entry<{ path: string }>({
    title: 'An edit of something that is not there',
    explain: 'The edit was made for a book that has a place this book does not have.',
    words: ({ path }) => ({ message: `the book has no ${path}` }),
  }),
  'edit-place-unfit': entry<{ path: string; expected: string }>({
    title: 'An edit that does not fit its place',
    explain: 'The edit asks of a place what only another kind of place can do.',
    words: ({ path, expected }) => ({ message: `${path} is not ${expected}` }),
  }),
  'edit-field-fixed': entry<{ path: string }>({
    title: 'A field that never changes',
    explain:
      'What something is and the id it has stay the same as long as it lives; take it away and put in another.',
    words: ({ path }) => ({
      message: `${path} cannot be changed`,
      hint: 'remove the old one and insert a new one',
    }),
  }),
  'edit-seen-otherwise': entry<{ path: string }>({
    title: 'An edit made for something that has changed since',
    explain:
      'The edit was made apart, by somebody who saw another value, another unit or other rows at this place. It is refused as a whole, so that nothing is changed that its author did not see.',
    words: ({ path }) => ({
      message: `${path} has changed since this edit was made`,
      hint: 'look at it as it is now, and make the edit anew',
    }),
  }),
  'edit-neighbour-gone': entry<{ path: string; what: string }>({
    title: 'An edit beside something that is gone',
    explain:
      'The edit was made apart, for a row or an item, or the place behind it, that has been taken out since.',
    words: ({ path, what }) => ({
      message: `${path} has no longer the ${what} that this edit was made for`,
      hint: 'look at it as it is now, and make the edit anew',
    }),
  }),
  'edit-index-outside': entry<{ path: string; index: number; length: number }>({
    title: 'A position outside a list',
    explain: 'The edit names a position that the list does not have.',
    words: ({ path, index, length }) => ({
      message: `${path} has ${counted(length, 'item')}, and so no position ${index}`,
    }),
  }),
  'edit-rows-outside': entry<{ path: string; from: number; to: number; length: number }>({
    title: 'Rows outside a table',
    explain: 'The edit names rows that the table does not have.',
    words: ({ path, from, to, length }) => ({
      message: `${path} has ${counted(length, 'row')}, and so no ${to > from + 1 ? `rows ${from + 1} to ${to}` : `row ${from + 1}`}`,
    }),
  }),
  'edit-rows-uneven': entry<{ path: string; column: string; cells: number; rows: number }>({
    title: 'Columns of different lengths',
    explain: 'Rows are put in column by column, each column with one cell for each new row.',
    words: ({ path, column, cells, rows }) => ({
      message: `${path} gets ${counted(rows, 'row')}, and its column ${quoted(column)} ${counted(cells, 'cell')}`,
    }),
  }),
  'edit-rows-too-many': entry<{ path: string; length: number; limit: number }>({
    title: 'A table with too many rows',
    explain: 'The length of a table is limited.',
    words: ({ path, length, limit }) => ({
      message: `${path} would have ${length} rows, and may have at most ${limit}`,
    }),
  }),
};
