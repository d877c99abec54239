import { type Book, blankBook, type Column, type Row } from '../../src/document/index.ts';
import type { FunctionExample } from '../../src/language/index.ts';
import { openNotebook, recheckProgram } from '../../src/notebook/index.ts';
import type { EngineValues, RecheckProgram } from '../../src/recheck/index.ts';
import { readEntry, standardUnits } from '../../src/units/index.ts';

type Parts = Book['sheets'][number]['parts'];
export type Table = Extract<Parts[number], { kind: 'table' }>;
type Cells = readonly (number | string | null)[];

/** An entered column of a table. */
export function given(name: string, unit: string, cells: Cells): Column {
  return { id: `g-${name}`, kind: 'given', name, unit, optional: true, chunks: [cells] };
}

/** A calculated column of a table, or with SERIES one that makes its rows. */
export function calc(name: string, formula: string, unit?: string): Column {
  const kind = formula.startsWith('SERIES') ? 'series' : 'calc';
  return { id: `c-${name}`, kind, name, formula, ...(unit !== undefined && { unit }) };
}

/** A table; without a length, one whose rows a series makes. */
export function table(name: string, length: number | undefined, ...columns: readonly Column[]): Table {
  return { id: name, kind: 'table', name, ...(length !== undefined && { length }), columns };
}

/** A line as a test writes it: an entry, or a formula after `=`; the unit after the name in brackets. */
function lineOf(key: string, text: string, at: number): Row {
  const [, name = key, unit] = /^(\S+)(?: \[(.*)\])?$/.exec(key) ?? [];
  const base = { id: `r${at}`, name, ...(unit !== undefined && { unit }) };
  return text.startsWith('=')
    ? { ...base, kind: 'calc', formula: text.slice(1) }
    : { ...base, kind: 'given', entry: text, optional: true };
}

/** A book of one sheet `s`: its lines, then its tables. */
export function bookOf(lines: Readonly<Record<string, string>>, ...tables: readonly Table[]): Book {
  const rows = Object.entries(lines).map(([key, text], at) => lineOf(key, text, at));
  const parts: Parts = [{ id: 'rows', kind: 'rows', rows }, ...tables];
  return { ...blankBook(), sheets: [{ key: 's', title: '', parts }] };
}

/** The book of a function's example; its formula is `s.result`, or the column `result` of its table. */
export function exampleBook({ formula, given: entries = {}, within, unit }: FunctionExample): Book {
  const lines: Record<string, string> = {};
  const tables = new Map<string, { length: number; columns: Column[] }>();
  const columnsOf = (name: string) => {
    const found = tables.get(name) ?? { length: 0, columns: [] };
    tables.set(name, found);
    return found;
  };
  for (const [name, entry] of Object.entries(entries)) {
    if (typeof entry === 'string') {
      lines[name] = entry;
      continue;
    }
    const [of = '', column = ''] = name.split('.');
    const into = columnsOf(of);
    into.length = entry.length;
    into.columns.push(typedColumn(column, entry));
  }
  if (within === undefined) lines[unit === undefined ? 'result' : `result [${unit}]`] = `=${formula}`;
  else columnsOf(within).columns.push(calc('result', formula, unit));
  const made = [...tables].map(([name, { length, columns }]) =>
    table(name, columns.some(({ kind }) => kind === 'series') ? undefined : length, ...columns),
  );
  return bookOf(lines, ...made);
}

/** A column of entries, whose kind and unit are those of the first that is filled in. */
function typedColumn(name: string, cells: readonly string[]): Column {
  const read = readEntry(cells.find((cell) => cell !== '') ?? '', standardUnits);
  const entry = read.ok ? read.value : undefined;
  const column = given(name, '', cells);
  if (column.kind !== 'given') throw new Error('an entered column is none');
  const { unit: _, ...base } = column;
  if (entry?.kind === 'text' || entry?.kind === 'truth') return { ...base, type: entry.kind };
  if (entry?.kind !== 'number' && entry?.kind !== 'point') return base;
  return entry.unit.text === 'date' ? { ...base, type: 'date' } : { ...base, unit: entry.unit.text };
}

/** The program of a book and its values. */
export function computed(book: Book): { readonly program: RecheckProgram; readonly values: EngineValues } {
  return recheckProgram(openNotebook(book));
}

/** The engine's values with some of them others, by id, or by id and row from 0. */
export function instead(
  values: EngineValues,
  other: Readonly<Record<string, ReturnType<EngineValues>>>,
): EngineValues {
  return (id, row) => {
    const key = row === undefined ? id : `${id} ${row}`;
    return key in other ? other[key] : values(id, row);
  };
}
