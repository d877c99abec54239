import type { JsonValue } from '../../diagnostics/index.ts';
import type { PartPlace, RowPlace } from '../find.ts';
import type { Chart, Figure, Part, Prose, Rows, Table } from '../schema/parts.ts';
import type { Calc, Check, Choice, Given, Row, Statement } from '../schema/rows.ts';
import { setPatch } from './book-edits.ts';
import type { Edit } from './patch.ts';

type FieldsOf<Item> = Item extends unknown ? Exclude<keyof Item, 'id' | 'kind'> : never;

/** A field that some kind of part has, its lists of rows and columns excepted. */
export type PartField = Exclude<FieldsOf<Prose | Rows | Table | Figure | Chart>, 'rows' | 'columns'>;

/** A field that some kind of row has. */
export type RowField = FieldsOf<Given | Choice | Calc | Check>;

/** Puts a part into a sheet in front of position `index`. */
export function insertPart(sheet: string, index: number, part: Part): Edit {
  const at = ['sheets', sheet, 'parts'];
  return { label: 'insert a part', patches: [{ kind: 'insert', at, index, value: part }] };
}

/** Takes a part out of its sheet. */
export function removePart(place: PartPlace): Edit {
  return { label: 'remove a part', patches: [{ kind: 'remove', at: partPath(place) }] };
}

/** Moves a part to position `to` among the other parts of its sheet. */
export function movePart(place: PartPlace, to: number): Edit {
  return { label: 'move a part', patches: [{ kind: 'move', at: partPath(place), to }] };
}

/** Sets a field of a part; `undefined` takes an optional one away. */
export function setPartField(place: PartPlace, field: PartField, value: JsonValue | undefined): Edit {
  return { label: `change a part’s ${field}`, patches: [setPatch([...partPath(place), field], value)] };
}

/** Sets the entry of a given or a choice, as typed. */
export function setEntry(place: RowPlace, entry: string): Edit {
  return {
    label: 'change an entry',
    patches: [{ kind: 'set', at: [...rowPath(place), 'entry'], value: entry }],
  };
}

/** States a value in place of what a calc comes to; `undefined` gives the computed one back. */
export function stateRow(place: RowPlace, statement: Statement | undefined): Edit {
  const label = statement ? 'state a value' : 'take a stated value back';
  return { label, patches: [setPatch([...rowPath(place), 'stated'], statement)] };
}

/** States one side of a check; `undefined` gives the computed one back. */
export function stateSide(
  place: RowPlace,
  { stated }: Check,
  side: 'demand' | 'capacity',
  statement: Statement | undefined,
): Edit {
  const { [side]: _, ...other } = stated ?? {};
  const sides = statement ? { ...other, [side]: statement } : other;
  const value = Object.keys(sides).length > 0 ? sides : undefined;
  const label = statement ? `state a ${side}` : `take a stated ${side} back`;
  return { label, patches: [setPatch([...rowPath(place), 'stated'], value)] };
}

/** Sets the formula of a calc or a check. */
export function setFormula(place: RowPlace, formula: string): Edit {
  return {
    label: 'change a formula',
    patches: [{ kind: 'set', at: [...rowPath(place), 'formula'], value: formula }],
  };
}

/** Sets the unit of a row, `''` for none stated. */
export function setUnit(place: RowPlace, unit: string): Edit {
  return { label: 'change a unit', patches: [{ kind: 'set', at: [...rowPath(place), 'unit'], value: unit }] };
}

/** Sets a field of a row; `undefined` takes an optional one away. Formulas that say a changed name are not touched. */
export function setRowField(place: RowPlace, field: RowField, value: JsonValue | undefined): Edit {
  return { label: `change a row’s ${field}`, patches: [setPatch([...rowPath(place), field], value)] };
}

/** Puts a row into a block in front of position `index`. */
export function insertRow(place: PartPlace, index: number, row: Row): Edit {
  const at = [...partPath(place), 'rows'];
  return { label: 'insert a row', patches: [{ kind: 'insert', at, index, value: row }] };
}

/** Takes a row out of its block. */
export function removeRow(place: RowPlace): Edit {
  return { label: 'remove a row', patches: [{ kind: 'remove', at: rowPath(place) }] };
}

/** Moves a row to position `to` among the other rows of its block. */
export function moveRow(place: RowPlace, to: number): Edit {
  return { label: 'move a row', patches: [{ kind: 'move', at: rowPath(place), to }] };
}

/** Puts another row, of any kind, where one is; it has the same id. */
export function replaceRow(place: RowPlace, row: Row): Edit {
  return { label: 'change a row', patches: [{ kind: 'set', at: rowPath(place), value: row }] };
}

function partPath({ sheet, part }: PartPlace): readonly string[] {
  return ['sheets', sheet, 'parts', part];
}

function rowPath({ sheet, part, row }: RowPlace): readonly string[] {
  return ['sheets', sheet, 'parts', part, 'rows', row];
}
