import { entry } from './entry.ts';
import { listed, quoted } from './wording.ts';

/** Problems of names: not found, taken, reserved, in a loop. */
export const names = {
  'name-unknown': entry<{ name: string; near: string[]; unit: boolean }>({
    title: 'A name that is not found',
    explain:
      'No line, column or table of that name can be seen from here. Names distinguish capital and small letters.',
    words: ({ name, near, unit }) => ({
      message: `there is no ${quoted(name)} here`,
      ...(near.length > 0
        ? { hint: `did you mean ${listed(near.map(quoted), 'or')}?` }
        : unit
          ? { hint: `${quoted(name)} is a unit: write 1 ${name} for one of it` }
          : {}),
    }),
  }),
  'function-unknown': entry<{ name: string; near: string[] }>({
    title: 'A function that does not exist',
    explain: 'The functions of the language are listed in docs/language.md.',
    words: ({ name, near }) => ({
      message: `there is no function ${quoted(name)}`,
      ...(near.length > 0 ? { hint: `did you mean ${listed(near, 'or')}?` } : {}),
    }),
  }),
  'name-as-function': entry<{ name: string; instead: string }>({
    title: 'A value written like a function',
    explain: 'Parentheses straight after a name call a function. A multiplication is written with its sign.',
    words: ({ name, instead }) => ({
      message: `${quoted(name)} is a value, not a function`,
      hint: `write ${instead} to multiply`,
    }),
  }),
  'rename-taken': entry<{ name: string; by: string; sheet?: string }>({
    title: 'A new name that something else has',
    explain:
      'On one sheet a line, a column and a table share no name, and no table has the key of a sheet: a formula that says the name would mean two things.',
    words: ({ name, by, sheet }) => ({
      message: `${quoted(name)} is the name of ${by} already`,
      hint:
        sheet === undefined
          ? 'choose one that no sheet and no table of the book has'
          : `choose a name that nothing on sheet ${quoted(sheet)} has`,
    }),
  }),
  'rename-reserved': entry<{ name: string }>({
    title: 'A new name that the language has for itself',
    explain: 'Names of functions, and TRUE and FALSE, are reserved, in capital and small letters alike.',
    words: ({ name }) => ({
      message: `${quoted(name)} is a word of the formulas themselves`,
      hint: 'add a letter, a digit or _ to it',
    }),
  }),
  'function-without-call': entry<{ name: string }>({
    title: 'A function name without its parentheses',
    explain: 'Function names are reserved, in capital and small letters alike.',
    words: ({ name }) => ({
      message: `${quoted(name)} is a function and needs its arguments in parentheses`,
    }),
  }),
  'table-as-value': entry<{ name: string; columns: string[] }>({
    title: 'A table where a value is wanted',
    explain: 'A table has no value of its own; one of its columns has.',
    words: ({ name, columns }) => ({
      message: `${quoted(name)} is a table, not a value`,
      hint: columns.length > 0 ? `name a column, as in ${name}.${columns[0]}` : 'name a column of it',
    }),
  }),
  'whole-column': entry<{ name: string; truth: boolean }>({
    title: 'A whole column where one value is wanted',
    explain: 'A column named with its table stands for all its rows. A line holds one value.',
    words: ({ name, truth }) => ({
      message: `${quoted(name)} is a whole column, and one value is wanted here`,
      hint: truth
        ? `count the rows: COUNTIF(${name}) or, for all of them, COUNTIF(NOT(${name})) = 0`
        : `take SUM(${name}), MAX(${name}) or INDEX(${name}; row)`,
    }),
  }),
  loop: entry<{ path: string[] }>({
    title: 'Lines that depend on one another in a circle',
    explain: 'A value cannot be computed from itself. In a table, ABOVE may refer to the row before.',
    words: ({ path }) => ({
      message: `these depend on one another in a circle: ${path.join(' → ')}`,
      hint: 'break the circle at one of them',
    }),
  }),
};
