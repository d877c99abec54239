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
  'case-lacks-line': entry<{ name: string }>({
    title: 'A case for a line that the book has not',
    explain:
      'The cases of a template enter values for its lines. A book that came from the template and has one of these lines no more cannot take such a case.',
    words: ({ name }) => ({
      message: `the case enters ${name}, a line of the template that the book has not`,
    }),
  }),
  'link-unfit': entry<{ name: string; other: string }>({
    title: 'A line that cannot be linked',
    explain:
      'A given or a choice takes its value from a line of the book. Calculated lines, checks and columns do not.',
    words: ({ name, other }) => ({ message: `${name} cannot take its value from ${other}` }),
  }),
  'link-kind': entry<{ name: string; other: string; is: string; wants: string }>({
    title: 'A link between different kinds of values',
    explain:
      'A line takes its value from one of the same dimension, whatever their units; a choice from a choice that has no other options.',
    words: ({ name, other, is, wants }) => ({ message: `${other} is ${is}, where ${name} takes ${wants}` }),
  }),
  'link-circle': entry<{ name: string; other: string; path: string[] }>({
    title: 'A link that closes a circle',
    explain: 'A line cannot take its value from one that depends on it; the lines between them are named.',
    words: ({ name, other, path }) => ({
      message: `${other} takes its own value from ${name} (${path.join(', ')})`,
      hint: 'link to a line that does not depend on it',
    }),
  }),
  'link-stated': entry<{ name: string }>({
    title: 'A link below a stated value',
    explain:
      'A line of which a value is stated shows that in place of what it is linked to. With the link the stated value and its reason would go.',
    words: ({ name }) => ({
      message: `a value is stated in place of what ${name} takes from its link`,
      hint: 'use the computed value first',
    }),
  }),
};
