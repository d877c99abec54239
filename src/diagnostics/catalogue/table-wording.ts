import type { JsonValue } from './entry.ts';
import { listed, quoted } from './wording.ts';

/** Where something stands in text brought in: the line, counted from 1, at which its row starts. */
export interface RowFacts {
  readonly [fact: string]: JsonValue;
  readonly line: number;
}

/** A cell of text brought in: its line, the letter a spreadsheet gives its column, its header and what is in it. */
export interface CellFacts extends RowFacts {
  readonly letter: string;
  readonly header: string;
  /** The name of the column it goes to. */
  readonly column: string;
  readonly text: string;
}

/** Where a cell of a text stands. */
export function cellPlace({ line, letter, header }: CellFacts): string {
  return `line ${line}, column ${letter}${header === '' ? '' : ` ${quoted(header)}`}`;
}

/** Why a cell is remarked on, behind the cell as written where the reason does not quote it. */
export function reasonOfCell({ text, reason }: { readonly text: string; readonly reason: string }): string {
  return text === '' || reason.includes(text) ? reason : `${quoted(text)}: ${reason}`;
}

/** The first of some cells that can be read two ways, and how many more there are. */
export interface UnclearFacts extends CellFacts {
  readonly more: number;
}

/** Where a cell stands that can be read two ways, and what is in it. */
export function unclearPlace(facts: UnclearFacts): string {
  return `${cellPlace(facts)}: ${quoted(facts.text)}`;
}

/** How many more cells the same is said of. */
export function moreOf({ more }: UnclearFacts): string {
  if (more === 0) return '';
  return more === 1 ? '; the same of 1 more cell' : `; the same of ${more} more cells`;
}

/** Rows of text brought in: their lines, and what the first of them says. */
export interface RowsFacts {
  readonly [fact: string]: JsonValue;
  readonly lines: readonly number[];
  readonly text: string;
}

/** Numbers whose units stand in a column of their own: the letter of that column, its text, and the first number. */
export interface RowUnitFacts extends RowsFacts {
  readonly letter: string;
  readonly number: string;
  readonly column: string;
}

/** Rows of a table that others replace, and its columns that become blank by it. */
export interface BlankFacts {
  readonly [fact: string]: JsonValue;
  readonly rows: number;
  readonly columns: readonly string[];
  /** What some of them come to where they are blank: `w 0 %`. */
  readonly meanings: readonly string[];
}

/** That rows are replaced, and which columns become blank by it. */
export function blankWords({ rows, columns, meanings }: BlankFacts): string {
  const [going, lacking] =
    columns.length === 1
      ? ['column', 'is not in the text and becomes']
      : ['columns', 'are not in the text and become'];
  return `${rows === 1 ? '1 row there is' : `${rows} rows there are`} replaced; the ${going} ${listed(columns, 'and')} ${lacking} blank${meanings.length === 0 ? '' : `, which then means ${listed(meanings, 'and')}`}`;
}

const LINES_TOLD = 5;

/** "line 4", "lines 4, 5 and 9", "lines 4, 5, 6, 7, 8 and 12 more". */
export function linesCalled(lines: readonly number[]): string {
  const told = lines.slice(0, LINES_TOLD).map(String);
  const more = lines.length - told.length;
  return `${lines.length === 1 ? 'line' : 'lines'} ${listed(more > 0 ? [...told, `${more} more`] : told, 'and')}`;
}

/** A column of text brought in, its position counted from 1: by its header, or else by its first value. */
export interface TextColumnFacts {
  readonly [fact: string]: JsonValue;
  readonly position: number;
  readonly header: string;
  readonly first: string;
}

/** A column of a text: by its header, or by its position and first value. */
export function textColumn({ position, header, first }: TextColumnFacts): string {
  return header === '' ? `column ${position} (${quoted(first)})` : quoted(header);
}

/** What is wrong with a unit that is stated for a column. */
export function unitTrouble({
  column,
  wants,
  choices,
  state,
}: {
  readonly column: string;
  readonly wants: string;
  readonly choices: readonly string[];
  readonly state: string;
}): string {
  if (state !== '') return `may be ${state}, which the column ${quoted(column)} does not say (${wants})`;
  if (choices.length > 1) return `can be ${listed(choices)}`;
  if (choices.length === 1) return `is not read as it is written`;
  return `is none that the column ${quoted(column)} takes${wants === '' ? '' : ` (${wants})`}`;
}

/** Columns of a text by their headers. */
export function columnsCalled(headers: readonly string[]): string {
  return `${headers.length === 1 ? 'column' : 'columns'} ${listed(headers.map(quoted), 'and')}`;
}

/** A unit that a line says which is left out, and the column whose numbers are read in another. */
export interface LeftOutUnitFacts extends CellFacts {
  readonly position: number;
  readonly unit: string;
  readonly stated: string;
}

/** Which line says which unit, and about which numbers. */
export function leftOutUnit({ line, stated, column }: LeftOutUnitFacts): string {
  return `line ${line} is left out and says ${quoted(stated)}, and the numbers of ${quoted(column)}`;
}

/** What a cell of numbers that is not read looks like, and the unit of its column. */
export interface SlipFacts {
  readonly [fact: string]: JsonValue;
  readonly kind: 'letter' | 'date' | 'commas' | 'marks' | 'state';
  readonly means: string;
  readonly unit: string;
}

/** What is said of a slip in place of why the cell was not read. */
export function slipWords(
  slip: SlipFacts,
  text: string,
): { readonly reason: string; readonly remedy: string } {
  const { kind, means, unit } = slip;
  if (kind === 'letter')
    return {
      reason: `${quoted(text)} has a letter where a digit seems to be meant`,
      remedy: `write ${quoted(means)} if that is the number`,
    };
  if (kind === 'date')
    return {
      reason: `${quoted(text)} is a date, and spreadsheets make dates of numbers such as 4-3 or 3/4`,
      remedy: 'write the number that was meant, from the list it came from',
    };
  if (kind === 'commas')
    return {
      reason: `${quoted(text)} has commas where none part thousands`,
      remedy: 'look up the number, and write it without commas',
    };
  if (kind === 'marks')
    return {
      reason: `${quoted(text)} has the mark for inches twice, as it is written within a cell in quotation marks alone`,
      remedy: `write ${quoted(means)} if inches are meant`,
    };
  return {
    reason: `${quoted(text)} is said of ${means}, and what is taken here is in ${unit}`,
    remedy: `bring it to ${unit} as the column takes it, and write that unit`,
  };
}

/** So many columns are named where several are told of together. */
const COLUMNS_TOLD = 6;

/** The first of some columns or values, and how many more there are. */
export function firstOf(columns: readonly string[], most = COLUMNS_TOLD): readonly string[] {
  const more = columns.length - most;
  return more > 1 ? [...columns.slice(0, most), `${more} more`] : columns;
}
