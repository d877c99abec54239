import { entry } from './entry.ts';
import { listed, onOneLine, quoted } from './wording.ts';

/** So many values are named where a check rests on several; one more that would be left over is named too. */
const NAMED = 3;

/** Problems of the lines and cells of a book: choices, permitted ranges, checks. */
export const lines = {
  'choice-unknown': entry<{ written: string; options: string[]; near: string[] }>({
    title: 'A choice that is not on its list',
    explain: 'A choice takes one of the values its line or column lists.',
    words: ({ written, options, near }) => ({
      message: `${quoted(written)} is not one of the choices`,
      hint:
        near.length > 0
          ? `did you mean ${listed(near.map(quoted))}?`
          : options.length > 0
            ? `choose ${listed(options.slice(0, 8).map(quoted))}${options.length > 8 ? ' and others' : ''}`
            : 'the list it is chosen from is empty',
    }),
  }),
  'option-unread': entry<{ line: number; written: string; because: string }>({
    title: 'A line of options that is no option',
    explain:
      'The options of a choice are written one a line: a value, or a value and the words for it. None is left out in silence.',
    words: ({ line, written, because }) => ({
      message: `line ${line} of the options, ${quoted(written)}, ${because}`,
      hint: 'write each option once, as “value” or “value = words”',
    }),
  }),
  'out-of-range': entry<{ value: string; limit: string; end: string }>({
    title: 'A value beyond its permitted range',
    explain: 'The line states the range it is meant for. The value is computed with, and pointed out.',
    severity: 'warning',
    words: ({ value, limit, end }) => ({
      message: `${value} is ${end === 'least' ? 'below the permitted range: at least' : 'above the permitted range: at most'} ${limit}`,
    }),
  }),
  'sign-excluded': entry<{ value: string; limit: string; sign: 'negative' | 'positive'; note?: string }>({
    title: 'A value of the sign its permitted range leaves out',
    explain:
      'A value beyond its range in size is computed with and pointed out. One of the other sign is not computed with: no line and no check that rests on it has a value. Where it is meant, widen the range of the line or column first.',
    words: ({ value, limit, sign, note }) => ({
      message: `${value} is ${sign}, and the permitted range ${sign === 'negative' ? 'begins' : 'ends'} at ${limit}: nothing is computed with it`,
      hint: `correct the sign, or widen the range of the line where this is meant${note ? `; its note says: ${note}` : ''}`,
    }),
  }),
  'column-out-of-range': entry<{ rows: number; first: number; limits: string }>({
    title: 'Cells beyond the permitted range of their column',
    explain: 'The column states the range it is meant for. The values are computed with, and pointed out.',
    severity: 'warning',
    words: ({ rows, first, limits }) => ({
      message:
        rows === 1
          ? `the cell in row ${first} is beyond the permitted range (${limits})`
          : `${rows} cells are beyond the permitted range (${limits}), the first in row ${first}`,
    }),
  }),
  'entry-unread': entry<{ rows: string; row: number | null; option: string; by: string[]; blank: boolean }>({
    title: 'An entry that nothing reads',
    explain:
      'What is entered is read only by methods that are not in force here, so it changes nothing: the wrong method may be in force, or the entry stands in the wrong place. Where what chooses the method is blank, it counts as the option that is meant by a blank cell. A line or column that must be entered is not asked.',
    severity: 'warning',
    words: ({ rows, option, by, blank }) => {
      const where = rows === '' ? '' : `${rows}: `;
      const chooser = listed(by.map(quoted), 'and');
      return blank
        ? {
            message: `${where}${chooser} is blank and counts as ${quoted(option)}, for which the entry is not used`,
            hint: `say what ${chooser} is, or leave the entry blank`,
          }
        : {
            message: `${where}the entry is not used${option === '' ? ' there' : ` for ${quoted(option)}`}`,
            hint: `leave it blank, or look at what ${chooser} ${by.length === 1 ? 'says' : 'say'}`,
          };
    },
  }),
  'rests-out-of-range': entry<{ on: string[]; sheet: string }>({
    title: 'A check that rests on a value beyond its permitted range',
    explain:
      'A line or column that the check is computed from, at any distance, has a value beyond the range it is meant for: entered, computed or stated. The check is judged, and says so beside its verdict; one that holds so is counted apart, and is not among those that simply hold.',
    severity: 'warning',
    words: ({ on, sheet }) => {
      const names = on.map((id) => (id.startsWith(`${sheet}.`) ? id.slice(sheet.length + 1) : id));
      const more = names.length > NAMED + 1 ? [`${names.length - NAMED} more`] : [];
      const first = more.length > 0 ? names.slice(0, NAMED) : names;
      const ranges = names.length === 1 ? 'its permitted range' : 'their permitted ranges';
      return { message: `rests on ${listed([...first, ...more], 'and')} beyond ${ranges}` };
    },
  }),
  'eased-by-stated': entry<{
    by: string[];
    only: boolean;
    sheet: string;
    stated: string;
    computed: string;
  }>({
    title: 'A check that is eased by a stated value',
    explain:
      'A value that the check is computed from, at any distance, is stated. *Holds only by* it: with the computed value the check would fail or have no value, however near the two stand; of several, each alone does it, or all of them together. *Eased by* it: it stands far from the computed value, more than a fifth apart, and with that the check would be used more. The stated value may be right, for a test or a certificate says so; it is told beside the check that leans on it.',
    severity: 'warning',
    words: ({ by, only, sheet, stated, computed }) => {
      const names = by.map((id) => (id.startsWith(`${sheet}.`) ? id.slice(sheet.length + 1) : id));
      const more = names.length > NAMED + 1 ? [`${names.length - NAMED} more`] : [];
      const first = more.length > 0 ? names.slice(0, NAMED) : names;
      const values = `${stated} for ${computed === '' ? 'no value' : computed}`;
      const told = names.length === 1 ? `, ${values}` : ` (${names[0]}: ${values})`;
      return {
        message: `${only ? 'holds only' : 'eased'} by the stated ${listed([...first, ...more], 'and')}${told}`,
      };
    },
  }),
  'bare-percent': entry<{ written: string; asRead: string; asShare: string }>({
    title: 'A number at or below 1 in per cent',
    explain:
      'Where numbers are in per cent, 0.10 is 0.10 %. It may have been meant as a part of one, which is 10 %. It is computed with as the unit beside it says, and pointed out until either reading is written out.',
    severity: 'warning',
    words: ({ written, asRead, asShare }) => ({
      message: `${written} is read as ${asRead}, and would be ${asShare} as a part of one: write out which is meant`,
    }),
  }),
  'column-bare-percent': entry<{ rows: number; first: number; asRead: string; asShare: string }>({
    title: 'Numbers at or below 1 in a column of per cent',
    explain:
      'Where numbers are in per cent, 0.10 is 0.10 %. It may have been meant as a part of one, which is 10 %. The cells are computed with as the unit of the column says, and pointed out until either reading is written out.',
    severity: 'warning',
    words: ({ rows, first, asRead, asShare }) => ({
      message:
        rows === 1
          ? `the cell in row ${first} is read as ${asRead}, and would be ${asShare} as a part of one`
          : `${rows} cells are read as per cent at or below 1, the first in row ${first} as ${asRead}, which would be ${asShare} as a part of one`,
      hint: `write ${asRead} or ${asShare} in the cell`,
    }),
  }),
  'cell-not-truth': entry<{ written: string }>({
    title: 'A cell that should be true or false',
    explain: 'The cells of this column are TRUE or FALSE.',
    words: ({ written }) => ({ message: `${quoted(written)} is neither TRUE nor FALSE` }),
  }),
  'cell-not-number': entry<{ written: string }>({
    title: 'A cell that should be a number',
    explain: 'The cells of this column are numbers, with or without their unit.',
    words: ({ written }) => ({ message: `${quoted(written)} is not a number` }),
  }),
  'row-fails': entry<{ row: number; message: string }>({
    title: 'A row of a column with a problem',
    explain: 'One row of the column cannot be read or computed; the row is named.',
    words: ({ row, message }) => ({ message: `row ${row}: ${message}` }),
  }),
  'row-incomplete': entry<{
    row: number;
    names: readonly string[];
    empty: boolean;
    /** Blank cells that choose a method by what a blank means there, for which the names are needed. */
    meant: readonly { readonly by: string; readonly is: string }[];
  }>({
    title: 'A row of a table in which something needed is blank',
    explain:
      'A blank is missing, never zero: what is computed from the row, and every total over it, has no value until the row is filled in or deleted. It is told once, at the row.',
    words: ({ row, names, empty, meant }) =>
      empty
        ? {
            message: `row ${row} is blank, and what is computed from it waits`,
            hint: 'fill it in or delete it',
          }
        : {
            message: `row ${row}: ${listed(names.map(quoted), 'and')} ${names.length === 1 ? 'is' : 'are'} blank, and what is computed from the row waits`,
            hint:
              meant.length === 0
                ? 'fill in what is missing'
                : `fill in what is missing, or choose another than ${listed(
                    meant.map(({ by, is }) => `${quoted(is)} in ${quoted(by)}, which a blank there means`),
                    'and',
                  )}`,
          },
  }),
  'waits-on': entry<{ on: string; origin: string; because: string }>({
    title: 'A line that waits on another',
    explain: 'A value it depends on has a problem of its own, which is to be mended first.',
    words: ({ on, origin, because }) => ({
      message: `waits on ${on}`,
      ...(because !== '' && { hint: `mend ${origin}: ${because}` }),
    }),
  }),
  'stated-without-reason': entry<Record<string, never>>({
    title: 'A stated value without a reason',
    explain:
      'A value stands in place of a computed one, and why is still to be written: an open item of the book.',
    severity: 'warning',
    words: () => ({
      message: 'the reason for the stated value is open',
      hint: 'say where the value is from',
    }),
  }),
  'stated-reason-carried': entry<{ given: string }>({
    title: 'A reason that was given for another value',
    explain:
      'The value was changed, or was filled or pasted from another place, and its reason came with it: an open item of the book until the reason is confirmed or another is given.',
    severity: 'warning',
    words: ({ given }) => ({
      message: `the reason for the stated value was given for ${onOneLine(given)}`,
      hint: 'confirm it, or say where the value is from',
    }),
  }),
  'stated-cells-without-reason': entry<{ cells: number; first: number }>({
    title: 'Stated cells without a reason',
    explain:
      'Values stand in place of computed cells, and why is still to be written, or to be confirmed where it was given for another value: an open item of the book.',
    severity: 'warning',
    words: ({ cells, first }) => ({
      message:
        cells === 1
          ? `the reason for the stated value in row ${first} is open`
          : `the reasons for ${cells} stated values are open, the first in row ${first}`,
      hint: 'say where the values are from',
    }),
  }),
  'stated-far': entry<{ stated: string; computed: string }>({
    title: 'A stated value far from the computed one',
    explain:
      'A stated value is more than ten times the computed one, or less than a tenth of it. It may be right, and is computed with; most often a digit, a unit or a prefix is wrong: an open item of the book.',
    severity: 'warning',
    words: ({ stated, computed }) => ({
      message: `the stated value, ${stated}, is far from the computed ${computed}`,
      hint: 'see that number and unit are those of its source',
    }),
  }),
  'stated-other-sign': entry<{ stated: string; computed: string }>({
    title: 'A stated value of the other sign',
    explain:
      'A stated value is negative where the computed one is positive, or the other way round. It may be right, and is computed with: an open item of the book.',
    severity: 'warning',
    words: ({ stated, computed }) => ({
      message: `the stated value, ${stated}, has the other sign than the computed ${computed}`,
      hint: 'see that its source counts in the same direction',
    }),
  }),
  'stated-cells-far': entry<{ cells: number; row: number; message: string }>({
    title: 'Stated cells far from the computed ones',
    explain:
      'Stated cells are more than ten times the computed ones, less than a tenth of them, or of the other sign: an open item of the book.',
    severity: 'warning',
    words: ({ cells, row, message }) => ({
      message:
        cells === 1
          ? `row ${row}: ${message}`
          : `${cells} stated values are far from the computed ones, the first in row ${row}: ${message}`,
      hint: 'see that numbers and units are those of their source',
    }),
  }),
  'stated-blank': entry<Record<string, never>>({
    title: 'A stated value that is blank',
    explain: 'A value that stands in place of a computed one has to be there.',
    words: () => ({ message: 'the stated value is blank', hint: 'enter it, or go back to the computed one' }),
  }),
  'stated-kind': entry<{ written: string; stated: string; wanted: string }>({
    title: 'A stated value of another kind',
    explain:
      'A value that stands in place of a computed one is of the same dimension. A number alone is in the unit of its line; a line without a unit needs it written.',
    words: ({ written, stated, wanted }) => ({
      message: `${quoted(written)} is ${stated}, and the line it is stated for is ${wanted}`,
      hint: 'write the value with its unit',
    }),
  }),
  'stated-text-unknown': entry<{ written: string; steers: string[]; texts: string[]; near: string[] }>({
    title: 'A stated text that no method knows',
    explain:
      'The text chooses between methods. One that no method is for, and that the formula never comes to, would be computed by the method for all others unseen; a misspelt one too. Where the formula could come to any text, it is only pointed out.',
    words: ({ written, steers, texts, near }) => ({
      message: `${texts.slice(0, 12).map(quoted).join(', ')}${texts.length > 12 ? ' and others' : ''} choose a method of ${listed(steers.slice(0, 4), 'and')}${steers.length > 4 ? ' and others' : ''}; ${quoted(written)} is none of them`,
      ...(near.length > 0 && { hint: `did you mean ${listed(near.map(quoted))}?` }),
    }),
  }),
  'stated-row-unknown': entry<{ written: string; rows: number }>({
    title: 'A row that is not there to state a cell of',
    explain:
      'Cells of a calculated column are stated by the numbers of their rows, from 1, as they are printed.',
    words: ({ written, rows }) => ({
      message: `${written === '' ? 'a blank' : quoted(written)} is no row of this table, which has rows 1 to ${rows}`,
    }),
  }),
  'stated-no-side': entry<Record<string, never>>({
    title: 'A stated side of a check that has none',
    explain: 'A demand or a capacity is stated for a check that compares them with <, <=, > or >=.',
    words: () => ({ message: 'this check compares no demand with a capacity, so neither can be stated' }),
  }),
  'stated-capacity-not-positive': entry<{ written: string; check: string }>({
    title: 'A stated capacity that is not above zero',
    explain:
      'A check is held against its capacity. One that is stated as zero or less would let it hold for a demand of the other sign, so it is refused; elevations, temperatures and dates may lie below zero.',
    words: ({ written, check }) => ({
      message: `${quoted(written)} is no capacity${check === '' ? '' : ` of the check ${check}`}: it is not above zero`,
      hint: 'state what can be carried, without a sign',
    }),
  }),
  'range-without-unit': entry<{ limit: string; value: string }>({
    title: 'A limit of a permitted range without its unit',
    explain:
      'A line without a unit column is shown in the unit the book prefers, which may be another tomorrow. Its limits need their units written.',
    words: ({ limit, value }) => ({
      message: `the limit ${quoted(limit)} of the permitted range cannot be compared with ${value}`,
      hint: 'write the limit with its unit',
    }),
  }),
  'stated-formula-fails': entry<{ message: string }>({
    title: 'A stated value whose formula fails',
    explain: 'The formula in place of which a value is stated cannot be computed. The stated value stands.',
    severity: 'warning',
    words: ({ message }) => ({ message: `the stated value stands; its formula: ${message}` }),
  }),
  'check-inapplicable': entry<{ condition: string }>({
    title: 'A check that does not apply',
    explain:
      'The condition under which the check applies is not met, so there is nothing to compare: the check neither holds nor fails, and is counted apart.',
    severity: 'warning',
    words: ({ condition }) => ({
      message: `does not apply: it applies where ${onOneLine(condition)}, which is not so`,
    }),
  }),
  'applies-fails': entry<{ message: string }>({
    title: 'A condition of a check with a problem',
    explain:
      'The condition under which a check applies cannot be computed, so the check has no verdict: without it nobody can tell whether there is anything to compare.',
    words: ({ message }) => ({ message: `where it applies: ${message}` }),
  }),
  'set-unknown': entry<{ name: string; near: string[] }>({
    title: 'A name that cannot be set',
    explain:
      'Givens and choices are set, calculated lines and sides of checks stated; a name stands alone or with its sheet in front.',
    words: ({ name, near }) => ({
      message: `there is no line ${quoted(name)} in this book`,
      ...(near.length > 0 && { hint: `did you mean ${listed(near)}?` }),
    }),
  }),
  'set-check': entry<{ name: string }>({
    title: 'A check that was to be set',
    explain:
      'A verdict cannot be entered; a demand or a capacity can be stated in place of the computed one.',
    words: ({ name }) => ({
      message: `${quoted(name)} is a check, whose verdict cannot be set`,
      hint: `state one of its sides: ${name}.demand or ${name}.capacity`,
    }),
  }),
  'set-calculated': entry<{ name: string }>({
    title: 'A calculated line that was to be set',
    explain: 'A calculated line has a formula; its givens are set instead.',
    words: ({ name }) => ({
      message: `${quoted(name)} is calculated and cannot be set`,
      hint: 'set the givens it depends on',
    }),
  }),
  'stated-which-side': entry<{ written: string }>({
    title: 'A value for a check that does not say which side',
    explain:
      'A value typed over a check may be stated for its demand or for its capacity; the word in front says which.',
    words: ({ written }) => ({
      message: `${quoted(written)} could be stated for the demand or for the capacity of this check`,
      hint: `write “demand ${written}” or “capacity ${written}”`,
    }),
  }),
  'stated-cell-formula': entry<{ written: string }>({
    title: 'A formula typed into a cell of a calculated column',
    explain:
      'All cells of a calculated column have the formula of the column; a single one can only be stated, which takes a value.',
    words: ({ written }) => ({
      message: `${quoted(written)} is a formula, and a single cell of a calculated column takes a value`,
      hint: 'F2 on a computed cell opens the formula of its column',
    }),
  }),
  'reason-is-a-value': entry<{ written: string }>({
    title: 'A number in place of a reason',
    explain: 'A number typed as the reason for a stated value was most likely meant for another cell.',
    words: ({ written }) => ({
      message: `${quoted(written)} alone is no reason`,
      hint: 'say where the stated value is from, or leave the reason blank for now',
    }),
  }),
  'name-on-sheets': entry<{ name: string; places: string[] }>({
    title: 'A name that stands on several sheets',
    explain: 'A name alone is enough only if one sheet has it.',
    words: ({ name, places }) => ({
      message: `${quoted(name)} stands on several sheets`,
      hint: `write ${listed(places)}`,
    }),
  }),
  'table-unknown': entry<{ name: string; near: string[] }>({
    title: 'A table that is not found',
    explain: 'A table is named alone or with its sheet in front.',
    words: ({ name, near }) => ({
      message: `there is no table ${quoted(name)} in this book`,
      ...(near.length > 0 && { hint: `did you mean ${listed(near)}?` }),
    }),
  }),
  'table-computed': entry<{ name: string }>({
    title: 'A table whose rows are computed',
    explain: 'A series column makes the rows of this table, so none can be given.',
    words: ({ name }) => ({ message: `the rows of ${quoted(name)} are computed and cannot be given` }),
  }),
  'book-not-kept': entry<Record<string, never>>({
    title: 'A book that is not kept in this browser',
    explain: 'The address names a book that was removed, or that is kept in another browser.',
    words: () => ({ message: 'this book is not kept in this browser', hint: 'open its file' }),
  }),
  'result-unknown': entry<{ name: string; near: string[] }>({
    title: 'A result that is not found',
    explain: 'A result is named alone or with its sheet in front; a column with its table too.',
    words: ({ name, near }) => ({
      message: `there is no line or column ${quoted(name)} in this book`,
      ...(near.length > 0 && { hint: `did you mean ${listed(near)}?` }),
    }),
  }),
  'figure-unknown': entry<{ figure: string; near: string[] }>({
    title: 'A sketch of an unknown kind',
    explain: 'A sketch is one of the kinds Quaybook draws.',
    words: ({ figure, near }) => ({
      message: `there is no sketch ${quoted(figure)}`,
      ...(near.length > 0 && { hint: `did you mean ${listed(near.map(quoted))}?` }),
    }),
  }),
  'figure-cell-needed': entry<{ role: string; what: string }>({
    title: 'A sketch without a cell it needs',
    explain: 'A sketch is drawn from cells; each of its parts names the line or column it is drawn from.',
    words: ({ role, what }) => ({
      message: `the sketch has no cell for ${quoted(role)}: ${what}`,
      hint: `name the line or column of ${what}`,
    }),
  }),
  'figure-name-unknown': entry<{ name: string; near: string[] }>({
    title: 'A picture that names what is not there',
    explain:
      'A sketch or chart names lines, tables and columns of its sheet, or of another with the sheet in front.',
    words: ({ name, near }) => ({
      message: `the picture is drawn from ${quoted(name)}, which is not in this book`,
      ...(near.length > 0 && { hint: `did you mean ${listed(near)}?` }),
    }),
  }),
  'figure-cell-kind': entry<{ name: string; what: string; wanted: string }>({
    title: 'A picture drawn from a value of another kind',
    explain:
      'Each part of a sketch or chart wants a value of one kind: a length, a force, a column of texts.',
    words: ({ name, what, wanted }) => ({
      message: `${quoted(name)} is taken as ${what} and is not ${wanted}`,
    }),
  }),
  'figure-waits': entry<{ on: string; because: string }>({
    title: 'A picture that waits on a value',
    explain: 'A value it is drawn from is blank or has a problem of its own, which is to be mended first.',
    words: ({ on, because }) => ({ message: `the picture waits on ${on}: ${because}` }),
  }),
  'chart-without-table': entry<{ sheet: string }>({
    title: 'A chart on a sheet without a table',
    explain: 'A chart draws columns of a table of its own sheet.',
    words: ({ sheet }) => ({
      message: `a chart is drawn from a table, and sheet ${quoted(sheet)} has none`,
      hint: 'insert a table first',
    }),
  }),
  'chart-without-columns': entry<{ table: string }>({
    title: 'A chart of no column',
    explain: 'A line or bar chart draws one column of numbers or several over another column.',
    words: ({ table }) => ({
      message: `no column of ${table} is chosen to be drawn`,
      hint: 'choose at least one column of numbers',
    }),
  }),
  'figure-out-of-bounds': entry<{ name: string; value: string; wanted: string }>({
    title: 'A value that cannot be drawn',
    explain: 'A length to draw is above zero, a level lies on the right side of another.',
    words: ({ name, value, wanted }) => ({
      message: `${name} is ${value} and cannot be drawn: ${wanted}`,
    }),
  }),
};
