import { entry } from './entry.ts';
import { quoted } from './wording.ts';

/** Problems of sheets that are brought from other books, and of lines that are linked. */
export const sheets = {
  'book-origin-unknown': entry<{ path: string; sheet: string; origin: string }>({
    title: 'A sheet of an origin that the book does not list',
    explain:
      'A sheet names the book it was brought from by an id. The book lists under that id what its origin says of itself: purpose, limits, cautions.',
    words: ({ path, sheet, origin }) => ({
      message: `${path}, the sheet ${quoted(sheet)}, names the origin ${quoted(origin)}, which the book does not list`,
    }),
  }),
  'sheets-unit-differs': entry<{ symbol: string; here: string; there: string }>({
    title: 'A unit that the two books define differently',
    explain:
      'Sheets are brought with the units of their own book that they use. A symbol that means something else in this book would change their values, or its own.',
    words: ({ symbol, here, there }) => ({
      message: `${quoted(symbol)} is ${here} in this book and ${there} in the book of the sheets`,
      hint: 'give one of the two another symbol first',
    }),
  }),
  'sheets-currency-differs': entry<{ here: string; there: string }>({
    title: 'Sheets that count in another currency',
    explain:
      'The sign $ stands for the one currency of a book. Sheets that use it keep their values only in a book of the same currency.',
    words: ({ here, there }) => ({
      message: `the sheets write $ for ${there}, which is ${here} in this book`,
      hint: `write ${there} in place of $ on the sheets first, or give both books the same currency`,
    }),
  }),
};
