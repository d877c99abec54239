import { entry, type NoFacts } from './entry.ts';
import { listed, quoted } from './wording.ts';

/** Where the lack of a value begins: nothing is wrong with a formula that says nothing for the case there is. */
type Begins = Readonly<{ origin: string; because: string; uncovered?: boolean }>;

const coverCase = (origin: string): string =>
  `change what ${origin} goes by, or have its formula say what holds otherwise`;

/** How a value stands to another where the comparison of the two does not hold. */
const STANDS: Readonly<Record<string, string>> = {
  '<=': 'is more than',
  '<': 'is no less than',
  '>=': 'is less than',
  '>': 'is no more than',
};

/** What is said where the one condition compares two names: which of them is too small, and which too large. */
function comparedNames(
  asked: readonly string[],
  values: readonly { readonly written: string; readonly is: string }[],
): { readonly message: string; readonly hint: string } | undefined {
  const [, left, sign = '', right] = /^(\S+) (<=?|>=?) (\S+)$/u.exec(asked[0] ?? '') ?? [];
  const [one, other] = [left, right].map((name) => values.find(({ written }) => written === name));
  const stands = STANDS[sign];
  if (asked.length !== 1 || !one || !other || stands === undefined) return undefined;
  const [small, large] = sign.startsWith('<') ? [other, one] : [one, other];
  return {
    message: `${quoted(one.written)}, ${one.is}, ${stands} ${quoted(other.written)}, ${other.is}, and the formula has no value for that`,
    hint: `${quoted(small.written)} is too small or ${quoted(large.written)} too large: change what they come from, or have the formula say what holds then, as its last argument`,
  };
}

/** What a person can do where the lack of a value begins. */
function remedyAt({ origin, because, uncovered }: Begins): string {
  if (because === '') return `fill in ${origin}`;
  return uncovered ? `${coverCase(origin)}: ${because}` : `mend ${origin}: ${because}`;
}

/** Problems found while computing: domains, division by zero, missing values, failing rows. */
export const values = {
  'division-by-zero': entry<{ divisor: string; written: string }>({
    title: 'Division by zero',
    explain: 'The divisor is zero for the values entered, so the result has no value.',
    words: ({ divisor, written }) => ({
      message: `${quoted(divisor)} is zero, and ${quoted(written)} divides by it`,
    }),
  }),
  'too-large': entry<{ written: string }>({
    title: 'A number too large to hold',
    explain: 'The result is beyond 1.8 × 10^308, the largest number that can be held.',
    words: ({ written }) => ({ message: `${quoted(written)} is too large a number to hold` }),
  }),
  'outside-domain': entry<{
    function: string;
    because: string;
    written: string;
    argument?: string;
    value?: string;
  }>({
    title: 'An argument outside the domain of a function',
    explain: 'The function has no value for what its arguments are with the values entered.',
    words: (facts) => {
      const shown =
        facts.argument === undefined || facts.argument === facts.value
          ? ''
          : ` (${quoted(facts.argument)} is ${facts.value})`;
      return { message: `${facts.function}: ${facts.because}${shown}` };
    },
  }),
  'key-not-found': entry<{
    /** Of a cell of a table in which the key is entered, its row. */
    row: number | null;
    /** The key as the formula has it, and what it is. */
    argument: string;
    value: string;
    /** Where it is looked for. */
    list: string;
    nearest: string;
    /** Where none is near: some of the keys, and how many more there are. */
    some: readonly string[];
    more: number;
    /** The line or column in which the key is entered, and its row. */
    entered?: string;
    enteredRow?: number | null;
  }>({
    title: 'A key that stands in no row',
    explain:
      'A formula looks for the row of a table in which a key stands, a material or a size, and there is none. It is told once, where the key is entered, with the text as typed, where such keys are listed and the one there that is nearest; all that looks for it waits.',
    words: ({ row, argument, value, list, nearest, some, more }) => {
      const where = row === null ? '' : `row ${row}: `;
      const key = argument === value ? value : `${quoted(argument)} is ${value}, which`;
      const others = [...some, ...(more > 0 ? [`${more} more`] : [])];
      const known =
        nearest === '' ? ` (there: ${listed(others, 'and')})` : `; the nearest there is ${nearest}`;
      return {
        message: `${where}${key} stands in no row of ${quoted(list)}${known}`,
        hint: 'enter one that is listed there, or add a row to the list',
      };
    },
  }),
  'no-row-meets': entry<{
    function: string;
    /** What is taken of the rows in which the condition holds: the least, the greatest, the mean. */
    sought: string;
    /** The values it would be taken of, by their description or as written, and the condition as written. */
    of: string;
    condition: string;
    rows: number;
    /** The names in the condition that stand for one value, and what they stand for. */
    values: readonly { readonly written: string; readonly is: string }[];
  }>({
    title: 'No row that meets a condition',
    explain:
      'The least, the greatest or the mean is taken of the rows in which a condition holds, and with the values ' +
      'entered it holds in none: no depth of the table is enough, no size of the list is large enough. The formula is ' +
      'sound; there is no such row.',
    words: ({ sought, of, condition, rows, values: named }) => {
      const known = named.map(({ written, is }) => `${written} is ${is}`);
      const where = known.length === 0 ? '' : ` (${listed(known, 'and')})`;
      const nothing =
        rows === 0
          ? 'the table has no rows to meet'
          : rows === 1
            ? 'the only row does not meet'
            : `none of the ${rows} rows meets`;
      return {
        message: `there is no ${sought} ${quoted(of)}: ${nothing} ${quoted(condition)}${where}`,
        hint: 'change what the condition compares, or let the table go on until a row meets it',
      };
    },
  }),
  'power-domain': entry<{ written: string; base: string; baseIs: string; exponent: string }>({
    title: 'A power that has no value',
    explain: 'A negative number has only whole powers, and zero no negative power.',
    words: ({ written, base, baseIs, exponent }) => ({
      message: `${quoted(written)} has no value: ${quoted(base)} is ${baseIs}, and the exponent is ${exponent}`,
    }),
  }),
  'no-branch': entry<{
    function: string;
    written: string;
    /** The conditions, or what chooses among the cases, as written. */
    asked: readonly string[];
    /** The names in them, and what they stand for. */
    values: readonly { readonly written: string; readonly is: string }[];
  }>({
    title: 'No branch holds',
    explain: 'None of the conditions holds, and nothing is said for that case.',
    words: (facts) => {
      const known = facts.values.map(({ written, is }) => `${written} is ${is}`);
      const is = known.length === 0 ? '' : `: ${listed(known, 'and')}`;
      const [first = facts.written] = facts.asked;
      if (facts.function === 'CHOOSE')
        return {
          message: `CHOOSE: the index ${quoted(first)} is the place of none of its values${is}`,
          hint: 'the index counts the values from 1',
        };
      if (facts.function === 'SWITCH')
        return {
          message: `the formula says nothing for this case of ${quoted(first)}${is}`,
          hint: 'change that, or have the formula say what holds otherwise, as its last argument',
        };
      const compared = comparedNames(facts.asked, facts.values);
      if (compared) return compared;
      return {
        message:
          facts.asked.length === 1
            ? `the formula says nothing for where ${quoted(first)} does not hold${is}`
            : `the formula says nothing for where none of ${listed(facts.asked.map(quoted), 'and')} holds${is}`,
        hint: 'change that, or have the formula say what holds otherwise, as its last argument',
      };
    },
  }),
  'blank-cell': entry<{ name: string; row: number | null; cell: string }>({
    title: 'A blank value that is needed',
    explain: 'A blank value is missing, never zero. What needs it waits until it is filled in.',
    words: ({ name, row }) => ({
      message: row === null ? `${quoted(name)} is blank` : `${quoted(name)} is blank in row ${row}`,
      hint: row === null ? `fill in ${name}` : `fill in row ${row} of ${name}`,
    }),
  }),
  'waiting-on': entry<{ name: string; row: number | null } & Begins>({
    title: 'A value that waits on another',
    explain: 'What this depends on has no value. Mend that, and this follows.',
    words: ({ name, row, ...begins }) => {
      const what = row === null ? quoted(name) : `row ${row} of ${quoted(name)}`;
      return {
        message: `waits on ${what}, which has no value`,
        ...(begins.origin !== '' && { hint: remedyAt(begins) }),
      };
    },
  }),
  'not-computed-yet': entry({
    title: 'A value that is not computed yet',
    explain:
      'Long work is done bit by bit, so that the page answers meanwhile, and can be stopped. Until it is done, what it ' +
      'gives and all that depends on it shows no value, for the one before would be out of date.',
    words: () => ({ message: 'not computed yet: the work on it is under way or was stopped' }),
  }),
  'waiting-on-rows': entry<{ table: string; name: string } & Begins>({
    title: 'A table whose rows are not known',
    explain: 'The series that makes the rows of a table has no value, so nothing can be said of its rows.',
    words: ({ table, name, ...begins }) => ({
      message: `waits on ${quoted(name)}, which makes the rows of ${quoted(table)}`,
      hint: remedyAt(begins),
    }),
  }),
  'rows-blank': entry<{
    function: string;
    name: string;
    blank_rows: number;
    first_row: number;
    known_rows: number;
    known_part: number | null;
    known_text: string;
    blanks: readonly { readonly cell: string; readonly row: number }[];
  }>({
    title: 'An aggregate over blank rows',
    explain:
      'A blank value is missing, never zero, so an aggregate over blank rows has no value. What the filled rows give ' +
      'is told beside it, and no formula can read it. Leaving rows out is explicit, by KNOWN or by a value for ' +
      'blanks in the column.',
    words: (facts) => {
      const rows =
        facts.blank_rows === 1
          ? `row ${facts.first_row} of ${quoted(facts.name)} is blank`
          : `${facts.blank_rows} rows of ${quoted(facts.name)} are blank, the first of them row ${facts.first_row}`;
      const part = facts.known_text === '' ? '' : `; the ${facts.known_rows} filled give ${facts.known_text}`;
      return {
        message: `${facts.function}: ${rows}${part}`,
        hint: `fill in row ${facts.first_row}`,
      };
    },
  }),
  'aggregate-row-fails': entry<{
    function: string;
    table: string;
    row: number;
    because: string;
    /** Where the lack of a value begins; empty where it is what the aggregate computes of the row. */
    origin: string;
    blank: boolean;
    uncovered?: boolean;
  }>({
    title: 'An aggregate over a row that fails',
    explain:
      'One row without a value takes the value from everything computed of all rows. The remedy lies where the lack ' +
      'of a value begins, on whatever sheet that is.',
    words: (facts) => ({
      message: `${facts.function}: row ${facts.row} of ${quoted(facts.table)} fails: ${facts.because}`,
      ...(facts.origin !== '' && {
        hint: facts.uncovered
          ? coverCase(facts.origin)
          : `${facts.blank ? 'fill in' : 'mend'} ${facts.origin}`,
      }),
    }),
  }),
  'too-much-work': entry<{ written: string; elements: number; limit: number }>({
    title: 'More work than the program undertakes',
    explain:
      'An aggregate over every pair of rows of long tables takes longer than anybody waits. The limit keeps the page ' +
      'alive.',
    words: ({ written, elements, limit }) => ({
      message: `${quoted(written)} takes ${elements.toExponential(1)} steps, and at most ${limit.toExponential(0)} are taken`,
      hint: 'look the value up in a column of its own, or shorten the tables',
    }),
  }),
  'series-step-zero': entry<{ start: string; stop: string; step: string }>({
    title: 'A series without a step',
    explain: 'Steps of zero never reach the stop.',
    words: ({ start, stop }) => ({ message: `the step of the series from ${start} to ${stop} is zero` }),
  }),
  'series-wrong-way': entry<{ start: string; stop: string; step: string }>({
    title: 'A series that leads away from its stop',
    explain: 'A rising series needs a step above zero, a falling one a step below.',
    words: ({ start, stop, step }) => ({
      message: `steps of ${step} lead from ${start} away from ${stop}`,
      hint: 'change the sign of the step, or exchange start and stop',
    }),
  }),
  'series-too-long': entry<{ start: string; stop: string; step: string; least: string; limit: number }>({
    title: 'A series of too many rows',
    explain: 'A series makes at most 200,000 rows.',
    words: ({ start, stop, step, least, limit }) => ({
      message: `from ${start} to ${stop} in steps of ${step} are more than ${limit} rows`,
      hint: `take a step of ${least} or a longer one`,
    }),
  }),
  'series-twice': entry<{ table: string }>({
    title: 'Two series in one table',
    explain: 'One column makes the rows of a table.',
    words: ({ table }) => ({
      message: `another column makes the rows of ${quoted(table)} already`,
      hint: 'compute this column from that one',
    }),
  }),
  'nothing-there': entry<{ name: string }>({
    title: 'A value that is no longer there',
    explain: 'The line or column this refers to has been taken away.',
    words: ({ name }) => ({ message: `there is no ${quoted(name)} any more` }),
  }),
  'formula-broken': entry<NoFacts>({
    title: 'A formula that could not be understood',
    explain: 'The formula has a problem that is reported with it.',
    words: () => ({ message: 'the formula could not be understood' }),
  }),
};
