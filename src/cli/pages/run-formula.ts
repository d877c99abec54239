import type { Problem } from '../../diagnostics/index.ts';
import { type Book, blankBook, type Column, type Part, type Row } from '../../document/index.ts';
import { openNotebook } from '../../notebook/index.ts';
import { fromSI, readEntry, standardUnits } from '../../units/index.ts';

/** A formula with what it is computed over. */
export interface FormulaToRun {
  readonly formula: string;
  /** Entries by name; a list of entries, under `table.column`, is a column. A blank entry is missing. */
  readonly given?: Readonly<Record<string, string | readonly string[]>>;
  /** The table whose column the formula is; without it the formula is a line. */
  readonly within?: string;
  /** The unit the result is read in; '' for a plain number, a text or true or false. */
  readonly unit?: string;
}

/** A value in the unit asked for; undefined where there is none. */
export type RunValue = number | string | boolean | undefined;

/** What a formula gives. */
export interface FormulaRun {
  /** One value, or one a row of a column. */
  readonly value: RunValue | readonly RunValue[];
  readonly problems: readonly Problem[];
}

/** Computes a formula in a book of its own: the givens are its lines and tables, the formula stands below them. */
export function runFormula({ formula, given = {}, within, unit }: FormulaToRun): FormulaRun {
  const lines: Row[] = [];
  const tables = new Map<string, Column[]>();
  for (const [at, [name, entry]] of Object.entries(given).entries()) {
    if (typeof entry === 'string') {
      lines.push({ id: `given-${at}`, kind: 'given', name, entry, optional: true });
      continue;
    }
    const [table = '', column = ''] = name.split('.');
    tables.set(table, [...(tables.get(table) ?? []), givenColumn(`given-${at}`, column, entry)]);
  }
  const asked = unit === undefined ? {} : { unit: unit === '' ? '-' : unit };
  const own = tables.get(within ?? '');
  const series = /^\s*=?\s*SERIES\b/i.test(formula);
  if (within === undefined)
    lines.push({ id: 'result', kind: 'calc', name: 'result', formula, ...withUnit(formula, lines, asked) });
  else
    tables.set(within, [
      ...(own ?? []),
      { id: 'result', kind: series ? 'series' : 'calc', name: 'result', formula, ...asked },
    ]);
  const notebook = openNotebook(bookOf(lines, tables));
  const problems = notebook.problems();
  return within === undefined
    ? { value: lineValue(notebook), problems }
    : { value: columnValues(notebook, `sheet.${within}.result`), problems };
}
