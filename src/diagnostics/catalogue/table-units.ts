import { entry } from './entry.ts';
import {
  type LeftOutUnitFacts,
  leftOutUnit,
  linesCalled,
  type RowUnitFacts,
  type TextColumnFacts,
  textColumn,
  unitTrouble,
} from './table-wording.ts';
import { listed, quoted } from './wording.ts';

/** Problems with the units of numbers in tables brought in from CSV or clipboard text. */
export const tableUnits = {
  'unit-left-out': entry<LeftOutUnitFacts>({
    title: 'A unit in a line that is left out',
    explain:
      'A line of the text is left out, and it says a unit that numbers of the text may be in, while nothing beside them says theirs. Say the unit of their column.',
    words: (facts) => ({
      message: `${leftOutUnit(facts)} would be read in ${facts.unit}: ${quoted(facts.text)}`,
      hint: `say the unit of ${quoted(facts.column)}: ${facts.stated} or ${facts.unit}`,
    }),
  }),
  'multiple-left-out': entry<{ line: number; said: string; text: string }>({
    title: 'A note on thousands or on a currency that is left out',
    explain:
      'A line of the text that is left out as a note says that numbers are in a multiple, as in thousands, or in another currency than a column has. Left out with the other notes it would be lost, and the numbers read wrong.',
    words: ({ line, said, text }) => ({
      message: `line ${line} is left out as a note, and says ${quoted(said)}: ${quoted(text)}`,
      hint: `convert the numbers it is about, then leave out line ${line} by its number`,
    }),
  }),
  'units-assumed': entry<{ columns: readonly string[] }>({
    title: 'Numbers read in the units of their columns',
    explain:
      'Nothing in the text says the units of these numbers, and nobody said them: they are read in the units that the columns of the table have.',
    severity: 'warning',
    words: ({ columns }) => ({
      message: `without a unit in the text, numbers are read as the table has them: ${listed(columns, 'and')}`,
    }),
  }),
  'unit-left-out-among': entry<LeftOutUnitFacts>({
    title: 'Headers with another unit among the rows',
    explain:
      'A line among the rows says another unit for a column than its header, and it is left out. The numbers below it may be in that unit.',
    words: (facts) => ({
      message: `${leftOutUnit(facts)} below it would be read in ${facts.unit}: ${quoted(facts.text)}`,
      hint: `bring the lines below it in as a text of their own, or write ${facts.stated} behind their numbers and take line ${facts.line} out of the text`,
    }),
  }),
  'column-unit-misplaced': entry<TextColumnFacts & { unit: string; column: string; type: string }>({
    title: 'A unit for a column that has none',
    explain: 'Only a column of numbers can have a unit in its header.',
    words: (facts) => ({
      message: `${textColumn(facts)} has the unit ${quoted(facts.unit)}, and goes to ${quoted(facts.column)}, a column of type ${facts.type}`,
      hint: 'leave the unit out',
    }),
  }),
  'column-unit-unread': entry<
    TextColumnFacts & {
      unit: string;
      column: string;
      wants: string;
      choices: readonly string[];
      state: string;
    }
  >({
    title: 'A unit stated for a column that does not read it',
    explain:
      'The numbers under a header are in the unit it states. This one is no unit as written, or one of another kind than the column has, or it can be read two ways; so none of the numbers is taken.',
    words: (facts) => ({
      message: `the unit ${quoted(facts.unit)} of ${textColumn(facts)} ${unitTrouble(facts)}`,
      hint:
        facts.choices.length > 0
          ? `write ${listed(facts.choices)}`
          : `state a unit of its kind${facts.wants === '' ? '' : `, as ${facts.wants} is`}`,
    }),
  }),
  'column-multiple': entry<TextColumnFacts & { multiple: string; column: string }>({
    title: 'Numbers given in thousands or another multiple',
    explain:
      'The header of a column of the text, or the row of units below it, says that its numbers are given in a multiple, as in thousands of cubic metres, or may say so. In whatever unit they were read they would be wrong by so many times; so none of them is taken.',
    words: (facts) => ({
      message: `${textColumn(facts)} gives its numbers in a multiple, or may: ${quoted(facts.multiple)}; read for the column ${quoted(facts.column)} they would be wrong by as much`,
      hint: `multiply the numbers out if they are in it, and write the heading without ${quoted(facts.multiple)}, with the unit they are in then`,
    }),
  }),
  'column-unit-overridden': entry<TextColumnFacts & { stated: string; said: string; column: string }>({
    title: 'Numbers read in another unit than their header states',
    explain:
      'The header of a column of the text states a unit, and it was said that its numbers are in another. They are read as was said.',
    severity: 'warning',
    words: (facts) => ({
      message: `${textColumn(facts)} states ${quoted(facts.stated)}, and its numbers are read in ${quoted(facts.said)} for the column ${quoted(facts.column)}, as was said`,
      hint: `leave the unit out of what is said to read them in ${quoted(facts.stated)}`,
    }),
  }),
  'column-unit-set-aside': entry<TextColumnFacts & { stated: string; said: string; column: string }>({
    title: 'Words beside the unit of numbers',
    explain:
      'What the header of a column of the text has in brackets, or in a row of units, is no unit that is known. Another unit was said for its numbers, and they are read in that.',
    severity: 'warning',
    words: (facts) => ({
      message: `${textColumn(facts)} says ${quoted(facts.stated)}, which is not read, and its numbers are read in ${quoted(facts.said)} for the column ${quoted(facts.column)}, as was said`,
      hint: `see that ${quoted(facts.stated)} is no other unit, and no multiple of it`,
    }),
  }),
  'column-unit-other-kind': entry<TextColumnFacts & { stated: string; column: string; wants: string }>({
    title: 'A unit of another kind above numbers',
    explain:
      'The header of a column of the text, or the row of units below it, states a unit of another kind than the column takes: tonnes above volumes, euros above dollars. No unit that is said instead makes the numbers right; they have to be converted.',
    words: (facts) => ({
      message: `${textColumn(facts)} states ${quoted(facts.stated)}, a unit of another kind than the column ${quoted(facts.column)} takes${facts.wants === '' ? '' : ` (${facts.wants})`}`,
      hint: `convert its numbers${facts.wants === '' ? '' : ` to ${facts.wants} or a unit of its kind`}, and take ${quoted(facts.stated)} out of the heading`,
    }),
  }),
  'column-unit-alone': entry<TextColumnFacts & { column: string }>({
    title: 'Units without their numbers',
    explain:
      'A column of the text has the units of the numbers of a column, row by row, and no column of numbers of the text goes there.',
    words: (facts) => ({
      message: `${textColumn(facts)} has the units of ${quoted(facts.column)}, and no numbers of the text go there`,
      hint: `say which column goes to ${quoted(facts.column)}`,
    }),
  }),
  'column-units-ignored': entry<
    TextColumnFacts & {
      lines: readonly number[];
      letter: string;
      text: string;
      number: string;
      column: string;
      unit: string;
      out: boolean;
    }
  >({
    title: 'Units beside numbers that are read in another',
    explain:
      'A column of the text has a unit in each row, and it is left out or taken as words, while numbers in these rows would be read in another unit. Say that they are the units of those numbers, or that they are not.',
    words: (facts) => ({
      message: `${linesCalled(facts.lines)}, column ${facts.letter} ${textColumn(facts)}: ${quoted(facts.text)} stands beside ${quoted(facts.number)}, which would be read ${facts.unit === '' || facts.unit === '-' ? 'as a plain number' : `in ${facts.unit}`} (${facts.column})`,
      hint: `say that these are the units of ${quoted(facts.column)}, or that they are no units of its numbers`,
    }),
  }),
  'cells-unit-missing': entry<
    TextColumnFacts & {
      lines: readonly number[];
      letter: string;
      column: string;
      text: string;
      beside: string;
      besideLine: number;
      unit: string;
      others: readonly string[];
    }
  >({
    title: 'Numbers without a unit among others that have one',
    explain:
      'Nothing says the unit of a column of the text. Some of its cells carry a unit of their own, another one than the column has, and others carry none: those may be in either. So the unit of the bare numbers is asked for; cells with a unit keep their own.',
    words: (facts) => ({
      message: `${linesCalled(facts.lines)}, column ${facts.letter}${facts.header === '' ? '' : ` ${quoted(facts.header)}`}: ${quoted(facts.text)} has no unit, and ${quoted(facts.beside)} in line ${facts.besideLine} has another than ${facts.unit === '-' ? 'the plain number' : `the ${facts.unit}`} that it would be read ${facts.unit === '-' ? 'as' : 'in'}`,
      hint: `say the unit of the numbers of ${quoted(facts.column)} that have none: ${listed([...facts.others, facts.unit])}`,
    }),
  }),
  'row-unit-unread': entry<RowUnitFacts & { choices: readonly string[]; wants: string; state: string }>({
    title: 'A unit in a row that its number does not read',
    explain:
      'The unit of a number stands in its own row. Here there is none, or it is of another kind than the column has, or it can be read two ways.',
    words: ({ lines, letter, text, number, column, wants, choices, state }) => ({
      message:
        text === ''
          ? `${linesCalled(lines)}, column ${letter}: no unit stands beside ${quoted(number)}`
          : `${linesCalled(lines)}, column ${letter}: the unit ${quoted(text)} beside ${quoted(number)} ${unitTrouble({ column, wants, choices, state })}`,
      hint: choices.length > 0 ? `write ${listed(choices)}` : 'write the unit of the number there',
    }),
  }),
  'row-unit-contradicted': entry<RowUnitFacts & { other: string }>({
    title: 'Two units for one number',
    explain:
      'The unit in the row of a number is another one than its header states, or than stands behind the number itself.',
    words: ({ lines, letter, text, number, column, other }) => ({
      message: `${linesCalled(lines)}, column ${letter}: the unit ${quoted(text)} stands beside ${quoted(number)} (${column}), and ${quoted(other)} is stated too`,
      hint: 'keep one of the two',
    }),
  }),
};
