import { entry } from './entry.ts';
import { listed, quoted } from './wording.ts';

/** What a value is, in words that follow "is": "a length (ft)", "text", "a plain number". */
type Sides = {
  left: string;
  leftIs: string;
  right: string;
  rightIs: string;
};

/** What has a type: the formula, or one side of its comparison. */
const subject = (written: string, side: boolean): string =>
  side ? `${quoted(written)} is` : 'the formula gives';

/** Problems of dimensions and kinds of value. */
export const types = {
  'dimensions-differ': entry<Sides & { doing: string }>({
    title: 'Two quantities of different dimension',
    explain: 'Only quantities of one dimension are added, subtracted or compared.',
    words: ({ left, leftIs, right, rightIs, doing }) => ({
      message: `${quoted(left)} is ${leftIs} and ${quoted(right)} is ${rightIs}: they cannot be ${doing}`,
    }),
  }),
  'mass-and-force': entry<Sides & { doing: string }>({
    title: 'A mass together with a force',
    explain: 'A mass becomes the force of its weight by the acceleration of gravity, g = 9.80665 m/s².',
    words: ({ left, leftIs, right, rightIs, doing }) => ({
      message: `${quoted(left)} is ${leftIs} and ${quoted(right)} is ${rightIs}: they cannot be ${doing}`,
      hint: 'a mass times g, 9.80665 (m/s^2), is the force of its weight',
    }),
  }),
  'angle-and-plain': entry<Sides & { doing: string }>({
    title: 'An angle together with a plain number',
    explain: 'A plain number beside an angle may mean degrees or radians. Both readings are offered.',
    words: ({ left, leftIs, right, rightIs, doing }) => ({
      message: `${quoted(left)} is ${leftIs} and ${quoted(right)} is ${rightIs}: they cannot be ${doing}`,
      hint: 'give the plain number a unit, “deg” or “rad”',
    }),
  }),
  'point-operation': entry<{ written: string; operands: string; doing: string }>({
    title: 'An operation that absolute values do not have',
    explain:
      'An absolute temperature, an elevation or a date is a point on a scale: two of one kind have a difference, ' +
      'and a difference is added to one. Nothing else is done with them.',
    words: ({ written, operands, doing }) => ({
      message: `${quoted(written)}: ${operands} cannot be ${doing}`,
      hint: 'work with the difference from a reference point',
    }),
  }),
  'date-as-unit': entry<Record<string, never>>({
    title: 'A date written as a number with a unit',
    explain: 'A date is made from its year, month and day.',
    words: () => ({ message: 'a date is no number with a unit', hint: 'write DATE(year; month; day)' }),
  }),
  'number-wanted': entry<{ written: string; is: string; doing: string }>({
    title: 'Something other than a number in a calculation',
    explain: 'Text and true or false do not take part in arithmetic. TEXT writes a number as text.',
    words: ({ written, is, doing }) => ({ message: `${quoted(written)} is ${is} and cannot be ${doing}` }),
  }),
  'text-and-number': entry<Sides>({
    title: 'Values of different kind compared',
    explain: 'Text compares with text, numbers with numbers of one dimension.',
    words: ({ left, leftIs, right, rightIs }) => ({
      message: `${quoted(left)} is ${leftIs} and ${quoted(right)} is ${rightIs}: they do not compare`,
    }),
  }),
  'join-number': entry<{ written: string; is: string; instead: string }>({
    title: 'A number joined to text',
    explain: 'A number becomes text only with its unit and decimals named.',
    words: ({ written, is, instead }) => ({
      message: `${quoted(written)} is ${is}; & joins texts`,
      ...(instead !== '' && { hint: `write ${instead}` }),
    }),
  }),
  'exponent-not-plain': entry<{ written: string; is: string }>({
    title: 'An exponent with a dimension',
    explain: 'An exponent is a plain number.',
    words: ({ written, is }) => ({
      message: `the exponent ${quoted(written)} is ${is}; it must be a plain number`,
    }),
  }),
  'exponent-not-constant': entry<{ base: string; baseIs: string; exponent: string }>({
    title: 'A variable exponent on a quantity with a dimension',
    explain:
      'The dimension of a power must be known before any number is: a quantity with a dimension takes a constant ' +
      'exponent.',
    words: ({ base, baseIs, exponent }) => ({
      message: `${quoted(base)} is ${baseIs}, so its exponent must be a constant, and ${quoted(exponent)} is not`,
      hint: 'write the exponent as a number, or divide the base by a unit first',
    }),
  }),
  'exponent-not-exact': entry<{ base: string; baseIs: string; exponent: string; near: string }>({
    title: 'A rounded fraction as the exponent of a quantity with a dimension',
    explain: 'A rounded fraction such as 0.333 gives no dimension; the fraction itself does.',
    words: ({ base, baseIs, exponent, near }) => ({
      message: `${quoted(base)} is ${baseIs}, so its exponent must be an exact fraction, and ${exponent} is not`,
      hint: near === '' ? 'divide the base by a unit first' : `write (${near})`,
    }),
  }),
  'dimension-too-high': entry<{ written: string }>({
    title: 'A dimension no quantity has',
    explain: 'Exponents of a dimension beyond 99, or with such denominators, are a slip in the formula.',
    words: ({ written }) => ({
      message: `${quoted(written)} has a dimension with exponents beyond 99`,
      hint: 'look for a power or root too many',
    }),
  }),
  'argument-count': entry<{ function: string; signature: string; given: number; wanted: string }>({
    title: 'Too few or too many arguments',
    explain: 'Each function takes the arguments its signature lists.',
    words: (facts) => ({
      message: `${facts.function} takes ${facts.wanted}, not ${facts.given}`,
      hint: `its arguments are ${facts.signature}`,
    }),
  }),
  'argument-kind': entry<{ function: string; argument: string; written: string; is: string; wanted: string }>(
    {
      title: 'An argument of the wrong kind',
      explain: 'Each argument of a function takes one kind of value.',
      words: (facts) => ({
        message: `${facts.function}: ${quoted(facts.written)} is ${facts.is}; ${facts.argument} must be ${facts.wanted}`,
      }),
    },
  ),
  'angle-wanted': entry<{ function: string; written: string }>({
    title: 'A plain number where an angle is wanted',
    explain: 'A plain number may be meant in degrees or in radians. Both readings are offered.',
    words: (facts) => ({
      message: `${facts.function}: ${quoted(facts.written)} is a plain number, and degrees or radians are meant`,
      hint: /^[\d.]+$/.test(facts.written)
        ? `write ${facts.written} deg or ${facts.written} rad`
        : 'multiply it by 1 deg or by 1 rad',
    }),
  }),
  'arguments-differ': entry<{ function: string } & Sides>({
    title: 'Arguments that must be of one kind and are not',
    explain: 'The values a function chooses between or compares have one dimension.',
    words: (facts) => ({
      message: `${facts.function}: ${quoted(facts.left)} is ${facts.leftIs} and ${quoted(facts.right)} is ${facts.rightIs}; they must be alike`,
    }),
  }),
  'round-quantity': entry<{ function: string; written: string; is: string }>({
    title: 'Rounding a quantity to digits',
    explain:
      'The digits of a quantity depend on its unit. A quantity is rounded to a step of its own dimension.',
    words: (facts) => ({
      message: `${facts.function} rounds plain numbers to digits, and ${quoted(facts.written)} is ${facts.is}`,
      hint: `round to a step, as in MROUND(${facts.written}; step), CEILING or FLOOR`,
    }),
  }),
  'option-wanted': entry<{ function: string; argument: string; written: string; choices: string[] }>({
    title: 'An option that is not one of the choices',
    explain: 'An option is written as a text in quotation marks, so that the reader sees which one is meant.',
    words: (facts) => ({
      message: `${facts.function}: ${quoted(facts.written)} is no ${facts.argument}`,
      hint:
        facts.choices.length > 0
          ? `write ${listed(
              facts.choices.map((choice) => `"${choice}"`),
              'or',
            )}`
          : 'write it as a text or number, not as a calculation',
    }),
  }),
  'function-refuses': entry<{ function: string; because: string }>({
    title: 'A call that makes no sense',
    explain: 'The arguments are each allowed, but not together.',
    words: (facts) => ({ message: `${facts.function}: ${facts.because}` }),
  }),
  'unit-disagrees': entry<{ written: string; side: boolean; is: string; unit: string; unitIs: string }>({
    title: 'A unit column that disagrees with the formula',
    explain:
      'The unit column says what the result is, of a check what both its sides are read in; a formula of another ' +
      'dimension is refused.',
    words: ({ written, side, is, unit, unitIs }) => ({
      message:
        unit === ''
          ? `the formula gives ${is}, and the line is ${unitIs}`
          : `${subject(written, side)} ${is}, and the unit ${quoted(unit)} is ${unitIs}`,
    }),
  }),
  'unit-mass-force': entry<{ written: string; side: boolean; is: string; unit: string; unitIs: string }>({
    title: 'A mass where a force is wanted, or the reverse',
    explain: 'A mass becomes the force of its weight by the acceleration of gravity, g = 9.80665 m/s².',
    words: ({ written, side, is, unit, unitIs }) => ({
      message: `${subject(written, side)} ${is}, and the unit ${quoted(unit)} is ${unitIs}`,
      hint: 'a mass times g, 9.80665 (m/s^2), is the force of its weight',
    }),
  }),
  'row-function-outside': entry<{ function: string }>({
    title: 'A function of rows outside a table',
    explain: 'ABOVE, ROW and the running functions follow the rows of the table whose column they stand in.',
    words: (facts) => ({ message: `${facts.function} works in the columns of a table only` }),
  }),
  'row-value-wanted': entry<{ function: string; written: string }>({
    title: 'A column of this table is wanted',
    explain:
      'The function follows this table row by row, so it takes a column of the table by its bare name.',
    words: (facts) => ({
      message: `${facts.function} takes a column of this table by its own name, and ${quoted(facts.written)} is none`,
    }),
  }),
  'known-outside': entry<{ written: string }>({
    title: 'KNOWN outside an aggregate',
    explain: 'KNOWN leaves out the blank rows of a column; only an aggregate can take what is left.',
    words: ({ written }) => ({
      message: `${quoted(written)} leaves rows out, so it stands directly inside an aggregate`,
      hint: 'write SUM(KNOWN(table.column)), AVERAGE, MIN, MAX or COUNT',
    }),
  }),
  'blank-of-what': entry<{ written: string; column: boolean }>({
    title: 'ISBLANK of a calculation or a whole column',
    explain: 'Only one cell can be blank or not; a calculation has a value or a problem.',
    words: ({ written, column }) => ({
      message: `ISBLANK looks at one cell, and ${quoted(written)} is a ${column ? 'whole column' : 'calculation'}`,
      ...(column && { hint: `COUNT(KNOWN(${written})) is the number of its rows that are filled in` }),
    }),
  }),
  'series-outside': entry<Record<string, never>>({
    title: 'SERIES outside a series column',
    explain: 'SERIES makes the rows of a table; it is the whole formula of the column that does so.',
    words: () => ({ message: 'SERIES is the whole formula of a column that makes the rows of its table' }),
  }),
  'two-tables-together': entry<{ function: string; left: string; right: string }>({
    title: 'Columns of two tables in one aggregate',
    explain:
      'Whole columns of two tables can be taken together row by row, or every row of one with every row of the other; neither is assumed. A lookup by a key, or INDEX by the number of the row, in a column of one table brings in what belongs to each of its rows; what does not belong together is taken apart.',
    words: (facts) => ({
      message: `${facts.function}: ${quoted(facts.left)} and ${quoted(facts.right)} are columns of two tables: row by row, or every row with every row?`,
      hint: 'bring the values into one table, by a column of LOOKUP by a key or of INDEX by the number of the row, or take each table apart',
    }),
  }),
  'same-table-twice': entry<{ function: string; written: string }>({
    title: 'One table both looked up and looked in',
    explain: 'The key runs over the rows of the same table that is searched, so no one row is meant.',
    words: (facts) => ({
      message: `${facts.function}: ${quoted(facts.written)} runs over the same table that is searched`,
      hint: 'put the lookup in a column of its own',
    }),
  }),
};
