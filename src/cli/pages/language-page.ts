import { type FunctionEntry, functionTable, signatureOf } from '../../language/index.ts';
import { code, generated } from './markdown.ts';

const introduction = `# The formula language

${generated}

A formula is what stands in the calculation of a line, \`0.5 * M * v^2 * C_M\`. An entry is what a person types as a
value, \`12'-6 1/2"\` or \`3,500 psf\`. Entries are read generously, formulas strictly: what two careful people could
read two ways is refused, and both readings are offered.

## Quantities

A number may carry a unit: one symbol after a space (\`12 ft\`, \`150 pcf\`), a compound one in parentheses
(\`3.5 (kN/m^2)\`). It binds tighter than anything. A formula that a code gives for numbers in stated units is written as
it means: \`2 * SQRT(f'_c / 1 psi) * 1 psi * b * d\`. A unit never follows a name or a closing parenthesis: the unit column
converts. The token \`0\` fits any dimension where a sum, a difference, a comparison, MIN, MAX or IF needs equal ones.

## Names

Names start with a letter, Greek too, then letters, digits, \`_\` and \`'\`: \`f'_c\`, \`C_M\`, \`γ_w\`. Capital and small
letters differ. \`layers.thickness\` is a column, \`basis.t_deck\` a line of another sheet, \`basis.layers.top\` both.
Function names are reserved in any case.

## Kinds of value

Numbers of a dimension, points, texts and truth values.

- **Angles.** \`deg\`, \`rad\` and the inverse functions mark a plain number as an angle. Sums and differences keep the mark,
  and so do products and quotients with an unmarked plain number. Trigonometry refuses an unmarked number and offers
  degrees and radians. An angle divided by an angle, or multiplied by a length, is none.
- **Points.** An absolute temperature (\`20 degC\`), an elevation to a datum (entry \`El. +12.5 ft MLLW\`) and a date
  (entry \`2026-11-25\`). Two points of a kind have a difference; a difference is added to a point; points compare, and
  MIN, MAX, IF, AVERAGE and lookups keep them. Everything else is refused.
- **Texts** compare without regard to case and outer spaces, never with a number. \`&\` joins texts; TEXT writes a number
  as text, with its unit and decimals named.

## Operators

From the one that binds tightest: unit, \`%\` and \`²\`, \`^\`, the minus sign, \`* /\`, \`+ -\`, \`&\`, comparisons. Also
\`· × ÷ − ≤ ≥ ≠ √ ² ³\` as pasted. Arguments are separated by \`;\`, or by a comma with a space. A quantity with a dimension
takes a constant exponent that is an exact fraction: \`V^(1/3)\`, not \`V^0.333\`.

Comparison is to a relative 1e-12, with ties equal; a difference compared with \`0\` compares its positive with its
negative terms. Rounding treats a quotient within 1e-9 of a whole number as that number, so that
\`CEILING(1490/0.95*(1+0.14)/12; 1)\` is 149. Sums are compensated.

## Tables

In the formula of a column a bare column name is this row's value and \`ABOVE(column; first)\` the row above; ABOVE may
close a circle between columns of one table, which is then computed row by row. \`table.column\` is the whole column:
aggregates and lookups take it, over as many tables as the formula names, \`SUM(GREATER(0; LESSER(depth; layers.bottom) -
layers.top) * layers.f)\`. A whole column where one value is wanted is refused.

## What is missing

A blank is missing, never zero. What needs it has no value and says what it waits on; an aggregate over blank rows tells
the part that is known, which no formula can read. \`ISBLANK(name)\` may look at a blank, \`KNOWN(table.column)\` leaves
blank rows out, and a lookup minds only the row it picks. IF, IFS, SWITCH and CHOOSE compute only the branch they take.

## Refused, with both readings offered

\`3/4 in\`, \`5 m^2\`, \`5 m/s\` and \`5 kN·m\` without parentheses, \`-x^2\`, \`a^b^c\`, \`√x^2\`, \`1,200\`, \`1 < x < 2\`,
\`12'\`, \`12ft\`, \`SIN(30)\`, an angle plus a plain number, \`5 lb\`, \`5 ton\`, \`3 mPa\`.

## Differences from OpenFormula

Function names are those of OpenFormula (OASIS ODF 1.3, part 4) where it has them. Where safety asks for another meaning:

- \`-x^2\` and \`a^b^c\` are refused, where OpenFormula reads them as \`(-x)^2\` and \`(a^b)^c\`.
- Names stand in place of cell addresses, whole columns in place of ranges.
- Comparison, rounding and MOD have the margins told above; ROUND to digits is for plain numbers only.
- CEILING goes to plus infinity and FLOOR to minus infinity whatever the sign; their step is positive.
- A blank is missing, never zero or an empty text; COUNT counts values and refuses blanks unless KNOWN leaves them out.
- SUMIF, COUNTIF and their like take a condition over rows, not a text with a criterion in it.
- MATCH and LOOKUP always state the kind of match: \`"exact"\`, \`"first"\`, \`"at or below"\`, \`"at or above"\`. Keys that must
  ascend and do not, and a key that stands twice, are refused.
- IF takes three arguments; IFS and SWITCH refuse where no case holds.
- AND and OR work element by element and compute all their arguments.
- SIN, COS and TAN take angles; ASIN, ATAN and their like give angles.
- WEEKDAY counts from 1 for Monday to 7 for Sunday (ISO 8601).
- WORKDAY and NETWORKDAYS count Monday to Friday less the holidays given.
- EXP, LN and LOG take plain numbers; text never turns into a number by itself.
- LESSER, GREATER, ABOVE, ROW, RUNNINGSUM, RUNNINGMAX, RUNNINGMIN, SERIES, KNOWN, INTERPOLATE, INTERPOLATE2, MINIF, MAXIF,
  TRIANGINV are this language's own.
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
