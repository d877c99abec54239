import { idOfRow, rowIdsOf, rowWithId, type Subject } from '../../document/index.ts';
import type { Item, Model } from '../../notebook/index.ts';

/** A line or column of the model, and of a column the row of a cell, counted from 0. */
export interface FoundSubject {
  readonly item: Item;
  readonly row?: number;
}

/** The id by which the document knows a line or column for as long as it lives. */
export function idInBook(item: Item): string {
  return item.kind === 'input' || item.kind === 'formula' ? item.row.id : item.column.id;
}

/** What a line, or a cell of a column in a row (from 0), is called in a review. */
export function subjectOf(model: Model, item: Item, row?: number): Subject {
  const id = idInBook(item);
  return row === undefined ? { item: id } : { item: id, row: identityOfRow(model, item, row) };
}

/** The line or cell that a review speaks of; undefined if it is gone. */
export function findSubject(model: Model, { item: id, row }: Subject): FoundSubject | undefined {
  const item = model.items.get(itemsById(model).get(id) ?? '');
  if (!item) return undefined;
  if (row === undefined) return { item };
  if (!('table' in item)) return undefined;
  const part = model.tables.get(item.table)?.part;
  if (!part) return undefined;
  if (part.length === undefined) return { item, row: row - 1 };
  const at = rowWithId(rowIdsOf(part), row);
  return at === undefined ? undefined : { item, row: at };
}

/** The identity of a row (from 0) of a column's table; where a series makes the rows, its number from 1. */
export function identityOfRow(model: Model, item: Item, row: number): number {
  const part = 'table' in item ? model.tables.get(item.table)?.part : undefined;
  if (!part) throw new Error(`${item.id} is no column`);
  return part.length === undefined ? row + 1 : (idOfRow(rowIdsOf(part), row) ?? row + 1);
}

/** The ids of lines and columns in the model by those of the document. */
function itemsById(model: Model): ReadonlyMap<string, string> {
  const known = found.get(model);
  if (known) return known;
  const ids = new Map([...model.items.values()].map((item) => [idInBook(item), item.id]));
  found.set(model, ids);
  return ids;
}

const found = new WeakMap<Model, ReadonlyMap<string, string>>();
