import {
  type Cell,
  type Choice,
  cellsOfColumn,
  chunksOfCells,
  type Given,
  type GivenColumn,
} from '../../document/index.ts';
import { isPerCent, readEntry, standardUnits, type Unit, writeIn, writeQuantity } from '../../units/index.ts';
import { optionsOf } from '../build-model.ts';
import { type NamedPart, namesOf } from '../names.ts';
import type { Notebook } from '../notebook.ts';
import type { Value } from '../result.ts';

/** What a line or column that holds the value of another is called, and what it stands for. */
export interface HeldAs {
  readonly id: string;
  readonly name: string;
  readonly toLink: string;
}

/** The most characters of an entry. */
const LONGEST_ENTRY = 1_000;

/** The most options of a choice. */
const MOST_OPTIONS = 500;

/** A given or a choice that holds what a line comes to: where that is entered, the same entry with its limits. */
export function heldRow(
  notebook: Notebook,
  { id, sheet, row }: Extract<NamedPart, { kind: 'row' }>,
  as: HeldAs,
): Given | Choice {
  if (row.kind === 'given') return { ...row, ...as };
  const { label, note, reference } = row;
  const words = { ...(label !== undefined && { label }), ...(note !== undefined && { note }) };
  const named = { ...as, ...words, ...(reference !== undefined && { reference }) };
  if (row.kind === 'choice') {
    const options = [...new Set(optionsOf(row, sheet, namesOf(notebook.book)))];
    if (row.options) return { ...row, ...as };
    if (options.length === 0 || options.length > MOST_OPTIONS)
      return { ...named, kind: 'given', entry: textEntry(row.entry.trim()) };
    const { from: _, ...kept } = row;
    return { ...kept, ...as, options: options.map((value) => ({ value })) };
  }
  const result = notebook.result(id);
  const unit = row.kind === 'check' ? undefined : unitText(notebook, id);
  const blank = { ...named, kind: 'given', entry: '', ...(unit !== undefined && { unit }) } as const;
  if (result.status !== 'ok') return blank;
  const { value } = result;
  const entry = entryOf(value);
  return { ...named, kind: 'given', entry, ...(value.kind === 'number' && { unit: value.unit.text }) };
}

/** A given that holds nothing, for a name that stood for nothing. */
export function heldNothing(as: HeldAs): Given {
  return { ...as, kind: 'given', entry: '', unit: '' };
}

function unitText(notebook: Notebook, id: string): string | undefined {
  const { kind } = notebook.model.items.get(id)?.type ?? { kind: 'unknown' };
  return kind === 'text' || kind === 'truth' ? undefined : notebook.unitOf(id).text;
}

/** A value as an entry that reads as the same again. */
function entryOf(value: Value): string {
  if (value.kind === 'truth') return value.truth ? 'TRUE' : 'FALSE';
  return value.kind === 'text' ? textEntry(value.text) : numberEntry(value.si, value.unit);
}

/** The entry of a line that holds a value from now on: a bare number where its unit stands beside it. */
export function heldEntry(value: Value, hasUnit: boolean): string {
  if (value.kind !== 'number' || hasUnit) return entryOf(value);
  return writeQuantity(value.si, value.unit, { digits: 'carried', grouping: 'none' });
}

/** A bare number of the unit beside it; per cent are written out, for a bare one could be meant as a part of 1. */
function numberEntry(si: number, unit: Unit): string {
  const style = { digits: 'carried', grouping: 'none' } as const;
  return isPerCent(unit) ? writeQuantity(si, unit, style) : writeIn(si, unit, style);
}

function textEntry(text: string): string {
  if (text === '') return '';
  const read = readEntry(text, standardUnits);
  const entry = read.ok && read.value.kind === 'text' && read.value.text === text ? text : `"${text}"`;
  return entry.length > LONGEST_ENTRY ? '' : entry;
}

/** A given column that holds what a column comes to: of one that is entered, the same cells with their limits. */
export function heldColumn(
  notebook: Notebook,
  { id, column }: Extract<NamedPart, { kind: 'column' }>,
  as: HeldAs,
): GivenColumn {
  if (column.kind === 'given') return { ...column, ...as };
  const { label, note, reference } = column;
  const read = notebook.column(id);
  const unit = notebook.unitOf(id);
  const cells =
    read.status === 'ok'
      ? Array.from({ length: read.reading.length }, (_, row): Cell => {
          const one = read.reading.at(row);
          return one.status === 'ok' ? cellOf(one.value, unit) : null;
        })
      : [];
  const kind = notebook.model.items.get(id)?.type.kind;
  const type =
    kind === 'text' || kind === 'truth' ? kind : unit.point === 'date' ? 'date' : ('number' as const);
  return {
    ...as,
    kind: 'given',
    ...(label !== undefined && { label }),
    type,
    ...(type === 'number' && { unit: unit.text }),
    ...(note !== undefined && { note }),
    ...(reference !== undefined && { reference }),
    chunks: chunksOfCells(cells),
  };
}

function cellOf(value: number | string | boolean, unit: Unit): Cell {
  if (typeof value === 'string') return value;
  if (typeof value === 'boolean') return value ? 'TRUE' : 'FALSE';
  const written = writeIn(value, unit, { digits: 'carried', grouping: 'none' });
  return unit.point === 'date' ? written : Number(written);
}

/** The same column with a cell for each of so many rows: one that could not be computed at all has none yet. */
export function filledTo(column: GivenColumn, rows: number): GivenColumn {
  const cells = cellsOfColumn(column);
  if (cells.length === rows) return column;
  return { ...column, chunks: chunksOfCells(Array.from({ length: rows }, (_, row) => cells[row] ?? null)) };
}
