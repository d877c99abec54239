import type { Cell, Drawn } from '../program.ts';

/** One row of a table as drawn. */
export type Row = Readonly<Record<string, Cell>>;

/** A number, or that there is none. */
export type Maybe = number | null;

/** Reads what was drawn: a number, null where it is blank; a text. */
export interface Inputs {
  readonly number: (name: string) => number;
  readonly maybe: (name: string) => Maybe;
  /** A result that is stated in place of the one worked out; null where it is not. */
  readonly stated: (name: string) => Maybe;
  readonly text: (name: string) => string;
  readonly layers: readonly Row[];
  readonly combos: readonly Row[];
}

/** Readers for the inputs of the sheets, which stop where a line was not drawn. */
export function inputsOf({ lines, tables }: Drawn): Inputs {
  const cell = (name: string): Cell => {
    const found = lines[name];
    if (found === undefined) throw new Error(`${name} was not drawn`);
    return found;
  };
  return {
    number: (name) => Number(cell(name)),
    maybe: (name) => {
      const found = cell(name);
      return found === null ? null : Number(found);
    },
    stated: (name) => {
      const found = lines[name];
      return found === undefined || found === null ? null : Number(found);
    },
    text: (name) => String(cell(name)),
    layers: tables['pile.layers'] ?? [],
    combos: tables['loads.combos'] ?? [],
  };
}

/** A cell of a row as a number, null where it is blank or not there. */
export function numberIn(row: Row, column: string): Maybe {
  const cell = row[column];
  return cell === null || cell === undefined ? null : Number(cell);
}

/** A cell of a row as a text, undefined where it is blank or not there. */
export function textIn(row: Row, column: string): string | undefined {
  const cell = row[column];
  return cell === null || cell === undefined ? undefined : String(cell);
}

/** The result of a formula of numbers that must all be there. */
export function withAll<const T extends readonly Maybe[]>(
  parts: T,
  formula: (...numbers: { [K in keyof T]: number }) => Maybe,
): Maybe {
  if (parts.some((part) => part === null)) return null;
  const result = formula(...(parts as unknown as { [K in keyof T]: number }));
  return result === null || !Number.isFinite(result) ? null : result;
}

/** The sum of what must all be there. */
export function sumOf(parts: readonly Maybe[]): Maybe {
  return parts.reduce<Maybe>((sum, part) => withAll([sum, part], (a, b) => a + b), 0);
}
