import { entry } from './entry.ts';
import { quoted } from './wording.ts';

const readTwoWays = 'What two careful people could read two ways is refused; both readings are offered.';

/** Problems of how a formula is written. */
export const syntax = {
  'formula-empty': entry<Record<string, never>>({
    title: 'An empty formula',
    explain: 'A calculated line needs a formula; a value that is typed in belongs to a given line.',
    words: () => ({ message: 'there is no formula yet', hint: 'write one' }),
  }),
  'formula-too-long': entry<{ length: number; limit: number }>({
    title: 'A formula too long to check by hand',
    explain: 'A formula this long cannot be checked by a reader. Give its parts names on lines of their own.',
    words: ({ length, limit }) => ({
      message: `this formula has ${length} characters; the limit is ${limit}`,
      hint: 'give its parts names on lines of their own',
    }),
  }),
  'formula-too-many-parts': entry<{ limit: number }>({
    title: 'A formula of too many parts',
    explain:
      'A formula of so many parts cannot be checked by a reader. Give some of them names on lines of their own.',
    words: ({ limit }) => ({
      message: `this formula has more than ${limit} operators, parentheses and separators`,
      hint: 'give its parts names on lines of their own, or put them in a table',
    }),
  }),
  'formula-too-deep': entry<{ limit: number }>({
    title: 'A formula nested too deeply',
    explain: 'Parentheses and calls stand inside one another beyond what a reader can follow.',
    words: ({ limit }) => ({
      message: `this formula is nested more than ${limit} deep`,
      hint: 'give its inner parts names on lines of their own',
    }),
  }),
  'formula-ends-early': entry<{ after: string }>({
    title: 'A formula that ends too soon',
    explain: 'An operator or an opening parenthesis still waits for what it works on.',
    words: ({ after }) => ({
      message:
        after === ''
          ? 'the formula ends too soon'
          : `the formula ends after ${quoted(after)} with a value missing`,
    }),
  }),
  'formula-unexpected': entry<{ written: string }>({
    title: 'A formula that does not parse',
    explain: 'The formula stops making sense at the place marked. Nothing is computed until it is mended.',
    words: ({ written }) => ({ message: `${quoted(written)} does not fit here` }),
  }),
  'strange-character': entry<{ written: string }>({
    title: 'A character that formulas do not use',
    explain:
      'Formulas are made of numbers, names, units, texts in quotation marks, operators and parentheses.',
    words: ({ written }) => ({ message: `${quoted(written)} has no meaning in a formula` }),
  }),
  'side-by-side': entry<{ left: string; right: string }>({
    title: 'Two values side by side',
    explain:
      'A unit follows a number only; after a name or a closing parenthesis the unit column converts. Two values ' +
      'need an operator between them.',
    words: ({ left, right }) => ({
      message: `${quoted(right)} follows ${quoted(left)} with no operator between them`,
      hint: /^\d/.test(right)
        ? 'write an operator between them'
        : `write an operator; a unit follows a number only, as in ${left === ')' ? '(a + b)' : left} * 1 ${right}`,
    }),
  }),
  'unit-of-two-words': entry<{ written: string; unit: string; right: string; instead: string }>({
    title: 'A word after a unit',
    explain: 'One symbol follows a number; a unit of several stands in parentheses.',
    words: ({ written, unit, right, instead }) => ({
      message: `${quoted(right)} in ${quoted(written)} follows the unit ${quoted(unit)} with no operator between them`,
      hint: `write ${instead} for one unit`,
    }),
  }),
  'unwritten-product': entry<{ number: string; written: string; instead: string }>({
    title: 'A multiplication without its sign',
    explain:
      'What follows a number, in parentheses or not, is its unit. A multiplication is always written with its sign.',
    words: ({ number, written, instead }) => ({
      message: `${quoted(written)} after the number ${number} would be its unit, and is none`,
      hint: `write ${instead} to multiply`,
    }),
  }),
  'operator-unknown': entry<{ written: string; instead: string }>({
    title: 'An operator of another language',
    explain: 'Formulas compare with = <> < <= > >= and raise to a power with ^.',
    words: ({ written, instead }) => ({
      message: `${quoted(written)} is no operator here`,
      hint: `write ${instead}`,
    }),
  }),
  'parenthesis-not-closed': entry<{ missing: number }>({
    title: 'A parenthesis that is not closed',
    explain: 'Every opening parenthesis needs its closing one.',
    words: ({ missing }) => ({
      message:
        missing === 1
          ? 'this parenthesis is not closed'
          : `${missing} parentheses are not closed, this one first`,
    }),
  }),
  'parenthesis-not-opened': entry<Record<string, never>>({
    title: 'A parenthesis that was not opened',
    explain: 'A closing parenthesis stands without an opening one before it.',
    words: () => ({ message: 'this parenthesis closes nothing' }),
  }),
  'text-not-closed': entry<Record<string, never>>({
    title: 'A text without its closing quotation mark',
    explain: 'A text stands between two quotation marks; a quotation mark inside is doubled.',
    words: () => ({ message: 'this text has no closing quotation mark' }),
  }),
  'comma-in-number': entry<{ written: string; first: string; second: string }>({
    title: 'A comma between digits',
    explain: `A comma between digits may group thousands or separate two arguments. ${readTwoWays}`,
    words: ({ written, first, second }) => ({
      message: `the comma in ${quoted(written)} can be read two ways`,
      hint: `write ${first} for one number or ${second} for separate arguments`,
    }),
  }),
  'feet-marks': entry<{ written: string; instead: string }>({
    title: 'Feet with inches in a formula',
    explain:
      'Feet and inch marks belong to entries. In a formula a mark may also be part of a name, and two quantities need ' +
      'an operator between them.',
    words: ({ written, instead }) => ({
      message: `feet with inches such as ${quoted(written)} belong to entries, not to formulas`,
      hint: `write ${instead}`,
    }),
  }),
  'number-too-large': entry<{ written: string }>({
    title: 'A number too large to hold',
    explain: 'Numbers are held to about 16 digits up to 1.8e308.',
    words: ({ written }) => ({ message: `${quoted(written)} is too large to compute with` }),
  }),
  'number-too-small': entry<{ written: string }>({
    title: 'A number too small to hold',
    explain: 'Numbers nearer to zero than 5e-324 cannot be told from it.',
    words: ({ written }) => ({ message: `${quoted(written)} is too small to tell from zero` }),
  }),
  'unit-needs-space': entry<{ written: string; unit: string }>({
    title: 'A unit written onto its number',
    explain: 'In formulas a unit stands after a space, as in print.',
    words: ({ written, unit }) => ({
      message: `${quoted(written)} needs a space before its unit ${quoted(unit)}`,
    }),
  }),
  'unit-power': entry<{ written: string; first: string; second: string }>({
    title: 'A power after a quantity',
    explain: `A power after a number with a unit may belong to the unit or to the whole. ${readTwoWays}`,
    words: ({ written, first, second }) => ({
      message: `${quoted(written)} can be read as ${quoted(first)} or as ${quoted(second)}`,
      hint: 'write the one you mean',
    }),
  }),
  'unit-or-name': entry<{ written: string; name: string; value: boolean; first: string; second: string }>({
    title: 'A name that is also a unit',
    explain:
      'After a number with a unit, a name that is also the symbol of a unit may continue the unit or be a value. ' +
      readTwoWays,
    words: ({ written, name, value, first, second }) => ({
      message: `${quoted(name)} in ${quoted(written)} is also a unit`,
      hint:
        first === second
          ? `write ${first}`
          : `write ${first} for one unit, or ${second}${value ? ` with spaces for the value named ${name}` : ''}`,
    }),
  }),
  'fraction-with-unit': entry<{ written: string; first: string; second: string }>({
    title: 'A fraction before a unit',
    explain: `A unit binds to the number before it, but a fraction before a unit reads as one number. ${readTwoWays}`,
    words: ({ written, first, second }) => ({
      message: `${quoted(written)} can be read as ${quoted(first)} or as ${quoted(second)}`,
      hint: 'write the one you mean',
    }),
  }),
  'minus-power': entry<{ written: string; first: string; second: string }>({
    title: 'A minus sign before a power',
    explain: `Mathematics and spreadsheets read this differently. ${readTwoWays}`,
    words: ({ written, first, second }) => ({
      message: `${quoted(written)} can be read as ${quoted(first)} or as ${quoted(second)}`,
      hint: 'write the one you mean',
    }),
  }),
  'power-chain': entry<{ written: string; first: string; second: string }>({
    title: 'A power of a power without parentheses',
    explain: `Mathematics and spreadsheets read this differently. ${readTwoWays}`,
    words: ({ written, first, second }) => ({
      message: `${quoted(written)} can be read as ${quoted(first)} or as ${quoted(second)}`,
      hint: 'write the one you mean',
    }),
  }),
  'root-power': entry<{ written: string; first: string; second: string }>({
    title: 'A power after a root',
    explain: `The power may belong to the root or to what stands under it. ${readTwoWays}`,
    words: ({ written, first, second }) => ({
      message: `${quoted(written)} can be read as ${quoted(first)} or as ${quoted(second)}`,
      hint: 'write the one you mean',
    }),
  }),
  'percent-after': entry<{ operand: string }>({
    title: 'A percent sign after something other than a number',
    explain: 'The percent sign follows a number or a closing parenthesis.',
    words: ({ operand }) => ({
      message: `the percent sign cannot follow ${quoted(operand)} directly`,
      hint: `write (${operand})%`,
    }),
  }),
  'comparison-chain': entry<{ written: string; instead: string }>({
    title: 'Two comparisons in a row',
    explain: 'A comparison gives true or false, which does not compare with a number.',
    words: ({ written, instead }) => ({
      message: `${quoted(written)} compares twice in a row`,
      hint: `write ${instead}`,
    }),
  }),
  'argument-missing': entry<{ function: string }>({
    title: 'An argument left out between separators',
    explain: 'Every argument is written; optional ones are left out at the end only.',
    words: (facts) => ({ message: `${facts.function} has an empty argument here` }),
  }),
};
