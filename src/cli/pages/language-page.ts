import { type FunctionEntry, functionTable, signatureOf } from '../../language/index.ts';
import { code, generated, table } from './markdown.ts';

/** What is written, and its two readings as they are offered. */
const readings = [
  ['3/4 in', '(3/4) * 1 in', '3/(4 in)'],
  ['5 m^2', '5 (m^2)', '(5 m)^2'],
  ['5 m/s', '5 (m/s)', '5 m / s'],
  ['5 kN·m', '5 (kN·m)', '5 kN · m'],
  ['-x^2', '(-x)^2', '-(x^2)'],
  ['a^b^c', '(a^b)^c', 'a^(b^c)'],
  ['√x^2', '(√x)^2', '√(x^2)'],
  ['1,200', '1200', '1; 200'],
  ['SIN(30)', 'SIN(30 deg)', 'SIN(30 rad)'],
  ['45 deg + 1', '45 deg + 1 deg', '45 deg + 1 rad'],
  ['1 < x < 2', 'AND(1 < x; x < 2)', ''],
  ['5 lb', '5 lbm', '5 lbf'],
].map((row) => row.map((cell) => (cell === '' ? '' : code(cell))));

/** Functions that OpenFormula does not have under these names. */
const own = [
  ...[
    'LESSER',
    'GREATER',
    'IFS',
    'SWITCH',
    'MINIF',
    'MAXIF',
    'INTERPOLATE',
    'INTERPOLATE2',
    'ABOVE',
    'RUNNINGSUM',
  ],
  ...['RUNNINGMAX', 'RUNNINGMIN', 'SERIES', 'KNOWN', 'TRIANGINV'],
];

const introduction = `# The formula language

${generated}

A formula is what stands in the calculation of a line, \`0.5 * M * v^2 * C_M\`. An entry is what a person types as a
value, \`12'-6 1/2"\` or \`3,500 psf\`. Entries are read generously, formulas strictly: what two careful people could
read two ways is refused, and both readings are offered.

## Quantities

A number may carry a unit: one symbol after a space (\`12 ft\`, \`150 pcf\`), a compound one in parentheses
(\`3.5 (kN/m^2)\`). It binds tighter than anything. A formula that a code gives for numbers in stated units is written as
it means: \`2 * SQRT(f'_c / 1 psi) * 1 psi * b * d\`. A unit never follows a name or a closing parenthesis: the unit column
converts. The token \`0\` fits any dimension where a sum, a difference, a comparison, MIN, MAX or IF needs equal ones;
it fits no point, since 0 °C and 0 K differ. Feet and inches, thousands separators and dates as written belong to
entries; in a formula a date is \`DATE(2026; 11; 25)\`.

## Names

Names start with a letter, Greek too, then letters, digits, \`_\` and \`'\`: \`f'_c\`, \`C_M\`, \`γ_w\`. Capital and small
letters differ. Look-alikes are read as what they look like: the micro sign as \`μ\`, the ohm sign as \`Ω\`, the increment
as \`Δ\`, a prime or a curly apostrophe as \`'\`. \`layers.thickness\` is a column, \`basis.t_deck\` a line of another
sheet, \`basis.layers.top\` both. Function names are reserved in any case.

## Kinds of value

Numbers of a dimension, points, texts and truth values.

- **Angles.** \`deg\`, \`rad\` and the inverse functions mark a plain number as an angle. Sums and differences keep the mark,
  and so do products with and quotients by an unmarked plain number, and functions that give what they are given: MIN,
  MAX, IF, ABS, MOD, the aggregates. Powers, roots, an angle times an angle, a number over an angle, an angle over an
  angle or times a length are none. Trigonometry refuses an unmarked number and offers degrees and radians; so does a
  sum or comparison of an angle and a plain number. Where a plain number is wanted an angle is the number of its radians,
  except in rounding to digits, which depend on the unit.
- **Points.** An absolute temperature (\`20 degC\`, \`-5 degC\`), an elevation to a datum (\`-30 (ft MLLW)\`) and a date. Two
  points of a kind have a difference; a difference is added to a point; points compare, and functions that choose or
  average keep them: MIN, MAX, LESSER, GREATER, IF, AVERAGE, MEDIAN, PERCENTILE, LARGE, SMALL, ABOVE, lookups. Everything
  else is refused, so is every pair of different datums. \`K\`, and \`degC\` inside a compound unit, are differences.
  A date is the start of its day; with a time that is no whole number of days added it has a time of day, which is shown
  and entered like \`2026-11-25 06:30\`. YEAR, MONTH, DAY, WEEKDAY, WORKDAY and NETWORKDAYS mind the day alone. A time between
  dates is read in days where no unit is stated.
- **Texts** compare without regard to case and outer spaces, composed and decomposed letters alike, in the order of their
  characters, and never with a number. \`&\` joins texts; TEXT writes a number as text, with its unit and decimals named.
- **Truth values** come from comparisons and from TRUE and FALSE. They are equal or not, and have no order.

## Operators

From the one that binds tightest: unit, \`√\`, \`%\` and \`²\`, \`^\`, the minus sign, \`* /\`, \`+ -\`, \`&\`, comparisons; equal
ones from the left. Also \`· × ÷ − ≤ ≥ ≠ √ ² ³\` as pasted. Arguments are separated by \`;\` or \`,\`, two numbers by a
comma with a space. \`%\` follows a number or a closing parenthesis and stands for a hundredth: \`200 + 15%\` is 200.15. A
quantity with a dimension takes a constant exponent that is an exact fraction: \`V^(1/3)\` or \`x^0.5\`, not \`V^0.333\`.

Numbers are equal within a part in 1e12 of the larger one, which is more than the rounding of a computation leaves and
less than any digit a person writes: so a check that is met exactly holds, \`0.1 + 0.2 <= 0.3\` as well as
\`3 * 1.1 m <= 3.3 m\`, and one that is exceeded by more than that fails, in both engines. The same goes for keys, for the
ends of permitted ranges and for the sine or cosine of one. A difference compared with \`0\` compares its positive with its
negative terms, also within ABS and as the greater or the lesser of it and \`0\`; where it is a line of its own, or the
argument of SIGN, it is the number that is left. A stated value that equals the computed one so differs by nothing. What a
line comes to is copied, stated and held as the number of at most ten digits that it equals, if
there is one: 65 ft for 64.99999999999999 ft. In rounding, a quotient within 1e-9 of a whole number (or 1e-12 of itself, if that is more, yet no more than 1e-4) is that
number, so that \`CEILING(1490/0.95*(1+0.14)/12; 1)\` is 149, and halves have the same margin. Sums are compensated.

## Tables

In the formula of a column a bare column name is this row's value and \`ABOVE(column; first)\` the row above; ABOVE may
close a circle between columns of one table, which is then computed row by row. \`table.column\` is the whole column:
aggregates and lookups take it, and a value of this row stands beside the whole column of another table,
\`SUM(GREATER(0; LESSER(depth; layers.bottom) - layers.top) * layers.f)\`. Whole columns of two tables in one aggregate or
lookup are refused: row by row and every row with every row are both meant by someone. A column of LOOKUP by a key, or of
INDEX by ROW, brings into one table what belongs to its rows; \`SUM(a.n) + SUM(d.z)\` takes each table apart. A whole
column where one value is wanted is refused. SERIES as the formula of a column makes the rows of its table.

## What is missing

A blank is missing, never zero. What needs it has no value and says what it waits on; an aggregate over blank rows tells
the part that is known, which no formula can read. \`ISBLANK(name)\` may look at a blank, \`KNOWN(table.column)\` leaves
blank rows out, and a lookup minds only the row it picks. Of no rows SUM and COUNT are 0, and MIN, MAX and AVERAGE have
no value. IF, IFS, SWITCH and CHOOSE compute only the branch they take, row by row; all branches must be of one kind.

## Stated values

A calculated line, either side of a check, or a cell of a calculated column can be *stated*: an entry, and the reason for
it. Everything that names the line then uses the stated value. The formula is still computed and stands beside it with the
difference, here and in the second engine. A reason that is blank is an open item, and so is one that was given for another
value or another place until it is confirmed. The entry has the kind of its line, and a text that chooses methods is one that
a method is for or that the formula can come to; a
number without a unit is one in the unit of the line, and where the line states no unit it is refused. A formula that
fails is a remark then, no problem: the stated value stands, also as one side of a check whose other side is sound. A
stated cell belongs to its row and stays with it when rows are put in, taken out
or moved; the rows of a SERIES are made anew each time, so their cells cannot be stated.

## Where a check applies

A check may have a condition under which it *applies* (\`applies\` in the file), a formula that is true or false such as
\`U > 0 kN\`. Where it is false there is nothing to compare: the check neither holds nor fails, is counted apart, and says the
condition. Its sides are not looked at then, so that they may be blank or negative. A condition that has no value leaves the
check without a verdict. A formula that names a check which does not apply waits: neither true nor false would be so. A
line needs no such condition: \`IF\` and methods say what it is where.

## Methods

A calculated line or column has either one formula, or *methods*: formulas of their own, each with its reference, for named
options of a choice or of a text. One is in force and is what is shown, printed and computed; a method without options, the
last, is for all others. Where a choice decides, the other methods add nothing to what the line depends on. Where a column
of texts of the same table decides, named alone, each row has its method; so does a line by another text line. All methods
are checked like any formula, and give the line’s dimension. An option that no method is for gives no value and is named.

## Refused, with the readings offered

${table(['written', 'may be read as', 'or as'], readings)}

Also refused, with what to write instead: \`12'\`, \`12ft\`, \`5 kN m\`, \`b ft\` and \`(a + b) ft\`, \`2 (a + b)\` and \`2 a\`
without a sign between, \`5 ton\`, \`3 mPa\`, \`==\`, \`**\`.

## Differences from OpenFormula

Function names are those of OpenFormula (OASIS ODF 1.3, part 4) where it has them. Where safety asks for another meaning:

- \`-x^2\` and \`a^b^c\` are refused, where OpenFormula reads them as \`(-x)^2\` and \`(a^b)^c\`.
- Names stand in place of cell addresses, whole columns in place of ranges.
- Comparison, rounding and MOD have the margins told above; ROUND to digits is for plain numbers only.
- CEILING goes to plus infinity and FLOOR to minus infinity whatever the sign of the number or of the step.
- ROUND and its like take whole digits from -15 to 15; CHOOSE, INDEX, LARGE, LEFT and their like refuse a place that is no
  whole number, where OpenFormula cuts it.
- LOG always states its base. ERF takes one argument. XOR takes two.
- PRODUCT of a whole column is for plain columns, whose product has a dimension whatever their number of rows.
- A blank is missing, never zero or an empty text; COUNT counts values and refuses blanks unless KNOWN leaves them out.
- SUMIF, COUNTIF and their like take a condition over rows, not a text with a criterion in it.
- MATCH and LOOKUP always state the kind of match: \`"exact"\`, \`"first"\`, \`"at or below"\`, \`"at or above"\`. Keys that must
  ascend and do not, and a key that stands twice, are refused.
- Texts and truth values are matched \`"exact"\` or \`"first"\` only; they have no order to lie between.
- IF takes three arguments; IFS and SWITCH refuse where no case holds, and so does an aggregate with a condition that
  holds in no row, SUMIF and COUNTIF excepted.
- AND and OR work element by element and compute all their arguments.
- SIN, COS and TAN take angles, and are 0 where rounding alone keeps them from it, as for \`COS(90 deg)\`; ASIN, ATAN and
  their like give angles.
- DATE refuses a day or month that does not exist, where OpenFormula counts on. A date and a plain number do not add:
  the number has a unit, \`start + 10 d\`.
- WEEKDAY counts from 1 for Monday to 7 for Sunday (ISO 8601).
- WORKDAY and NETWORKDAYS count Monday to Friday less the holidays given.
- NORMINV, LOGINV and BETAINV refuse the chances 0 and 1; BETAINV always states its low and high.
- EXP, LN and LOG take plain numbers; text never turns into a number by itself, nor a truth value.
- TEXT takes a unit and decimals in place of a format.
- COUNT takes values of any kind. ROW is the number of this row in its table and takes no argument.
- ${own.join(', ')} are this language's own, or come from elsewhere.
`;

/** The reference of the language: an introduction and every function of the table. */
export function languagePage(): string {
  const groups = new Map<string, FunctionEntry[]>();
  for (const entry of functionTable) groups.set(entry.group, [...(groups.get(entry.group) ?? []), entry]);
  const sections = [...groups].map(([group, entries]) => {
    const title = `${group.charAt(0).toUpperCase()}${group.slice(1)}`;
    return `### ${title}\n\n${entries.map(describe).join('\n\n')}`;
  });
  return `${introduction}\n## Functions\n\nThe examples are run in the tests.\n\n${sections.join('\n\n')}\n`;
}

function describe(entry: FunctionEntry): string {
  const { formula, given, within, unit, value } = entry.example;
  const over = Object.entries(given ?? {}).map(([name, entered]) => {
    const text = typeof entered === 'string' ? entered : `[${entered.join(', ')}]`;
    return `${name} = ${text}`;
  });
  const where = over.length > 0 ? ` with ${over.map(code).join(', ')}` : '';
  const column = within === undefined ? '' : `, in a column of \`${within}\``;
  const shown = Array.isArray(value) ? `[${value.join(', ')}]` : String(value);
  const note = entry.noRecheck === undefined ? '' : ` Not rechecked: ${entry.noRecheck}.`;
  return (
    `**${code(signatureOf(entry))}** ${entry.help}${note}\n\n` +
    `> ${code(formula)}${where}${column} gives ${code(`${shown}${unit ? ` ${unit}` : ''}`)}`
  );
}
