import type { Problem } from '../../diagnostics/index.ts';
import { type Book, blankBook, type Column, type Row } from '../../document/index.ts';
import { evaluateFormula, openNotebook, type Value } from '../../notebook/index.ts';
import { DATE_UNIT, readEntry, standardUnits, writeQuantity } from '../../units/index.ts';
import { numberIn } from '../number-in.ts';

/** A formula with what it is computed over. */
export interface FormulaToRun {
  readonly formula: string;
  /** Entries by name; a list of entries under `table.column` is a column. A blank entry is missing. */
  readonly given?: Readonly<Record<string, string | readonly string[]>>;
  /** The table whose column the formula is; without it the formula is a line. */
  readonly within?: string;
  /** The unit the result is read in; '' asks for a plain number. */
  readonly unit?: string;
}

/** A value in the unit asked for, a date as it is written; undefined where there is none. */
export type RunValue = number | string | boolean | undefined;

/** What a formula gives: one value, or one a row if it is a column's. */
export interface FormulaRun {
  readonly value: RunValue | readonly RunValue[];
  /** The unit its numbers are in, '' for none. */
  readonly unit: string;
  readonly problems: readonly Problem[];
}

/** Computes a formula; where there are tables, as a line or column of a book that holds nothing else. */
export function runFormula({ formula, given = {}, within, unit }: FormulaToRun): FormulaRun {
  const lines: [name: string, entry: string][] = [];
  const columns: [name: string, cells: readonly string[]][] = [];
  for (const [name, entry] of Object.entries(given))
    if (typeof entry === 'string') lines.push([name, entry]);
    else columns.push([name, entry]);
  if (columns.length === 0 && within === undefined) {
    const { value, problems } = evaluateFormula(formula, Object.fromEntries(lines), unit);
    return { value: value && shown(value), unit: value?.kind === 'number' ? value.unit.text : '', problems };
  }
  const notebook = openNotebook(bookOf({ formula, lines, columns, ...place(within, unit) }));
  const problems = notebook.problems();
  if (within === undefined) {
    const result = notebook.result('sheet.result');
    return result.status === 'ok'
      ? { value: shown(result.value), unit: notebook.unitOf('sheet.result').text, problems }
      : { value: undefined, unit: '', problems };
  }
  const column = notebook.column(`sheet.${within}.result`);
  if (column.status !== 'ok') return { value: [], unit: '', problems };
  const { reading } = column;
  const rows = Array.from({ length: reading.length }, (_, row) => reading.at(row));
  const value = rows.map((row) => {
    if (row.status !== 'ok') return undefined;
    if (typeof row.value !== 'number') return row.value;
    return shown({ kind: 'number', si: row.value, unit: column.unit });
  });
  return { value, unit: column.unit.text, problems };
}

function place(within: string | undefined, unit: string | undefined) {
  const asked = unit === '' ? '-' : unit;
  return { ...(within !== undefined && { within }), ...(asked !== undefined && { unit: asked }) };
}

function shown(value: Value): number | string | boolean {
  if (value.kind === 'text') return value.text;
  if (value.kind === 'truth') return value.truth;
  return value.unit.point === 'date' ? writeQuantity(value.si, value.unit) : numberIn(value.si, value.unit);
}

interface Layout {
  readonly formula: string;
  readonly lines: readonly (readonly [name: string, entry: string])[];
  readonly columns: readonly (readonly [name: string, cells: readonly string[]])[];
  readonly within?: string;
  readonly unit?: string;
}

function bookOf({ formula, lines, columns, within, unit }: Layout): Book {
  const tables = new Map<string, { length: number; columns: Column[] }>();
  const tableOf = (name: string) => {
    const table = tables.get(name) ?? { length: 0, columns: [] };
    tables.set(name, table);
    return table;
  };
  for (const [at, [name, cells]] of columns.entries()) {
    const [table = '', column = ''] = name.split('.');
    const into = tableOf(table);
    into.length = cells.length;
    into.columns.push(givenColumn(`column-${at}`, column, cells));
  }
  const asked = unit === undefined ? {} : { unit };
  const rows: Row[] = lines.map(([name, entry], at) => ({
    id: `line-${at}`,
    kind: 'given',
    name,
    entry,
    optional: true,
  }));
  const makesRows = /^\s*(?:=\s*)?series\b/i.test(formula);
  if (within === undefined) rows.push({ id: 'result', kind: 'calc', name: 'result', formula, ...asked });
  else
    tableOf(within).columns.push({
      id: 'result',
      kind: makesRows ? 'series' : 'calc',
      name: 'result',
      formula,
      ...asked,
    });
  return {
    ...blankBook(),
    sheets: [
      {
        key: 'sheet',
        title: '',
        parts: [
          { id: 'lines', kind: 'rows', rows },
          ...[...tables].map(([name, table]) => ({
            id: `table-${name}`,
            kind: 'table' as const,
            name,
            ...(!(makesRows && name === within) && { length: table.length }),
            columns: table.columns,
          })),
        ],
      },
    ],
  };
}

/** A column of entries; its unit is that of the first that is filled in. */
function givenColumn(id: string, name: string, cells: readonly string[]): Column {
  const read = readEntry(cells.find((cell) => cell.trim() !== '') ?? '', standardUnits);
  const entry = read.ok ? read.value : undefined;
  const base = { id, kind: 'given' as const, name, optional: true, chunks: cells.length ? [cells] : [] };
  if (entry?.kind === 'text' || entry?.kind === 'truth') return { ...base, type: entry.kind };
  if (entry?.kind === 'point' && entry.unit === DATE_UNIT) return { ...base, type: 'date' };
  return entry?.kind === 'number' || entry?.kind === 'point' ? { ...base, unit: entry.unit.text } : base;
}
