import type { Cell, Drawn } from '../program.ts';

/** What was entered, read by name; a number that is blank is not a number, and so is all that rests on it. */
export interface Entries {
  readonly number: (name: string) => number;
  readonly text: (name: string) => string;
  /** What is stated in place of a result; undefined where nothing is. */
  readonly stated: (name: string) => number | undefined;
  readonly rows: (table: string) => readonly Row[] | undefined;
}

/** One row of a table. */
export interface Row {
  readonly number: (column: string) => number;
  readonly text: (column: string) => string;
}

/** Reads the lines and tables of one draw. */
export function readEntries({ lines, tables }: Drawn): Entries {
  return {
    number: (name) => numberOf(name, lines[name]),
    text: (name) => textOf(name, lines[name]),
    stated: (name) => (lines[name] === undefined ? undefined : numberOf(name, lines[name])),
    rows: (table) =>
      tables[table]?.map((row) => ({
        number: (column) => numberOf(column, row[column]),
        text: (column) => textOf(column, row[column]),
      })),
  };
}

function numberOf(name: string, cell: Cell | undefined): number {
  if (cell === null) return Number.NaN;
  if (typeof cell !== 'number') throw new Error(`${name} was not drawn as a number`);
  return cell;
}

function textOf(name: string, cell: Cell | undefined): string {
  if (typeof cell !== 'string') throw new Error(`${name} was not drawn as a text`);
  return cell;
}

/** A number that cannot be below zero, or no number. */
export const notNegative = (value: number): number => (value < 0 ? Number.NaN : value);

/** A number that must be above zero, or no number. */
export const positive = (value: number): number => (value > 0 ? value : Number.NaN);

/** Whether a number counts something: a whole number of one or more. */
export const isCount = (value: number): boolean => Number.isInteger(value) && value >= 1;

/** The sum of what a list gives. */
export function sumOf<T>(list: readonly T[], part: (item: T) => number): number {
  return list.reduce((sum, item) => sum + part(item), 0);
}

/** The largest of what a list gives; no number where one of it is none. */
export function largestOf<T>(list: readonly T[], part: (item: T) => number): number {
  return list.length === 0 ? Number.NaN : Math.max(...list.map(part));
}

/** The row of the largest value, or undefined where another comes within rounding of it or one is no number. */
export function rowOfLargest(values: readonly number[]): number | undefined {
  const largest = largestOf(values, (value) => value);
  const near = values.filter((value) => value >= largest - 1e-9 * Math.max(1, Math.abs(largest)));
  return near.length === 1 ? values.indexOf(largest) : undefined;
}
